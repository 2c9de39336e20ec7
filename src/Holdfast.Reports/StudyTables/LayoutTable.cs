using System.Globalization;
using Holdfast.Reports.Tables;
using Holdfast.Studies;
using Holdfast.Studies.Import;

namespace Holdfast.Reports.StudyTables;

/// <summary>What was answered about the layouts of files, and holds for the next file of each.</summary>
public static class LayoutTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal);

    /// <summary>One row an answer; layouts are numbered from 1.</summary>
    /// <param name="study">The study.</param>
    public static Table Of(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new Table(
            "layouts",
            "Layouts remembered",
            [
                new Column("layout", "Layout") { NamesRows = true },
                new Column("headings", "Headings"),
                new Column("question", "About"),
                new Column("answer", "Answer"),
            ],
            [.. study.Layouts.SelectMany((layout, i) => layout.Value.Select(answer => Row.Of(
                (i + 1).ToString(CultureInfo.InvariantCulture), layout.Key, ChoiceWords.Asked(answer.Key), answer.Value)))],
            Codes);
    }
}
