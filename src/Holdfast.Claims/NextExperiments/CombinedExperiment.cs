using System.Collections.Immutable;

namespace Holdfast.Claims.NextExperiments;

/// <summary>One experiment that serves several claims about the same vessels: a setting that more than one of them asks for is run once, with the most vessels that any of them asks there.</summary>
/// <param name="Claims">Ids of the claims it serves, in their order.</param>
/// <param name="Settings">Each setting with its vessels.</param>
/// <param name="Apart">Vessels that the claims would ask for one by one.</param>
public sealed record CombinedExperiment(ImmutableArray<string> Claims, ImmutableArray<(string Setting, int Vessels)> Settings, int Apart)
{
    /// <summary>Vessels in all.</summary>
    public int Vessels => Settings.Sum(s => s.Vessels);

    /// <summary>In words, with settings, vessels and what is saved.</summary>
    public string Sentence
        => $"One experiment for {Phrase.Listed(Claims)}: {Phrase.Listed(Settings.Select(s => $"{Phrase.Count(s.Vessels, "vessel")} at {s.Setting}"))}; {Phrase.Count(Vessels, "vessel")} in place of {Phrase.Number(Apart)}.";

    /// <summary>
    /// The experiments that can be run as one: those of claims that rest on common vessels and ask for some setting alike. An experiment without settings or vessels stands alone.
    /// </summary>
    /// <param name="verdicts">Judged claims.</param>
    public static ImmutableArray<CombinedExperiment> Of(IReadOnlyList<Verdict> verdicts)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        var groups = new List<List<Verdict>>();
        foreach (var verdict in verdicts.Where(v => v.Next is { Vessels: > 0, Settings.IsEmpty: false }))
        {
            var joined = groups.Where(g => g.Exists(other => Meet(other, verdict))).ToArray();
            groups.RemoveAll(joined.Contains);
            groups.Add([.. joined.SelectMany(g => g), verdict]);
        }

        return [.. groups.Where(g => g.Count > 1).Select(Together)];
    }

    private static bool Meet(Verdict one, Verdict other)
        => one.Data.Any(d => other.Data.Contains(d, StringComparer.Ordinal)) && one.Next!.Settings.Any(s => other.Next!.Settings.Contains(s, StringComparer.Ordinal));

    private static CombinedExperiment Together(List<Verdict> verdicts) => new(
        [.. verdicts.Select(v => v.Claim.Id)],
        [.. verdicts.SelectMany(v => v.Next!.Settings.Select(s => (Setting: s, Vessels: Each(v.Next))))
            .GroupBy(s => s.Setting, StringComparer.Ordinal).Select(g => (g.Key, g.Max(s => s.Vessels)))],
        verdicts.Sum(v => v.Next!.Vessels!.Value));

    // An experiment says its vessels in all: shared out evenly, rounded up so that no setting is short of one.
    private static int Each(NextExperiment next) => (next.Vessels!.Value + next.Settings.Length - 1) / next.Settings.Length;
}
