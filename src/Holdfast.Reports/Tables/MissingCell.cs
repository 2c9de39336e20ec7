namespace Holdfast.Reports.Tables;

/// <summary>Nothing, with the reason: an empty cell is never a zero.</summary>
/// <param name="Code">A short code that the table explains: "n.m.".</param>
public sealed record MissingCell(string Code) : Cell;
