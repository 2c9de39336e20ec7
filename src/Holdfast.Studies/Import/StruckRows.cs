using System.Collections.Immutable;
using Holdfast.Studies.History;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import;

/// <summary>Rows that a remark of their own declares void: "crossed out, filter torn", "skreślone", "void, see next line".</summary>
internal static class StruckRows
{
    private static readonly HashSet<string> Words = new(
        ("void voided crossed struck strikethrough discard discarded rejected cancelled invalid gestrichen verworfen ungultig barre barree raye annule tachado tachada anulado anulada descartado descartada riscado riscada annullato barrato "
        + "doorgehaald vervallen skreslone skreslony skreslona przekreslone iptal gecersiz overstruken skrtnuto neplatne dicoret batal").Split(' '), StringComparer.Ordinal);

    /// <summary>Leaves them out, where that is not declined.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="columns">The columns.</param>
    /// <param name="source">The table.</param>
    public static void Settle(List<SampleRow> rows, ImmutableArray<Column> columns, TableSource source)
    {
        var known = columns.Where(c => c.Use is ColumnUse.Code or ColumnUse.Role || c.Property?.Holds == Holds.Number).Select(c => c.Index).ToHashSet();
        var struck = rows.Where(r => !r.IsLeftOut && IsStruck(r.Row, known)).ToList();
        if (struck.Count == 0 || struck.Count * 2 > rows.Count)
            return;
        if (source.Talk.Assume("struck-rows", Codes.OddCell, $"Left out, since the sheet itself says so: {string.Join(", ", struck.Take(6).Select(r => $"{r.Written} (row {Ordinal.Text(r.Row.Number)})"))}.", ["leave-out", "take"], [.. struck.Select(r => r.Written)]) != "leave-out")
            return;
        foreach (var row in struck)
            row.IsLeftOut = true;
    }

    private static bool IsStruck(GridRow row, HashSet<int> known)
    {
        for (var i = 0; i < row.Cells.Length; i++)
        {
            var cell = row.Cells[i];
            if (!cell.IsBlank && cell.Kind == CellKind.Text && (!known.Contains(i) || Lexicon.HasSpace(cell.Text)) && Lexicon.Tokens(cell.Text).Any(Words.Contains))
                return true;
        }

        return false;
    }
}
