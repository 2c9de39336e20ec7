using Holdfast.Claims.Analyses;

namespace Holdfast.Claims.Rules;

/// <summary>"{series} has the vessels that were planned": at each level as many were read, and not struck, as the plan asked for. The power that was promised is that of the planned number.</summary>
/// <remarks>Separate vessels count, not readings. While vessels are still to be read nothing is contradicted.</remarks>
public sealed class ReplicatesAsPlanned : IClaimRule
{
    /// <inheritdoc/>
    public string Id => "replicates-as-planned";

    /// <inheritdoc/>
    public string Wording => "{series} has the vessels at each level that were planned.";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => CarriedOut.Of(evidence).Series.Select(s => Claim.Raised(Id, ("series", s.Name)));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        var series = CarriedOut.Of(evidence).Named(claim.Words("series"));
        var decision = series is null
            ? Decision.Missing("No planned series of this name has been read. Design it first: the plan says how many vessels its claims need.")
            : Decide([.. series.Vessels.GroupBy(v => v.Level).OrderBy(g => g.Key).Select(g => new LevelDone(
                g.Key, g.Count(), g.Count(v => v is { Reading: not null, IsStruck: false }), g.Count(v => v.IsToDo)))]);
        var read = series?.Counted.ToArray() ?? [];
        return decision.On(claim, Phrase.Sentence(claim, Wording, ("series", series?.Name ?? claim.Words("series") ?? "The series")), Scope.Of(evidence.Vessels.Where(v => read.Any(r => r.Planned.Code == v.Code))), read.Select(v => v.Planned.Code));
    }

    /// <summary>Judges numbers of vessels.</summary>
    /// <param name="levels">What became of each level.</param>
    public static Decision Decide(IReadOnlyList<LevelDone> levels)
    {
        ArgumentNullException.ThrowIfNull(levels);
        if (levels.Count == 0)
            return Decision.Missing("The plan has no level with vessels.");
        var (planned, read, toDo) = (levels.Sum(l => l.Planned), levels.Sum(l => l.Read), levels.Sum(l => l.ToDo));
        var lost = levels.Where(l => l.Read + l.ToDo < l.Planned).ToArray();
        var ruling = lost.Length > 0 ? Ruling.Contradicted : toDo > 0 ? Ruling.NotShownYet : Ruling.Holds;
        var worst = levels.MaxBy(l => l.Planned - l.Read)!;
        return new Decision(
            ruling,
            $"{Phrase.Number(read)} of {Phrase.Count(planned, "planned vessel")} were read and count{(toDo > 0 ? $", {Phrase.Number(toDo)} are still to be read" : "")}{(lost.Length > 0 ? $"; {Phrase.Count(lost.Length, "level")} fell short, level {Phrase.Number(worst.Level)} most, with {Phrase.Number(worst.Read)} of {Phrase.Number(worst.Planned)}" : "")}.",
            "vessels read and not struck against those planned, level by level")
        {
            Numbers = [Deciding.Plain("vessels planned", planned), Deciding.Plain("vessels read that count", read), Deciding.Plain("vessels still to be read", toDo)],
            Next = new(
                toDo > 0 ? $"Read the {Phrase.Count(toDo, "vessel")} that {(toDo == 1 ? "is" : "are")} left." : $"Run {Phrase.Count(lost.Sum(l => l.Planned - l.Read), "vessel")} more, where the levels fell short, and amend the plan with the reason.",
                toDo > 0 ? toDo : lost.Sum(l => l.Planned - l.Read), [.. levels.Where(l => l.Read < l.Planned).Select(l => $"level {Phrase.Number(l.Level)}")], "the planned number"),
        };
    }
}

/// <summary>What became of a level.</summary>
/// <param name="Level">Which, from 1 in rising order.</param>
/// <param name="Planned">Vessels that were planned.</param>
/// <param name="Read">Of these, those read and not struck.</param>
/// <param name="ToDo">Of these, those that can still be read.</param>
public sealed record LevelDone(int Level, int Planned, int Read, int ToDo);
