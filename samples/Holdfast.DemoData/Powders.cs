using System.Collections.Immutable;
using Holdfast.Statistics;

namespace Holdfast.DemoData;

/// <summary>The two invented powders as borrowed instruments saw them: the parent HA-0 and EHA-2, which holds europium. The truth is that of the demo's scenario.</summary>
public static class Powders
{
    /// <summary>The parent.</summary>
    public const string Parent = "HA-0";

    /// <summary>The powder with europium.</summary>
    public const string Doped = "EHA-2";

    /// <summary>The powder with europium after it took up nickel from 20 mg/L.</summary>
    public const string Loaded = "EHA-2 loaded";

    private const double Kelvins = 77.35;
    private const double CrossSection = 0.162, Avogadro = 6.02214076e23, MolarVolume = 22413.969;
    private static readonly double[] Pressures =
    [
        0.010, 0.020, 0.035, 0.050, 0.065, 0.080, 0.095, 0.110, 0.125, 0.140, 0.155, 0.170, 0.185, 0.200, 0.215, 0.230, 0.245, 0.260, 0.280, 0.300, 0.350, 0.400, 0.450, 0.500, 0.550,
        0.600, 0.650, 0.700, 0.740, 0.780, 0.820, 0.850, 0.880, 0.900, 0.920, 0.940, 0.960, 0.975, 0.990,
    ];

    private static readonly double[] Back = [0.970, 0.950, 0.930, 0.910, 0.890, 0.870, 0.850, 0.830, 0.810, 0.780, 0.740, 0.700, 0.650, 0.600, 0.550, 0.500, 0.450, 0.400, 0.350, 0.300];

    // Position by Cu Kα1 in degrees for the parent and for the powder with europium, and height relative to the strongest.
    private static readonly (double Parent, double Doped, double Height)[] Lines =
    [
        (25.86, 25.88, 40), (28.12, 28.13, 10), (28.94, 28.96, 17), (31.78, 31.80, 100), (32.19, 32.21, 55), (32.92, 32.94, 62), (34.06, 34.08, 24), (39.82, 39.84, 20), (46.70, 46.73, 28),
        (49.48, 49.51, 30), (53.18, 53.21, 15),
    ];

    // Wavenumber, height and half-width at half height in cm⁻¹.
    private static readonly (double At, double Height, double Half)[] Bands =
    [
        (3571, 0.06, 12), (3420, 0.10, 180), (1640, 0.04, 40), (1455, 0.05, 25), (1415, 0.06, 25), (1090, 0.55, 30), (1035, 0.80, 35), (962, 0.10, 8), (873, 0.03, 8), (632, 0.12, 8),
        (602, 0.40, 9), (565, 0.45, 10),
    ];

    /// <summary>Boiling point of the nitrogen the isotherms were taken at, K.</summary>
    public static double Bath => Kelvins;

    /// <summary>Nitrogen isotherms of three portions of each powder, p/p0 against cm³ (STP) per gram, the branch back included.</summary>
    /// <param name="seed">Seed of the study.</param>
    public static IEnumerable<(string Powder, int Portion, ImmutableArray<(double X, double Volume)> Up, ImmutableArray<(double X, double Volume)> Down)> Isotherms(ulong seed)
    {
        SeededStream areas = new(seed, "BET"), noise = new(seed, "BET-points");
        foreach (var (powder, area, monolayer, pores) in ((string, double, double, double)[])[(Parent, 78.0, 0.79952, 9.807), (Doped, 73.5, 0.75339, 8.941)])
        {
            for (var portion = 1; portion <= 3; portion++)
            {
                // Portions differ in their area and in all else by the same factor.
                var share = (area * (1 + (0.025 * areas.Normal()))) / area;
                yield return (powder, portion, Branch(Pressures, share, monolayer, pores, 0.90, noise), Branch(Back, share, monolayer, pores, 0.83, noise));
            }
        }
    }

    /// <summary>Area of a monolayer, m²/g.</summary>
    /// <param name="monolayer">Amount of a monolayer, mmol/g.</param>
    public static double Area(double monolayer) => monolayer * 1e-3 * Avogadro * CrossSection * 1e-18;

    /// <summary>Amount at a pressure without noise, mmol/g.</summary>
    /// <param name="x">p/p0.</param>
    /// <param name="monolayer">Monolayer, mmol/g.</param>
    /// <param name="pores">Amount in the pores, mmol/g.</param>
    /// <param name="middle">p/p0 at which half of the pores are full.</param>
    public static double Amount(double x, double monolayer, double pores, double middle)
    {
        const double c = 95;
        var layers = monolayer * c * x * (1 - (7 * Math.Pow(x, 6)) + (6 * Math.Pow(x, 7))) / ((1 - x) * (1 + ((c - 1) * x) - (c * Math.Pow(x, 7))));
        return layers + (pores * NormalDistribution.Below(Math.Log(x / middle) / 0.06));
    }

    /// <summary>A diffractogram: angle in degrees and counts.</summary>
    /// <param name="powder">Which powder.</param>
    /// <param name="seed">Seed of the study.</param>
    public static IEnumerable<(double Angle, double Counts)> Pattern(string powder, ulong seed)
    {
        const double top = 4000, calcite = 29.40, calciteHeight = 90;
        var doped = powder == Doped;
        var noise = new SeededStream(seed, "XRD-" + powder);
        for (var i = 0; i <= 2000; i++)
        {
            var at = Math.Round(20 + (0.02 * i), 2);
            var counts = 180 + (60 * Math.Exp(-(at - 20) / 15));
            foreach (var line in Lines)
                counts += top * line.Height / 100 * PseudoVoigt(at - (doped ? line.Doped : line.Parent), Width(doped ? line.Doped : line.Parent, doped ? 19 : 28));
            // A trace of calcite that the student did not declare.
            if (doped)
                counts += calciteHeight * PseudoVoigt(at - calcite, Width(calcite, 40));
            yield return (at, Math.Max(0, Math.Round(counts + (Math.Sqrt(counts) * noise.Normal()))));
        }
    }

    /// <summary>An infrared spectrum: wavenumber in cm⁻¹ and absorbance.</summary>
    /// <param name="powder">Which powder.</param>
    /// <param name="seed">Seed of the study.</param>
    public static IEnumerable<(double At, double Absorbance)> Spectrum(string powder, ulong seed)
    {
        var noise = new SeededStream(seed, "FTIR-" + powder);
        var loaded = powder == Loaded;
        for (var at = 4000; at >= 400; at -= 2)
        {
            var absorbance = 0.02 + (0.02 * (at - 400) / 3600);
            foreach (var (centre, height, half) in Bands)
            {
                var moved = loaded && centre == 1035 ? centre - 2 : centre;
                absorbance += height * (loaded && centre == 632 ? 0.78 : 1) / (1 + Math.Pow((at - moved) / half, 2));
            }

            yield return (at, absorbance + (0.0015 * noise.Normal()));
        }
    }

    /// <summary>Atoms per cent in five fields of EHA-2: Ca, P, Eu and the rest, oxygen.</summary>
    /// <param name="seed">Seed of the study.</param>
    public static IEnumerable<(double Ca, double P, double Eu, double O)> Fields(ulong seed)
    {
        SeededStream ratios = new(seed, "EDX"), europium = new(seed, "EDX-Eu");
        for (var field = 1; field <= 5; field++)
        {
            const double oxygen = 62;
            var ratio = 1.60 + (0.03 * ratios.Normal());
            var eu = 0.50 + (0.09 * europium.Normal());
            var p = (100 - oxygen) / (1 + ratio);
            yield return ((ratio * p) - eu, p, eu, oxygen);
        }
    }

    /// <summary>Lengths of rods on micrographs, nm: the group, the image and the length.</summary>
    /// <param name="seed">Seed of the study.</param>
    public static IEnumerable<(string Powder, string Image, double Length)> Rods(ulong seed)
    {
        foreach (var (powder, stream, count, middle, spread) in ((string, string, int, double, double)[])[(Parent, "TEM-HA0", 60, 62, 1.36), (Doped, "TEM-EHA2", 55, 57, 1.38)])
        {
            var chance = new SeededStream(seed, stream);
            for (var i = 0; i < count; i++)
                yield return (powder, $"{powder} {(char)('a' + (i / 20))}", middle * Math.Exp(Math.Log(spread) * chance.Normal()));
        }
    }

    private static ImmutableArray<(double X, double Volume)> Branch(double[] pressures, double share, double monolayer, double pores, double middle, SeededStream noise)
        => [.. pressures.Select(x => (x, share * Amount(x, monolayer, pores, middle) * MolarVolume / 1000 * (1 + (0.003 * noise.Normal()))))];

    // Width of a line from the size of its crystallites (K 0.9) and the instrument's 0.08 degrees, added as squares.
    private static double Width(double angle, double nanometres)
    {
        const double wavelength = 0.154056, instrument = 0.08;
        var ofSize = 0.9 * wavelength / (nanometres * Math.Cos(angle / 2 * Math.PI / 180)) * 180 / Math.PI;
        return Math.Sqrt((ofSize * ofSize) + (instrument * instrument));
    }

    private static double PseudoVoigt(double away, double width)
    {
        const double eta = 0.6;
        var x = 2 * away / width;
        return (eta / (1 + (x * x))) + ((1 - eta) * Math.Exp(-Math.Log(2) * x * x));
    }
}
