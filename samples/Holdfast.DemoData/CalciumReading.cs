using Holdfast.Statistics;
using static System.FormattableString;

namespace Holdfast.DemoData;

/// <summary>Calcium that the powder gave to the liquid, as another laboratory reported it.</summary>
/// <param name="Code">Code of the vessel.</param>
/// <param name="Role">"sorbent blank" for powder in water without nickel, "vessel" for a loaded one.</param>
/// <param name="StartPh">pH at the start.</param>
/// <param name="Calcium">Calcium in the liquid, mg/L.</param>
public sealed record CalciumReading(string Code, string Role, double StartPh, double Calcium)
{
    private const double NickelMolarMass = 58.693;
    private const double CalciumMolarMass = 40.078;
    private const double Dose = 2;
    private static readonly double[] DissolvedByPh = [68, 22, 9, 5, 4, 3, 3];

    /// <summary>Powder alone at start pH 3 to 9, two vessels each.</summary>
    /// <param name="seed">Seed of the study.</param>
    public static IEnumerable<CalciumReading> PowderAlone(ulong seed)
    {
        var chance = new SeededStream(seed, "CALCIUM");
        for (var i = 0; i < DissolvedByPh.Length; i++)
        {
            for (var r = 1; r <= 2; r++)
                yield return new(Invariant($"CA{i + 3}-{r}"), "sorbent blank", i + 3, DissolvedByPh[i] * (1 + 0.04 * chance.Normal()));
        }
    }

    /// <summary>Vessels of the isotherm at four loadings: 0.87 calcium for each nickel, on top of what the powder gives alone.</summary>
    /// <param name="seed">Seed of the study.</param>
    public static IEnumerable<CalciumReading> Exchanged(ulong seed)
    {
        var chance = new SeededStream(seed, "EXCHANGE");
        foreach (var c0 in (double[])[10, 20, 40, 60])
        {
            var sorbed = (c0 - Sorption.Equilibrium(c0, Dose)) / NickelMolarMass;
            for (var r = 1; r <= 3; r++)
            {
                var released = 0.87 * sorbed * (1 + 0.04 * chance.Normal());
                yield return new(Invariant($"ISO-{c0:00}-{r}"), "vessel", 6, DissolvedByPh[3] + CalciumMolarMass * released);
            }
        }
    }
}
