using Holdfast.Claims.Rules;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>A sample of each ruling for the rules on pH, precipitation by constants and stability.</summary>
internal static class WaterSamples
{
    /// <summary>Rule id, the ruling expected, and the decision on the sample.</summary>
    public static IEnumerable<(string Rule, Ruling Expected, Decision Decision)> Make()
    {
        PhLevel[] levels =
        [
            Level(4, Ruling.Holds, 60, 61, 60.5), Level(5, Ruling.Holds, 80, 81, 80.5), Level(6, Ruling.Holds, 70, 71, 70.5), Level(7, Ruling.Holds, 65, 66, 65.5),
            Level(8, Ruling.NotShownYet, 90, 91, 90.5), Level(9, Ruling.Contradicted, 99, 98.5, 99.2),
        ];
        yield return ("optimum-ph", Ruling.Holds, OptimumPh.Decide(5, levels, 2));
        yield return ("optimum-ph", Ruling.NotShownYet, OptimumPh.Decide(8, levels, 2));
        yield return ("optimum-ph", Ruling.Contradicted, OptimumPh.Decide(9, levels, 2));
        yield return ("optimum-ph", Ruling.Contradicted, OptimumPh.Decide(4, levels, 2));
        yield return ("optimum-ph", Ruling.NotShownYet, OptimumPh.Decide(7, [.. levels.Where(l => l.Removals.X != 5 && l.Removals.X != 6)], 2));

        yield return ("stable-in-water", Ruling.Holds, Stable(0.04, new(6, [0.68, 0.67, 0.69]), new(7, [0.52, 0.51, 0.50])));
        yield return ("stable-in-water", Ruling.NotShownYet, Stable(null, new Setting(5, [0.97, 1.05])));
        yield return ("stable-in-water", Ruling.Contradicted, Stable(null, new(3, [9.0, 9.1]), new(6, [0.68, 0.67])));

        yield return ("not-precipitation", Ruling.Holds, NotPrecipitation.Decide(6, 6.7, null, new(0, [80.1, 80.3]), new(0, [-0.2, 0.3]), Constants(Ruling.Holds)));
        yield return ("not-precipitation", Ruling.NotShownYet, NotPrecipitation.Decide(6, 6.7, null, new(0, [80.1, 80.3]), new(0, []), Constants(Ruling.Holds)));
        yield return ("not-precipitation", Ruling.Contradicted, NotPrecipitation.Decide(9, 8.4, null, new(0, [98, 99]), new(0, []), Constants(Ruling.Contradicted)));
    }

    private static Decision Stable(double? u, params Setting[] levels) => StableInWater.Decide(levels, levels, u, "calcium");

    private static PhLevel Level(double ph, Ruling sorption, params double[] removals) => new(new(ph, [.. removals]), sorption, ph + 0.3);

    private static ByConstants Constants(Ruling ruling) => new(ruling, "pH 6.7 at 20 mg/L: what the constants say of the listed solids.", []);
}
