using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Two sets of standards in one run whose lines differ: which of them holds for the samples is asked, never averaged.</summary>
internal static class TwoCalibrations
{
    /// <summary>Sets whose slopes differ by more than this share are two calibrations, no repeat of one.</summary>
    internal const double SlopesDifferBy = 0.08;

    private const int FewestLevels = 3;

    /// <summary>Asks which set counts.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    public static void Ask(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        if (!columns.Any(c => c.Use == ColumnUse.Signal && c.Property != SpectrometryProperties.ReportedConcentration))
            return;
        var standards = rows.Where(r => r is { IsLeftOut: false, Code: not null } && (r.Role ?? source.Known.GetValueOrDefault(r.Code)?.Role) == SampleRole.Standard && Known(r) is not null && Signal(r) is not null).ToList();
        if (Sets(standards) is not [var first, var second] || Slope(first) is not { } a || Slope(second) is not { } b || a == 0)
            return;
        if (Math.Abs((b / a) - 1) <= SlopesDifferBy)
            return;
        var answer = source.Talk.Ask("standards", Codes.Ambiguous, $"Two sets of standards stand in this run (rows {Rows(first)} and {Rows(second)}) and their slopes differ by "
            + $"{(100 * Math.Abs((b / a) - 1)).ToString("0", CultureInfo.InvariantCulture)} %. Which calibration holds for the samples?", ["first", "second", "both"], [.. standards.Select(r => r.Written).Distinct(StringComparer.Ordinal)]);
        foreach (var row in standards)
        {
            row.IsUndecided |= answer is null;
            row.IsLeftOut |= (answer is "first" && second.Contains(row)) || (answer is "second" && first.Contains(row));
        }
    }

    // A second set begins where a level comes back after other rows than standards, or after the levels have run through once.
    private static List<List<SampleRow>>? Sets(List<SampleRow> standards)
    {
        var sets = new List<List<SampleRow>> { new() };
        foreach (var row in standards)
        {
            var current = sets[^1];
            var seen = current.Exists(r => Known(r).Equals(Known(row)));
            if (seen && current.Select(Known).Distinct().Count() >= FewestLevels && !Known(current[^1]).Equals(Known(row)))
                sets.Add(current = []);
            current.Add(row);
        }

        return sets.Count == 2 && sets.TrueForAll(s => s.Select(Known).Distinct().Count() >= FewestLevels) ? sets : null;
    }

    private static double? Slope(List<SampleRow> set)
    {
        var (x, y) = (set.Average(r => Known(r)!.Value), set.Average(r => Signal(r)!.Value));
        var sxx = set.Sum(r => Math.Pow(Known(r)!.Value - x, 2));
        return sxx > 0 ? set.Sum(r => (Known(r)!.Value - x) * (Signal(r)!.Value - y)) / sxx : null;
    }

    private static double? Known(SampleRow row) => row.Facts.GetValueOrDefault(SpectrometryProperties.StandardConcentration.Name)?.Value;

    private static double? Signal(SampleRow row)
    {
        var values = row.Signals.Where(s => s.Column.Property != SpectrometryProperties.ReportedConcentration && s.Readout.Value is not null).Select(s => s.Readout.Value!.Value).ToList();
        return values.Count == 0 ? null : values.Average();
    }

    private static string Rows(List<SampleRow> set) => $"{set[0].Row.Number.ToString(CultureInfo.InvariantCulture)} to {set[^1].Row.Number.ToString(CultureInfo.InvariantCulture)}";
}
