using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Elements;

/// <summary>A table of elements that goes on below with other elements of the same powders, perhaps in another unit, as reports are split over pages. Units that differ are brought to mg/g.</summary>
internal sealed class ElementPages : IElementTable
{
    private readonly Grid grid;
    private readonly ImmutableArray<ElementTable> pages;

    private ElementPages(Grid grid, ImmutableArray<ElementTable> pages) => (this.grid, this.pages) = (grid, pages);

    /// <inheritdoc/>
    public string? Kind => pages[0].Kind;

    /// <inheritdoc/>
    public bool HasBoth => false;

    /// <inheritdoc/>
    public string Unit => pages.Select(p => p.Unit).Distinct(StringComparer.Ordinal).Count() == 1 ? pages[0].Unit : "mg/g";

    /// <inheritdoc/>
    public bool IsCertain => pages.Any(p => p.IsCertain);

    /// <inheritdoc/>
    public string Evidence => string.Join("; ", pages.Select(p => p.Evidence));

    /// <inheritdoc/>
    public ImmutableArray<GridRow> Beside => [.. pages.SelectMany(p => p.Beside)];

    /// <inheritdoc/>
    public ImmutableArray<GridRow> Preamble => pages[0].Preamble;

    /// <inheritdoc/>
    public int HeadingLine => pages[0].HeadingLine;

    /// <inheritdoc/>
    public int FirstRow => pages[0].FirstRow;

    /// <inheritdoc/>
    public int RowsUsed => pages.Sum(p => p.RowsUsed);

    /// <inheritdoc/>
    public string ElementHeading => "";

    /// <inheritdoc/>
    public string SpotHeading => pages[0].SpotHeading;

    /// <inheritdoc/>
    public string PowderHeading => pages[0].PowderHeading;

    /// <inheritdoc/>
    public string MassHeading => pages[0].MassHeading;

    /// <inheritdoc/>
    public string AtomicHeading => "";

    /// <summary>The pages of a grid; null where it has one, or where they do not belong together.</summary>
    /// <param name="grid">The grid.</param>
    public static ElementPages? Of(Grid grid)
    {
        var first = Enumerable.Range(0, grid.Rows.Length).FirstOrDefault(i => Elements(grid.Rows[i]).Count > 1, -1);
        if (first < 0 || NextHeading(grid, first) == grid.Rows.Length)
            return null;
        var pages = ImmutableArray.CreateBuilder<ElementTable>();
        for (int at = first, next; at < grid.Rows.Length; at = next)
        {
            next = NextHeading(grid, at);
            if (ElementTable.Of(grid with { Rows = [.. grid.Rows[..first], .. grid.Rows[at..next]] }) is not { PowderHeading.Length: > 0, HasBoth: false } page)
                return null;
            pages.Add(page);
        }

        // Other elements of the same powders, by mass throughout. For names any mark will do.
        var lines = pages.Select(p => p.Lines(p.Marks().Mark ?? DecimalMark.Point)).ToList();
        var powders = lines.Select(l => string.Join('|', l.Select(x => x.Powder).Distinct(StringComparer.Ordinal))).Distinct(StringComparer.Ordinal).Count();
        var elements = lines.Select(l => l.Select(x => x.Element.Symbol).ToHashSet(StringComparer.Ordinal)).ToList();
        var apart = Enumerable.Range(1, elements.Count - 1).All(i => !elements.Take(i).Any(e => e.Overlaps(elements[i])));
        return powders == 1 && apart && pages.All(p => p.PowderHeading == pages[0].PowderHeading && (p.Kind == pages[0].Kind)) && (pages[0].Kind == ElementFiles.Mass || pages.All(p => p.Unit == pages[0].Unit)) ? new(grid, pages.ToImmutable()) : null;
    }

    /// <summary>The row of the next heading of other elements below one; the number of rows where there is none.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="heading">Index of the heading.</param>
    public static int NextHeading(Grid grid, int heading)
    {
        var own = Elements(grid.Rows[heading]);
        return Enumerable.Range(heading + 1, grid.Rows.Length - heading - 1).FirstOrDefault(i => Elements(grid.Rows[i]) is { Count: > 1 } others && !others.SetEquals(own), grid.Rows.Length);
    }

    // A report has one mark: "38.92" on one page tells what "2,140" on the next is.
    /// <inheritdoc/>
    public DecimalEvidence Marks()
        => DecimalEvidence.Of(new TableLayout(grid, Preamble, grid.Rows.First(r => r.Number == HeadingLine), null, [.. pages.SelectMany(p => p.AmountRows)]), [.. pages.SelectMany(p => p.AmountColumns).Distinct()]);

    /// <inheritdoc/>
    public ImmutableArray<ElementLine> Lines(DecimalMark mark)
        => [.. pages.SelectMany(p => p.Lines(mark).Select(l => p.Unit == Unit ? l : l with { Mass = l.Mass is { } mass ? mass * InMilligramsPerGram(p.Unit) : null }))];

    /// <inheritdoc/>
    public ImmutableArray<ColumnUnderstanding> Columns()
        => [.. pages.SelectMany(p => p.Columns()).GroupBy(c => c.Index).Select(g => g.OrderBy(c => c.Use == ColumnUse.LeftOut ? 1 : 0).First() is var one && g.Count(c => c.Use != ColumnUse.LeftOut) > 1 && g.Select(c => c.Heading).Distinct(StringComparer.Ordinal).Count() > 1
            ? one with { Heading = string.Join(" / ", g.Select(c => c.Heading)), Measures = string.Join(" / ", g.Select(c => c.Measures)), Unit = string.Join(" / ", g.Select(c => c.Unit)) } : one).OrderBy(c => c.Index)];

    private static double InMilligramsPerGram(string unit) => unit switch { "%" => 10, "mg/kg" => 1e-3, _ => 1 };

    private static HashSet<string> Elements(GridRow row)
        => row.Cells.Any(c => !c.IsBlank && TableLayout.IsNumeric(c)) ? [] : [.. row.Cells.Select(c => Species.Headed(c.Text, AmountWords.IsAmount)?.Symbol).OfType<string>()];
}
