using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Particles;

/// <summary>Units of sizes: above a column, beside each number, or in a line above the table.</summary>
internal static class SizeUnits
{
    private static readonly Unit Nanometre = Unit.Parse("nm");

    /// <summary>The unit of length of a column: what its heading states, else the one that most of its numbers have beside them, if all have one; null for none.</summary>
    /// <param name="table">The table.</param>
    /// <param name="column">Its place, from 0.</param>
    public static string? Of(MeasuredTable table, int column)
    {
        if (table.UnitOf(column) is { } unit && unit.IsConvertibleTo(Nanometre))
            return unit.Plain;
        if (table.Says(column).Split(' ', '_', '/', ',', '(', ')', '[', ']').LastOrDefault(w => w.Length > 0) is { } last && Is(last))
            return Unit.Parse(last).Plain;
        var beside = table.Body.Select(r => r.At(column)).Where(TableLayout.IsNumberLike).Select(Beside).ToList();
        return beside.Count == 0 || beside.Contains(null) ? null : beside.GroupBy(u => u, StringComparer.Ordinal).MaxBy(g => g.Count())!.Key;
    }

    /// <summary>The only unit of length in lines of text; null for none or several. Behind a number it is of that number alone: "scale bar 200 nm".</summary>
    /// <param name="lines">The lines.</param>
    public static string? InLines(ImmutableArray<GridRow> lines)
        => lines.SelectMany(r => r.Cells).Where(c => !ScreenPixels.IsScale(c.Text)).SelectMany(c => c.Text.Split([' ', '_', '/', ',', '(', ')', '[', ']', ':', '.', ';'], StringSplitOptions.RemoveEmptyEntries) is var words ? words.Where((w, i) => Is(w) && !(i > 0 && char.IsAsciiDigit(words[i - 1][0]) && char.IsAsciiDigit(words[i - 1][^1]))) : []).Select(w => Unit.Parse(w).Plain).Distinct(StringComparer.Ordinal).ToList() is [var only] ? only : null;

    /// <summary>True for a unit of length of two letters or more: "nm", "µm".</summary>
    /// <param name="word">A word.</param>
    public static bool Is(string word) => word.Length > 1 && Unit.Read(word) is UnitText.Known known && known.Unit.IsConvertibleTo(Nanometre);

    /// <summary>Numbers of a column in one unit: what stands beside a number holds for it, else what its heading states.</summary>
    /// <param name="table">The table.</param>
    /// <param name="column">Its place, from 0.</param>
    /// <param name="mark">Decimal mark.</param>
    /// <param name="unit">The unit, or null while it is asked.</param>
    public static ImmutableArray<double?> Numbers(MeasuredTable table, int column, DecimalMark? mark, string? unit)
    {
        var stated = Of(table, column);
        return [.. table.Body.Select(r => MeasuredTable.Number(r.At(column), mark) is { } value ? In(value, Beside(r.At(column)) ?? stated, unit) : (double?)null)];
    }

    /// <summary>How many numbers of a column were written in another unit, in words; null for none.</summary>
    /// <param name="table">The table.</param>
    /// <param name="column">Its place, from 0.</param>
    /// <param name="unit">The unit.</param>
    public static string? Changed(MeasuredTable table, int column, string? unit)
    {
        var stated = Of(table, column);
        var others = table.Body.Select(r => r.At(column)).Where(TableLayout.IsNumberLike).Select(c => Beside(c) ?? stated).Where(u => u is not null && u != unit).ToList();
        return unit is null || others.Count == 0 ? null : $"{others.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)} written in {string.Join(" or ", others.Distinct(StringComparer.Ordinal))} are kept in {unit}.";
    }

    private static double In(double value, string? own, string? unit) => own is null || unit is null || own == unit ? value : Unit.Parse(own).Convert(value, Unit.Parse(unit));

    private static string? Beside(Cell cell) => CellParts.Split(cell.Text) is { Unit: UnitText.Known known } && known.Unit.IsConvertibleTo(Nanometre) ? known.Unit.Plain : null;
}
