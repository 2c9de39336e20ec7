using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies.History;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Runs and readings of a table whose columns hold signals.</summary>
internal static class RunReadings
{
    private const int FewestAlike = 3;

    /// <summary>A run for each signal, and a reading for each cell.</summary>
    public static (ImmutableArray<Run> Runs, ImmutableArray<Reading> Readings) Of(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        var runs = ImmutableArray.CreateBuilder<Run>();
        var readings = ImmutableArray.CreateBuilder<Reading>();
        foreach (var signal in columns.Where(c => c.Use == ColumnUse.Signal).Select(c => c.Property!).Distinct())
        {
            var wanted = runs.Count == 0 ? source.Stem : $"{source.Stem}-{signal.Name}";
            // Standards above and samples below, on one sheet, were read in one sitting; a second table of standards is a calibration of its own.
            var sitting = $"{source.Layout.Grid.Sheet}|{signal.Name}";
            var standards = sitting + "|standards";
            var areStandards = columns.Any(c => c.Property == SpectrometryProperties.StandardConcentration);
            if (areStandards && source.RunsHere.ContainsKey(standards))
                source.RunsHere.Remove(sitting);
            var goesOn = source.RunsHere.TryGetValue(sitting, out var id);
            id ??= RunId(source, wanted);
            var (portions, order) = (new Portions(), source.Study.Readings.Where(r => goesOn && r.Run == id).Select(r => r.Order).DefaultIfEmpty(0).Max());
            var count = readings.Count;
            var repeated = Repeated(signal, rows, source);
            foreach (var row in rows.Where(r => !repeated.Contains(r.Code!)))
            {
                foreach (var (column, readout, cell) in row.Signals.Where(s => s.Column.Property == signal))
                {
                    var dilution = (signal == SpectrometryProperties.ReportedConcentration ? row.DilutionOfResult : null) ?? row.Dilution ?? (signal == SpectrometryProperties.ReportedConcentration ? 1 : source.Known.GetValueOrDefault(row.Code!)?.Number(SpectrometryProperties.Dilution) ?? 1);
                    readings.Add(new Reading("R-" + (source.Study.ReadingsEver + readings.Count + 1).ToString("0000", CultureInfo.InvariantCulture), row.Code!, id, ++order,
                        signal.Name, readout.Value, readout.Below, dilution, row.Portion ?? portions.Of(row.Code!, dilution), cell.Text, source.At(row.Row.Number, column.Heading))
                    { U = readout.U ?? (signal == SpectrometryProperties.ReportedConcentration ? row.ReportedU : null) });
                }
            }
            if (readings.Count == count)
                continue;
            source.RunsHere[sitting] = id;
            if (areStandards)
                source.RunsHere[standards] = id;
            if (!goesOn)
                runs.Add(new Run(id, signal.Name, source.Layout.Details, source.At(0, null)));
        }
        return (runs.ToImmutable(), readings.ToImmutable());
    }

    /// <summary>An id for a run that no run of the study has.</summary>
    internal static string RunId(TableSource source, string wanted)
    {
        var id = wanted;
        for (var n = 2; source.Study.Runs.Any(r => string.Equals(r.Id, id, StringComparison.Ordinal)); n++)
            id = $"{wanted}-{Ordinal.Text(n)}";
        return id;
    }

    // An export made again with further rows holds the earlier ones too: the same values for the same samples.
    private static HashSet<string> Repeated(Property signal, List<SampleRow> rows, TableSource source)
    {
        var earlier = source.Study.Readings.Where(r => string.Equals(r.Signal, signal.Name, StringComparison.Ordinal) && r.Value is not null)
            .GroupBy(r => (r.Run, r.Sample), r => r.Value!.Value)
            .Select(g => (g.Key.Sample, Values: string.Join(' ', g.Select(Exact)))).ToHashSet();
        if (earlier.Count == 0)
            return [];
        var alike = rows.GroupBy(r => r.Code!, StringComparer.Ordinal)
            .Where(g => earlier.Contains((g.Key, string.Join(' ', g.SelectMany(r => r.Signals).Where(s => s.Column.Property == signal && s.Readout.Value is not null)
                .Select(s => Exact(s.Readout.Value!.Value))))))
            .Select(g => g.Key).Order(StringComparer.Ordinal).ToList();
        if (alike.Count < FewestAlike)
            return [];
        var answer = source.Talk.Ask("overlap", Codes.Duplicate, $"{Ordinal.Text(alike.Count)} samples have the same readings as in an earlier file "
            + $"({string.Join(", ", alike.Take(4))}). Leave those out, or take them as read twice?", ["leave-out", "take"], [.. alike]);
        var same = alike.ToHashSet(StringComparer.Ordinal);
        foreach (var row in rows.Where(r => same.Contains(r.Code!)))
            row.IsUndecided |= answer is null;
        return answer is "leave-out" ? same : [];
    }

    private static string Exact(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Portions of a sample: a new dilution is a new portion, another row of the same one is a repeated reading.</summary>
    private sealed class Portions
    {
        private readonly Dictionary<string, List<double>> dilutions = new(StringComparer.Ordinal);

        public int Of(string code, double dilution)
        {
            if (!dilutions.TryGetValue(code, out var seen))
                dilutions[code] = seen = [];
            var at = seen.IndexOf(dilution);
            if (at < 0)
                seen.Add(dilution);
            return at < 0 ? seen.Count : at + 1;
        }
    }
}
