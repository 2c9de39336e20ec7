namespace Holdfast.Diffraction;

/// <summary>
/// The length of one axis from orders of one set of planes alone, 00l for example: plates that lie flat show no others, and no line depends on the other axes.
/// </summary>
/// <param name="Axis">"c" with its value and standard uncertainty, the shift refined with it.</param>
/// <param name="Planes">"00l".</param>
/// <param name="Free">Axes of the cell that no line depends on: "a", "a and b".</param>
/// <remarks>d(00l) = d(001)/l for every cell; where symmetry fixes the angles, the length of the axis is in a fixed ratio to d(001).</remarks>
public sealed record OrdersOfAxis(LatticeParameter Axis, string Planes, string Free)
{
    /// <summary>The axis, or null where lines of other planes are among them, where the angles are not fixed by symmetry, or where the lines are too few.</summary>
    /// <param name="lines">Indexed lines.</param>
    /// <param name="cell">A cell near the answer.</param>
    /// <param name="wavelength">Wavelength of the places, ångström.</param>
    public static OrdersOfAxis? Of(IReadOnlyList<IndexedLine> lines, UnitCell cell, double wavelength)
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(cell);
        if (cell.System is not (CrystalSystem.Tetragonal or CrystalSystem.Hexagonal or CrystalSystem.Orthorhombic))
            return null;
        int[] Indices(Miller planes) => [planes.H, planes.K, planes.L];
        var axis = Enumerable.Range(0, 3).FirstOrDefault(i => lines.All(l => Indices(l.Planes)[i] != 0 && Indices(l.Planes).Count(n => n == 0) == 2), -1);
        if (lines.Count == 0 || axis < 0)
            return null;
        var first = cell.Spacing(axis switch { 0 => new(1, 0, 0), 1 => new(0, 1, 0), _ => new(0, 0, 1) });
        // A cubic cell with these spacings along its edge.
        if (Lattice.Of([.. lines.Select(l => l with { Planes = new(Math.Abs(Indices(l.Planes)[axis]), 0, 0) })], CrystalSystem.Cubic, new(first, first, first, 90, 90, 90), wavelength) is not { } fit)
            return null;
        var (length, edge) = (new[] { cell.A, cell.B, cell.C }[axis] / first, fit.Parameters[0]);
        var isAxial = cell.System != CrystalSystem.Orthorhombic;
        return new(new(isAxial && axis == 1 ? "a" : "abc"[axis].ToString(), length * edge.Value, length * edge.U, edge.Unit), new[] { "h00", "0k0", "00l" }[axis],
            isAxial ? axis == 2 ? "a" : "c" : string.Join(" and ", "abc".Where((_, i) => i != axis)));
    }
}
