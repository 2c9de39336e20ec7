using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Shapes;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Concentrations by titration: (titre − blank) · concentration of the titrant · molar mass of the metal / aliquot, for a titrant that binds one to one.</summary>
internal static class TitratedResults
{
    /// <summary>Works them out where titrant, titre and aliquot are known and that is not declined; returns the columns as they are then.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    /// <param name="mark">The file's decimal mark.</param>
    public static ImmutableArray<Column> Read(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source, DecimalMark? mark)
    {
        var (titre, start, end) = (Of(columns, ColumnUse.Titre), Of(columns, ColumnUse.BuretteStart), Of(columns, ColumnUse.BuretteEnd));
        var (aliquot, shown) = (Of(columns, ColumnUse.Aliquot), end ?? titre);
        if (shown is null || (end is null != start is null))
            return columns;
        if (NotedTitration.In(source.Layout.Notes.Lines) is not { } noted)
            return Unknown(columns, shown, source, "what was titrated with, and how strong it was, stands in no line (\"EDTA 0.0100 mol/L\")");
        if (aliquot is null && noted.Aliquot is null)
            return Unknown(columns, shown, source, "the volume that was titrated stands in no column and no line (\"aliquot 10 mL\")");
        if (UnitBridge.Between(new UnitText.Known(Unit.Parse("mol/L")), SpectrometryProperties.ReportedConcentration, source.Study.Analyte) is not { } bridge)
            return Unknown(columns, shown, source, "the study does not say which metal it is about");
        var blank = noted.IsBlankTakenOff ? 0 : noted.Blank ?? 0;
        var titration = $"({(end is null ? shown.Heading : $"{end.Heading} − {start!.Heading}")}{(blank > 0 ? $" − {Text(blank)} mL of the blank" : "")}) × {Text(noted.Strength)} mol/L / {(aliquot is null ? Text(noted.Aliquot!.Value) + " mL" : aliquot.Heading)}";
        if (source.Talk.Assume("titration", Codes.Ambiguous, $"Concentrations are {titration}, one {source.Study.Analyte} to one of the titrant, as a line says: “{noted.Line}”."
            + (noted.Blank is null ? " No blank is stated, so none is taken off." : noted.IsBlankTakenOff ? " The blank is taken off already, as a line says." : ""), ["use", "ignore"], shown.Heading) != "use")
            return columns;
        var result = shown.Become(ColumnUse.Signal, SpectrometryProperties.ReportedConcentration, $"By titration: {titration}.", isOfTheLiquidRead: true);
        foreach (var row in rows)
        {
            double? At(Column? column) => column?.Read(row.Row.At(column.Index), row.Row.Number, mark).Value;
            var used = end is null ? At(titre) : At(end) - At(start);
            var portion = aliquot is null ? noted.Aliquot : At(aliquot);
            if (used is not { } spent || portion is not > 0)
                continue;
            var written = string.Create(CultureInfo.InvariantCulture, $"({Text(spent)} − {Text(blank)}) mL × {Text(noted.Strength)} mol/L / {Text(portion.Value)} mL");
            row.Signals.Add((result, new Readout(bridge.Convert((spent - blank) * noted.Strength / portion.Value), null, null), new Cell(written)));
        }

        return [.. columns.Select(c => c == shown ? result : c)];
    }

    private static ImmutableArray<Column> Unknown(ImmutableArray<Column> columns, Column shown, TableSource source, string what)
    {
        source.Talk.Note(Codes.NothingFollows, Weight.Caution, $"{shown.Heading} is of a titration, but {what}, so no concentration follows. Add the line, or the concentrations themselves.", shown.Heading);
        return columns;
    }

    private static Column? Of(ImmutableArray<Column> columns, ColumnUse use) => columns.FirstOrDefault(c => c.Use == use);

    // Digits that the readings lack are no digits of their difference.
    private static string Text(double value) => Math.Round(value, 6).ToString(CultureInfo.InvariantCulture);
}
