using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Claims.Rules;
using Holdfast.Competition;
using Holdfast.Scaleup;
using Holdfast.Thermodynamics;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>A sample of each ruling for the rules on temperature, rivals, exchange, reuse, cost and outlets.</summary>
internal static class ReuseSamples
{
    /// <summary>Rule id, the ruling expected, and the decision on the sample.</summary>
    public static IEnumerable<(string Rule, Ruling Expected, Decision Decision)> Make()
    {
        ImmutableArray<int> five = [5, 5, 5, 5, 5];
        yield return ("spontaneous-and-endothermic", Ruling.Holds, Endothermic.Decide(Line([288.15, 298.15, 308.15, 318.15, 328.15], [9.70, 9.93, 10.13, 10.25, 10.44]), ConstantChoice.Molar, false, five));
        yield return ("spontaneous-and-endothermic", Ruling.NotShownYet, Endothermic.Decide(Line([298.15, 308.15, 318.15], [9.93, 10.13, 10.25]), null, false, five));
        yield return ("spontaneous-and-endothermic", Ruling.Contradicted, Endothermic.Decide(Line([288.15, 298.15, 308.15, 318.15, 328.15], [9.70, 9.93, 10.13, 10.25, 10.44]), ConstantChoice.Molar, true, five));

        yield return ("selective", Ruling.Holds, Selective.Decide(Rivals(("Zn", [6.1, 5.2, 7.4]), ("Cd", [9.0, 8.1, 9.9])), 3));
        yield return ("selective", Ruling.NotShownYet, Selective.Decide(Rivals(("Zn", [6.1, 5.2, 7.4]), ("Cd", [1.2, 0.9, 1.1])), 1));
        yield return ("selective", Ruling.Contradicted, Selective.Decide(Rivals(("Zn", [6.1, 5.2, 7.4]), ("Pb", [0.11, 0.12, 0.10])), 1));

        yield return ("reusable", Ruling.Holds, Reusable.Decide(Cycles([8.02, 7.95, 8.10], [7.8, 7.9, 7.7], [7.4, 7.5, 7.4], [7.0, 7.1, 7.0], [6.72, 6.60, 6.81]), 5, 0.8, massIsKnown: true));
        yield return ("reusable", Ruling.NotShownYet, Reusable.Decide(Cycles([8.0, 7.7], [8.6, 8.1], [7.9, 7.6], [6.8, 7.2], [6.6, 6.9]), 5, 0.8, massIsKnown: false));
        yield return ("reusable", Ruling.Contradicted, Reusable.Decide(Cycles([8.0, 7.9, 8.1], [7.0, 7.1, 6.9], [6.1, 6.0, 6.2], [5.2, 5.1, 5.0], [4.2, 4.1, 4.0]), 5, 0.8, massIsKnown: false));

        yield return ("regenerated-better", Ruling.Holds, RegeneratedBetter.Decide(RegeneratedBetter.Paired([8.02, 7.95, 8.10, 8.0], [8.35, 8.31, 8.38, 8.36]), massIsKnown: true, 0.1));
        yield return ("regenerated-better", Ruling.NotShownYet, RegeneratedBetter.Decide(RegeneratedBetter.Paired([8.02, 7.95, 8.10], [8.35, 8.21, 8.18]), massIsKnown: true, 0.1));
        yield return ("regenerated-better", Ruling.Contradicted, RegeneratedBetter.Decide(RegeneratedBetter.Paired([8.35, 8.31, 8.38, 8.36], [8.02, 7.95, 8.10, 8.0]), massIsKnown: false, null));

        yield return ("ion-exchange", Ruling.Holds, IonExchange.Decide(Exchanged(1.0, 0.02), 4, 3, atEndPh: true, 1, -0.1, 0.1));
        yield return ("ion-exchange", Ruling.NotShownYet, IonExchange.Decide(Exchanged(0.95, 0.05), 4, 3, atEndPh: true, 1, -0.1, 0.1));
        yield return ("ion-exchange", Ruling.Contradicted, IonExchange.Decide(Exchanged(0.82, 0.037), 4, 0, atEndPh: false, 1, -0.1, 0.1));

        yield return ("outlet-meets-limit", Ruling.Holds, OutletMeetsLimit.DecideBed(new(0, [251, 249, 253]), 240));
        yield return ("outlet-meets-limit", Ruling.NotShownYet, OutletMeetsLimit.DecideStage(U(0.72, 0.05), 2.38, 0.2, sameWater: false));
        yield return ("outlet-meets-limit", Ruling.Contradicted, OutletMeetsLimit.DecideStage(U(0.72, 0.05), 0.5, 0.2, sameWater: true));

        yield return ("low-cost", Ruling.Holds, LowCost.Decide(Priced(10, 12), 10, 5, 1, 1, [], "EUR 2026"));
        yield return ("low-cost", Ruling.NotShownYet, LowCost.Decide(Priced(10, 12), 10, CostDraws.Between("rival", "rival", 1, 4, ""), 1, 1, ["labour"], "EUR 2026"));
        yield return ("low-cost", Ruling.Contradicted, LowCost.Decide(Priced(10, 12), 10, 1, 20, 5, [], null));
    }

    private static (string, IReadOnlyList<Measured>)[] Rivals(params (string Metal, double[] Preferences)[] rivals)
        => [.. rivals.Select(r => (r.Metal, (IReadOnlyList<Measured>)[.. r.Preferences.Select(p => (Measured)p)]))];

    private static VantHoff Line(double[] temperatures, double[] logarithms) => VantHoff.OfLogarithms(temperatures, [.. logarithms.Select(l => (Measured)l)]).Value!;

    private static Setting[] Cycles(params double[][] cycles) => [.. cycles.Select((c, i) => new Setting(i + 1, [.. c]))];

    private static ExchangeRatio Exchanged(double slope, double error) => new(new("line with errors in both", slope, error, 10, 12), 0.002, 0.01);

    private static Measured U(double value, double u) => Measured.From(value, new Source("isotherm", "isotherm", u));

    private static TreatmentCost<Measured> Priced(double low, double high)
        => new(2, CostDraws.Between("price", "price of the sorbent", low, high, ""), 1, CostDraws.Between("disposal", "disposal", 0.5, 1, ""), 0, 0, 1, 0.1, 0.2);
}
