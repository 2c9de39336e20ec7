using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Markup;
using Holdfast.Reports.Tables;
using Holdfast.Reports.Trails;

namespace Holdfast.Reports.Documents;

/// <summary>
/// Hands out the numbers of figures, tables and trails in the order in which a reader meets them, and writes them. On a page of the bench nothing is
/// numbered: references lead to the pages of the trails.
/// </summary>
/// <param name="dossier">The study worked out.</param>
/// <param name="page">Where a page of the bench leads to; null for a document that stands alone.</param>
/// <param name="size">Size of each figure of a document; null for 120 mm.</param>
/// <param name="saysOnce">True to print a note below the first figure it belongs to, and to refer to that figure below later ones.</param>
internal sealed class Numbering(Dossier dossier, PageLinks? page = null, Func<Figure, FigureFormat>? size = null, bool saysOnce = false)
{
    private static readonly FigureFormat PageSize = new(150);

    private readonly List<NumberTrail> trails = [];
    private readonly List<string> set = [];
    private readonly Dictionary<string, Figure> noted = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> drawnAs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> tableAs = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Figure> drawn = new(StringComparer.Ordinal);
    private int figures;
    private int tables;

    /// <summary>The trails that were referred to, in the order of their notes.</summary>
    public IReadOnlyList<NumberTrail> Trails => trails;

    /// <summary>The figures that were set, by the addresses of their elements.</summary>
    public IReadOnlyDictionary<string, Figure> Figures => drawn;

    /// <summary>Ids of the tables that were set.</summary>
    public IReadOnlyList<string> Tables => set;

    /// <summary>Size of a figure of a document.</summary>
    public Func<Figure, FigureFormat> Size { get; } = size ?? (_ => new(120));

    /// <summary>True on a page of the bench, which leads on where a document names places and commands.</summary>
    public bool IsPage => page is not null;

    /// <summary>A figure with its number and caption.</summary>
    public Element Figure(Figure figure)
    {
        var heading = page is null ? string.Create(CultureInfo.InvariantCulture, $"Figure {drawnAs[figure.Id] = ++figures}.") : "";
        return InRoom("the figure " + figure.Id, () => page is null
            ? Addressed(figure, FigureHtml.Of(figure, Size(figure), heading, SvgOptions.Screen(), saysOnce ? Notes(figure) : null))
            : Html.Element("div", [("class", "figure-view"), ("data-figure", figure.Id)], FigureHtml.Of(figure, PageSize, heading, SvgOptions.Screen(page.Mark)), page.Files(figure)));
    }

    /// <summary>A table with its number; it scrolls by itself where the page is narrow.</summary>
    public Element Table(Table table)
    {
        set.Add(table.Id);
        var caption = page is null ? RichText.Literal(NextTable()).With(table.Caption) : table.Caption;
        tableAs[table.Id] = tables;
        var rows = table.Rows.Select(r => r with { Cells = [.. r.Cells.Select(Linked)] }).ToArray();
        var block = TableHtml.Of(new Table(table.Id, caption, table.Columns, rows, table.Codes) { Notes = table.Notes });
        return Scrolling(block, caption.Plain);
    }

    /// <summary>A table made and written in a room of its own: should it fall, the finding stands in its place.</summary>
    /// <param name="make">Makes it.</param>
    public Element Table(Func<Table> make) => InRoom("a table of this section", () => Table(make()));

    /// <summary>The number of the next table built by hand, for its caption; empty on a page.</summary>
    public string NextTable() => page is null ? string.Create(CultureInfo.InvariantCulture, $"Table {++tables}. ") : "";

    /// <summary>A table block whose table scrolls by itself and can be reached by keyboard.</summary>
    public static Element Scrolling(Element block, string name)
    {
        var grid = block.Content.OfType<Element>().First(e => e.Name == "table");
        var box = Html.Element("div", [("class", "scroll"), ("role", "region"), ("tabindex", "0"), ("aria-label", name)], grid);
        return Html.Element("div", block.Attributes.Select(a => (a.Name, (string?)a.Value)), block.Content.Select(c => ReferenceEquals(c, grid) ? box : c));
    }

    /// <summary>A raised link to the note that holds a number's trail; nothing when there is no such number.</summary>
    public IEnumerable<Node> Trail(string address)
    {
        if (page is not null)
        {
            return page.Trail(address) is { } leads && NumberTrail.Of(dossier.Evidence, address) is not null
                ? [Html.Element("sup", Html.Element("a", [("href", leads)], "trail"))]
                : [];
        }

        var index = trails.FindIndex(t => t.Address == address);
        if (index < 0)
        {
            if (NumberTrail.Of(dossier.Evidence, address) is not { } trail)
                return [];
            trails.Add(trail);
            index = trails.Count - 1;
            return [Link(index, anchor: true)];
        }

        return [Link(index, anchor: false)];
    }

    /// <summary>Address in the page of the note with this number, from 1.</summary>
    public static string NoteId(int number) => string.Create(CultureInfo.InvariantCulture, $"trail-{number}");

    private Element Addressed(Figure figure, Element element)
    {
        var id = FigureId(figure);
        drawn[id] = figure;
        return Html.Element(element.Name, [("id", id), .. element.Attributes.Select(a => (a.Name, (string?)a.Value))], element.Content);
    }

    // What an earlier figure says of marks, bars and lines alike is not said again.
    private List<Node> Notes(Figure figure)
    {
        var (notes, earlier) = (new List<Node>(), new List<Figure>());
        foreach (var note in figure.AllNotes)
        {
            if (noted.TryAdd(note.Plain, figure))
                notes.AddRange([" ", .. RichTextNodes.Of(note)]);
            else if (!earlier.Contains(noted[note.Plain]))
                earlier.Add(noted[note.Plain]);
        }

        if (earlier.Count > 0)
            notes.AddRange([" Notes as under ", .. earlier.SelectMany((f, i) => (Node[])[i == 0 ? "" : i == earlier.Count - 1 ? " and " : ", ", Reference(f)]), "."]);
        return notes;
    }

    /// <summary>A reference to a figure that was set: its number, leading to it.</summary>
    /// <param name="figure">The figure.</param>
    public Node Reference(Figure figure) => Html.Element("a", [("href", "#" + FigureId(figure))], string.Create(CultureInfo.InvariantCulture, $"Figure {drawnAs[figure.Id]}"));

    /// <summary>A reference to a table that was set in a document: its number, leading to it.</summary>
    /// <param name="table">Id of the table.</param>
    public Node Reference(string table) => Html.Element("a", [("href", "#" + table)], string.Create(CultureInfo.InvariantCulture, $"Table {tableAs[table]}"));

    /// <summary>Address of a figure's element in a document.</summary>
    public static string FigureId(Figure figure) => "figure-" + figure.Id;

    // A cell's own address names a number; in a page it leads to the note, where there is one.
    private Cell Linked(Cell cell)
    {
        if (cell.Address is not { } address || address.StartsWith('#'))
            return cell;
        if (page is not null)
            return cell with { Address = page.Trail(address) };
        var index = trails.FindIndex(t => t.Address == address);
        return cell with { Address = index < 0 ? null : "#" + NoteId(index + 1) };
    }

    private static Element InRoom(string place, Func<Element> work)
    {
        var outcome = Room.Of(place, work);
        return outcome.Value ?? FindingSection.Grouped(outcome.Findings);
    }

    private static Element Link(int index, bool anchor)
    {
        var number = (index + 1).ToString(CultureInfo.InvariantCulture);
        var id = NoteId(index + 1);
        return Html.Element("sup", Html.Element(
            "a", [("href", "#" + id), ("id", anchor ? id + "-from" : null), ("aria-label", "trail, note " + number)], "[" + number + "]"));
    }
}
