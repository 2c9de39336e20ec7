using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Annotations;

namespace Holdfast.Reports.Documents.Pdf;

/// <summary>Pages that fill from the top; where places lie is remembered, so that links find them once all is set.</summary>
/// <param name="file">The file.</param>
/// <param name="faces">The typefaces.</param>
internal sealed class PdfPages(PdfDocument file, PdfFaces faces) : IDisposable
{
    // ISO 216: A4 is 210 mm by 297 mm, 72 points to an inch of 25.4 mm.
    private const double PerMm = 72 / 25.4;
    private const double Short = 210 * PerMm;
    private const double Long = 297 * PerMm;
    private const double Margin = 20 * PerMm;

    private readonly Dictionary<string, (int Page, double Y)> places = new(StringComparer.Ordinal);
    private readonly List<(int Page, XRect Box, string To)> links = [];
    private readonly List<XGraphics> drawn = [];
    private readonly Queue<(double Height, Action Set)> waiting = new();
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

    /// <summary>The page.</summary>
    public XGraphics Canvas => drawn[^1];

    /// <summary>True where nothing stands on the page yet.</summary>
    public bool IsFresh => drawn.Count > 0 && Y <= Margin;

    /// <summary>True when there is so much room left.</summary>
    /// <param name="height">Height in pt.</param>
    public bool Has(double height) => drawn.Count > 0 && Y + height <= Margin + Room + 0.01;

    /// <summary>Begins a new page unless there is so much room left, and sets the headings that wait for what follows them.</summary>
    /// <param name="height">Height in pt.</param>
    public void Need(double height)
    {
        if (drawn.Count == 0 || (!Has(height + waiting.Sum(w => w.Height)) && !IsFresh))
            Turn();
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

    /// <summary>Begins a new page.</summary>
    public void Turn()
    {
        var page = file.AddPage();
        (page.Width, page.Height) = onItsSide ? (XUnit.FromPoint(Long), XUnit.FromPoint(Short)) : (XUnit.FromPoint(Short), XUnit.FromPoint(Long));
        drawn.Add(XGraphics.FromPdfPage(page));
        Y = Margin;
    }

    /// <summary>Lays the pages that follow on their side, or upright again.</summary>
    /// <param name="side">True for on their side.</param>
    public void Lie(bool side)
    {
        if (side == onItsSide)
            return;
        onItsSide = side;
        if (drawn.Count > 0)
            Turn();
    }

    /// <summary>Leaves room.</summary>
    /// <param name="height">Height in pt.</param>
    public void Down(double height) => Y += height;

    /// <summary>A line across at this height.</summary>
    /// <param name="pen">How it looks.</param>
    /// <param name="width">Its length in pt.</param>
    public void Line(XPen pen, double width) => Canvas.DrawLine(pen, Left, Y, Left + width, Y);

    /// <summary>Makes a place known at this height.</summary>
    /// <param name="id">Its address, or null.</param>
    public void Place(string? id)
    {
        if (id is not null)
            places.TryAdd(id, (drawn.Count, Y));
    }

    /// <summary>A heading in the list of what the document holds.</summary>
    /// <param name="title">The heading.</param>
    /// <param name="under">What it stands under; null for the top.</param>
    public PdfOutline Bookmark(string title, PdfOutline? under)
    {
        var page = file.Pages[drawn.Count - 1];
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
            atom.Draw(Canvas, faces, x, y);
            if (atom.Place is { } place)
                places.TryAdd(place, (drawn.Count, y - 10));
            if (atom.LeadsTo is { } to && atom.Width > 0)
            {
                var box = new XRect(x, y - atom.Above, atom.Width, atom.Above + atom.Below);
                // Words of one link are one box.
                if (links.Count > 0 && links[^1] is var last && last.To == to && last.Page == drawn.Count && Math.Abs(last.Box.Right - x) < 0.1 && Math.Abs(last.Box.Bottom - box.Bottom) < 4)
                    links[^1] = (last.Page, XRect.Union(last.Box, box), to);
                else
                    links.Add((drawn.Count, box, to));
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

    /// <summary>Sets what stands on every page, and every link whose place is known.</summary>
    /// <param name="notice">Above, on each page; empty for nothing.</param>
    /// <param name="foot">Below, to the left.</param>
    public void Finish(string notice, string foot)
    {
        const double size = 7.5;
        for (var i = 0; i < drawn.Count; i++)
        {
            var (page, to) = (file.Pages[i], drawn[i]);
            var (bottom, right) = (page.Height.Point - (Margin / 2), page.Width.Point - Margin);
            Words(notice, new(size, Bold: true), Left, Margin / 2);
            Words(foot, new(size), Left, bottom);
            var number = System.FormattableString.Invariant($"{i + 1} of {drawn.Count}");
            Words(number, new(size), right - new Letters(number, new(size)).Width, bottom);

            void Words(string text, Look look, double x, double y)
            {
                foreach (var atom in PdfText.Atoms([text], look))
                {
                    atom.Draw(to, faces, x, y);
                    x += atom.Width;
                }
            }
        }

        foreach (var (page, box, to) in links)
        {
            if (!places.TryGetValue(to, out var place))
                continue;
            var canvas = drawn[page - 1];
            var link = PdfLinkAnnotation.CreateDocumentLink(new PdfRectangle(canvas.Transformer.WorldToDefaultPage(box)), place.Page, new XPoint(Left, file.Pages[place.Page - 1].Height.Point - place.Y + 12));
            file.Pages[page - 1].Annotations.Add(link);
        }
    }

    /// <inheritdoc/>
    public void Dispose() => drawn.ForEach(d => d.Dispose());
}
