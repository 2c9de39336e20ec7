namespace Holdfast.Claims.Analyses;

/// <summary>One vessel held against the solids that its metal can form.</summary>
/// <param name="Vessel">The vessel.</param>
/// <param name="HighestPh">The highest pH recorded in it; null when none was.</param>
/// <param name="Onsets">The solids at its start concentration; null when something it needs is missing.</param>
/// <param name="Air">Contact with air.</param>
/// <param name="Ruling">Holds: no listed solid could form, so what left the water was not precipitated from it. Contradicted: one could. Otherwise open.</param>
/// <param name="Reason">Why, in one sentence with its numbers.</param>
/// <param name="OverruledBy">Codes of the controls without sorbent that decided instead of the constants; empty when none did.</param>
public sealed record GuardedVial(
    Vessel Vessel, double? HighestPh, SolidOnsets? Onsets, AirContact Air, Ruling Ruling, string Reason, IReadOnlyList<string> OverruledBy);
