using System.Collections.Immutable;
using Holdfast.Claims.Rules;
using Holdfast.Statistics;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>Samples of the rules that read a plan: one for each ruling.</summary>
internal static class PlanSamples
{
    /// <summary>Rule id, the ruling expected, and the decision on the sample.</summary>
    public static IEnumerable<(string Rule, Ruling Expected, Decision Decision)> Make()
    {
        // Rising in pairs: ρ = 0.98 of twelve. One swap of a random order leaves ρ = 0.35, which chance gives more often than one time in twenty.
        yield return ("order-randomised", Ruling.Holds, OrderRandomised.Decide([new("run", [2, 1, 4, 3, 2, 3, 1, 4, 3, 1, 4, 2])]));
        yield return ("order-randomised", Ruling.NotShownYet, OrderRandomised.Decide([new("run", Order(0.4))]));
        yield return ("order-randomised", Ruling.Contradicted, OrderRandomised.Decide([new("run", [1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4, 4])]));

        yield return ("blocks-complete", Ruling.Holds, BlocksComplete.Decide([new(1, 6, 6, 0), new(2, 6, 6, 2)]));
        yield return ("blocks-complete", Ruling.NotShownYet, BlocksComplete.Decide([new(1, 6, 6, 0), new(2, 6, 4, 2)]));
        yield return ("blocks-complete", Ruling.Contradicted, BlocksComplete.Decide([new(1, 6, 6, 0), new(2, 6, 4, 1)]));

        yield return ("replicates-as-planned", Ruling.Holds, ReplicatesAsPlanned.Decide([new(1, 3, 3, 0), new(2, 6, 6, 0)]));
        yield return ("replicates-as-planned", Ruling.NotShownYet, ReplicatesAsPlanned.Decide([new(1, 3, 2, 1), new(2, 6, 6, 0)]));
        yield return ("replicates-as-planned", Ruling.Contradicted, ReplicatesAsPlanned.Decide([new(1, 3, 2, 0), new(2, 6, 5, 1)]));

        yield return ("margins-fixed-before", Ruling.Holds, MarginsFixedBefore.Decide([("plateau", 3), ("capacity", 4)], 7, 5));
        yield return ("margins-fixed-before", Ruling.NotShownYet, MarginsFixedBefore.Decide([("plateau", 3), ("capacity", 0)], 7, 5));
        yield return ("margins-fixed-before", Ruling.Contradicted, MarginsFixedBefore.Decide([("plateau", 3), ("capacity", 9)], 7, 5));
    }

    /// <summary>Levels in an order whose Spearman's ρ is about a wanted one: twelve levels shuffled from a fixed seed until it is.</summary>
    public static ImmutableArray<double> Order(double rho)
    {
        var stream = new SeededStream(1589, "order of a sample");
        double[] place = [.. Enumerable.Range(1, 12).Select(i => (double)i)];
        double[] levels = [.. place];
        for (var i = 0; i < 100_000; i++)
        {
            stream.Shuffle(levels.AsSpan());
            if (Math.Abs(Spearman.Of(levels, place)!.Value - rho) < 0.0036)
                return [.. levels];
        }

        throw new InvalidOperationException("No such order was drawn.");
    }
}
