using System.Collections.Immutable;

namespace Holdfast.Porosity;

/// <summary>Thickness of the adsorbed layer on a flat surface, by name.</summary>
/// <param name="Name">Name of the curve.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="At">Thickness in nm at a relative pressure between 0 and 1.</param>
public sealed record ThicknessCurve(string Name, string Source, Func<double, double> At)
{
    /// <summary>t = 0.1·[13.99/(0.034 − log10 x)]^½ nm.</summary>
    public static ThicknessCurve HarkinsJura { get; } = new("Harkins–Jura", "W. D. Harkins, G. Jura, J. Am. Chem. Soc. 66 (1944) 1366; from memory", x => 0.1 * Math.Sqrt(13.99 / (0.034 - Math.Log10(x))));

    /// <summary>t = 0.354·[−5/ln x]^⅓ nm.</summary>
    public static ThicknessCurve Halsey { get; } = new("Halsey", "G. Halsey, J. Chem. Phys. 16 (1948) 931; from memory", x => 0.354 * Math.Cbrt(-5 / Math.Log(x)));

    /// <summary>All of them, the one that is used first.</summary>
    public static ImmutableArray<ThicknessCurve> All { get; } = [HarkinsJura, Halsey];
}
