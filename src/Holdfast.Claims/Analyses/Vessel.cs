using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.BatchSorption;
using Holdfast.Studies;

namespace Holdfast.Claims.Analyses;

/// <summary>
/// One vessel of a batch test (or a control without sorbent) with the quantities that follow from it. A quantity is null when
/// something it needs is missing; <see cref="Findings"/> says what.
/// </summary>
/// <param name="Sample">The sample.</param>
/// <param name="IsStruck">Struck vessels keep their place in figures and count nowhere.</param>
/// <param name="Start">Concentration at the start, mg/L.</param>
/// <param name="End">Concentration after contact.</param>
/// <param name="Volume">Volume of liquid, mL.</param>
/// <param name="Mass">Mass of dry sorbent, mg; null for a control.</param>
/// <param name="Dose">Dose m/V, g/L; null for a control.</param>
/// <param name="Removal">Removal, %.</param>
/// <param name="Uptake">Uptake q, mg/g.</param>
/// <param name="Distribution">Distribution coefficient Kd, L/g.</param>
/// <param name="Findings">Caveats.</param>
public sealed record Vessel(
    Sample Sample,
    bool IsStruck,
    Measured? Start,
    Concentration? End,
    Measured? Volume,
    Measured? Mass,
    Measured? Dose,
    Measured? Removal,
    Measured? Uptake,
    Measured? Distribution,
    ImmutableArray<Finding> Findings)
{
    /// <summary>The code on its label.</summary>
    public string Code => Sample.Code;

    /// <summary>
    /// Least removal in %, printed as "more than", where what is left lies below its detection limit, with the start concentration at the lower end of its 95 % interval;
    /// null elsewhere. The signed value stays in <see cref="Removal"/> for means and fits.
    /// </summary>
    public double? LeastRemoval
        => End is { IsBelowDetection: true, DetectionLimit: { } limit } && Start is { Value: > 0 } start
            ? BatchQuantities.LeastRemoval<Number>(start.Value - ExpandedUncertainty.Of(start).U, limit).Value
            : null;

    /// <summary>
    /// Uptake in mg/g as an interval, from all of the detection limit left to nothing left, each end moved outwards by the 95 % interval that start concentration and dose
    /// give it; null where what is left was detected.
    /// </summary>
    public (double Low, double High)? UptakeRange
        => End is { IsBelowDetection: true, DetectionLimit: { } limit } && Start is { Value: > 0 } start && Dose is { Value: > 0 } dose
            ? (Outwards((start - limit) / dose, -1), Outwards(start / dose, 1))
            : null;

    private static double Outwards(Measured end, int side) => end.Value + (side * ExpandedUncertainty.Of(end).U);
}
