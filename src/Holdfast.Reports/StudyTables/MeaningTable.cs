using Holdfast.Reports.Tables;
using Holdfast.Studies.Import;

namespace Holdfast.Reports.StudyTables;

/// <summary>Everything that a column of a file can be said to hold.</summary>
public static class MeaningTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal) { ["nn"] = "none is needed" };

    /// <summary>All of them, what a vessel needs first.</summary>
    public static Table All { get; } = new(
        "meanings",
        "What a column can be said to hold",
        [
            new Column("name", "Name") { NamesRows = true },
            new Column("meaning", "Meaning"),
            new Column("unit", "Kept in"),
            new Column("group", "Belongs to"),
        ],
        [.. ColumnChoices.All.Select(c => Row.Of(c.Name, c.Title, c.Unit.Length > 0 ? (Tables.Cell)c.Unit : new MissingCell("nn"), c.Group))],
        Codes)
    {
        Notes = ["An answer about a column names one of them: column:HEADING=mass. A unit other than the one it is kept in is stated by unit:HEADING=g."],
    };
}
