using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.Workbooks;

/// <summary>
/// A study as a workbook: the vessels with live formulas from the readings over the calibration to q, so that each can be followed cell by cell, and every table in a
/// sheet of its own. The numbers are those of the dossier.
/// </summary>
public static class StudyWorkbook
{
    private const int LongestName = 31;

    /// <summary>The bytes of an XLSX file.</summary>
    /// <param name="dossier">The study worked out.</param>
    public static byte[] Of(Dossier dossier)
    {
        ArgumentNullException.ThrowIfNull(dossier);
        var study = dossier.Evidence.Study;
        var followed = new FollowedVessels(dossier.Evidence);
        BookSheet[] own = [followed.Calibrations(), followed.Readings(), followed.Portions(), followed.Vessels()];
        var used = own.Select(s => s.Name).Prepend(About).ToHashSet(StringComparer.OrdinalIgnoreCase);
        // The vessels stand there with their formulas already.
        BookSheet[] tables = [.. ReportTables.OfStudy(dossier).Where(t => t.Id is not "vessels" and not "readings" && t.Rows.Count > 0).Select(t => Sheet(t, used))];
        BookSheet[] all = [.. own, .. tables];
        return BookFile.Of(
            study.Title, study.Details.GetValueOrDefault("author") ?? "", study.Invented ? ReportOptions.Invented : "",
            [First(dossier, all), .. all], followed.Names());
    }

    private const string About = "About";

    private static BookSheet First(Dossier dossier, IEnumerable<BookSheet> sheets)
    {
        var study = dossier.Evidence.Study;
        var rows = new List<IReadOnlyList<BookCell>>();
        if (study.Invented)
            rows.Add([BookCell.Of("Notice"), BookCell.Of(ReportOptions.Invented)]);
        rows.Add([BookCell.Of("Study"), BookCell.Of(study.Title)]);
        rows.Add([BookCell.Of("Fingerprint"), BookCell.Of(study.Fingerprint)]);
        rows.Add([BookCell.Of("How to follow q"), BookCell.Of("Vessels: q from C0, Ce, V and m. Portions: Ce from the mean reading, the line and the dilution. Readings: what the instrument showed. Calibration: the line of each run.")]);
        rows.AddRange(sheets.Select(s => (IReadOnlyList<BookCell>)[BookCell.Of(s.Name), BookCell.Of(s.Caption)]));
        return new(About, "What this workbook holds", ["Sheet", "What it holds"], ["", ""], rows);
    }

    private static BookSheet Sheet(Table table, HashSet<string> used)
    {
        var fields = TableFields.Of(table);
        return new(
            Named(table.Id, used), table.Caption.Plain, [.. fields.Select(f => f.Heading)], [.. fields.Select(f => f.Unit ?? "")],
            [.. table.Rows.Select(r => (IReadOnlyList<BookCell>)[.. fields.Select(f => Cell(f.Value(r)))])]);
    }

    private static BookCell Cell(object? value) => value switch
    {
        double number => BookCell.Of(number),
        string text => BookCell.Of(text),
        bool said => BookCell.Of(said ? "yes" : ""),
        _ => BookCell.Of(""),
    };

    // Cut to what a sheet may be called; a number tells those apart that would then be alike.
    private static string Named(string id, HashSet<string> used)
    {
        for (var n = 1; ; n++)
        {
            var end = n == 1 ? "" : System.FormattableString.Invariant($"-{n}");
            var name = id[..Math.Min(id.Length, LongestName - end.Length)] + end;
            if (used.Add(name))
                return name;
        }
    }
}
