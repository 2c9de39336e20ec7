using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.NextExperiments;

namespace Holdfast.Reports.Documents.Chapter;

/// <summary>The claims of a chapter with the numbers by which its text calls them: each stated claim, then raised ones of a kind and ruling together.</summary>
internal sealed class ClaimList
{
    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);

    /// <summary>Numbers the verdicts.</summary>
    /// <param name="verdicts">Judged claims.</param>
    public ClaimList(IReadOnlyList<Verdict> verdicts)
    {
        All =
        [
            .. verdicts.Where(v => v.Claim.Stated).Select(v => ImmutableArray.Create(v))
                .Concat(verdicts.Where(v => !v.Claim.Stated).GroupBy(v => (v.Claim.Rule, v.Ruling)).Select(g => g.ToImmutableArray()))
                .Select((group, i) => new NumberedClaim(i + 1, group)),
        ];
        foreach (var claim in All)
        {
            foreach (var verdict in claim.Verdicts)
                numbers[verdict.Claim.Id] = claim.Number;
        }
    }

    /// <summary>Every claim in its order.</summary>
    public ImmutableArray<NumberedClaim> All { get; }

    /// <summary>Number of a claim.</summary>
    /// <param name="verdict">Its verdict.</param>
    public int Of(Verdict verdict) => numbers[verdict.Claim.Id];

    /// <summary>"claim 3", "claims 3, 5 to 9 and 12".</summary>
    /// <param name="ids">Ids of claims.</param>
    public string Named(IEnumerable<string> ids)
    {
        var all = ids.Select(i => numbers[i]).Distinct().Order().ToArray();
        return (all.Length == 1 ? "claim " : "claims ") + Spans(all);
    }

    /// <summary>The same for verdicts.</summary>
    /// <param name="verdicts">The verdicts.</param>
    public string Named(IEnumerable<Verdict> verdicts) => Named(verdicts.Select(v => v.Claim.Id));

    /// <summary>Numbers alone: "3, 5 to 9 and 12".</summary>
    /// <param name="verdicts">The verdicts.</param>
    public string Numbers(IEnumerable<Verdict> verdicts) => Spans([.. verdicts.Select(Of).Distinct().Order()]);

    /// <summary>What weakens a claim alone: what gaps say, what other claims share, and margins nobody fixed are told once for all of them; what is contradicted needs no caveat.</summary>
    /// <param name="verdict">A stated claim.</param>
    public IEnumerable<string> CaveatsOf(Verdict verdict) => Caveats.Where(c => c.Claims is [var only] && only.Claim.Id == verdict.Claim.Id && !IsMargin(c.Sentence)).Select(c => c.Sentence);

    /// <summary>Caveats that several claims share or that tell of a margin, the one of most claims first.</summary>
    public IEnumerable<(string Sentence, ImmutableArray<Verdict> Claims)> SharedCaveats => Caveats.Where(c => c.Claims.Length > 1 || IsMargin(c.Sentence));

    /// <summary>True for a caveat that tells of a margin at its default.</summary>
    /// <param name="sentence">The caveat.</param>
    public static bool IsMargin(string sentence) => sentence.EndsWith(MarginKind.LeftToDefault, StringComparison.Ordinal);

    private IEnumerable<(string Sentence, ImmutableArray<Verdict> Claims)> Caveats
        => All.SelectMany(c => c.Verdicts).Where(v => v.Claim.Stated && v.Ruling != Ruling.Contradicted)
            .SelectMany(v => v.Warnings.Where(w => !w.StartsWith(Defence.StandsOn, StringComparison.Ordinal)).Distinct(StringComparer.Ordinal).Select(w => (Verdict: v, Warning: w)))
            .GroupBy(p => p.Warning, StringComparer.Ordinal).OrderByDescending(g => g.Count()).Select(g => (g.Key, g.Select(p => p.Verdict).ToImmutableArray()));

    /// <summary>The gaps that claims share, those of the same claims together, the one that most share first.</summary>
    public IReadOnlyList<IReadOnlyList<SharedGap>> Gaps
        => [.. SharedGap.Of(All.SelectMany(c => c.Verdicts)).GroupBy(g => Numbers(g.Claims), StringComparer.Ordinal).Select(g => (IReadOnlyList<SharedGap>)[.. g])];

    /// <summary>Experiments that serve several stated claims, most claims first.</summary>
    public ImmutableArray<CombinedExperiment> Combined => [.. CombinedExperiment.Of([.. All.SelectMany(c => c.Verdicts).Where(v => v.Claim.Stated)]).OrderByDescending(c => c.Claims.Length)];

    private static string Spans(int[] all)
    {
        var spans = new List<string>();
        for (int from = 0, to; from < all.Length; from = to + 1)
        {
            for (to = from; to + 1 < all.Length && all[to + 1] == all[to] + 1;)
                to++;
            if (to - from < 2)
                spans.AddRange(all[from..(to + 1)].Select(n => n.ToString(CultureInfo.InvariantCulture)));
            else
                spans.Add(string.Create(CultureInfo.InvariantCulture, $"{all[from]} to {all[to]}"));
        }

        return spans.Count < 2 ? string.Concat(spans) : string.Join(", ", spans.SkipLast(1)) + " and " + spans[^1];
    }
}

/// <summary>One line of the claims: a stated claim, or raised ones of a kind that stand alike.</summary>
/// <param name="Number">Its number in the chapter.</param>
/// <param name="Verdicts">Its verdicts, one or more of one ruling.</param>
internal sealed record NumberedClaim(int Number, ImmutableArray<Verdict> Verdicts)
{
    /// <summary>How it stands.</summary>
    public Ruling Ruling => Verdicts[0].Ruling;

    /// <summary>What it says.</summary>
    public string Sentence { get; } = Together.Sentence(Verdicts);
}
