using Holdfast.Claims.Analyses;

namespace Holdfast.Claims.Rules;

/// <summary>"Every block of {series} holds every level": a level that a day or tray lacks is compared with others of another day, and a difference between days looks like one between levels.</summary>
/// <remarks>A level is in a block when a vessel of it was read and not struck. While vessels of a block are still to be read nothing is contradicted.</remarks>
public sealed class BlocksComplete : IClaimRule
{
    /// <inheritdoc/>
    public string Id => "blocks-complete";

    /// <inheritdoc/>
    public string Wording => "Every block of {series} holds every level.";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => CarriedOut.Of(evidence).Series.Where(s => s.Vessels.Select(v => v.Planned.Block).Distinct().Count() > 1).Select(s => Claim.Raised(Id, ("series", s.Name)));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        var series = CarriedOut.Of(evidence).Named(claim.Words("series"));
        var levels = series?.Vessels.Select(v => v.Level).Distinct().Count() ?? 0;
        var decision = series is null
            ? Decision.Missing("No planned series of this name has been read. Design it first: the plan lays out the blocks.")
            : Decide([.. series.Vessels.GroupBy(v => v.Planned.Block).OrderBy(g => g.Key).Select(g => new BlockDone(
                g.Key, levels, g.Where(v => v is { Reading: not null, IsStruck: false }).Select(v => v.Level).Distinct().Count(), g.Where(v => v.IsToDo).Select(v => v.Level).Distinct().Count()))]);
        var read = series?.Counted.ToArray() ?? [];
        return decision.On(claim, Phrase.Sentence(claim, Wording, ("series", series?.Name ?? claim.Words("series") ?? "any series")), Scope.Of(evidence.Vessels.Where(v => read.Any(r => r.Planned.Code == v.Code))), read.Select(v => v.Planned.Code));
    }

    /// <summary>Judges blocks.</summary>
    /// <param name="blocks">What became of each.</param>
    public static Decision Decide(IReadOnlyList<BlockDone> blocks)
    {
        ArgumentNullException.ThrowIfNull(blocks);
        if (blocks.Count == 0)
            return Decision.Missing("The plan has no block with vessels.");
        var worst = blocks.MaxBy(b => b.Levels - b.Read)!;
        var missing = worst.Levels - worst.Read;
        var ruling = missing == 0 ? Ruling.Holds : blocks.Any(b => b.Levels - b.Read > b.ToDo) ? Ruling.Contradicted : Ruling.NotShownYet;
        return new Decision(
            ruling,
            missing == 0
                ? $"Each of {Phrase.Count(blocks.Count, "block")} has vessels read at all {Phrase.Count(worst.Levels, "level")}."
                : $"Block {Phrase.Number(worst.Block)} has vessels read at {Phrase.Number(worst.Read)} of {Phrase.Count(worst.Levels, "level")}; {(worst.ToDo > 0 ? $"vessels of {Phrase.Number(worst.ToDo)} more are still to be read" : "none is left to be read there")}.",
            "levels read in each block against those planned")
        {
            Numbers = [.. blocks.Select(b => Deciding.Plain($"levels read in block {Phrase.Number(b.Block)}", b.Read, "", $"of {Phrase.Number(b.Levels)}"))],
            Next = new($"Run one vessel at each level that block {Phrase.Number(worst.Block)} lacks, on a day together with all other levels.", worst.Levels, [$"block {Phrase.Number(worst.Block)}"], "one complete block"),
        };
    }
}

/// <summary>What became of a block.</summary>
/// <param name="Block">Its number.</param>
/// <param name="Levels">Levels of the series.</param>
/// <param name="Read">Levels of which a vessel in it was read and not struck.</param>
/// <param name="ToDo">Levels of which a vessel in it is still to be read.</param>
public sealed record BlockDone(int Block, int Levels, int Read, int ToDo);
