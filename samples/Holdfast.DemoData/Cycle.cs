using Holdfast.Statistics;
using static System.FormattableString;

namespace Holdfast.DemoData;

/// <summary>One vessel of one sorption and elution cycle. The powder was not weighed again between cycles.</summary>
/// <param name="Code">Code on the label.</param>
/// <param name="Number">Number of the cycle, from 1.</param>
/// <param name="Replicate">Number of the vessel, from 1.</param>
/// <param name="Uptake">Uptake in mg/g of the powder weighed in before the first cycle.</param>
/// <param name="Eluted">Nickel that 0.05 mol/L Ca(NO3)2 took off again, mg/g.</param>
public sealed record Cycle(string Code, int Number, int Replicate, double Uptake, double Eluted)
{
    private static readonly double[] TrueUptake = [8.05, 8.25, 7.60, 7.10, 6.70];
    private static readonly double[] TrueShareEluted = [0.88, 1.01, 0.93, 0.92, 0.90];

    /// <summary>Concentration left of 20 mg/L at 2 g/L, as the student's sheet holds it, mg/L.</summary>
    public double Left => 20 - 2 * Uptake;

    /// <summary>Five cycles of two vessels.</summary>
    /// <param name="seed">Seed of the study.</param>
    public static IEnumerable<Cycle> Series(ulong seed)
    {
        var uptake = new SeededStream(seed, "REUSE");
        var eluted = new SeededStream(seed, "REUSE-eluted");
        for (var cycle = 1; cycle <= TrueUptake.Length; cycle++)
        {
            for (var r = 1; r <= 2; r++)
            {
                var q = TrueUptake[cycle - 1] * (1 + 0.03 * uptake.Normal());
                yield return new(Invariant($"RE{cycle}-{r}"), cycle, r, q, q * TrueShareEluted[cycle - 1] * (1 + 0.03 * eluted.Normal()));
            }
        }
    }
}
