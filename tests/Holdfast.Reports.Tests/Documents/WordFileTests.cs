using System.Text.RegularExpressions;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Drawing.Wordprocessing;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Validation;
using DocumentFormat.OpenXml.Wordprocessing;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Studies;

namespace Holdfast.Reports.Tests.Documents;

/// <summary>Documents as DOCX: held against the schemas of ECMA-376 by the validator of the library, and against the page of the same document.</summary>
public partial class WordFileTests
{
    private static readonly Lazy<WrittenDocument> Chapter = new(() => StudyChapter.Of(DemoStudy.Dossier));
    private static readonly Lazy<byte[]> Bytes = new(() => Chapter.Value.Docx());

    [Fact]
    public void Chapter_OfTheDemo_IsValid() => Assert.Empty(Errors(Bytes.Value));

    [Fact]
    public void Record_OfTheDemo_IsValid() => Assert.Empty(Errors(StudyReport.Of(DemoStudy.Dossier).Docx()));

    [Fact]
    public void Documents_OfLittle_AreValid()
    {
        foreach (var study in new[] { new Study { Title = "" }, SmallStudy.Of(5, 5.2, 4.9), new Study { Title = "\u0001<w:p/> & ]]>" } })
        {
            var dossier = Dossier.Of(study);
            Assert.Empty(Errors(StudyChapter.Of(dossier).Docx()));
            Assert.Empty(Errors(StudyReport.Of(dossier).Docx()));
        }
    }

    [Fact]
    public void Chapter_OfTheSameStudy_IsTheSameToTheByte() => Assert.Equal(Bytes.Value, StudyChapter.Of(DemoStudy.Dossier).Docx());

    // Numbers in all formats are one: the page and the DOCX hold the same ones in the same order.
    [Fact]
    public void Chapter_HasTheNumbersOfThePage()
    {
        using var file = Open(Bytes.Value);
        string[] Of(string text) => [.. DossierNumbers.In(Blank().Replace(text, " "))];
        var page = ReportPage.Read(Chapter.Value.Html());
        page.Descendants().Where(e => e.Name.LocalName is "details" or "nav" or "svg" or "math" || (string?)e.Attribute("class") == "invented").ToList().ForEach(e => e.Remove());
        var blocks = page.Element("body")!.Descendants().Where(e => e.Name.LocalName is "h1" or "h2" or "h3" or "p" or "li" or "td" or "th" or "caption" or "figcaption");
        var onPage = blocks.SelectMany(b => Of(b.Value)).Order(StringComparer.Ordinal);
        var body = (Body)Body(file).CloneNode(deep: true);
        body.Descendants<DocumentFormat.OpenXml.Math.OfficeMath>().ToList().ForEach(m => m.Remove());
        var inFile = body.Descendants<Paragraph>().SelectMany(p => Of(p.InnerText.Replace(" REF Figure_", "", StringComparison.Ordinal))).Order(StringComparer.Ordinal);
        Assert.Equal(onPage, inFile);
    }

    [Fact]
    public void Chapter_UsesRealStylesAndFields()
    {
        using var file = Open(Bytes.Value);
        var styles = file.MainDocumentPart!.StyleDefinitionsPart!.Styles!.Elements<Style>().Select(s => s.StyleId!.Value!).ToHashSet(StringComparer.Ordinal);
        var used = Body(file).Descendants<ParagraphStyleId>().Select(s => s.Val!.Value!).Distinct(StringComparer.Ordinal).ToArray();
        Assert.Subset(styles, used.ToHashSet(StringComparer.Ordinal));
        Assert.Contains("Heading1", used);
        Assert.Contains("Heading2", used);
        Assert.Contains("Caption", used);

        string[] fields = [.. Body(file).Descendants<SimpleField>().Select(f => f.Instruction!.Value!)];
        var figures = Chapter.Value.Figures.Count;
        Assert.Equal(figures, fields.Count(f => f.Contains("SEQ Figure", StringComparison.Ordinal)));
        Assert.Equal(figures, Body(file).Descendants<Inline>().Count());
        Assert.True(fields.Count(f => f.Contains("SEQ Table", StringComparison.Ordinal)) >= 6);
        var marks = Body(file).Descendants<BookmarkStart>().Select(b => b.Name!.Value!).ToArray();
        Assert.Equal(marks.Distinct(StringComparer.Ordinal), marks);
        var references = fields.Where(f => f.Contains(" REF ", StringComparison.Ordinal)).Select(f => f.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1]).ToArray();
        Assert.NotEmpty(references);
        Assert.All(references, r => Assert.Contains(r, marks));
        Assert.All(Body(file).Descendants<Hyperlink>(), h => Assert.Contains(h.Anchor!.Value!, marks));
        Assert.NotEmpty(Body(file).Descendants<DocumentFormat.OpenXml.Math.Fraction>());
    }

    // WCAG 2.2, 1.1.1 and 1.3.1: words for every picture, heads for every table, the language of the text.
    [Fact]
    public void Chapter_CanBeReadWithoutSeeingIt()
    {
        using var file = Open(Bytes.Value);
        Assert.All(Body(file).Descendants<DocProperties>(), p => Assert.True(p.Description!.Value!.Length > 20));
        Assert.All(Body(file).Descendants<Table>().Where(t => t.Descendants<TableStyle>().Any()), t => Assert.True(t.Elements<TableRow>().First().Descendants<TableHeader>().Any()));
        Assert.Equal("en-GB", file.MainDocumentPart!.StyleDefinitionsPart!.Styles!.Descendants<Languages>().First().Val!.Value);
        Assert.Equal(Chapter.Value.Title, file.PackageProperties.Title);
        Assert.Equal("en-GB", file.PackageProperties.Language);
    }

    // Each picture twice: a raster of 300 dots per inch at the size shown, and a vector.
    [Fact]
    public void Pictures_AreRasterAndVector()
    {
        using var file = Open(Bytes.Value);
        var images = file.MainDocumentPart!.ImageParts.ToLookup(p => p.ContentType);
        Assert.Equal(Chapter.Value.Figures.Count, images["image/png"].Count());
        Assert.Equal(Chapter.Value.Figures.Count, images["image/svg+xml"].Count());
        var inline = Body(file).Descendants<Inline>().First();
        using var stream = file.MainDocumentPart.GetPartById(inline.Descendants<DocumentFormat.OpenXml.Drawing.Blip>().Single().Embed!.Value!).GetStream();
        var head = new byte[24];
        stream.ReadExactly(head);
        // W3C PNG, 11.2.1: width in dots, bytes 16 to 19; ECMA-376: 914 400 EMU to an inch.
        var dots = System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(head.AsSpan(16));
        Assert.Equal(300, dots / (inline.Extent!.Cx!.Value / 914400.0), 0.5);
    }

    [Fact]
    public void Invented_StandsOnEveryPage()
    {
        using var file = Open(Bytes.Value);
        var sections = Body(file).Descendants<SectionProperties>().ToArray();
        Assert.NotEmpty(sections);
        Assert.All(sections, s => Assert.Contains("Invented", file.MainDocumentPart!.GetPartById(s.GetFirstChild<HeaderReference>()!.Id!.Value!).RootElement!.InnerText, StringComparison.Ordinal));
        using var real = Open(StudyChapter.Of(Dossier.Of(SmallStudy.Of(5))).Docx());
        Assert.DoesNotContain("nvented", real.MainDocumentPart!.HeaderParts.Single().Header!.InnerText, StringComparison.Ordinal);
    }

    [Fact]
    public void Record_TurnsWideTablesOnTheirSide()
    {
        using var file = Open(StudyReport.Of(DemoStudy.Dossier).Docx());
        var turned = Body(file).Descendants<PageSize>().Select(p => p.Orient?.Value == PageOrientationValues.Landscape).ToArray();
        Assert.Contains(true, turned);
        Assert.Contains(false, turned);
    }

    private static WordprocessingDocument Open(byte[] bytes) => WordprocessingDocument.Open(new MemoryStream(bytes, writable: false), isEditable: false);

    private static Body Body(WordprocessingDocument file) => file.MainDocumentPart!.Document!.Body!;

    private static string[] Errors(byte[] bytes)
    {
        using var file = Open(bytes);
        return [.. new OpenXmlValidator(FileFormatVersions.Microsoft365).Validate(file).Take(8).Select(e => $"{e.Part?.Uri} {e.Path?.XPath}: {e.Description}")];
    }

    [GeneratedRegex(@"\s+", RegexOptions.None, 5000)]
    private static partial Regex Blank();
}
