using System.Collections.Immutable;

namespace Holdfast.Studies;

/// <summary>A plan that was put on the Plan: the claims it is to show, the vessels that are to be run, and what was said about it before anything was weighed.</summary>
/// <param name="Questions">The claims, each with what these vessels can show of it.</param>
/// <param name="Seed">Seed of its random orders, as digits.</param>
/// <param name="Basis">What was supposed, by option: "capacity" → "13 mg/g".</param>
/// <param name="Vessels">The rows.</param>
/// <param name="Warnings">What was doubtful about it, with the answers given.</param>
/// <param name="Entry">History entry that kept it.</param>
/// <param name="When">When.</param>
/// <param name="Who">Who.</param>
public sealed record DesignedPlan(
    ImmutableArray<PlannedClaim> Questions, string Seed, ImmutableSortedDictionary<string, string> Basis, ImmutableArray<PlannedVessel> Vessels,
    ImmutableArray<PlanWarning> Warnings, long Entry, DateTimeOffset When, string Who)
{
    /// <summary>Its address: "D-12".</summary>
    public string Id => "D-" + History.Ordinal.Text(Entry);
}

/// <summary>A claim that a plan is to show.</summary>
/// <param name="Rule">Id of the rule that will judge it.</param>
/// <param name="Series">The series that it rests on.</param>
/// <param name="Margin">Name of the margin it is judged by, or null.</param>
/// <param name="Shows">What these vessels can show, in a sentence.</param>
public sealed record PlannedClaim(string Rule, ImmutableArray<string> Series, string? Margin, string Shows);

/// <summary>Something doubtful about a plan, seen before anything is weighed.</summary>
/// <param name="Name">Which warning: "coverage".</param>
/// <param name="Sentence">What is doubtful, why it matters and what would mend it.</param>
/// <param name="Answer">Why it is accepted as it is, or null while nobody answered.</param>
public sealed record PlanWarning(string Name, string Sentence, string? Answer);

/// <summary>The moment from which plan and margins change only by amendment.</summary>
/// <param name="Sha256">Fingerprint of plans and margins as they then were, lower-case hexadecimal.</param>
/// <param name="Entry">History entry that froze them.</param>
/// <param name="When">When.</param>
/// <param name="Who">Who.</param>
public sealed record PlanFreeze(string Sha256, long Entry, DateTimeOffset When, string Who);

/// <summary>A change of the plan after it was frozen.</summary>
/// <param name="Reason">Why.</param>
/// <param name="What">What was changed; empty where the reason was given for something else.</param>
/// <param name="When">When.</param>
/// <param name="Who">Who.</param>
public sealed record PlanAmendment(string Reason, string What, DateTimeOffset When, string Who);
