namespace Holdfast.Fitting;

/// <summary>The error model of one curve fitted to one series: what was stated or propagated for each vessel, and the scatter between vessels on top of it.</summary>
/// <param name="Form">In what the vessels scatter: of two forms the likelier one.</param>
/// <param name="VesselScatter">Scatter from vessel to vessel as a share of the uptake, by restricted likelihood; 0 when the residuals show none beyond what is stated.</param>
/// <param name="VesselScatterFreedom">Degrees of freedom of its square (Satterthwaite); null when it is 0.</param>
/// <param name="ReplicateScatter">The same from replicates alone, whatever the curve; null without replicates.</param>
/// <param name="ReplicateFreedom">Vessels less settings: degrees of freedom of the replicates.</param>
/// <param name="U">Standard uncertainty of each vessel about the curve, scatter included, in the unit of y.</param>
public sealed record SeriesErrors(
    ScatterForm Form, double VesselScatter, double? VesselScatterFreedom, double? ReplicateScatter, int ReplicateFreedom, IReadOnlyList<double> U);

/// <summary>In what vessels of one setting differ beyond what is stated of them.</summary>
public enum ScatterForm
{
    /// <summary>In what the sorbent takes up at a given concentration: the vessel comes to an equilibrium of its own, which evens most of it out where the curve is steep.</summary>
    Sorbent,

    /// <summary>In the amount taken up when it was read: nothing evens it out.</summary>
    Amount,
}
