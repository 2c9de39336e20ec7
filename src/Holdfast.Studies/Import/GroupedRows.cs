using System.Collections.Immutable;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Rows in groups: a setting that stands only in the first row of each, and codes (a, b, c) that begin anew in each.</summary>
internal static class GroupedRows
{
    private const int LongestLetter = 3;
    private static readonly ImmutableArray<Property> Settings =
        [BatchProperties.InitialConcentration, BatchProperties.ContactTime, BatchProperties.Dose, BatchProperties.StartPh, BatchProperties.Temperature, BatchProperties.Volume];

    /// <summary>Fills settings down and gives each row a code of its own.</summary>
    /// <param name="rows">The rows; settled in place.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    public static void Settle(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        foreach (var column in columns.Where(c => c is { Use: ColumnUse.Fact, Property: { } p } && Settings.Contains(p)))
            FillDown(rows, column, source);
        NameByGroup(rows, source);
    }

    // Blank cells under a setting mean "as above" where every group is opened by a filled one.
    private static void FillDown(List<SampleRow> rows, Column column, TableSource source)
    {
        var name = column.Property!.Name;
        var filled = rows.Count(r => r.Facts.ContainsKey(name));
        var blank = rows.Count(r => r.Row.At(column.Index).IsBlank && (r.Signals.Count > 0 || !r.Facts.IsEmpty));
        if (filled < 2 || blank < filled || !rows[0].Facts.ContainsKey(name) || !rows[1].Row.At(column.Index).IsBlank)
            return;
        if (source.Talk.Assume("groups:" + column.Heading, Codes.Ambiguous, $"{column.Heading} stands in the first row of each group only; it is taken for the rows below it, up to the next.", ["fill", "leave-blank"], column.Heading) != "fill")
            return;
        Fact? last = null;
        foreach (var row in rows)
        {
            if (row.Facts.TryGetValue(name, out var own))
                last = own;
            else if (last is not null && row.Row.At(column.Index).IsBlank)
                row.Facts = row.Facts.SetItem(name, last);
        }
    }

    // a, b, c under 10 mg/L and again under 20 mg/L: the setting of the group is part of the name.
    private static void NameByGroup(List<SampleRow> rows, TableSource source)
    {
        var named = rows.Where(r => r is { IsLeftOut: false, Written.Length: > 0 }).ToList();
        var codes = named.GroupBy(r => r.Written, StringComparer.OrdinalIgnoreCase).ToList();
        if (codes.Count < 2 || codes.Exists(g => g.Count() < 2) || codes.Exists(g => g.Key.Length > LongestLetter) || source.Known.Keys.Any(k => codes.Exists(g => string.Equals(g.Key, k, StringComparison.OrdinalIgnoreCase))))
            return;
        foreach (var setting in Settings)
        {
            var values = named.Select(r => r.Facts.GetValueOrDefault(setting.Name)?.Value).ToList();
            if (values.Contains(null) || values.Distinct().Count() < 2 || named.Zip(values, (r, v) => (r.Written, v)).Distinct().Count() < named.Count)
                continue;
            foreach (var (row, value) in named.Zip(values))
                row.Written = $"{value!.Value.ToString("0.####", System.Globalization.CultureInfo.InvariantCulture)}{(char.IsDigit(row.Written[0]) ? "-" : "")}{row.Written}";
            source.Talk.Note(Codes.UnknownSample, Weight.Note, $"The same codes begin anew with each {setting.Title}, so that is put before them: {named[0].Written} and so on.", named[0].Written);
            return;
        }

        var series = named.Select(r => r.Facts.GetValueOrDefault(SampleProperties.Series.Name)?.Words).ToList();
        if (series.Contains(null) || named.Zip(series, (r, s) => (r.Written, s)).Distinct().Count() < named.Count)
            return;
        foreach (var (row, group) in named.Zip(series))
            row.Written = $"{group} {row.Written}";
        source.Talk.Note(Codes.UnknownSample, Weight.Note, $"The same codes begin anew in each series, so its name is put before them: {named[0].Written} and so on.", named[0].Written);
    }
}
