namespace Holdfast.Studies;

/// <summary>The reason for changes made after the study was sealed.</summary>
/// <param name="Entry">Number of its entry; the changes are the entries behind it.</param>
/// <param name="Reason">Why.</param>
/// <param name="When">When.</param>
/// <param name="Who">Who.</param>
public sealed record Amendment(long Entry, string Reason, DateTimeOffset When, string Who);
