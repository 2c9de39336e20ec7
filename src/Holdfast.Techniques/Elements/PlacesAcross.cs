using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Shapes;
using static Holdfast.Techniques.Elements.AmountWords;

namespace Holdfast.Techniques.Elements;

/// <summary>Elements or oxides in rows with a column for each place: "Element | Spot 1 | Spot 2 | Mean". What is stated of the unit stands in a line or in the headings.</summary>
internal sealed class PlacesAcross : IElementTable
{
    private readonly Grid grid;
    private readonly int heading, first;
    private readonly ImmutableArray<(int Row, Species Species)> rows;
    private readonly ImmutableArray<(int Column, string Name)> places;

    private PlacesAcross(Grid grid, int heading, int first, ImmutableArray<(int Row, Species Species)> rows, ImmutableArray<(int Column, string Name)> places)
        => (this.grid, this.heading, this.first, this.rows, this.places) = (grid, heading, first, rows, places);

    /// <inheritdoc/>
    public string? Kind { get; private init; }

    /// <inheritdoc/>
    public bool HasBoth => false;

    /// <inheritdoc/>
    public string Unit { get; private init; } = "%";

    /// <inheritdoc/>
    public bool IsCertain { get; private init; }

    /// <inheritdoc/>
    public string Evidence { get; private init; } = "";

    /// <inheritdoc/>
    public ImmutableArray<GridRow> Preamble => [.. grid.Rows[..heading].Where(r => !r.IsBlank)];

    /// <inheritdoc/>
    public int HeadingLine => grid.Rows[heading].Number;

    /// <inheritdoc/>
    public int FirstRow => HeadingLine + 1;

    /// <inheritdoc/>
    public int RowsUsed => rows.Length;

    /// <inheritdoc/>
    public string ElementHeading => grid.Rows[heading].At(first).Text;

    /// <inheritdoc/>
    public string SpotHeading => "";

    /// <inheritdoc/>
    public string PowderHeading => "";

    /// <inheritdoc/>
    public string MassHeading => places[0].Name;

    /// <inheritdoc/>
    public string AtomicHeading => "";

    /// <summary>True where the columns have names of powders: "ZA-0" beside "ZA-3".</summary>
    public bool ArePowders { get; private init; }

    /// <summary>The table of a grid; null where it is none.</summary>
    /// <param name="grid">The grid.</param>
    public static PlacesAcross? Of(Grid grid)
    {
        var width = grid.Rows.IsEmpty ? 0 : grid.Rows.Max(r => r.Cells.Length);
        for (var first = 0; first < Math.Min(width, 3); first++)
        {
            ImmutableArray<(int Row, Species Species)> rows = [.. Enumerable.Range(0, grid.Rows.Length).Select(r => (r, Species: Species.In(grid.Rows[r].At(first)))).Where(r => r.Species is not null && grid.Rows[r.r].Cells.Any(TableLayout.IsNumberLike)).Select(r => (r.r, r.Species!))];

            // The same element again is the next table, with headings of its own.
            if (rows.Length >= 2 && rows.Select(r => r.Species.Symbol).Distinct(StringComparer.Ordinal).Count() == rows.Length)
                return Of(grid, first, rows);
        }

        return null;
    }

    private static PlacesAcross? Of(Grid grid, int first, ImmutableArray<(int Row, Species Species)> rows)
    {
        var heading = Enumerable.Range(0, rows[0].Row).Reverse().FirstOrDefault(r => grid.Rows[r].Filled >= 2, -1);
        var unitsLine = "";
        if (heading > 0 && IsLineOfUnits(grid.Rows[heading], first) && grid.Rows[heading - 1].Filled >= 2)
            unitsLine = string.Join(' ', grid.Rows[heading--].Cells.Select(c => c.Text));
        if (heading < 0)
            return null;
        var head = grid.Rows[heading];
        var amounts = Enumerable.Range(first + 1, Math.Max(0, head.Cells.Length - first - 1))
            .Where(i => !head.At(i).IsBlank && rows.Count(r => TableLayout.IsNumberLike(grid.Rows[r.Row].At(i))) >= 0.6 * rows.Length && !IsNoPlace(head.At(i).Text)).ToList();
        var powders = amounts.TrueForAll(i => !IsPlace(head.At(i)) && head.At(i).Text.Any(char.IsDigit) && !head.At(i).Text.Contains('%', StringComparison.Ordinal) && FileWords.IsCode(head.At(i).Text) && Species.Headed(head.At(i).Text, IsAmount) is null);
        if (amounts.Count < 2 || (!powders && amounts.Exists(i => !IsPlace(head.At(i)))))
            return null;
        var lines = grid.Rows.Where((r, i) => i < heading || r.Filled == 1).SelectMany(r => r.Cells.Select(c => c.Text)).Append(grid.Sheet ?? "").ToList();
        var words = string.Join(' ', amounts.Select(i => head.At(i).Text).Append(unitsLine).Append(head.At(first).Text));
        var kind = PercentKind.In([words]) ?? PercentKind.In(lines);
        var per = PerGram(words) ?? lines.Select(PerGram).FirstOrDefault(p => p is not null);
        var percent = words.Contains('%', StringComparison.Ordinal) || kind is not null || lines.Exists(l => l.Contains('%', StringComparison.Ordinal));
        if (!percent && per is null)
            return null;
        ImmutableArray<(int Column, string Name)> places = [.. amounts.Select(i => (i, head.At(i).Text))];
        var table = new PlacesAcross(grid, heading, first, rows, places) { Kind = kind ?? (per is not null ? ElementFiles.Mass : null), Unit = kind is null && per is not null ? per : "%", ArePowders = powders };
        table = table.WithoutStatistics();
        return rows.Any(r => r.Species.Oxide is not null) && !OxideSums.AreWhole(table, grid) ? null : table;
    }

    /// <inheritdoc/>
    public DecimalEvidence Marks() => DecimalEvidence.Of(new TableLayout(grid, Preamble, grid.Rows[heading], null, [.. rows.Select(r => grid.Rows[r.Row])]), [.. places.Select(p => p.Column)]);

    /// <inheritdoc/>
    public ImmutableArray<ElementLine> Lines(DecimalMark mark)
        => [.. places.SelectMany(p => rows.Select(r => (r, p, Amount: MeasuredTable.Number(grid.Rows[r.Row].At(p.Column), mark)))).Where(x => x.Amount is not null).Select(x => new ElementLine(grid.Rows[x.r.Row].Number, x.p.Name, x.r.Species, x.Amount, null) { Powder = ArePowders ? x.p.Name : null })];

    /// <inheritdoc/>
    public ImmutableArray<ColumnUnderstanding> Columns()
        => [.. Enumerable.Range(0, grid.Rows.Max(r => r.Cells.Length)).Select(i => i == first ? One(i, ColumnUse.Measured, "element", null, null)
            : places.Any(p => p.Column == i) ? One(i, ColumnUse.Measured, Kind == ElementFiles.Atomic ? "atomic percent" : "amount by mass", Unit, null)
            : One(i, ColumnUse.LeftOut, null, null, "It is no place: mean and scatter are worked out anew."))];

    private ColumnUnderstanding One(int column, ColumnUse use, string? measures, string? unit, string? remark) => new(
        column, grid.Rows[heading].At(column) is { IsBlank: false } name ? name.Text : "column " + (column + 1).ToString(CultureInfo.InvariantCulture), use, null, unit, null, remark,
        [.. rows.Select(r => grid.Rows[r.Row].At(column)).Where(c => !c.IsBlank).Take(3).Select(c => c.Text)], [])
    { Measures = measures };

    // Columns behind the places that hold their mean, scatter or largest are none, whatever their language calls them.
    private PlacesAcross WithoutStatistics()
    {
        var mark = Marks().Mark ?? DecimalMark.Point;
        var own = new List<(int Column, string Name)>();
        foreach (var place in places)
        {
            var lines = rows.Select(r => (Before: (IReadOnlyList<double>)[.. own.Select(o => MeasuredTable.Number(grid.Rows[r.Row].At(o.Column), mark)).OfType<double>()], Cell: grid.Rows[r.Row].At(place.Column)))
                .Select(l => (l.Before, Value: MeasuredTable.Number(l.Cell, mark), l.Cell.Text)).Where(l => l.Value is not null).Select(l => (l.Before, l.Value!.Value, l.Text)).ToList();
            if (!ClosingStatistics.Are(lines))
                own.Add(place);
        }

        return new(grid, heading, first, rows, [.. own])
        {
            ArePowders = ArePowders,
            Kind = Kind,
            Unit = Unit,
            IsCertain = Kind is not null && Unit == "%",
            Evidence = $"{rows.Length.ToString(CultureInfo.InvariantCulture)} {(rows.Any(r => r.Species.Oxide is not null) ? "oxides" : "elements")} in rows, {own.Count.ToString(CultureInfo.InvariantCulture)} {(ArePowders ? "powders" : "places")} in columns",
        };
    }

    // A place is called one, or has a number or nothing but one.
    private static bool IsPlace(Cell heading)
        => MeasuredTable.Has(heading.Text, Places) || (heading.Text.Length <= 3 && heading.Text.All(char.IsDigit)) || (heading.Text.Length <= 3 && char.IsLetter(heading.Text[0]) && heading.Text[1..].All(char.IsDigit) && Species.In(heading) is null);

    private static bool IsNoPlace(string heading)
        => Footer.IsSummary(heading) || IsError(heading) || IsTotal(heading) || IsWanted(heading) || (MeasuredTable.Has(heading, Others) && !MeasuredTable.Has(heading, Places));

    private static bool IsLineOfUnits(GridRow row, int first) => row.Cells.Where((c, i) => i > first && !c.IsBlank).All(c => !TableLayout.IsNumeric(c) && (c.Text.Contains('%', StringComparison.Ordinal) || PerGram(c.Text) is not null));
}
