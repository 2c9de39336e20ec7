using Holdfast.Reports.Figures;
using Holdfast.Reports.Markup;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace Holdfast.Reports.Documents.Pdf;

/// <summary>
/// A document as PDF of A4 pages: its own typeface inside, vector figures, a list of its headings, links, the number of each page, and the tree by which it is read aloud. It needs no other program.
/// The same document gives the same bytes.
/// </summary>
internal sealed class PdfFile : IDisposable
{
    private const double Body = 9;
    private const double Leading = 1.32;
    private const double Apart = 4;
    private const double Indent = 12;

    private readonly WrittenDocument document;
    private readonly PdfDocument file = new();
    private readonly PdfPages pages;
    private readonly List<XPdfForm> figures = [];
    private readonly Dictionary<string, byte[]> pictures;
    private PdfOutline? section;

    private PdfFile(WrittenDocument document, Dictionary<string, byte[]> pictures, int total)
    {
        (this.document, this.pictures) = (document, pictures);
        var foot = document.Fingerprint.Length > 0 ? $"{document.Title} · fingerprint {document.Fingerprint[..Math.Min(16, document.Fingerprint.Length)]}" : document.Title;
        pages = new(file, new(), document.Notice, foot, total);
    }

    /// <summary>The bytes of the file.</summary>
    /// <param name="document">The document.</param>
    public static byte[] Of(WrittenDocument document)
    {
        // What is drawn on a page can be drawn only while it is the last, so the pages are counted first.
        var pictures = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        using var counted = new PdfFile(document, pictures, 0);
        counted.Set();
        using var made = new PdfFile(document, pictures, counted.pages.Count);
        return PdfBytes.Settled(made.Written());
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        pages.Dispose();
        figures.ForEach(f => f.Dispose());
        file.Dispose();
    }

    private byte[] Written()
    {
        // No date of making: the study's own history has the dates, and the same study gives the same bytes.
        var settling = Studies.Package.SettledZip.Settling.UtcDateTime;
        (file.Info.Title, file.Info.Author, file.Info.Subject, file.Info.Creator) = (document.Title, document.Author, document.Notice, "Holdfast");
        (file.Info.CreationDate, file.Info.ModificationDate) = (settling, settling);
        file.Language = "en-GB";
        file.PageMode = PdfPageMode.UseOutlines;
        file.ViewerPreferences.DisplayDocTitle = true;
        Set();
        pages.Finish();
        // The page stays open until here, and a file takes it closed.
        pages.Dispose();
        using var to = new MemoryStream();
        file.Save(to, closeStream: false);
        return to.ToArray();
    }

    private void Set()
    {
        Blocks(document.Opening.Content, null);
        for (var i = 0; i < document.Sections.Length; i++)
        {
            var s = document.Sections[i];
            pages.Lie(side: false);
            Heading([document.Heading(i)], 13, 12, PdfBlockLevelElementTag.Heading2, ["section-" + s.Id, s.Id + "-heading"]);
            Blocks(s.Content, null);
        }

        pages.Lie(side: false);
        Blocks(document.Foot.Content, null);
        pages.Need(0);
        pages.Land();
    }

    private void Blocks(IEnumerable<Node> pieces, string? id)
    {
        foreach (var piece in Tree.OnPaper(pieces))
        {
            if (piece is Element element)
                Block(element, id);
            else if (piece is TextNode { Value: var words } && words.Trim().Length > 0)
                Paragraph([piece], Body, null);
            else
                continue;
            id = null;
        }
    }

    private void Block(Element element, string? outer)
    {
        var id = element.Attribute("id") ?? outer;
        string?[] ids = [element.Attribute("id"), outer];
        switch (element.Name)
        {
            case "h1":
                Heading(element.Content, 17, 0, PdfBlockLevelElementTag.Heading1, ids);
                break;
            case "h2" or "h3":
                Heading(element.Content, element.Name == "h2" ? 13 : 10.5, 9, element.Name == "h2" ? PdfBlockLevelElementTag.Heading2 : PdfBlockLevelElementTag.Heading3, ids);
                break;
            case "h4":
                Heading(element.Content, Body, 5, PdfBlockLevelElementTag.Heading4, ids);
                break;
            case "p":
                pages.Lie(side: false);
                Paragraph(element.Content, Tree.IsOf(element, "table-notes") ? 8 : Body, id);
                break;
            case "ul" or "ol":
                pages.Lie(side: false);
                pages.Need(2 * Body * Leading);
                pages.Tagged(PdfBlockLevelElementTag.List, () =>
                {
                    foreach (var item in element.Content.OfType<Element>())
                        Paragraph(item.Content, Body, item.Attribute("id"), bullet: true);
                });
                pages.Down(Apart / 2);
                break;
            case "dl":
                foreach (var (name, value) in Tree.Facts(element))
                    Paragraph([Html.Element("b", name.Content), ": ", .. value.Content], Body, null);
                break;
            case "table":
                Table(element);
                break;
            case "figure":
                Figures([element]);
                break;
            case "div" when Tree.IsOf(element, "pair"):
                Figures([.. element.Content.OfType<Element>()]);
                break;
            default:
                Blocks(element.Content, id);
                break;
        }
    }

    private void Heading(IEnumerable<Node> content, double size, double before, PdfBlockLevelElementTag level, IEnumerable<string?> ids)
    {
        const double leading = 1.2;
        pages.Lie(side: false);
        var pieces = content.ToArray();
        var lines = PdfText.Lines(PdfText.Atoms(pieces, new(size, Bold: true)), pages.TextWidth);
        pages.Wait(before + (lines.Count * size * leading) + Apart, () =>
        {
            if (!pages.IsFresh)
                pages.Down(before);
            foreach (var id in ids)
                pages.Place(id);
            if (level == PdfBlockLevelElementTag.Heading2)
                section = pages.Bookmark(Tree.Text(pieces), null);
            else if (level == PdfBlockLevelElementTag.Heading3)
                pages.Bookmark(Tree.Text(pieces), section);
            pages.Tagged(level, () => Set(lines, size, leading, pages.Left));
            pages.Down(Apart);
        });
    }

    private void Paragraph(IEnumerable<Node> content, double size, string? id, bool bullet = false)
    {
        var left = bullet ? Indent : 0;
        var lines = PdfText.Lines(PdfText.Atoms(content, new(size)), pages.TextWidth - left);
        // At least two lines of a paragraph stay together.
        pages.Need(Math.Min(lines.Count, 2) * size * Leading);
        pages.Place(id);
        if (bullet)
        {
            pages.Tagged(PdfBlockLevelElementTag.ListItem, () =>
            {
                pages.Tagged(PdfBlockLevelElementTag.Label, () => pages.Draw([new Letters("•", new(size))], pages.Left + 3, pages.Y + PdfPages.Reach(lines[0], size, Leading).Up));
                pages.Tagged(PdfBlockLevelElementTag.ListBody, () => Set(lines, size, Leading, pages.Left + left));
            });
        }
        else
        {
            pages.Tagged(PdfBlockLevelElementTag.Paragraph, () => Set(lines, size, Leading, pages.Left));
        }

        pages.Down(bullet ? 1 : Apart);
    }

    private void Set(IReadOnlyList<IReadOnlyList<Atom>> lines, double size, double leading, double x)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            var (up, down) = PdfPages.Reach(lines[i], size, leading);
            // The last line does not go alone to the next page.
            pages.Need(i == lines.Count - 2 ? 2 * (up + down) : up + down);
            pages.Draw(lines[i], x, pages.Y + up);
            pages.Down(up + down);
        }
    }

    private void Table(Element table)
    {
        var grid = new PdfTable(table);
        pages.Lie(grid.Least > PdfPages.UprightWidth);
        if (Tree.Caption(table) is { } caption)
        {
            var lines = PdfText.Lines(PdfText.Atoms(Labelled(caption), new(8.5)), pages.TextWidth);
            grid.Draw(pages, together =>
            {
                pages.Need(together + (lines.Count * 8.5 * Leading) + 8);
                if (!pages.IsFresh)
                    pages.Down(4);
                pages.Place(table.Attribute("id"));
                pages.Tagged(PdfBlockLevelElementTag.Paragraph, () => Set(lines, 8.5, Leading, pages.Left));
                pages.Down(2);
            });
        }
        else
        {
            grid.Draw(pages, null);
        }
    }

    // One figure, or narrow ones beside each other, each over its caption.
    private void Figures(Element[] elements)
    {
        const double between = 8;
        pages.Lie(side: false);
        var width = (pages.TextWidth - (between * (elements.Length - 1))) / elements.Length;
        var set = new List<(string Id, string Words, XPdfForm Form, double Width, double Height, IReadOnlyList<IReadOnlyList<Atom>> Caption)>();
        var beside = false;
        foreach (var element in elements)
        {
            if (element.Attribute("id") is not { } id || !document.Figures.TryGetValue(id, out var figure))
            {
                Blocks([element], null);
                continue;
            }

            if (!pictures.TryGetValue(id, out var picture))
                pictures[id] = picture = PdfFigure.File(figure, document.FigureSize(figure));
            var form = XPdfForm.FromStream(new MemoryStream(picture, writable: false));
            figures.Add(form);
            var scale = Math.Min(1, width / form.PointWidth);
            // A narrow figure alone leaves half the page to its caption.
            beside = elements.Length == 1 && scale * form.PointWidth < pages.TextWidth * 0.6;
            var caption = Tree.Caption(element) is { } said ? PdfText.Lines(PdfText.Atoms(Labelled(said), new(8)), beside ? width - (scale * form.PointWidth) - between : width) : [];
            set.Add((id, figure.Alt, form, scale * form.PointWidth, scale * form.PointHeight, caption));
        }

        if (set.Count == 0)
            return;
        var height = set.Max(f => beside ? Math.Max(f.Height, Lettered(f.Caption)) : f.Height + 2 + Lettered(f.Caption)) + 8;
        pages.Float(height + 4, () =>
        {
            if (!pages.IsFresh)
                pages.Down(4);
            var (x, top) = (pages.Left, pages.Y);
            foreach (var figure in set)
            {
                pages.Place(figure.Id);
                pages.Picture(figure.Form, figure.Words, new(x, top, figure.Width, figure.Height));
                var y = beside ? top + Math.Max(0, (figure.Height - Lettered(figure.Caption)) / 2) : top + figure.Height + 2;
                pages.Tagged(PdfBlockLevelElementTag.Paragraph, () =>
                {
                    foreach (var line in figure.Caption)
                    {
                        pages.Draw(line, beside ? x + figure.Width + between : x, y + Of(line).Up);
                        y += Of(line).Up + Of(line).Down;
                    }
                });
                x += width + between;
            }

            pages.Down(height);
        });

        static double Lettered(IReadOnlyList<IReadOnlyList<Atom>> caption) => caption.Sum(l => Of(l).Up + Of(l).Down);

        static (double Up, double Down) Of(IReadOnlyList<Atom> line) => PdfPages.Reach(line, 8, 1.25);
    }

    // The label of a caption is bold.
    private static IEnumerable<Node> Labelled(Element caption)
        => Tree.Label(caption.Words) is var (kind, number, length) ? [Html.Element("b", $"{kind}\u00A0{number}."), .. Tree.Behind(caption.Content, length)] : caption.Content;
}
