using System.Globalization;
using Holdfast.Reports.Tables;
using Holdfast.Studies.History;

namespace Holdfast.Reports.StudyTables;

/// <summary>Everything that was done to the study, by date.</summary>
public static class DaybookTable
{
    /// <summary>One row an entry.</summary>
    /// <param name="daybook">The history.</param>
    public static Table Of(Daybook daybook)
    {
        ArgumentNullException.ThrowIfNull(daybook);
        return new Table(
            "daybook",
            "Daybook",
            [
                new Column("entry", "Entry") { NamesRows = true },
                new Column("when", "When"),
                new Column("who", "Who"),
                new Column("what", "What"),
            ],
            [.. daybook.Entries.Select(e => Row.Of(
                e.Number.ToString(CultureInfo.InvariantCulture), e.When.ToString("yyyy-MM-dd HH:mm:ss zzz", CultureInfo.InvariantCulture), e.Who, e.Change.Says()))]);
    }
}
