using System.Collections.Immutable;

namespace Holdfast.Studies;

/// <summary>Something the author wants to say, before it is judged.</summary>
/// <param name="Id">Short address: "equilibrium-120-kin-20".</param>
/// <param name="Rule">Id of the rule that judges it: "equilibrium-reached".</param>
/// <param name="Parameters">What it is about, by name: series, time, dose, model, limit; numbers as written with unit.</param>
/// <param name="Wording">Her own words, or null to use the rule's.</param>
/// <param name="Entry">Number of the history entry that stated it.</param>
/// <param name="When">When it was stated; a margin fixed after the data is labelled so.</param>
public sealed record StatedClaim(
    string Id, string Rule, ImmutableSortedDictionary<string, string> Parameters, string? Wording, long Entry, DateTimeOffset When);
