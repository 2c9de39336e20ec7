using System.Collections.Immutable;
using Holdfast.Amounts;
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
}
