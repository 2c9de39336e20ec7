using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Annotations;
using PdfSharp.UniversalAccessibility;

namespace Holdfast.Reports.Documents.Pdf;

/// <summary>
/// Pages that fill from the top; where places lie is remembered, so that links find them once all is set. Everything drawn is part of the tree of what the document means
/// (ISO 32000-1, 14.8), which is how it is read aloud, or is marked as decoration.
/// </summary>
/// <param name="file">The file.</param>
/// <param name="faces">The typefaces.</param>
/// <param name="notice">Stands above on each page; empty for nothing.</param>
/// <param name="foot">Stands below, to the left.</param>
/// <param name="total">How many pages there will be; 0 while they are being counted.</param>
internal sealed class PdfPages(PdfDocument file, PdfFaces faces, string notice, string foot, int total) : IDisposable
{
    // ISO 216: A4 is 210 mm by 297 mm, 72 points to an inch of 25.4 mm.
    private const double PerMm = 72 / 25.4;
    private const double Short = 210 * PerMm;
    private const double Long = 297 * PerMm;
    private const double Margin = 20 * PerMm;
    private const double SomeLines = 60;

    private readonly Dictionary<string, (int Page, double Y)> places = new(StringComparer.Ordinal);
    private readonly List<(int Page, XRect Box, string To)> links = [];
    private readonly StructureBuilder tree = UAManager.ForDocument(file).StructureBuilder;
    private readonly Stack<PdfBlockLevelElementTag> open = new();
    private XGraphics? canvas;
    private readonly Queue<(double Height, Action Set)> waiting = new();
    private readonly Queue<(double Height, Action Set)> afloat = new();
    private bool onItsSide;

    /// <summary>Width of the text on an upright page, in pt.</summary>
    public static double UprightWidth => Short - (2 * Margin);

    /// <summary>Width of the text on this page, in pt.</summary>
    public double TextWidth => (onItsSide ? Long : Short) - (2 * Margin);

    /// <summary>Left end of the text, in pt.</summary>
    public double Left => Margin;

    /// <summary>Where the next thing stands, in pt from the top.</summary>
    public double Y { get; private set; }

    /// <summary>Height of the text on a page, in pt.</summary>
    public double Room => (onItsSide ? Short : Long) - (2 * Margin);

    /// <summary>How many pages there are.</summary>
    public int Count => file.PageCount;

    /// <summary>True where nothing stands on the page yet.</summary>
    public bool IsFresh => Count > 0 && Y <= Margin;

    /// <summary>True when there is so much room left.</summary>
    /// <param name="height">Height in pt.</param>
    public bool Has(double height) => Count > 0 && Y + height <= Margin + Room + 0.01;

    /// <summary>Begins a new page unless there is so much room left, and sets the headings that wait for what follows them.</summary>
    /// <param name="height">Height in pt.</param>
    public void Need(double height)
    {
        Turn(height + waiting.Sum(w => w.Height));
        // Setting one asks for room itself: the others must not be taken for what it waits for.
        (double Height, Action Set)[] headings = [.. waiting];
        waiting.Clear();
        foreach (var heading in headings)
            heading.Set();
    }

    /// <summary>Lets a heading wait for what it stands over, so that it never stands alone at the foot of a page.</summary>
    /// <param name="height">Its height in pt.</param>
    /// <param name="set">Sets it.</param>
    public void Wait(double height, Action set) => waiting.Enqueue((height, set));

    /// <summary>
    /// Sets what stays whole and may stand a little later than it is said, such as a figure: here where there is room, else at the head of the next page, while the text that
    /// follows fills this one. The order among them is kept.
    /// </summary>
    /// <param name="height">Its height in pt.</param>
    /// <param name="set">Sets it; asks for no room itself.</param>
    public void Float(double height, Action set)
    {
        var headings = waiting.Sum(w => w.Height);
        // A heading goes to the next page with its figure unless some lines of text can stand below it here.
        if (afloat.Count > 0 || (Count > 0 && !IsFresh && !Has(height + headings) && (headings <= 0 || Has(headings + SomeLines))))
        {
            afloat.Enqueue((height, set));
            return;
        }

        Need(height);
        set();
    }

    /// <summary>Sets what still floats, before something that must stand behind it.</summary>
    public void Land()
    {
        while (afloat.Count > 0)
            NewPage();
    }

    /// <summary>Begins a new page, or more where figures fill it, until there is so much room; none where there is already.</summary>
    /// <param name="height">Height in pt.</param>
    public void Turn(double height)
    {
        while (Count == 0 || (!Has(height) && !IsFresh))
            NewPage();
    }

    private void NewPage()
    {
        var page = file.AddPage();
        (page.Width, page.Height) = onItsSide ? (XUnit.FromPoint(Long), XUnit.FromPoint(Short)) : (XUnit.FromPoint(Short), XUnit.FromPoint(Long));
        var last = canvas;
        canvas = XGraphics.FromPdfPage(page);
        last?.Dispose();
        Y = Margin;
        Edges(page);
        if (onItsSide || afloat.Count == 0)
            return;
        // What is being set goes on behind the figures.
        foreach (var _ in open)
            tree.End();
        while (afloat.Count > 0 && (IsFresh || Has(afloat.Peek().Height)))
            afloat.Dequeue().Set();
        foreach (var tag in open.Reverse())
            tree.BeginElement(tag);
    }

    /// <summary>Draws as a part of the document: a paragraph, a cell. Room is asked for before, so that no heading that waits comes to stand within.</summary>
    /// <param name="tag">What it is.</param>
    /// <param name="draw">Draws it.</param>
    public void Tagged(PdfBlockLevelElementTag tag, Action draw)
    {
        tree.BeginElement(tag);
        open.Push(tag);
        draw();
        open.Pop();
        tree.End();
    }

    /// <summary>Draws what is no part of the document: rules, what stands on every page, the head of a table again.</summary>
    /// <param name="draw">Draws it.</param>
    public void Decoration(Action draw)
    {
        tree.BeginArtifact();
        draw();
        tree.End();
    }

    /// <summary>A picture with words for who does not see it.</summary>
    /// <param name="picture">The picture.</param>
    /// <param name="words">What it shows.</param>
    /// <param name="box">Where, in pt from the top left corner.</param>
    public void Picture(XImage picture, string words, XRect box)
    {
        tree.BeginElement(PdfIllustrationElementTag.Figure, words, new XRect(box.X, file.Pages[Count - 1].Height.Point - box.Bottom, box.Width, box.Height));
        canvas!.DrawImage(picture, box);
        tree.End();
    }

    /// <summary>Lays the pages that follow on their side, or upright again.</summary>
    /// <param name="side">True for on their side.</param>
    public void Lie(bool side)
    {
        if (side == onItsSide)
            return;
        Land();
        onItsSide = side;
        if (Count > 0)
            NewPage();
    }

    /// <summary>Leaves room.</summary>
    /// <param name="height">Height in pt.</param>
    public void Down(double height) => Y += height;

    /// <summary>A line across at this height.</summary>
    /// <param name="pen">How it looks.</param>
    /// <param name="width">Its length in pt.</param>
    public void Line(XPen pen, double width) => Decoration(() => canvas!.DrawLine(pen, Left, Y, Left + width, Y));

    /// <summary>Makes a place known at this height.</summary>
    /// <param name="id">Its address, or null.</param>
    public void Place(string? id)
    {
        if (id is not null)
            places.TryAdd(id, (Count, Y));
    }

    /// <summary>A heading in the list of what the document holds.</summary>
    /// <param name="title">The heading.</param>
    /// <param name="under">What it stands under; null for the top.</param>
    public PdfOutline Bookmark(string title, PdfOutline? under)
    {
        var page = file.Pages[Count - 1];
        var mark = new PdfOutline(title, page, opened: false) { PageDestinationType = PdfPageDestinationType.Xyz, Left = Left, Top = page.Height.Point - Y + 8 };
        (under?.Outlines ?? file.Outlines).Add(mark);
        return mark;
    }

    /// <summary>Draws a line of atoms.</summary>
    /// <param name="line">The atoms.</param>
    /// <param name="x">Left end in pt.</param>
    /// <param name="y">Base line in pt.</param>
    public void Draw(IReadOnlyList<Atom> line, double x, double y)
    {
        foreach (var atom in line)
        {
            atom.Draw(canvas!, faces, x, y);
            if (atom.Place is { } place)
                places.TryAdd(place, (Count, y - 10));
            if (atom.LeadsTo is { } to && atom.Width > 0)
            {
                var box = new XRect(x, y - atom.Above, atom.Width, atom.Above + atom.Below);
                // Words of one link are one box.
                if (links.Count > 0 && links[^1] is var last && last.To == to && last.Page == Count && Math.Abs(last.Box.Right - x) < 0.1 && Math.Abs(last.Box.Bottom - box.Bottom) < 4)
                    links[^1] = (last.Page, XRect.Union(last.Box, box), to);
                else
                    links.Add((Count, box, to));
            }

            x += atom.Width;
        }
    }

    /// <summary>How far a line reaches above and below its base line, in pt.</summary>
    /// <param name="line">The atoms.</param>
    /// <param name="size">Size of its text in pt.</param>
    /// <param name="leading">From one base line to the next, as a share of the size.</param>
    public static (double Up, double Down) Reach(IReadOnlyList<Atom> line, double size, double leading)
    {
        var (up, down) = (0.78 * size, (leading - 0.78) * size);
        return (Math.Max(up, line.Select(a => a.Above + 0.5).DefaultIfEmpty(0).Max()), Math.Max(down, line.Select(a => a.Below + 0.5).DefaultIfEmpty(0).Max()));
    }

    /// <summary>Sets every link whose place is known.</summary>
    public void Finish()
    {
        foreach (var (page, box, to) in links)
        {
            if (!places.TryGetValue(to, out var place))
                continue;
            var height = file.Pages[page - 1].Height.Point;
            var link = PdfLinkAnnotation.CreateDocumentLink(new PdfRectangle(new XPoint(box.Left, height - box.Bottom), new XPoint(box.Right, height - box.Top)), place.Page, new XPoint(Left, file.Pages[place.Page - 1].Height.Point - place.Y + 12));
            file.Pages[page - 1].Annotations.Add(link);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => canvas?.Dispose();

    private void Edges(PdfPage page)
    {
        const double size = 8;
        var (bottom, right) = (page.Height.Point - (Margin / 2), page.Width.Point - Margin);
        var number = System.FormattableString.Invariant($"{Count} of {total}");
        Decoration(() =>
        {
            Words(notice, new(size, Bold: true), Left, Margin / 2);
            Words(foot, new(size), Left, bottom);
            Words(number, new(size), right - new Letters(number, new(size)).Width, bottom);
        });

        void Words(string text, Look look, double x, double y)
        {
            foreach (var atom in PdfText.Atoms([text], look))
            {
                atom.Draw(canvas!, faces, x, y);
                x += atom.Width;
            }
        }
    }
}
