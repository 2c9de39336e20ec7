using System.Collections.Immutable;
using Holdfast.Fitting;

namespace Holdfast.Claims;

/// <summary>One curve fitted to one series, as a choice between curves sees it.</summary>
/// <param name="Model">Name of the curve.</param>
/// <param name="Aicc">Akaike's criterion for few points, the error variance counted; null when it is not defined at this n.</param>
/// <param name="N">Number of vessels fitted.</param>
/// <param name="Parameters">Number of parameters of the curve.</param>
/// <param name="LackOfFitP">p of the lack-of-fit test against replicates, or null without replicates; no unit.</param>
public sealed record Candidate(string Model, double? Aicc, int N, int Parameters, double? LackOfFitP)
{
    /// <summary>Other names of the same curve.</summary>
    public ImmutableArray<string> Aliases { get; init; } = [];

    /// <summary>Uptake at equilibrium by this curve, mg/g; null for a curve that never levels off.</summary>
    public double? Plateau { get; init; }

    /// <summary>Residual standard deviation, in the unit of the uptake, or null.</summary>
    public double? ResidualSd { get; init; }

    /// <summary>Weighted sum of squared residuals, or null.</summary>
    public double? SumOfSquares { get; init; }

    /// <summary>
    /// Whether words name this curve: letters and digits alone count, so "pseudo second order" is "Pseudo-second-order"; so are its other names and
    /// its initials ("PSO").
    /// </summary>
    /// <param name="words">A name as an author writes it.</param>
    public bool IsCalled(string words)
    {
        var plain = Plain(words);
        return Aliases.Prepend(Model).Any(n => Plain(n).Equals(plain, StringComparison.OrdinalIgnoreCase)
            || (plain.Length > 2 && Initials(n).Equals(plain, StringComparison.OrdinalIgnoreCase)));
    }

    private static string Plain(string name) => string.Concat(name.Where(char.IsLetterOrDigit));

    private static string Initials(string name) => string.Concat(name.Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries).Select(w => w[0]));

    /// <summary>A candidate known by its sum of squares alone.</summary>
    /// <param name="model">Name of the curve.</param>
    /// <param name="sumOfSquares">Sum of squared residuals of an unweighted fit, in the unit of the values squared.</param>
    /// <param name="n">Number of vessels fitted.</param>
    /// <param name="parameters">Number of parameters of the curve.</param>
    /// <param name="lackOfFitP">p of the lack-of-fit test, or null; no unit.</param>
    public static Candidate FromSquares(string model, double sumOfSquares, int n, int parameters, double? lackOfFitP = null)
        => new(model, Criteria.Of(n, parameters, sumOfSquares, known: false)?.Aicc, n, parameters, lackOfFitP)
        {
            SumOfSquares = sumOfSquares,
            ResidualSd = n > parameters ? Math.Sqrt(sumOfSquares / (n - parameters)) : null,
        };
}

/// <summary>The curves fitted to one series, with what the series itself must offer before a choice may stand.</summary>
/// <param name="Series">Name of the series.</param>
/// <param name="Candidates">Every curve that was fitted to the same vessels with the same weights.</param>
/// <param name="Gates">Conditions on the series.</param>
public sealed record Contest(string Series, ImmutableArray<Candidate> Candidates, ImmutableArray<Gate> Gates);
