using Holdfast.Statistics;
using static System.FormattableString;

namespace Holdfast.DemoData;

/// <summary>Nickel and a second metal in one vessel, 0.34 mmol/L each at the start, 2 g/L of powder.</summary>
/// <param name="Code">Code on the label.</param>
/// <param name="Rival">Symbol of the second metal.</param>
/// <param name="Nickel">Nickel left in the liquid, mmol/L.</param>
/// <param name="Other">Second metal left in the liquid, mmol/L.</param>
public sealed record Mixture(string Code, string Rival, double Nickel, double Other)
{
    /// <summary>Concentration of each metal at the start, mmol/L.</summary>
    public const double Start = 0.34;

    private const double Dose = 2;
    private const double Sites = 14.0 / 58.693;
    private const double NickelAffinity = Sorption.Affinity * 58.693;

    private static readonly (string Rival, double Preference)[] Preferences =
        [("Na", 90), ("Mg", 41), ("Ca", 22), ("Mn", 3.4), ("Co", 2.6), ("Zn", 0.92), ("Cd", 1.3), ("Pb", 0.11)];

    /// <summary>Eight pairs, three vessels each; the ratio of the two distribution coefficients scatters by 8 %.</summary>
    /// <param name="seed">Seed of the study.</param>
    public static IEnumerable<Mixture> Series(ulong seed)
    {
        var chance = new SeededStream(seed, "COMPETITION");
        foreach (var (rival, preference) in Preferences)
        {
            for (var r = 1; r <= 3; r++)
            {
                var (nickel, other) = Left(NickelAffinity / (preference * Math.Exp(0.08 * chance.Normal())));
                yield return new(Invariant($"MIX-{rival}-{r}"), rival, nickel, other);
            }
        }
    }

    // Both metals share the same sites: q = Sites·K·c / s with s = 1 + ΣK·c, so that c = Start / (1 + Dose·Sites·K / s).
    private static (double Nickel, double Other) Left(double otherAffinity)
    {
        double low = 1, high = 1 + (NickelAffinity + otherAffinity) * Start;
        for (var i = 0; i < 200; i++)
        {
            var s = 0.5 * (low + high);
            if (1 + NickelAffinity * After(NickelAffinity, s) + otherAffinity * After(otherAffinity, s) > s)
                low = s;
            else
                high = s;
        }

        return (After(NickelAffinity, low), After(otherAffinity, low));
    }

    private static double After(double affinity, double s) => Start / (1 + Dose * Sites * affinity / s);
}
