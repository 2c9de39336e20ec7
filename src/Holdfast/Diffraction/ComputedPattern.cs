using System.Collections.Immutable;

namespace Holdfast.Diffraction;

/// <summary>The lines that a structure should show in a powder without preferred orientation.</summary>
public static class ComputedPattern
{
    // Below this share of the strongest line, a family counts as absent.
    private const double Absent = 1e-6;

    /// <summary>All families between two angles; families at one place stay separate lines.</summary>
    /// <param name="structure">The structure.</param>
    /// <param name="radiation">Radiation; Kα1 gives the places, its anode f′ and f″.</param>
    /// <param name="from">Lowest 2θ, degrees.</param>
    /// <param name="to">Highest 2θ, degrees, below 180.</param>
    /// <param name="monochromator">2θ of a crystal monochromator, degrees (26.4 for graphite and Cu); 0 without one.</param>
    /// <param name="dispersion">False leaves f′ and f″ out.</param>
    /// <remarks>I = m·|F|²·LP; International Tables C (2006), 6.2.</remarks>
    public static ImmutableArray<ReferenceLine> Of(
        CrystalStructure structure, Radiation radiation, double from, double to, double monochromator = 0, bool dispersion = true)
    {
        ArgumentNullException.ThrowIfNull(structure);
        ArgumentNullException.ThrowIfNull(radiation);
        if (!(to > from && from >= 0 && to < 180))
            throw new ArgumentOutOfRangeException(nameof(to), to, "The range of 2θ lies between 0 and 180 degrees.");
        var lines = Families(structure, radiation.Ka1, from, to)
            .Select(f => (f.Planes, f.Multiplicity, D: structure.Cell.Spacing(f.Planes),
                I: f.Multiplicity * structure.SquaredStructureFactor(f.Planes, dispersion ? radiation : null)))
            .Select(l => (l.Planes, l.Multiplicity, l.D, I: l.I * LorentzPolarisation(Bragg.TwoTheta(l.D, radiation.Ka1)!.Value, monochromator)))
            .OrderByDescending(l => l.D)
            .ToArray();
        var strongest = lines.Select(l => l.I).DefaultIfEmpty().Max();
        return [.. lines.Where(l => l.I > Absent * strongest).Select(l => new ReferenceLine(l.Planes, l.D, 100 * l.I / strongest, l.Multiplicity))];
    }

    /// <summary>(1 + cos²2θ_M·cos²2θ)/((1 + cos²2θ_M)·sin²θ·cos θ), times 2: without a monochromator (1 + cos²2θ)/(sin²θ·cos θ). Without unit.</summary>
    /// <param name="twoTheta">2θ, degrees.</param>
    /// <param name="monochromator">2θ of the monochromator, degrees; 0 without one.</param>
    public static double LorentzPolarisation(double twoTheta, double monochromator)
    {
        var theta = Bragg.Theta(twoTheta);
        var m = Math.Pow(Math.Cos(monochromator * Math.PI / 180), 2);
        return 2 * (1 + m * Math.Pow(Math.Cos(2 * theta), 2)) / ((1 + m) * Math.Pow(Math.Sin(theta), 2) * Math.Cos(theta));
    }

    private static IEnumerable<(Miller Planes, int Multiplicity)> Families(CrystalStructure structure, double wavelength, double from, double to)
    {
        var least = wavelength / (2 * Math.Sin(Bragg.Theta(to)));
        var most = from > 0 ? wavelength / (2 * Math.Sin(Bragg.Theta(from))) : double.PositiveInfinity;
        var cell = structure.Cell;
        var (hs, ks, ls) = ((int)(cell.A / least), (int)(cell.B / least), (int)(cell.C / least));
        var seen = new HashSet<Miller>();
        for (var h = hs; h >= -hs; h--)
        {
            for (var k = ks; k >= -ks; k--)
            {
                for (var l = ls; l >= -ls; l--)
                {
                    var planes = new Miller(h, k, l);
                    if (planes == default || seen.Contains(planes))
                        continue;
                    if (cell.Spacing(planes) is var d && (d < least || d > most))
                        continue;
                    Miller[] family = [.. structure.Operations.Select(o => o.Apply(planes)).SelectMany(p => new[] { p, p.Opposite }).Distinct()];
                    seen.UnionWith(family);
                    yield return (family.OrderBy(Minuses).ThenByDescending(p => p.H).ThenByDescending(p => p.K).ThenByDescending(p => p.L).First(), family.Length);
                }
            }
        }
    }

    private static int Minuses(Miller p) => (p.H < 0 ? 1 : 0) + (p.K < 0 ? 1 : 0) + (p.L < 0 ? 1 : 0);
}
