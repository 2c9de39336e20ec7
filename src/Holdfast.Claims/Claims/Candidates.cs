using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;

namespace Holdfast.Claims;

/// <summary>The fits of a series as candidates of a choice.</summary>
internal static class Candidates
{
    private const string Plateau = "qe";
    private const double Equal = 2;

    /// <summary>Every curve that settled.</summary>
    /// <param name="fitted">The series with its fits.</param>
    public static ImmutableArray<Candidate> Of(FittedSeries fitted)
        => [.. fitted.Fits.Where(f => f.IsFit && f.Parameters.Count > 0).Select(Of)];

    /// <summary>
    /// The curve that the data invite a claim about: of those within two units of AICc of the best the one with fewest parameters, or null.
    /// </summary>
    /// <param name="fitted">The series with its fits.</param>
    public static Candidate? Simplest(FittedSeries fitted)
    {
        Candidate[] comparable = [.. Of(fitted).Where(c => c.Aicc is not null)];
        var best = comparable.Min(c => c.Aicc);
        return comparable.Where(c => c.Aicc <= best + Equal).OrderBy(c => c.Parameters).ThenBy(c => c.Aicc).FirstOrDefault();
    }

    /// <summary>A parameter's value by its symbol, or null when the curve has none of that name.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="symbol">Symbol on the card.</param>
    public static double? Value(FitResult fit, string symbol)
        => fit.Parameters.FirstOrDefault(p => string.Equals(p.Symbol, symbol, StringComparison.Ordinal))?.Value;

    /// <summary>The fit of a curve by its name, when it settled, or null.</summary>
    /// <param name="fitted">The series with its fits.</param>
    /// <param name="model">Name of the curve.</param>
    public static FitResult? Named(FittedSeries fitted, string model)
        => fitted.Fits.FirstOrDefault(f => f.IsFit && f.Parameters.Count > 0 && Of(f).IsCalled(model));

    private static Candidate Of(FitResult fit) => new(fit.Card.Name, fit.Aicc, fit.N, fit.P, fit.LackOfFit?.Test.P)
    {
        Aliases = [.. fit.Card.Aliases],
        Plateau = Value(fit, Plateau),
        ResidualSd = fit.ResidualSd,
        SumOfSquares = fit.SumOfSquares,
    };
}
