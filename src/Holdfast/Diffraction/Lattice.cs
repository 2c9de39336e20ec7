using System.Collections.Immutable;

namespace Holdfast.Diffraction;

/// <summary>A lattice as it may be reported: one model of the shift, with half the difference to the other added to its uncertainty.</summary>
/// <param name="Fit">Refined with a displaced sample, the usual cause in a laboratory (common practice).</param>
/// <param name="Other">Refined with a zero error: the two cannot be told apart in practice.</param>
/// <param name="Unshifted">Refined without a shift; for comparison only.</param>
/// <param name="Parameters">Lengths and angles with the widened standard uncertainty.</param>
public sealed record Lattice(LatticeFit Fit, LatticeFit Other, LatticeFit? Unshifted, ImmutableArray<LatticeParameter> Parameters)
{
    /// <summary>Refines under both models.</summary>
    /// <param name="lines">Indexed lines.</param>
    /// <param name="system">Crystal system.</param>
    /// <param name="start">A cell near the answer.</param>
    /// <param name="wavelength">Wavelength of the places, ångström.</param>
    /// <returns>The lattice, or null when the lines cannot tell it.</returns>
    public static Lattice? Of(IReadOnlyList<IndexedLine> lines, CrystalSystem system, UnitCell start, double wavelength)
    {
        if (LatticeFit.Of(lines, system, start, wavelength, ShiftModel.Displacement) is not { } fit
            || LatticeFit.Of(lines, system, start, wavelength, ShiftModel.Zero) is not { } other)
            return null;
        return new(fit, other, LatticeFit.Of(lines, system, start, wavelength, ShiftModel.None),
            [.. fit.Parameters.Zip(other.Parameters, (p, q) => p with { U = p.U + Math.Abs(p.Value - q.Value) / 2 })]);
    }

    /// <summary>How far the sample's surface lay below the axis, mm; below 0 when above it.</summary>
    /// <param name="radius">Radius of the goniometer, mm.</param>
    /// <returns>Value and standard uncertainty, mm.</returns>
    public (double Value, double U) Displacement(double radius)
    {
        var perDegree = radius / 2 * Math.PI / 180;
        return (-Fit.ShiftAmount!.Value * perDegree, Fit.ShiftAmount.U * perDegree);
    }
}
