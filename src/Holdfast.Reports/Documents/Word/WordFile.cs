using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Wordprocessing;
using Holdfast.Reports.Office;

namespace Holdfast.Reports.Documents.Word;

/// <summary>
/// A document as DOCX (ECMA-376): real styles, captions and references as fields, native equations, vector pictures with a raster beside them. The same document
/// gives the same bytes.
/// </summary>
internal static class WordFile
{
    private const string Language = "en-GB";

    /// <summary>The bytes of the file.</summary>
    /// <param name="document">The document.</param>
    public static byte[] Of(WrittenDocument document)
    {
        using var stream = new MemoryStream();
        using (var package = WordprocessingDocument.Create(stream, WordprocessingDocumentType.Document))
        {
            var main = package.AddNewPart<MainDocumentPart>("application/vnd.openxmlformats-officedocument.wordprocessingml.document.main+xml", "rId1");
            main.AddNewPart<StyleDefinitionsPart>("rId1").Styles = WordStyles.All(Language);
            main.AddNewPart<NumberingDefinitionsPart>("rId2").Numbering = WordStyles.Bullets();
            main.AddNewPart<DocumentSettingsPart>("rId3").Settings = new(
                new Zoom { Percent = "100" }, new DefaultTabStop { Val = 709 }, new CharacterSpacingControl { Val = CharacterSpacingValues.DoNotCompress },
                new ThemeFontLanguages { Val = Language }, new DecimalSymbol { Val = "." }, new ListSeparator { Val = "," });
            main.AddNewPart<HeaderPart>("rId4").Header = new(WordText.Paragraph("Header", WordText.Plain(document.Notice)));
            main.AddNewPart<FooterPart>("rId5").Footer = new(new Paragraph(
                new ParagraphProperties(new ParagraphStyleId { Val = "Footer" }),
                WordText.Run(document.Title), new Run(new TabChar()), new SimpleField(WordText.Run("1")) { Instruction = " PAGE " }));
            main.Document = new Document(new WordBody(document, main, "rId4", "rId5").Written());
            Properties(package, document);
        }

        return OfficeZip.Settled(stream.ToArray());
    }

    // No dates: the study's own history has them, and the same study gives the same bytes.
    private static void Properties(WordprocessingDocument package, WrittenDocument document)
        => OfficeZip.Feed(
            package.AddNewPart<CoreFilePropertiesPart>("application/vnd.openxmlformats-package.core-properties+xml", "rId2"),
            OfficeZip.CoreProperties(document.Title, document.Author, document.Notice, Language));
}
