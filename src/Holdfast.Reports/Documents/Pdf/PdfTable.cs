using Holdfast.Reports.Markup;
using PdfSharp.Drawing;
using PdfSharp.UniversalAccessibility;

namespace Holdfast.Reports.Documents.Pdf;

/// <summary>A table on pages: its head again on each of them, rows kept whole, lines above, below and under the head, and fine ones between rows.</summary>
/// <param name="table">The table's element.</param>
internal sealed class PdfTable(Element table)
{
    private const double TypeSize = 8;
    private const double Leading = 1.22;
    private const double Side = 3;
    private const double Above = 1.6;
    private const double MostWanted = 352;
    private static readonly XPen Strong = new(XColor.FromArgb(0x1A, 0x1A, 0x1A), 1.1);
    private static readonly XPen Middle = new(XColor.FromArgb(0x1A, 0x1A, 0x1A), 0.6);
    private static readonly XPen Fine = new(XColor.FromArgb(0xC8, 0xC8, 0xC8), 0.3);

    private readonly WrittenTable grid = new(table, Asked);

    /// <summary>The least width at which no word is broken, in pt.</summary>
    public double Least => grid.Least;

    /// <summary>Draws it from where the page stands.</summary>
    /// <param name="pages">The pages.</param>
    /// <param name="caption">Its caption as atoms; null for none.</param>
    public void Draw(PdfPages pages, Action<double>? caption)
    {
        var widths = grid.Widths(pages.TextWidth);
        var rows = grid.Rows.Select(r => Row(r, widths)).ToArray();
        var heads = rows.Where((_, i) => grid.IsHead(grid.Rows[i])).ToArray();
        var body = rows.Where((_, i) => !grid.IsHead(grid.Rows[i])).ToArray();
        // The caption stays with the head and the first rows; a small table stays whole.
        var together = grid.IsWhole ? rows.Sum(Height) : heads.Concat(body.Take(2)).Sum(Height);
        if (caption is not null)
            caption(together);
        else
            pages.Need(together);
        pages.Tagged(PdfBlockLevelElementTag.Table, () =>
        {
            Head();
            foreach (var row in body)
            {
                var height = Height(row);
                if (height < pages.Room)
                    GoOn(height);
                foreach (var part in Parts(row, pages))
                {
                    GoOn(Height(part));
                    Set(part);
                    pages.Line(Fine, widths.Sum());
                }
            }

            pages.Line(Strong, widths.Sum());
        });
        pages.Down(3);

        void GoOn(double height)
        {
            if (pages.Has(height))
                return;
            pages.Line(Strong, widths.Sum());
            pages.Turn(heads.Sum(Height) + height);
            pages.Decoration(() => Ruled(row => Cells(row, (_, draw) => draw())));
        }

        void Head() => Ruled(Set);

        void Ruled(Action<IReadOnlyList<IReadOnlyList<Atom>>[]> set)
        {
            pages.Line(Strong, widths.Sum());
            foreach (var row in heads)
                set(row);
            pages.Line(Middle, widths.Sum());
        }

        void Set(IReadOnlyList<IReadOnlyList<Atom>>[] row) => pages.Tagged(
            PdfBlockLevelElementTag.TableRow,
            () => Cells(row, (cell, draw) => pages.Tagged(cell.Name == "th" ? PdfBlockLevelElementTag.TableHeaderCell : PdfBlockLevelElementTag.TableDataCell, draw)));

        void Cells(IReadOnlyList<IReadOnlyList<Atom>>[] row, Action<Element, Action> each)
        {
            var height = Height(row);
            var x = pages.Left;
            for (var c = 0; c < row.Length; c++)
            {
                var (left, cell, lines, wide) = (x, cellsOf[row][c], row[c], widths[c]);
                each(cell, () =>
                {
                    var y = pages.Y + Above;
                    foreach (var line in lines)
                    {
                        var (up, down) = Reach(line);
                        pages.Draw(line, WrittenTable.IsToTheRight(cell) ? left + wide - Side - line.Sum(a => a.Width) : left + Side, y + up);
                        y += up + down;
                    }
                });
                x += wide;
            }

            pages.Down(height);
        }
    }

    private readonly Dictionary<IReadOnlyList<IReadOnlyList<Atom>>[], Element[]> cellsOf = new(ReferenceEqualityComparer.Instance);

    private IReadOnlyList<IReadOnlyList<Atom>>[] Row(Element row, double[] widths)
    {
        var cells = WrittenTable.Cells(row);
        var lines = cells.Select((c, i) => PdfText.Lines(Atoms(c), widths[i] - (2 * Side) + 0.01)).ToArray();
        cellsOf[lines] = cells;
        return lines;
    }

    // A row higher than a page goes on on the next, line by line; all others are one part.
    private IEnumerable<IReadOnlyList<IReadOnlyList<Atom>>[]> Parts(IReadOnlyList<IReadOnlyList<Atom>>[] row, PdfPages pages)
    {
        if (Height(row) < pages.Room)
        {
            yield return row;
            yield break;
        }

        const int lines = 40;
        for (var from = 0; from < row.Max(c => c.Count); from += lines)
        {
            IReadOnlyList<IReadOnlyList<Atom>>[] part = [.. row.Select(c => (IReadOnlyList<IReadOnlyList<Atom>>)[.. c.Skip(from).Take(lines)])];
            cellsOf[part] = cellsOf[row];
            yield return part;
        }
    }

    private static double Height(IReadOnlyList<IReadOnlyList<Atom>>[] row)
        => (2 * Above) + row.Select(c => c.Sum(l => Reach(l).Up + Reach(l).Down)).DefaultIfEmpty(0).Max();

    private static (double Up, double Down) Reach(IReadOnlyList<Atom> line) => PdfPages.Reach(line, TypeSize, Leading);

    private static IEnumerable<Atom> Atoms(Element cell) => PdfText.Atoms(cell.Content, new(TypeSize, Bold: WrittenTable.IsHeading(cell)));

    private static (double Least, double Wanted) Asked(Element cell)
    {
        var (least, whole) = PdfText.Widths(Atoms(cell));
        // A number and its uncertainty stay in one line; a hash breaks where it must.
        var unbroken = Tree.IsOf(cell, "number") && !WrittenTable.IsHeading(cell) ? whole : Math.Min(least, 120);
        return (unbroken + (2 * Side) + 0.1, Math.Min(whole, MostWanted) + (2 * Side) + 0.1);
    }
}
