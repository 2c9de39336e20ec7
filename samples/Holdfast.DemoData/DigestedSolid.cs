using Holdfast.Statistics;
using static System.FormattableString;

namespace Holdfast.DemoData;

/// <summary>Loaded powder that was dissolved and read: what the solid itself holds.</summary>
/// <param name="Code">Code on the label.</param>
/// <param name="Replicate">Number of the portion, from 1.</param>
/// <param name="Uptake">Nickel found in the solid, mg/g.</param>
public sealed record DigestedSolid(string Code, int Replicate, double Uptake)
{
    /// <summary>Three portions loaded at 20 mg/L.</summary>
    /// <param name="seed">Seed of the study.</param>
    public static IEnumerable<DigestedSolid> Series(ulong seed)
    {
        var chance = new SeededStream(seed, "DIGEST");
        for (var r = 1; r <= 3; r++)
            yield return new(Invariant($"DIG-{r}"), r, 7.70 * (1 + 0.02 * chance.Normal()));
    }
}
