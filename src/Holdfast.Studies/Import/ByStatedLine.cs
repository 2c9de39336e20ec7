using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Studies.History;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Absorbances without standards, under a line of text that gives the calibration as an equation.</summary>
internal static class ByStatedLine
{
    /// <summary>Turns them into reported concentrations where that is not declined; returns the columns as they are then.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    public static ImmutableArray<Column> Turn(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        var signals = columns.Where(c => c.Use == ColumnUse.Signal && (c.Property == SpectrometryProperties.Absorbance || c.Property == SpectrometryProperties.InstrumentSignal)).ToList();
        if (source.Layout.Notes.Line is not { } line || signals.Count == 0 || columns.Any(c => c.Property == SpectrometryProperties.StandardConcentration || c.Property == SpectrometryProperties.ReportedConcentration)
            || rows.Exists(r => r.Role == SampleRole.Standard || RoleWords.Guess(r.Written) == SampleRole.Standard))
            return columns;
        var unit = line.Unit ?? Unit.Parse(SpectrometryProperties.ReportedConcentration.Unit);
        if (UnitBridge.Between(new UnitText.Known(unit), SpectrometryProperties.ReportedConcentration, source.Study.Analyte) is not { } bridge)
            return columns;
        var text = $"{signals[0].Heading} is read back on the calibration that row {Ordinal.Text(line.Row)} states, {line.Written}, in {unit.Plain}"
            + (line.Unit is null ? " (assumed, no unit is stated)" : "") + ". The uncertainty of that calibration is not stated and not included.";
        if (source.Talk.Assume("stated-line", Codes.Ambiguous, text, ["use", "ignore"], signals[0].Heading) != "use")
            return columns;
        var turned = signals.ToDictionary(s => s, s => s.Become(ColumnUse.Signal, SpectrometryProperties.ReportedConcentration, $"By {line.Written}.", isOfTheLiquidRead: true));
        foreach (var row in rows)
        {
            for (var i = 0; i < row.Signals.Count; i++)
            {
                var (column, readout, cell) = row.Signals[i];
                if (!turned.TryGetValue(column, out var now))
                    continue;
                var value = readout.Value is { } read ? bridge.Convert((read - line.Intercept) / line.Slope) : (double?)null;
                var written = value is null ? cell : new Cell(string.Create(CultureInfo.InvariantCulture, $"{cell.Text} (by {line.Written})"));
                row.Signals[i] = (now, new Readout(value, null, readout.Why), written);
            }
        }

        return [.. columns.Select(c => turned.GetValueOrDefault(c, c))];
    }
}
