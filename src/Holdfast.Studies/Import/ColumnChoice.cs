namespace Holdfast.Studies.Import;

/// <summary>Something that a column can be said to hold.</summary>
/// <param name="Name">What an answer calls it: "mass", "weighed-full", "leave-out".</param>
/// <param name="Title">Words for a menu.</param>
/// <param name="Unit">Unit it is kept in, or "".</param>
/// <param name="Group">What it belongs to: "the vessel", "the reading".</param>
public sealed record ColumnChoice(string Name, string Title, string Unit, string Group);
