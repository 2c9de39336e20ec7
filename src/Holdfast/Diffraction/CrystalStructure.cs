using System.Collections.Immutable;

namespace Holdfast.Diffraction;

/// <summary>A crystal structure: cell, symmetry, atoms.</summary>
public sealed class CrystalStructure
{
    // Two images of one site closer than this are one atom, ångström.
    private const double SameAtom = 0.05;

    // Numbers rounded to four or five places are brought back to the third or sixth they stand for, or atoms on special places double.
    private const double Snap = 1e-4;

    private readonly (AtomSite Site, double X, double Y, double Z)[] atoms;

    /// <summary>Expands the sites to all atoms of the cell.</summary>
    /// <param name="cell">Unit cell.</param>
    /// <param name="operations">All operations of the space group, centrings included.</param>
    /// <param name="sites">Atoms of the asymmetric unit.</param>
    /// <exception cref="ArgumentException">The cell is none, or there are no operations, or an element has no scattering factor.</exception>
    public CrystalStructure(UnitCell cell, IReadOnlyList<SymmetryOperation> operations, IReadOnlyList<AtomSite> sites)
    {
        ArgumentNullException.ThrowIfNull(cell);
        ArgumentNullException.ThrowIfNull(operations);
        ArgumentNullException.ThrowIfNull(sites);
        if (!cell.IsSound)
            throw new ArgumentException("The lengths and angles make no cell.", nameof(cell));
        if (operations.Count == 0)
            throw new ArgumentException("A structure needs its symmetry operations; \"x,y,z\" at least.", nameof(operations));
        if (sites.FirstOrDefault(s => ScatteringFactor.Of(s.Element) is null) is { } unknown)
            throw new ArgumentException($"{unknown.Label}: no scattering factor for \"{unknown.Element}\".", nameof(sites));
        (Cell, Operations, Sites) = (cell, [.. operations], [.. sites]);
        atoms = [.. sites.SelectMany(Images)];
    }

    /// <summary>Unit cell.</summary>
    public UnitCell Cell { get; }

    /// <summary>Symmetry operations.</summary>
    public ImmutableArray<SymmetryOperation> Operations { get; }

    /// <summary>Atoms of the asymmetric unit.</summary>
    public ImmutableArray<AtomSite> Sites { get; }

    /// <summary>Atoms of each element in the cell, occupancy counted, in the order of the sites.</summary>
    public IReadOnlyList<(string Element, double Count)> AtomsPerCell
        => [.. atoms.GroupBy(a => a.Site.Element, StringComparer.Ordinal).Select(g => (g.Key, g.Sum(a => a.Site.Occupancy)))];

    /// <summary>
    /// Mean |F|² over the planes and their opposite (which differ without a centre of symmetry once f″ counts), square electrons.
    /// </summary>
    /// <param name="planes">Indices.</param>
    /// <param name="radiation">For f′ and f″; null leaves them out, and so does an anode without a table.</param>
    public double SquaredStructureFactor(Miller planes, Radiation? radiation)
        => (Squared(planes, radiation) + Squared(planes.Opposite, radiation)) / 2;

    // F = Σ occ (f0 + f′ + if″) exp(−B s²) exp(2πi (hx + ky + lz)), International Tables C (2006), 6.1.1.
    private double Squared(Miller planes, Radiation? radiation)
    {
        var s2 = Cell.InverseSquare(planes) / 4;
        double real = 0, imaginary = 0;
        AtomSite? last = null;
        double f = 0, g = 0;
        foreach (var (site, x, y, z) in atoms)
        {
            if (!ReferenceEquals(site, last))
            {
                var damp = site.Occupancy * Math.Exp(-site.B * s2);
                var correction = radiation is null ? null : ScatteringFactor.Correction(site.Element, radiation);
                f = damp * (ScatteringFactor.Of(site.Element)!.At(Math.Sqrt(s2)) + (correction?.Real ?? 0));
                g = damp * (correction?.Imaginary ?? 0);
                last = site;
            }

            var (sin, cos) = Math.SinCos(2 * Math.PI * (planes.H * x + planes.K * y + planes.L * z));
            real += f * cos - g * sin;
            imaginary += f * sin + g * cos;
        }

        return real * real + imaginary * imaginary;
    }

    private IEnumerable<(AtomSite, double, double, double)> Images(AtomSite site)
    {
        var found = new List<(double X, double Y, double Z)>();
        foreach (var operation in Operations)
        {
            var (x, y, z) = operation.Apply(Snapped(site.X), Snapped(site.Y), Snapped(site.Z));
            (x, y, z) = (x - Math.Floor(x), y - Math.Floor(y), z - Math.Floor(z));
            if (!found.Exists(p => Cell.SquaredLength(Short(p.X - x), Short(p.Y - y), Short(p.Z - z)) < SameAtom * SameAtom))
                found.Add((x, y, z));
        }

        return found.Select(p => (site, p.X, p.Y, p.Z));
    }

    private static double Snapped(double share) => Math.Abs(Math.Round(share * 6) / 6 - share) < Snap ? Math.Round(share * 6) / 6 : share;

    // The shortest way round the cell.
    private static double Short(double difference) => difference - Math.Round(difference);
}
