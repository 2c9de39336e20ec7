namespace Holdfast.Diffraction;

/// <summary>
/// The length of one axis from orders of one set of planes alone, 00l for example: plates that lie flat show no others, and no line depends on the other axes.
/// </summary>
/// <remarks>d(00l) = d(001)/l for every cell; where symmetry fixes the angles, the length of the axis is in a fixed ratio to d(001).</remarks>
public sealed class OrdersOfAxis
{
    private readonly LatticeFit fit;
    private readonly int place;

    private OrdersOfAxis(LatticeFit fit, int place, LatticeParameter axis, bool isAxial)
    {
        (this.fit, this.place, Axis) = (fit, place, axis);
        Planes = new[] { "h00", "0k0", "00l" }[place];
        Free = isAxial ? place == 2 ? "a" : "c" : string.Join(" and ", "abc".Where((_, i) => i != place));
    }

    /// <summary>"c" with its value and standard uncertainty, the shift refined with it.</summary>
    public LatticeParameter Axis { get; }

    /// <summary>"00l".</summary>
    public string Planes { get; }

    /// <summary>Axes of the cell that no line depends on: "a", "a and b".</summary>
    public string Free { get; }

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
        var axis = Enumerable.Range(0, 3).FirstOrDefault(i => lines.All(l => Order(l.Planes, i) is not null), -1);
        if (lines.Count == 0 || axis < 0)
            return null;
        var first = cell.Spacing(axis switch { 0 => new(1, 0, 0), 1 => new(0, 1, 0), _ => new(0, 0, 1) });
        // A cubic cell with these spacings along its edge.
        if (Lattice.Of([.. lines.Select(l => l with { Planes = new(Order(l.Planes, axis)!.Value, 0, 0) })], CrystalSystem.Cubic, new(first, first, first, 90, 90, 90), wavelength) is not { } fit)
            return null;
        var (length, edge) = (new[] { cell.A, cell.B, cell.C }[axis] / first, fit.Parameters[0]);
        var isAxial = cell.System != CrystalSystem.Orthorhombic;
        return new(fit.Fit, axis, new(isAxial && axis == 1 ? "a" : "abc"[axis].ToString(), length * edge.Value, length * edge.U, edge.Unit), isAxial);
    }

    /// <summary>Where planes of this axis show, degrees of 2θ with the shift; null for other planes, and for those that do not.</summary>
    /// <param name="planes">Indices.</param>
    /// <param name="wavelength">Wavelength, ångström.</param>
    public double? At(Miller planes, double wavelength) => Order(planes, place) is { } order ? fit.Place(new(order, 0, 0), wavelength) : null;

    private static int? Order(Miller planes, int axis)
    {
        int[] indices = [planes.H, planes.K, planes.L];
        return indices[axis] != 0 && indices.Count(n => n == 0) == 2 ? Math.Abs(indices[axis]) : null;
    }
}
