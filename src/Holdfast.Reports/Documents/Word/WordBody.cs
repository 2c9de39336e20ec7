using System.Globalization;
using System.Text;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Wordprocessing;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Markup;
using Holdfast.Reports.Office;
using Holdfast.Reports.Words;

namespace Holdfast.Reports.Documents.Word;

/// <summary>The body of a document: block after block, wide tables on pages on their side.</summary>
/// <param name="document">The document.</param>
/// <param name="main">The part that pictures go to.</param>
/// <param name="header">Id of the header.</param>
/// <param name="footer">Id of the footer.</param>
internal sealed class WordBody(WrittenDocument document, MainDocumentPart main, string header, string footer)
{
    /// <summary>Width of the text on an upright page, in twentieths of a point: A4 less two margins of 20 mm.</summary>
    public const int TextWidth = PaperShort - (2 * Margin);

    // ISO 216: A4 is 210 mm by 297 mm; a millimetre is 1440/25.4 twentieths of a point.
    private const int PaperShort = 11906;
    private const int PaperLong = 16838;
    private const int Margin = 1134;

    private readonly WordText text = new(Tree.Pieces(document));
    private readonly List<OpenXmlElement> blocks = [];
    private bool onItsSide;
    private int pictures;

    /// <summary>The body.</summary>
    public Body Written()
    {
        Blocks(document.Opening.Content, null);
        // By which an edited file is known again: see EditedChapter.
        if (document.Fingerprint.Length > 0 && blocks.OfType<Paragraph>().FirstOrDefault() is { } first)
            first.Append(new BookmarkStart { Id = "0", Name = EditedChapter.BookmarkOf(document.Fingerprint) }, new BookmarkEnd { Id = "0" });
        for (var i = 0; i < document.Sections.Length; i++)
        {
            var section = document.Sections[i];
            Upright();
            Heading("Heading1", section.Id + "-heading", document.Heading(i), "section-" + section.Id);
            Blocks(section.Content, null);
        }

        Upright();
        Blocks(document.Foot.Content, null);
        return new Body([.. blocks, Page(onItsSide)]);
    }

    private void Blocks(IEnumerable<Node> pieces, string? id)
    {
        foreach (var piece in Tree.OnPaper(pieces))
        {
            if (piece is not Element element)
            {
                if (piece is TextNode { Value: var words } && words.Trim().Length > 0)
                    Add(WordText.Paragraph("BodyText", WordText.Plain(words)));
                continue;
            }

            Block(element, id);
            id = null;
        }
    }

    private void Block(Element element, string? outer)
    {
        var id = element.Attribute("id") ?? outer;
        switch (element.Name)
        {
            case "h1":
                Heading("Title", id, element);
                break;
            case "h2" or "h3":
                Heading(element.Name == "h2" ? "Heading1" : "Heading2", id, element, outer);
                break;
            case "h4":
                Heading("Heading3", id, element);
                break;
            case "p":
                var style = Tree.IsOf(element, "table-notes") ? "TableNote" : "BodyText";
                Add(WordText.Paragraph(style, text.At(id, text.Runs(element.Content))));
                break;
            case "ul" or "ol":
                foreach (var item in element.Content.OfType<Element>())
                    Add(WordText.Paragraph("ListBullet", text.At(item.Attribute("id"), text.Runs(item.Content))));
                break;
            case "dl":
                Facts(element);
                break;
            case "table":
                Table(element);
                break;
            case "figure":
                Upright();
                blocks.AddRange(Figure(element, id));
                break;
            case "div" when Tree.IsOf(element, "pair"):
                Pair([.. element.Content.OfType<Element>()]);
                break;
            default:
                Blocks(element.Content, id);
                break;
        }
    }

    private void Add(OpenXmlElement block) => blocks.Add(block);

    private void Heading(string style, string? id, Element element, string? outer = null)
        => Add(WordText.Paragraph(style, text.At(outer == id ? null : outer, text.At(id, text.Runs(element.Content)))));

    private void Heading(string style, string id, string words, string outer) => Add(WordText.Paragraph(style, text.At(outer, text.At(id, WordText.Plain(words)))));

    // Name and value in one line; a list of facts is no table.
    private void Facts(Element list)
    {
        foreach (var (name, value) in Tree.Facts(list))
            Add(WordText.Paragraph("BodyText", [.. text.Runs(name.Content, new(Bold: true)), WordText.Run(": "), .. text.Runs(value.Content)]));
    }

    private void Table(Element table)
    {
        if (WordTable.Least(table) > TextWidth != onItsSide)
            Turn();
        if (Tree.Caption(table) is { } caption)
        {
            var paragraph = WordText.Paragraph("Caption", text.Captioned(table.Attribute("id"), caption.Content));
            paragraph.ParagraphProperties!.Append(new KeepNext());
            Add(paragraph);
        }

        Add(WordTable.Of(table, text, onItsSide ? PaperLong - (2 * Margin) : TextWidth));
    }

    private IEnumerable<OpenXmlElement> Figure(Element element, string? id)
    {
        if (id is null || !document.Figures.TryGetValue(id, out var figure))
            yield break;
        var format = document.FigureSize(figure);
        var sheet = FigureLayout.Of(figure, format);
        var number = (uint)++pictures;
        var (raster, vector) = ($"rPng{number}", $"rSvg{number}");
        OfficeZip.Feed(main.AddImagePart(ImagePartType.Png, raster), PngFigure.File(figure, format, WordPicture.Dpi));
        OfficeZip.Feed(main.AddImagePart(ImagePartType.Svg, vector), Encoding.UTF8.GetBytes(SvgFigure.File(figure, format)));
        yield return WordText.Paragraph("Figure", [new Run(WordPicture.Of(figure, number, raster, vector, sheet.WidthMm, sheet.HeightMm))]);
        if (Tree.Caption(element) is { } caption)
            yield return WordText.Paragraph("Caption", text.Captioned(id, caption.Content));
    }

    // Two narrow figures beside each other, each over its caption; one alone beside its own.
    private void Pair(Element[] figures)
    {
        Upright();
        var width = (TextWidth / 2).ToString(CultureInfo.InvariantCulture);
        OpenXmlElement[][] cells = [.. figures.Select(f => Figure(f, f.Attribute("id")).ToArray())];
        if (cells is [[var picture, var caption]])
            cells = [[picture], [caption]];
        Add(new Table(
            new TableProperties(new TableWidth { Width = TextWidth.ToString(CultureInfo.InvariantCulture), Type = TableWidthUnitValues.Dxa }, new TableLayout { Type = TableLayoutValues.Fixed }),
            new TableGrid(cells.Select(_ => new GridColumn { Width = width })),
            new TableRow([new TableRowProperties(new CantSplit()), .. cells.Select(c => new TableCell(
                [new TableCellProperties(
                    new TableCellWidth { Width = width, Type = TableWidthUnitValues.Dxa },
                    new TableCellVerticalAlignment { Val = figures.Length > 1 ? TableVerticalAlignmentValues.Top : TableVerticalAlignmentValues.Center }), .. c]))])));
        Add(WordText.Paragraph("AfterPair"));
    }

    private void Upright()
    {
        if (onItsSide)
            Turn();
    }

    // The page so far ends here, as it lay; the next lies the other way.
    private void Turn()
    {
        Add(new Paragraph(new ParagraphProperties(new SpacingBetweenLines { Before = "0", After = "0" }, Page(onItsSide))));
        onItsSide = !onItsSide;
    }

    private SectionProperties Page(bool side) => new(
        new HeaderReference { Type = HeaderFooterValues.Default, Id = header },
        new FooterReference { Type = HeaderFooterValues.Default, Id = footer },
        side ? new PageSize { Width = PaperLong, Height = PaperShort, Orient = PageOrientationValues.Landscape } : new PageSize { Width = PaperShort, Height = PaperLong },
        new PageMargin { Top = Margin, Bottom = Margin, Left = Margin, Right = Margin, Header = 567, Footer = 567, Gutter = 0 });
}
