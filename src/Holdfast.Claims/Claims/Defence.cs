using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;

namespace Holdfast.Claims;

/// <summary>
/// Judges claims: those the author stated, and those the data invite where she stated none of that kind. What a claim stands on is
/// judged first: contradicted or untested ground caps either verdict at "not shown yet", ground that was tested and is not shown yet adds a warning.
/// </summary>
public sealed class Defence
{
    private static readonly Lazy<ImmutableArray<IClaimRule>> Found = new(() =>
        [.. Catalogue.Of<IClaimRule>().OrderBy(r => r.Id, StringComparer.Ordinal)]);

    /// <summary>How the warning about grounds that are not shown yet begins; a document that lists them as shared gaps leaves it out.</summary>
    public const string StandsOn = "It stands on what is not shown yet:";

    private readonly Evidence evidence;
    private readonly Evidence? unstruck;
    private readonly Dictionary<string, Verdict> judged = new(StringComparer.Ordinal);
    private readonly HashSet<string> open = new(StringComparer.Ordinal);

    private Defence(Evidence evidence, Evidence? unstruck) => (this.evidence, this.unstruck) = (evidence, unstruck);

    /// <summary>Every rule there is, by id.</summary>
    public static ImmutableArray<IClaimRule> Rules => Found.Value;

    /// <summary>The rule with this id, or null.</summary>
    /// <param name="id">Id of a rule.</param>
    public static IClaimRule? RuleNamed(string id) => Rules.FirstOrDefault(r => string.Equals(r.Id, id, StringComparison.Ordinal));

    /// <summary>
    /// Verdicts on the stated claims, then on the claims the data invite, in a fixed order. Where something was struck, each claim is judged with it
    /// as well: a ruling that hangs on an exclusion is "not shown yet".
    /// </summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static ImmutableArray<Verdict> Of(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        return Of(evidence, evidence.Study.Strikes.IsEmpty ? null : Evidence.Of(evidence.Study with { Strikes = [] }));
    }

    /// <summary>The same with the evidence as it was before anything was struck.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    /// <param name="unstruck">The same study's with every strike taken back, or null when nothing was struck.</param>
    public static ImmutableArray<Verdict> Of(Evidence evidence, Evidence? unstruck)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var defence = new Defence(evidence, unstruck);
        Verdict[] all = [.. ClaimsOf(evidence).Select(defence.Judge)];
        return [.. all.Where(v => v.Claim.Stated || !all.Any(s => Covers(s, v)))];
    }

    /// <summary>The claims to be judged: stated ones in the order they were stated, then invited ones by rule.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static ImmutableArray<Claim> ClaimsOf(Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var stated = evidence.Study.Claims.Select(c => new Claim(c.Id, c.Rule, c.Parameters, c.Wording, Stated: true)).ToImmutableArray();
        return [.. stated, .. Rules.SelectMany(r => InvitedBy(r, evidence)).Where(i => !stated.Any(s => s.Rule == i.Rule && string.Equals(Subject(s), Subject(i), StringComparison.OrdinalIgnoreCase)))];
    }

    private static string? Subject(Claim claim) => claim.Words("series") ?? claim.Words("run");

    // What she states of one series silences the rule there and nowhere else; a claim that names no series speaks of those whose vessels it was judged by.
    private static bool Covers(Verdict stated, Verdict invited)
        => stated.Claim.Stated && stated.Claim.Rule == invited.Claim.Rule && invited.Data.Length > 0 && invited.Data.All(d => stated.Data.Contains(d, StringComparer.Ordinal));

    // A rule that falls while it looks for claims is asked about the study as a whole, so that its fall is seen where its claims would stand.
    private static Claim[] InvitedBy(IClaimRule rule, Evidence evidence)
        => Room.Of("what " + rule.Id + " is invited by", () => rule.Invited(evidence).ToArray()).Value ?? [Claim.Raised(rule.Id)];

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
        var judgement = Room.Of($"the claim {claim.Id}", () => WithAndWithoutStrikes(rule, claim), claim.Id);
        if (judgement.Value is not { } verdict)
            return Fallen(claim, judgement.Findings[0]);
        verdict = verdict with { Next = verdict.Next?.Within(FixedMargin.Of(evidence, MarginKind.Effort).High) };
        if (!open.Add(key))
            return verdict;
        var grounds = Room.Of($"what the claim {claim.Id} stands on", () => rule.StandsOn(claim, evidence).ToArray(), claim.Id);
        var warnings = verdict.Warnings.AddRange(grounds.Findings.Select(f => $"{f.Sentence} ({f.Code})"));
        var ruling = grounds.HasValue || verdict.Ruling == Ruling.Contradicted ? verdict.Ruling : Ruling.NotShownYet;
        var reason = verdict.Reason;
        var unshown = new List<string>();
        var gaps = new List<Verdict>();
        foreach (var ground in grounds.Value ?? [])
        {
            if (open.Contains(Key(ground)))
                continue;
            var under = Judge(ground);
            if (under.Ruling == Ruling.Holds)
                continue;
            gaps.Add(under with { OpenGrounds = [] });
            if (Broken(under) is not { } broken)
            {
                unshown.Add(under.Sentence.TrimEnd('.'));
            }
            else if (ruling != Ruling.NotShownYet && RuleNamed(ground.Rule) is { CapsDependents: true })
            {
                ruling = Ruling.NotShownYet;
                reason = $"{reason} {broken}";
            }
            else
            {
                warnings = warnings.Add(broken);
            }
        }

        open.Remove(key);
        // One line, however many there are: warnings that stack are not read.
        if (unshown.Count > 0)
            warnings = warnings.Add($"{StandsOn} {string.Join("; ", unshown)}.");
        return verdict with { Ruling = ruling, Reason = reason, Warnings = warnings, Scope = ruling == Ruling.Holds ? verdict.Scope : null, OpenGrounds = [.. gaps] };
    }

    private static Verdict Fallen(Claim claim, Finding finding) => new(
        claim, claim.Wording ?? RuleNamed(claim.Rule)!.Wording, Ruling.NotShownYet, $"{finding.Sentence} ({finding.Code})", [], "none", null, [], [], [], null, []);

    private Verdict WithAndWithoutStrikes(IClaimRule rule, Claim claim)
    {
        var verdict = rule.Judge(claim, evidence);
        if (unstruck is null)
            return verdict;
        var whole = rule.Judge(claim, unstruck);
        if (whole.Ruling == verdict.Ruling)
            return verdict;
        var strikes = evidence.Study.Strikes;
        var named = Phrase.Listed(strikes.Take(3).Select(s => $"{s.Target} ({s.Reason})"));
        var others = strikes.Length > 3 ? $" and {Phrase.Number(strikes.Length - 3)} more" : "";
        return verdict with
        {
            Ruling = Ruling.NotShownYet,
            Reason = $"{verdict.Reason} With what was struck, {named}{others}, it would be {Words(whole.Ruling)}: a ruling must not hang on an exclusion.",
            Scope = null,
            Next = verdict.Next ?? new NextExperiment("Repeat what was struck, at the same settings.", strikes.Length, [.. strikes.Select(s => s.Target)], "one new vessel for each exclusion"),
        };
    }

    // Ground that gave way carries nothing, neither for a claim nor against it: a leak that nobody looked for makes right claims look wrong as well.
    private static string? Broken(Verdict ground)
        => ground.Ruling == Ruling.Contradicted ? $"It stands on “{ground.Sentence}”, and the data speak against that."
            : ground.IsUntested ? $"It stands on “{ground.Sentence}”, which nothing tested."
            : null;

    private static string Words(Ruling ruling) => ruling switch
    {
        Ruling.Holds => "“holds”",
        Ruling.Contradicted => "“contradicted”",
        _ => "“not shown yet”",
    };

    private static Verdict NoSuchRule(Claim claim) => new(
        claim,
        claim.Wording ?? claim.Rule,
        Ruling.NotShownYet,
        $"Holdfast has no rule called {claim.Rule}. Rules: {string.Join(", ", Rules.Select(r => r.Id))}.",
        [], "none", null, [], [], [], null, []);

    private static string Key(Claim claim)
        => claim.Rule + "|" + string.Join("|", claim.Parameters.Select(p => p.Key + "=" + p.Value));
}
