using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Planning;
using Holdfast.Statistics;

namespace Holdfast.Claims.Rules;

/// <summary>"The vessels of {series} were read in random order": in no run does the order of reading, as it arrived, rise or fall with the level. A drift would then look like a trend.</summary>
/// <remarks>
/// Spearman's ρ of level and place in each run; |ρ| of <see cref="RunOrder.LargestCorrelation"/> or more, which the plan draws again, is not random enough, and contradicts where chance
/// would give it in fewer than one order of twenty (t with n − 2 degrees of freedom). Judged of series that were planned, where an order was drawn.
/// </remarks>
public sealed class OrderRandomised : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>|ρ| from which an order is not random enough; no unit.</summary>
        public const double Correlation = RunOrder.LargestCorrelation;

        /// <summary>Fewest vessels of a run whose order says anything.</summary>
        public const int Vessels = 6;
    }

    /// <inheritdoc/>
    public string Id => "order-randomised";

    /// <inheritdoc/>
    public string Wording => "The vessels of {series} were read in random order.";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => CarriedOut.Of(evidence).Series.Select(s => Claim.Raised(Id, ("series", s.Name)));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        var series = CarriedOut.Of(evidence).Named(claim.Words("series"));
        var read = series?.Counted.ToArray() ?? [];
        var decision = series is null
            ? Decision.Missing("No planned series of this name has been read. Design it first: the plan draws the order.")
            : Decide([.. read.GroupBy(v => v.Reading!.Run, StringComparer.Ordinal).Select(g => new OrderOfRun(g.Key, [.. g.OrderBy(v => v.Reading!.Order).Select(v => (double)v.Level)]))]) with { Warnings = Moved(read) };
        return decision.On(claim, Phrase.Sentence(claim, Wording, ("series", series?.Name ?? claim.Words("series") ?? "any series")), Scope.Of(evidence.Vessels.Where(v => read.Any(r => r.Planned.Code == v.Code))), read.Select(v => v.Planned.Code));
    }

    /// <summary>Judges the order of reading.</summary>
    /// <param name="runs">For each run, the level of each vessel in the order of reading.</param>
    public static Decision Decide(IReadOnlyList<OrderOfRun> runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        OrderOfRun[] telling = [.. runs.Where(r => r.Levels.Length >= Limits.Vessels && r.Correlation is not null)];
        if (telling.Length == 0)
            return Decision.Missing($"No run holds {Limits.Vessels} vessels of different levels, so no order can be seen.");
        var worst = telling.MaxBy(r => Math.Abs(r.Correlation!.Value))!;
        var size = Math.Abs(worst.Correlation!.Value);
        var ruling = size < Limits.Correlation ? Ruling.Holds : telling.Any(r => Math.Abs(r.Correlation!.Value) >= Limits.Correlation && r.P < Confidence.Chance / telling.Length) ? Ruling.Contradicted : Ruling.NotShownYet;
        return new Decision(
            ruling,
            $"Level and place in the order of reading are correlated with ρ = {Phrase.Number(worst.Correlation!.Value)} in {worst.Run} ({Phrase.P(worst.P)}), the most of {Phrase.Count(telling.Length, "run")}; {Phrase.Number(Limits.Correlation)} is the limit, {Phrase.Count(telling.Sum(r => r.Levels.Length), "vessel")}.",
            "Spearman's rank correlation of level and order of reading, within each run")
        {
            Numbers = [.. telling.Select(r => Deciding.Plain($"ρ of level and order of reading in {r.Run}", r.Correlation!.Value, "", $"{Phrase.Count(r.Levels.Length, "vessel")}, {Phrase.P(r.P)}"))],
            Next = new($"Read the vessels of {worst.Run} once more, in the order that the plan drew.", worst.Levels.Length, [worst.Run], "the planned order (restricted randomisation)"),
        };
    }

    private static ImmutableArray<string> Moved(PlannedAndDone[] read)
    {
        string[] planned = [.. read.OrderBy(v => v.Planned.ReadOrder).Select(v => v.Planned.Code)];
        string[] done = [.. read.OrderBy(v => v.Reading!.Run, StringComparer.Ordinal).ThenBy(v => v.Reading!.Order).Select(v => v.Planned.Code)];
        var moved = planned.Zip(done).Count(p => p.First != p.Second);
        return moved == 0 ? [] : [$"{Phrase.Count(moved, "vessel")} of {Phrase.Number(read.Length)} were read in another place than planned."];
    }
}

/// <summary>The order of reading in one run.</summary>
/// <param name="Run">The run.</param>
/// <param name="Levels">Level of each vessel in the order of reading.</param>
public sealed record OrderOfRun(string Run, ImmutableArray<double> Levels)
{
    /// <summary>Spearman's ρ of level and place, or null where all vessels have one level.</summary>
    public double? Correlation => Spearman.Of(Levels, [.. Enumerable.Range(1, Levels.Length).Select(i => (double)i)]);

    /// <summary>Two-sided p of that ρ, where the order is random.</summary>
    public double P => Correlation is not { } rho || Levels.Length < 3 ? 1 : Math.Abs(rho) >= 1 ? 0
        : 2 * StudentDistribution.Above(Math.Abs(rho) * Math.Sqrt((Levels.Length - 2) / (1 - rho * rho)), Levels.Length - 2);
}
