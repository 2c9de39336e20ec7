using System.Collections.Immutable;
using Holdfast.Studies;
using Holdfast.Studies.History;

namespace Holdfast.Claims;

/// <summary>A claim that its author wants to state, checked before it is kept: what is missing or cannot be read is said beside its field.</summary>
/// <param name="Stated">The claim, or null when something is in the way.</param>
/// <param name="Refusals">What is in the way, in the order of the fields.</param>
public sealed record Statement(ClaimStated? Stated, ImmutableArray<Refused> Refusals)
{
    /// <summary>Checks what was typed. Fields left blank count as not given.</summary>
    /// <param name="study">The study, for ids that are taken.</param>
    /// <param name="ruleId">Id of the rule.</param>
    /// <param name="parameters">What it is about, by name; numbers with their unit.</param>
    /// <param name="wording">Her own words, or null or blank for the rule's.</param>
    /// <param name="id">Id of the claim that is stated anew; null for a new one, whose id then follows from the rule and the parameters.</param>
    public static Statement Of(Study study, string ruleId, IEnumerable<KeyValuePair<string, string>> parameters, string? wording, string? id = null)
    {
        ArgumentNullException.ThrowIfNull(study);
        if (Defence.RuleNamed(ruleId) is not { } rule)
            return new(null, [new("rule", $"There is no rule {ruleId}. Choose one of: {string.Join(", ", Defence.Rules.Select(r => r.Id))}.")]);
        var claim = Claim.Raised(rule.Id, [.. parameters.Select(p => (p.Key, (string?)p.Value.Trim()))]);
        var known = ClaimParameter.Of(rule);
        var refusals = ImmutableArray.CreateBuilder<Refused>();
        foreach (var name in claim.Parameters.Keys.Where(n => known.All(p => p.Name != n)))
            refusals.Add(new(name, $"The rule {rule.Id} reads no {name}. It reads: {string.Join(", ", known.Select(p => p.Name))}."));
        foreach (var parameter in known)
        {
            if (claim.Words(parameter.Name) is not { } words)
            {
                if (parameter.IsNeededBy(rule))
                    refusals.Add(new(parameter.Name, $"The {parameter.Asks} is missing. Write it like {parameter.Example}."));
            }
            else if (!CanBeRead(claim, parameter))
            {
                refusals.Add(new(parameter.Name, $"“{words}” cannot be read as the {parameter.Asks}. Write it like {parameter.Example}."));
            }
        }

        if (refusals.Count > 0)
            return new(null, refusals.ToImmutable());
        var own = string.IsNullOrWhiteSpace(wording) ? null : wording.Trim();
        return new(new ClaimStated(id ?? Unused(claim.Id, study), rule.Id, claim.Parameters, own), []);
    }

    private static bool CanBeRead(Claim claim, ClaimParameter parameter) => parameter.Unit switch
    {
        null => true,
        "" => claim.Number(parameter.Name) is not null,
        _ => claim.In(parameter.Name, parameter.Unit) is not null,
    };

    private static string Unused(string id, Study study)
    {
        var free = id;
        for (var n = 2; study.Claims.Any(c => string.Equals(c.Id, free, StringComparison.Ordinal)); n++)
            free = $"{id}-{Phrase.Number(n)}";
        return free;
    }
}

/// <summary>A field of a form that cannot be kept as it is.</summary>
/// <param name="Field">Name of the parameter or field.</param>
/// <param name="Sentence">What is wrong and how to mend it.</param>
public sealed record Refused(string Field, string Sentence);
