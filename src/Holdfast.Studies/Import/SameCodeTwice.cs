using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies.History;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>One code on several rows of a sheet of vessels: replicates where the sheet says so, asked about where the rows differ.</summary>
internal static class SameCodeTwice
{
    /// <summary>Readings of one vessel that agree within this share are repeats; beyond it one of them is of something else.</summary>
    internal const double SameReadingWithin = 0.1;

    /// <summary>Readings that differ by less than this share of the largest of a table are repeats too: near zero they scatter by more than a tenth of themselves.</summary>
    internal const double OfTheLargest = 0.02;

    /// <summary>Gives replicates codes of their own, or asks.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    public static void Ask(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        var differing = rows.Where(r => r is { Code: not null, IsLeftOut: false, Role: null or SampleRole.Vessel or SampleRole.Control })
            .GroupBy(r => r.Code!, StringComparer.Ordinal).Select(g => g.ToList()).Where(g => g.Count > 1 && Differ(g, LeastThatCounts(rows))).ToList();
        if (differing.Count == 0)
            return;
        if (differing.TrueForAll(g => g.TrueForAll(r => r.Replicate is not null) && g.Select(r => r.Replicate).Distinct(StringComparer.Ordinal).Count() == g.Count))
        {
            foreach (var row in differing.SelectMany(g => g))
                row.Code = $"{row.Code}-{row.Replicate}";
            return;
        }

        var first = differing[0];
        var codes = differing.Select(g => g[0].Code!).ToImmutableArray();
        var weighed = differing.Exists(g => g.Exists(r => r.Facts.ContainsKey(BatchProperties.Mass.Name)));
        var answer = source.Talk.Ask("twice", Codes.Duplicate, $"{first[0].Written} stands {Times(first.Count)} with different values (rows {string.Join(", ", first.Select(r => Ordinal.Text(r.Row.Number)))}: {What(first)})."
            + (codes.Length > 1 ? $" {Ordinal.Text(codes.Length)} codes do so." : "") + (weighed ? " Are they vessels of their own, or which row holds?" : " Which row holds?"), [weighed ? "separate" : "both", "first", "last", "leave-out"], codes);
        foreach (var group in differing)
        {
            for (var i = 0; i < group.Count; i++)
            {
                group[i].IsUndecided |= answer is null;
                group[i].IsLeftOut |= answer is "leave-out" || (answer is "first" && i > 0) || (answer is "last" && i < group.Count - 1);
                if (answer is "separate")
                    group[i].Code = $"{group[i].Code}{(char)('a' + (i % 26))}";
            }
        }
    }

    // Repeated readings differ by a little; vessels differ in what was weighed, or by much.
    private static bool Differ(List<SampleRow> group, double least)
    {
        foreach (var property in new[] { BatchProperties.Mass, BatchProperties.Volume, BatchProperties.InitialConcentration, BatchProperties.ContactTime, BatchProperties.StartPh, BatchProperties.Temperature, BatchProperties.Dose, BatchProperties.ReportedRemoval })
        {
            if (group.Select(r => r.Facts.GetValueOrDefault(property.Name)?.Value).Where(v => v is not null).Distinct().Count() > 1)
                return true;
        }

        var read = group.Select(r => r.Signals.Where(s => s.Column.Property == SpectrometryProperties.ReportedConcentration && s.Readout.Value is not null)
            .Select(s => s.Readout.Value!.Value * (r.Dilution ?? 1)).DefaultIfEmpty(double.NaN).Average()).Where(double.IsFinite).ToList();
        return read.Count > 1 && read.Max() - read.Min() > Math.Max(SameReadingWithin * Math.Abs(read.Max()), least);
    }

    private static double LeastThatCounts(List<SampleRow> rows)
        => OfTheLargest * rows.SelectMany(r => r.Signals.Where(s => s.Column.Property == SpectrometryProperties.ReportedConcentration && s.Readout.Value is not null).Select(s => s.Readout.Value!.Value * (r.Dilution ?? 1))).DefaultIfEmpty(0).Max();

    private static string What(List<SampleRow> group)
    {
        var parts = new List<string>();
        foreach (var property in group[0].Facts.Values.Where(f => f.Value is not null).Select(f => f.Property))
        {
            var values = group.Select(r => r.Facts.GetValueOrDefault(property)?.Written).ToList();
            if (values.Distinct(StringComparer.Ordinal).Count() > 1)
                parts.Add($"{Property.Named(property)?.Title} {string.Join(" and ", values)}");
        }

        var read = group.Select(r => r.Signals.Select(s => s.Cell.Text).FirstOrDefault()).ToList();
        if (read.Distinct(StringComparer.Ordinal).Count() > 1)
            parts.Add("read " + string.Join(" and ", read));
        return string.Join(", ", parts.Take(3));
    }

    private static string Times(int n) => n == 2 ? "twice" : n.ToString(CultureInfo.InvariantCulture) + " times";
}
