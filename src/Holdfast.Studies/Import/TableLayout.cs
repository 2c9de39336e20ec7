using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>Where in a grid things are: what the file says about itself, the heading, a line of units, the rows.</summary>
/// <param name="Grid">The grid.</param>
/// <param name="Preamble">Rows before the heading that hold something.</param>
/// <param name="Heading">The heading, or null when the table has none.</param>
/// <param name="Units">The line of units under it, or null.</param>
/// <param name="Body">The rows, up to the last that holds something; blank ones between them included.</param>
internal sealed record TableLayout(Grid Grid, ImmutableArray<GridRow> Preamble, GridRow? Heading, GridRow? Units, ImmutableArray<GridRow> Body)
{
    private const int RowsSearched = 200;

    /// <summary>Headings as they stand, "column 3" where there is none.</summary>
    public ImmutableArray<string> Headings { get; } = Names(Heading, Body);

    /// <summary>What the file says about itself, by key as written.</summary>
    public ImmutableSortedDictionary<string, string> Details => Say(Preamble);

    /// <summary>Signature of the layout: two files with the same headings are understood alike.</summary>
    public string Signature => string.Join('|', Headings.Select(h => HeadingWords.Key(h)));

    /// <summary>Finds them.</summary>
    /// <param name="grid">The grid.</param>
    public static TableLayout Of(Grid grid)
    {
        var rows = grid.Rows;
        var heading = FindHeading(rows);
        var first = heading is { } h ? h + 1 : FirstNumeric(rows) ?? rows.Length;
        var units = heading is not null && first < rows.Length && IsUnits(rows[first]) ? first : (int?)null;
        if (units is not null)
            first++;
        var last = rows.Length;
        while (last > first && rows[last - 1].IsBlank)
            last--;
        while (first < last && rows[first].IsBlank)
            first++;
        return new(grid, [.. rows[..(heading ?? Math.Min(first, rows.Length))].Where(r => !r.IsBlank)],
            heading is { } at ? rows[at] : null, units is { } u ? rows[u] : null, first < last ? rows[first..last] : []);
    }

    /// <summary>How many cells of a row are headings that mean something here.</summary>
    /// <param name="row">The row.</param>
    public static int KnownHeadings(GridRow row)
        => row.Cells.Count(c => c.Kind == CellKind.Text && !c.IsBlank && char.IsLetter(c.Text[0]) && HeadingWords.IsKnown(HeadingWords.Key(Header.Read(c.Text).Name)));

    // The heading is the row that names most things; where nothing is known, the words just above the first numbers.
    private static int? FindHeading(ImmutableArray<GridRow> rows)
    {
        var (best, score) = (-1, 1);
        for (var i = 0; i < Math.Min(rows.Length, RowsSearched); i++)
        {
            var known = KnownHeadings(rows[i]);
            if (known > score)
                (best, score) = (i, known);
        }
        if (best >= 0)
            return best;
        for (var i = (FirstNumeric(rows) ?? 0) - 1; i >= 0; i--)
        {
            if (rows[i].IsBlank || IsUnits(rows[i]))
                continue;
            return rows[i].Filled >= 2 && rows[i].Cells.All(c => c.IsBlank || !IsNumeric(c)) ? i : null;
        }
        return null;
    }

    private static int? FirstNumeric(ImmutableArray<GridRow> rows)
    {
        for (var i = 0; i < rows.Length; i++)
        {
            if (rows[i].Cells.Count(IsNumeric) >= 2)
                return i;
        }
        return null;
    }

    private static bool IsNumeric(Cell cell)
        => cell.Kind == CellKind.Number || (cell.Kind == CellKind.Text && CellText.Read(cell.Text, null) is CellText.Number or CellText.Ambiguous);

    private static bool IsUnits(GridRow row)
    {
        var units = 0;
        foreach (var cell in row.Cells.Where(c => !c.IsBlank))
        {
            if (IsNumeric(cell))
                return false;
            switch (Unit.Read(cell.Text))
            {
                case UnitText.Known { Unit.IsOne: false } or UnitText.Ambiguous:
                    units++;
                    break;
                case UnitText.Unknown when cell.Text.ToLowerInvariant() is not ("code" or "label" or "text" or "unit" or "units"):
                    return false;
            }
        }
        return units > 0;
    }

    private static ImmutableArray<string> Names(GridRow? heading, ImmutableArray<GridRow> body)
    {
        var width = Math.Max(heading?.Cells.Length ?? 0, heading is null && body.Length > 0 ? body.Max(r => r.Cells.Length) : 0);
        while (width > 0 && heading is not null && heading.At(width - 1).IsBlank)
            width--;
        return [.. Enumerable.Range(0, width).Select(i => heading?.At(i).Text is { Length: > 0 } name ? name : "column " + Ordinal.Text(i + 1))];
    }

    private static ImmutableSortedDictionary<string, string> Say(ImmutableArray<GridRow> preamble)
    {
        var details = Ordinal.Words.ToBuilder();
        foreach (var row in preamble)
        {
            var cells = row.Cells.Where(c => !c.IsBlank).Select(c => c.Text).ToList();
            var (key, value) = (cells[0], string.Join(' ', cells.Skip(1)));
            var mark = key.IndexOfAny([':', '=']);
            if (cells.Count == 1 && mark > 0)
                (key, value) = (key[..mark].Trim(), key[(mark + 1)..].Trim());
            else if (cells.Count == 1)
                (key, value) = ("line " + Ordinal.Text(row.Number), key);
            key = key.TrimEnd(':', '=', ' ');
            var name = key;
            for (var n = 2; details.ContainsKey(name); n++)
                name = $"{key} ({Ordinal.Text(n)})";
            details[name] = value;
        }
        return details.ToImmutable();
    }
}
