using Holdfast.Statistics;

namespace Holdfast.Fluorescence;

/// <summary>Whether other ions change the response: each against the response without them, by equivalence inside a margin, with Holm's correction over the ions.</summary>
/// <remarks>
/// D. J. Schuirmann 1987 and S. Holm 1979 (from memory). "Not different" is not "no interference"; only an interval inside the margin is.
/// </remarks>
/// <param name="Ion">Symbol or name of the ion.</param>
/// <param name="Excess">Its concentration over that of the analyte, no unit; or its concentration when read alone.</param>
/// <param name="Effect">Response with the ion over response without it; no unit.</param>
/// <param name="Equivalence">Two one-sided tests against the margin.</param>
/// <param name="AdjustedP">p of the equivalence after Holm over all ions.</param>
/// <param name="DifferenceP">Two-sided p of "no effect" after Holm over all ions.</param>
public sealed record Interference(string Ion, double Excess, Estimate Effect, Equivalence Equivalence, double AdjustedP, double DifferenceP)
{
    /// <summary>The margin of common practice, 5 % either side; no unit.</summary>
    public const double UsualMargin = 0.05;

    /// <summary>True when the ion is shown not to matter at this excess, Holm included.</summary>
    public bool IsExcluded => AdjustedP < 0.05;

    /// <summary>True when the ion is shown to matter: the estimate lies outside the margin and differs from "no effect", Holm included.</summary>
    public bool IsShown => (Effect.Value < Equivalence.Low || Effect.Value > Equivalence.High) && DifferenceP < 0.05;

    /// <summary>Judges every ion.</summary>
    /// <param name="without">Responses without any of the ions, any unit.</param>
    /// <param name="ions">Name, excess and responses of each ion, same unit.</param>
    /// <param name="margin">Half-width of the margin around 1; no unit.</param>
    /// <returns>One result for each ion whose replicates allow one, in the order given, and findings on the others.</returns>
    public static (IReadOnlyList<Interference> Ions, IReadOnlyList<Finding> Findings) Of(
        IReadOnlyList<double> without, IReadOnlyList<(string Ion, double Excess, IReadOnlyList<double> Responses)> ions, double margin = UsualMargin)
    {
        ArgumentNullException.ThrowIfNull(without);
        ArgumentNullException.ThrowIfNull(ions);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(margin);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(margin, 1);
        var found = new List<(string Ion, double Excess, Equivalence Equivalence)>();
        var findings = new List<Finding>();
        foreach (var (ion, excess, responses) in ions)
        {
            if (Ratio.OfMeans(responses, without).Value is { } effect)
                found.Add((ion, excess, Equivalence.Of(effect, 1 - margin, 1 + margin)));
            else
                findings.Add(FluorescenceFindings.NoReplicates(ion, responses.Count));
        }

        var adjusted = Holm.Adjust([.. found.Select(f => f.Equivalence.P)]);
        var different = Holm.Adjust([.. found.Select(f => f.Equivalence.Estimate.PDiffersFrom(1))]);
        return ([.. found.Select((f, i) => new Interference(f.Ion, f.Excess, f.Equivalence.Estimate, f.Equivalence, adjusted[i], different[i]))], findings);
    }

    /// <summary>Tolerance ratio of an ion: the largest excess at which it, and every smaller one, is shown not to matter; null when none is.</summary>
    /// <param name="results">Results of one ion at several excesses.</param>
    public static double? ToleranceRatio(IEnumerable<Interference> results)
        => results.OrderBy(r => r.Excess).TakeWhile(r => r.IsExcluded).Select(r => (double?)r.Excess).LastOrDefault();
}
