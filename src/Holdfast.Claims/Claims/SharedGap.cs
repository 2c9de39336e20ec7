using System.Collections.Immutable;

namespace Holdfast.Claims;

/// <summary>One gap that several claims share: what they stand on, of one kind, and what the data do not show yet. Told once, it need not stand with every claim.</summary>
/// <param name="Rule">Id of the rule that judges the ground.</param>
/// <param name="Grounds">The grounds of this kind that do not hold, each once.</param>
/// <param name="Claims">The claims that stand on one of them, in their order.</param>
public sealed record SharedGap(string Rule, ImmutableArray<Verdict> Grounds, ImmutableArray<Verdict> Claims)
{
    /// <summary>What would have to be shown, once for all grounds: "The end pH was recorded in every vessel of DOSE, KIN-05 and KIN-20."</summary>
    public string Sentence { get; } = Together.Sentence(Grounds);

    /// <summary>The gaps behind some verdicts, the one that most claims share first.</summary>
    /// <param name="verdicts">Judged claims.</param>
    public static ImmutableArray<SharedGap> Of(IEnumerable<Verdict> verdicts)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        return [.. verdicts
            .SelectMany(v => v.OpenGrounds.Select(g => (Claim: v, Ground: g)))
            .GroupBy(p => p.Ground.Claim.Rule, StringComparer.Ordinal)
            .Select(g => new SharedGap(g.Key, [.. g.Select(p => p.Ground).DistinctBy(v => v.Sentence, StringComparer.Ordinal)], [.. g.Select(p => p.Claim).DistinctBy(v => v.Claim.Id, StringComparer.Ordinal)]))
            .OrderByDescending(g => g.Claims.Length).ThenBy(g => g.Rule, StringComparer.Ordinal)];
    }
}
