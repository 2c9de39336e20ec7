using System.Collections.Immutable;
using System.IO.Compression;
using System.Text;
using System.Xml;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>Reads the paragraphs of a DOCX (ECMA-376) that any word processor wrote: its words alone, no macro, field, picture or link of it is followed.</summary>
public static class WordParagraphs
{
    /// <summary>Most paragraphs of a document, cells of tables included.</summary>
    public const int Most = 5_000;

    /// <summary>Stands for an equation.</summary>
    public const char Equation = '□';

    private const string Formulas = "http://schemas.openxmlformats.org/officeDocument/2006/math";
    private const string FormulasStrict = "http://purl.oclc.org/ooxml/officeDocument/math";
    private const string Main = "word/document.xml";
    private const string Words = "http://schemas.openxmlformats.org/wordprocessingml/2006/main";
    private const string WordsStrict = "http://purl.oclc.org/ooxml/wordprocessingml/main";

    // What stands in these is not part of the line: deleted words, instructions of fields, what a text box holds, the second form of a drawing.
    private static readonly ImmutableHashSet<string> Skipped = ["del", "moveFrom", "instrText", "delText", "delInstrText", "txbxContent", "Fallback", "sectPr", "rPr"];

    /// <summary>The paragraphs that hold words, in order.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="fileName">Its name, for messages.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="StudyException">Damaged or no DOCX (HF-406), or past a limit (HF-407).</exception>
    public static ImmutableArray<WordParagraph> Read(byte[] bytes, string fileName, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        ArchiveGuard.Check(bytes, fileName, cancel);
        try
        {
            using var archive = new ZipArchive(new MemoryStream(bytes, writable: false), ZipArchiveMode.Read);
            if (archive.GetEntry(Main) is not { } entry)
                throw new StudyException(Codes.Unreadable, $"{fileName} is no DOCX: it holds no {Main}. Nothing is taken from it. Save it as DOCX.");
            using var stream = entry.Open();
            using var reader = SafeXml.Reader(stream);
            return Read(reader, fileName, cancel);
        }
        catch (Exception e) when (e is XmlException or InvalidDataException)
        {
            throw new StudyException(Codes.Unreadable, $"{fileName} is damaged: its text cannot be read. Nothing is taken from it. Save it again as DOCX.", e);
        }
    }

    private static ImmutableArray<WordParagraph> Read(XmlReader reader, string fileName, CancellationToken cancel)
    {
        var paragraphs = ImmutableArray.CreateBuilder<WordParagraph>();
        var marks = ImmutableArray.CreateBuilder<string>();
        var text = new StringBuilder();
        var style = "";
        for (var more = reader.Read(); more;)
        {
            cancel.ThrowIfCancellationRequested();
            if (reader.NodeType == XmlNodeType.Element && reader is { LocalName: "oMath", NamespaceURI: Formulas or FormulasStrict })
            {
                // Word processors write one equation in many ways.
                text.Append(Equation);
                reader.Skip();
                more = !reader.EOF;
                continue;
            }

            if (reader.NodeType == XmlNodeType.Element && Skipped.Contains(reader.LocalName))
            {
                reader.Skip();
                more = !reader.EOF;
                continue;
            }

            if (reader.NodeType == XmlNodeType.Element)
            {
                var isWord = reader.NamespaceURI is Words or WordsStrict;
                switch (reader.LocalName)
                {
                    case "p" when isWord:
                        style = "";
                        text.Clear();
                        if (reader.IsEmptyElement)
                            End();
                        break;
                    case "pStyle" when isWord:
                        style = reader.GetAttribute("val", reader.NamespaceURI) ?? "";
                        break;
                    case "bookmarkStart" when isWord:
                        marks.Add(reader.GetAttribute("name", reader.NamespaceURI) ?? "");
                        break;
                    case "tab" or "br" or "cr" when isWord:
                        text.Append(' ');
                        break;
                    case "noBreakHyphen" when isWord:
                        text.Append('-');
                        break;
                    case "t":
                        text.Append(reader.ReadElementContentAsString());
                        more = !reader.EOF;
                        continue;
                }
            }
            else if (reader.NodeType == XmlNodeType.EndElement && reader.LocalName == "p" && reader.NamespaceURI is Words or WordsStrict)
            {
                End();
            }

            more = reader.Read();
        }

        return paragraphs.ToImmutable();

        void End()
        {
            var line = string.Join(' ', text.ToString().Normalize().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
            text.Clear();
            if (line.Length == 0)
                return;
            if (paragraphs.Count == Most)
                throw Limits.Exceeded(fileName, $"more than {Ordinal.Text(Most)} paragraphs");
            paragraphs.Add(new(line, style, marks.ToImmutable()));
            marks.Clear();
        }
    }
}
