using System.Collections.Immutable;
using Holdfast.Claims.Analyses;

namespace Holdfast.Claims;

/// <summary>
/// Judges claims: those the author stated, or those the data invite where she stated none of that kind. What a claim stands on is
/// judged first: contradicted ground caps it at "not shown yet", ground that is not shown yet adds a warning.
/// </summary>
public sealed class Defence
{
    private static readonly Lazy<ImmutableArray<IClaimRule>> Found = new(() =>
        [.. typeof(Defence).Assembly.GetTypes()
            .Where(t => t is { IsClass: true, IsAbstract: false } && typeof(IClaimRule).IsAssignableFrom(t))
            .Select(t => (IClaimRule)Activator.CreateInstance(t)!)
            .OrderBy(r => r.Id, StringComparer.Ordinal)]);

    private readonly Evidence evidence;
    private readonly Dictionary<string, Verdict> judged = new(StringComparer.Ordinal);
    private readonly HashSet<string> open = new(StringComparer.Ordinal);

    private Defence(Evidence evidence) => this.evidence = evidence;

    /// <summary>Every rule there is, by id.</summary>
    public static ImmutableArray<IClaimRule> Rules => Found.Value;

    /// <summary>The rule with this id, or null.</summary>
    /// <param name="id">Id of a rule.</param>
    public static IClaimRule? RuleNamed(string id) => Rules.FirstOrDefault(r => string.Equals(r.Id, id, StringComparison.Ordinal));

    /// <summary>Verdicts on the stated claims, then on the claims the data invite, in a fixed order.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static ImmutableArray<Verdict> Of(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var defence = new Defence(evidence);
        return [.. ClaimsOf(evidence).Select(defence.Judge)];
    }

    /// <summary>The claims to be judged: stated ones in the order they were stated, then invited ones by rule.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static ImmutableArray<Claim> ClaimsOf(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var stated = evidence.Study.Claims.Select(c => new Claim(c.Id, c.Rule, c.Parameters, c.Wording, Stated: true)).ToImmutableArray();
        var kinds = stated.Select(c => c.Rule).ToHashSet(StringComparer.Ordinal);
        return [.. stated, .. Rules.Where(r => !kinds.Contains(r.Id)).SelectMany(r => r.Invited(evidence))];
    }

    private Verdict Judge(Claim claim)
    {
        var key = Key(claim);
        if (judged.TryGetValue(key, out var known))
            return known with { Claim = claim };
        var verdict = RuleNamed(claim.Rule) is { } rule ? OnItsGround(rule, claim, key) : NoSuchRule(claim);
        judged[key] = verdict;
        return verdict;
    }

    private Verdict OnItsGround(IClaimRule rule, Claim claim, string key)
    {
        var verdict = rule.Judge(claim, evidence);
        if (!open.Add(key))
            return verdict;
        var warnings = verdict.Warnings;
        var ruling = verdict.Ruling;
        var reason = verdict.Reason;
        foreach (var ground in rule.StandsOn(claim, evidence))
        {
            if (open.Contains(Key(ground)))
                continue;
            var under = Judge(ground);
            if (under.Ruling == Ruling.Holds)
                continue;
            if (under.Ruling == Ruling.Contradicted && ruling == Ruling.Holds)
            {
                ruling = Ruling.NotShownYet;
                reason = $"{reason} It stands on “{under.Sentence}”, and the data speak against that.";
            }
            else
            {
                warnings = warnings.Add(under.Ruling == Ruling.Contradicted
                    ? $"It stands on “{under.Sentence}”, and the data speak against that."
                    : $"It stands on “{under.Sentence}”, which is not shown yet.");
            }
        }

        open.Remove(key);
        return verdict with { Ruling = ruling, Reason = reason, Warnings = warnings, Scope = ruling == Ruling.Holds ? verdict.Scope : null };
    }

    private static Verdict NoSuchRule(Claim claim) => new(
        claim,
        claim.Wording ?? claim.Rule,
        Ruling.NotShownYet,
        $"Holdfast has no rule called {claim.Rule}. Rules: {string.Join(", ", Rules.Select(r => r.Id))}.",
        [], "none", null, [], [], [], null, []);

    private static string Key(Claim claim)
        => claim.Rule + "|" + string.Join("|", claim.Parameters.Select(p => p.Key + "=" + p.Value));
}
