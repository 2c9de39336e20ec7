using System.Collections.Frozen;
using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>A table of named columns that is no table of samples: its cells by heading, row by row.</summary>
internal sealed class SheetCells
{
    private readonly TableSource source;
    private readonly ImmutableArray<string> keys;
    private readonly ImmutableArray<Column> columns;
    private readonly DecimalMark? mark;
    private readonly List<int> undecided = [];

    /// <summary>The cells of a table.</summary>
    public SheetCells(TableSource source, DecimalMark? mark)
    {
        (this.source, this.mark) = (source, mark);
        keys = [.. source.Layout.Headings.Select(h => HeadingWords.Key(Header.Read(h).Name))];
        columns = [.. source.Layout.Headings.Select((h, i) => new Column(i, h, ColumnUse.Cell, null, null, null))];
        Rows = [.. source.Layout.Body.Where(r => !r.IsBlank)];
    }

    /// <summary>Rows that hold something.</summary>
    public ImmutableArray<GridRow> Rows { get; }

    /// <summary>Keys of the headings, by column.</summary>
    public ImmutableArray<string> Keys => keys;

    /// <summary>Place of the first column with one of these headings, or −1.</summary>
    public int Place(FrozenSet<string> words)
    {
        for (var i = 0; i < keys.Length; i++)
        {
            if (words.Contains(keys[i]))
                return i;
        }
        return -1;
    }

    /// <summary>The words of a cell, or null.</summary>
    public string? Words(GridRow row, int column)
    {
        if (column < 0 || row.At(column) is not { IsBlank: false } cell)
            return null;
        columns[column].Show(cell);
        return cell.Text;
    }

    /// <summary>The number of a cell, or null; what is written and is no number is noted as odd.</summary>
    public double? Number(GridRow row, int column) => column < 0 ? null : columns[column].Read(row.At(column), row.Number, mark).Value;

    /// <summary>A row cannot be taken in as it is: asks whether to leave it out, and says whether to.</summary>
    public void LeaveOut(GridRow row, string why)
    {
        if (source.Talk.Ask("row:" + Ordinal.Text(row.Number), Codes.OddCell, $"Row {Ordinal.Text(row.Number)}: {why} Leave it out, or mend the file.", ["leave-out"], "row " + Ordinal.Text(row.Number)) is null)
            undecided.Add(row.Number);
    }

    /// <summary>The draft, with what the rows bring.</summary>
    /// <param name="brings">What they bring.</param>
    /// <param name="ready">How many rows brought something.</param>
    public Draft Draft(TakenIn brings, int ready) => new(
        new RowCount(ready, undecided.Count, source.Layout.Body.Length - Rows.Length, Rows.Length - ready - undecided.Count),
        [.. columns.Select(c => c.Understood())], brings);
}
