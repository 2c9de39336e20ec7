using Holdfast.Fitting;

namespace Holdfast.Claims.Analyses;

/// <summary>A fitted curve whose intervals deserve a second opinion.</summary>
/// <param name="Series">The series.</param>
/// <param name="Fit">The fit.</param>
/// <param name="ThroughBalance">
/// True when the concentration left was fitted through the mass balance, so that the error that q and Ce share is counted once; false for the plain curve.
/// </param>
public sealed record CandidateCurve(string Series, FitResult Fit, bool ThroughBalance)
{
    /// <summary>The curve as a reader meets it: "Langmuir", or "Langmuir, through the mass balance".</summary>
    public string Name => ThroughBalance ? Fit.Card.Name + ", through the mass balance" : Fit.Card.Name;

    /// <summary>
    /// The curves of a series that its points do not tell apart, lowest AICc first, each followed by the same curve through the mass balance where that
    /// settled; empty when no curve settled with points to spare.
    /// </summary>
    /// <param name="series">The series.</param>
    /// <param name="fits">Every curve fitted to it.</param>
    /// <param name="balanced">The same curves through the mass balance; empty for none.</param>
    public static IReadOnlyList<CandidateCurve> Among(string series, IReadOnlyList<FitResult> fits, IReadOnlyList<FitResult> balanced)
    {
        ArgumentNullException.ThrowIfNull(fits);
        ArgumentNullException.ThrowIfNull(balanced);
        return [.. CurveComparison.NotToldApart(fits)
            .SelectMany(f => balanced.Where(b => b.IsFit && b.Card == f.Card).Select(b => new CandidateCurve(series, b, true)).Prepend(new CandidateCurve(series, f, false)))];
    }
}
