using Holdfast.Claims;
using Holdfast.Reports.Tables;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Reports.StudyTables;

/// <summary>Every technique of characterisation: what it reads and which claims it judges.</summary>
public static class TechniqueTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal) { ["nc"] = "it judges no claim" };

    /// <summary>All of them, by name. A rule belongs to the technique whose namespace it shares.</summary>
    public static Table All { get; } = new(
        "techniques",
        "Techniques of characterisation of the powder",
        [
            new Column("name", "Name") { NamesRows = true },
            new Column("title", "Technique"),
            new Column("reads", "Reads"),
            new Column("claims", "Claims it judges"),
        ],
        [.. TechniqueList.All.Select(t => Row.Of(t.Name, t.Title, t.Reads, Claims(t) is { Length: > 0 } claims ? (Cell)claims : new MissingCell("nc")))],
        Codes);

    private static string Claims(ITechnique technique)
        => string.Join(", ", Defence.Rules.Where(r => r.GetType().Namespace == technique.GetType().Namespace).Select(r => r.Id));
}
