using Holdfast.Fitting;

namespace Holdfast.Claims.Analyses;

/// <summary>A fitted curve whose intervals deserve a second opinion.</summary>
/// <param name="Series">The series.</param>
/// <param name="Fit">The fit.</param>
public sealed record CandidateCurve(string Series, FitResult Fit)
{
    /// <summary>The curve as a reader meets it: "Langmuir".</summary>
    public string Name => Fit.Card.Name;

    /// <summary>The curves of a series that its points do not tell apart, lowest AICc first; empty when no curve settled with points to spare.</summary>
    /// <param name="series">The series.</param>
    /// <param name="fits">Every curve fitted to it.</param>
    public static IReadOnlyList<CandidateCurve> Among(string series, IReadOnlyList<FitResult> fits)
    {
        ArgumentNullException.ThrowIfNull(fits);
        return [.. CurveComparison.NotToldApart(fits).Select(f => new CandidateCurve(series, f))];
    }
}
