using System.Collections.Immutable;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>
/// Her own evaluation beside the readings it was made from: a sheet "Summary" or a file "results" with Ce, removal and q of vessels whose readings stand elsewhere in the same drop.
/// Its Ce are those readings again and are not read a second time; they, its removal and its q are kept and held against what follows.
/// </summary>
internal static class OwnEvaluation
{
    /// <summary>True where a table holds end concentrations beside results that follow from them, and nothing an instrument showed.</summary>
    /// <param name="meant">What its headings mean.</param>
    public static bool Is(IReadOnlyCollection<Property> meant)
        => meant.Contains(SpectrometryProperties.ReportedConcentration) && meant.Any(p => p == BatchProperties.ReportedRemoval || p == BatchProperties.ReportedRemaining || p == BatchProperties.ReportedUptake)
            && !meant.Any(p => p.IsSignal && p != SpectrometryProperties.ReportedConcentration);

    /// <summary>Codes, as <see cref="CodeIndex.Loosen"/> gives them, of the rows of a table that an instrument or a laboratory read; none for another table.</summary>
    /// <param name="layout">The table.</param>
    /// <param name="analyte">The study's element, or null.</param>
    /// <param name="calibrated">True where the drop holds standards, so that a signal gives a concentration.</param>
    public static IEnumerable<string> Read(TableLayout layout, string? analyte, bool calibrated)
    {
        var headings = Columns.ReadHeadings(layout);
        var code = CodeColumns.Of(layout, headings);
        var meant = headings.Select((h, i) => i == code ? null : TableKinds.Meant(h)).ToList();
        if (code < 0 || Is([.. meant.OfType<Property>()]))
            return [];
        // "Co (mg/L)" is the metal where the study is about cobalt, and a start concentration elsewhere.
        var place = headings.Select((h, i) => (h, i)).Where(x => x.i != code && UnitKinds.Of(x.h.Unit) == UnitKind.Concentration && x.h.Names(analyte)).Select(x => x.i).DefaultIfEmpty(-1).First();
        if (place < 0)
            place = meant.FindIndex(p => p == SpectrometryProperties.ReportedConcentration);
        if (place >= 0 && analyte is not null && headings[place].Element is { } element && element != analyte && !headings[place].Names(analyte) && !headings[place].Tokens.Any(t => t is "ce" or "co"))
            return [];
        if (place < 0 && calibrated)
            place = meant.FindIndex(p => p is { IsSignal: true });
        return place < 0 ? [] : layout.Body.Where(r => !r.At(code).IsBlank && !r.At(place).IsBlank).Select(r => CodeIndex.Loosen(r.At(code).Text));
    }

    /// <summary>True for a table of standards: known concentrations.</summary>
    /// <param name="layout">The table.</param>
    public static bool HasStandards(TableLayout layout) => Columns.ReadHeadings(layout).Any(h => TableKinds.Meant(h) == SpectrometryProperties.StandardConcentration || h.Has(HeadingWord.Standard));

    /// <summary>Takes the repeated end concentrations out of the rows, and says so.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    /// <returns>True where it is one.</returns>
    public static bool Settle(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        if (source.ReadElsewhere.Count == 0 || !Is([.. columns.Where(c => c.Use is ColumnUse.Signal or ColumnUse.Fact).Select(c => c.Property).OfType<Property>()]))
            return false;
        var repeated = rows.Where(r => !r.IsLeftOut && r.Signals.Count > 0 && source.ReadElsewhere.Contains(CodeIndex.Loosen(r.Written))).ToList();
        if (repeated.Count == 0 || repeated.Count * 2 < rows.Count(r => r is { IsLeftOut: false, Signals.Count: > 0 }))
            return false;
        var column = repeated[0].Signals[0].Column;
        if (source.Talk.Assume("own-evaluation", Codes.Duplicate, $"{source.Layout.Grid.Sheet ?? source.Talk.FileName} is your own evaluation: what was read of {repeated[0].Written}{(repeated.Count > 1 ? $" and {History.Ordinal.Text(repeated.Count - 1)} more" : "")} stands elsewhere, so {column.Heading} is not read a second time. "
            + "Its results are held against what follows from the readings.", ["leave-out", "take"], column.Heading) != "leave-out")
            return false;
        var start = StartSolutions.Of(source.Study).Mean;
        foreach (var row in repeated)
        {
            // Her number is kept beside the reading: where the two differ, it is said.
            if (row.Signals[0] is { Readout.Value: { } end } hersOf)
                row.Facts = row.Facts.SetItem(BatchProperties.ReportedEnd.Name, new Fact(BatchProperties.ReportedEnd.Name, end, null, null, null, hersOf.Column.Written(hersOf.Cell), source.At(row.Row.Number, hersOf.Column.Heading)));
            row.Signals.Clear();
            // Her C0 is the start solution that was read, to all its digits.
            if (row.Facts.GetValueOrDefault(BatchProperties.InitialConcentration.Name)?.Value is { } hers && Tolerances.SameSolution(hers, start))
                row.Facts = row.Facts.Remove(BatchProperties.InitialConcentration.Name);
        }

        return true;
    }
}
