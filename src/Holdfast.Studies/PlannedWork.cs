using System.Collections.Immutable;

namespace Holdfast.Studies;

/// <summary>Work that was put into the Plan: an experiment that would settle a claim, or anything else that is to be done.</summary>
/// <param name="Work">What is to be done, in a sentence.</param>
/// <param name="Claim">Id of the claim it would settle, or null for work of its own.</param>
/// <param name="Vessels">How many vessels it needs, or null when that was not said.</param>
/// <param name="Settings">The settings to run, each with its unit: "240 min".</param>
/// <param name="Entry">Number of the history entry that planned it.</param>
/// <param name="When">When it was planned.</param>
/// <param name="Who">Who planned it.</param>
public sealed record PlannedWork(
    string Work, string? Claim, int? Vessels, ImmutableArray<string> Settings, long Entry, DateTimeOffset When, string Who)
{
    /// <summary>Its address: "P-57". It comes from the entry, so that no two are ever alike.</summary>
    public string Id => "P-" + History.Ordinal.Text(Entry);

    /// <summary>When it was noted as done, or null while it is still to do.</summary>
    public DateTimeOffset? Done { get; init; }
}
