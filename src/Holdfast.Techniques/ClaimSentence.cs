using Holdfast.Claims;

namespace Holdfast.Techniques;

/// <summary>A claim about a measurement in words: each place of the wording is filled by what the claim names, or by what is missing there.</summary>
internal static class ClaimSentence
{
    /// <summary>The claim in words.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="rule">Its rule, which lists the parameters of its wording.</param>
    public static string Of(Claim claim, IClaimRule rule)
        => Phrase.Sentence(claim, rule.Wording, [.. rule.Own.Select(p => (p.Name, claim.Words(p.Name) ?? p.Asks))]);
}
