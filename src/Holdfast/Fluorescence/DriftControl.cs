using Holdfast.Amounts;
using Holdfast.Calibration;
using Holdfast.Statistics;

namespace Holdfast.Fluorescence;

/// <summary>
/// What a vessel without quencher lost over the time of the series: photobleaching, settling, lamp. The signal falls by the same share in equal
/// exposure, ln(F) = ln(F0) − k·t, as long as one smooth law holds; only then may the series be corrected.
/// </summary>
/// <remarks>First-order loss, common practice; straightness of ln(F) by Mandel's test as for a calibration (ISO 8466-1, from memory).</remarks>
/// <param name="Rate">k, relative loss per unit of time; negative when the signal grows.</param>
/// <param name="Linearity">How straight ln(F) is over time.</param>
/// <param name="Longest">Last time at which the vessel was read, in its unit.</param>
public sealed record DriftControl(Estimate Rate, Linearity Linearity, double Longest)
{
    private const double Outweighed = 3;

    /// <summary>True when one smooth law describes the vessel, so that others may be corrected by it.</summary>
    public bool IsSmooth => Linearity.Verdict != LinearityVerdict.Curved;

    /// <summary>Reads a drift vessel.</summary>
    /// <param name="time">Times or exposures, any unit, at least three with two different.</param>
    /// <param name="signal">Its signals, above 0, any unit.</param>
    /// <returns>The drift; none with too few readings or without scatter.</returns>
    public static Outcome<DriftControl> Of(IReadOnlyList<double> time, IReadOnlyList<double> signal)
    {
        ArgumentNullException.ThrowIfNull(time);
        ArgumentNullException.ThrowIfNull(signal);
        if (time.Count != signal.Count || signal.Any(f => !(f > 0)))
            throw new ArgumentException("Times and signals come in pairs, and signals are above 0.", nameof(signal));
        double[] logarithms = [.. signal.Select(f => Math.Log(f))];
        var trend = LinearTrend.Of(time, logarithms);
        if (trend.Value is not { } slope)
            return Outcome<DriftControl>.None([.. trend.Findings]);
        var control = new DriftControl(
            slope with { Value = -slope.Value, Method = "relative loss per time, least squares on ln(F)" },
            Linearity.Of([.. time.Zip(logarithms, (t, f) => new StandardReading(t, f))]), time.Max());
        return new(control, control.IsSmooth ? [] : [FluorescenceFindings.DriftNotSmooth()]);
    }

    /// <summary>Share of the signal lost by a time, no unit, with its uncertainty; the rate is shared by every reading corrected with it.</summary>
    /// <param name="time">Time or exposure, in the vessel's unit.</param>
    public Measured LossBy(double time) => -Measured.ExpM1(-RateMeasured * time);

    /// <summary>A signal as it would be without the loss, in its own unit.</summary>
    /// <param name="signal">Signal.</param>
    /// <param name="time">When it was read, in the vessel's unit.</param>
    public Measured Corrected(Measured signal, double time) => signal * Measured.Exp(RateMeasured * time);

    /// <summary>Whether the drift over a series could make its smallest effect: then the effect is not shown.</summary>
    /// <param name="smallestEffect">Smallest relative effect that is claimed; no unit.</param>
    /// <param name="uncertainty">Its standard uncertainty; no unit.</param>
    /// <param name="time">Length of the series, in the vessel's unit.</param>
    /// <returns>A finding when the drift is more than three standard uncertainties of the effect, else null.</returns>
    public Finding? Against(double smallestEffect, double uncertainty, double time)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(uncertainty);
        var loss = LossBy(time);
        return Math.Abs(loss.Value) > Outweighed * uncertainty ? FluorescenceFindings.DriftOutweighs(loss.Value, smallestEffect, uncertainty) : null;
    }

    private Measured RateMeasured => Measured.From(Rate.Value, new Source(
        "drift-control/rate", "rate of the drift vessel", Rate.StandardError, Rate.DegreesOfFreedom, Evaluation.Repetition));
}
