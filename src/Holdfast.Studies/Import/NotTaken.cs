using System.Collections.Immutable;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>What of a file is not used, counted and named: rows, columns, sheets. It stays in the original.</summary>
public static class NotTaken
{
    private const int Named = 8;

    /// <summary>One line for each kind: "2 columns not used: Batch, Operator".</summary>
    /// <param name="understanding">What the file was understood to be.</param>
    public static ImmutableArray<string> Of(Understanding understanding)
    {
        ArgumentNullException.ThrowIfNull(understanding);
        var lines = ImmutableArray.CreateBuilder<string>();
        var read = understanding.Tables.Where(t => t.LeftOut is null && t.Kind is not TableKind.Unknown).ToList();
        if (read.Sum(t => t.Rows.LeftOut) is > 0 and var rows)
            lines.Add($"{Count(rows, "row")} left out");
        List<string> columns = [.. read.SelectMany(Columns).Select(c => c.Heading)];
        if (columns.Count > 0)
            lines.Add($"{Count(columns.Count, "column")} not used: {Listed(columns)}");
        List<string> sheets = [.. understanding.Tables.Except(read).Select(t => $"{t.Sheet ?? "a block"} ({t.LeftOut ?? "nothing in it is understood"})")];
        if (sheets.Count > 0)
            lines.Add($"{(understanding.Tables.Any(t => t.Sheet is not null) ? Count(sheets.Count, "sheet") : Count(sheets.Count, "block"))} skipped: {Listed(sheets)}");
        return lines.ToImmutable();
    }

    /// <summary>The columns of a table that hold something and are not used.</summary>
    /// <param name="table">The table.</param>
    public static IEnumerable<ColumnUnderstanding> Columns(TableUnderstanding table)
    {
        ArgumentNullException.ThrowIfNull(table);
        return table.Columns.Where(c => c.Use is ColumnUse.NotUnderstood or ColumnUse.LeftOut or ColumnUse.WithoutUnit && !c.Examples.IsEmpty);
    }

    private static string Listed(List<string> names) => string.Join(", ", names.Take(Named)) + (names.Count > Named ? $" and {Ordinal.Text(names.Count - Named)} more" : "");

    private static string Count(int n, string one) => $"{Ordinal.Text(n)} {one}{(n == 1 ? "" : "s")}";
}
