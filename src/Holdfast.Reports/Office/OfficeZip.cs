using System.IO.Compression;
using System.Text;
using System.Xml.Linq;
using DocumentFormat.OpenXml.Packaging;
using Holdfast.Reports.Documents;

namespace Holdfast.Reports.Office;

/// <summary>What documents and workbooks share as packages: entries in a settled order with a settled date, and what the file says of itself.</summary>
internal static class OfficeZip
{
    /// <summary>The same package with its entries in order and without the date of its making.</summary>
    /// <param name="package">The bytes of a package.</param>
    public static byte[] Settled(byte[] package)
    {
        using var from = new ZipArchive(new MemoryStream(package, writable: false), ZipArchiveMode.Read);
        // The list of types comes first, as readers that stream a package want it.
        return Packed.Of(from.Entries.OrderBy(e => e.FullName != "[Content_Types].xml").ThenBy(e => e.FullName, StringComparer.Ordinal).Select(e => new DocumentFile(e.FullName, Bytes(e))));
    }

    private static byte[] Bytes(ZipArchiveEntry entry)
    {
        using var source = entry.Open();
        using var bytes = new MemoryStream();
        source.CopyTo(bytes);
        return bytes.ToArray();
    }

    /// <summary>Title, author and language (ECMA-376 part 2, core properties).</summary>
    /// <param name="title">The title.</param>
    /// <param name="author">Who wrote it; empty for nobody.</param>
    /// <param name="notice">What is said of it on every page; empty for nothing.</param>
    /// <param name="language">Its language.</param>
    public static XElement CoreProperties(string title, string author, string notice, string language)
    {
        XNamespace cp = "http://schemas.openxmlformats.org/package/2006/metadata/core-properties";
        XNamespace dc = "http://purl.org/dc/elements/1.1/";
        return new(
            cp + "coreProperties",
            new XAttribute(XNamespace.Xmlns + "cp", cp.NamespaceName), new XAttribute(XNamespace.Xmlns + "dc", dc.NamespaceName),
            new XElement(dc + "title", Sound(title)),
            author.Length > 0 ? new XElement(dc + "creator", Sound(author)) : null,
            notice.Length > 0 ? new XElement(dc + "description", Sound(notice)) : null,
            new XElement(dc + "language", language));
    }

    /// <summary>Writes a part.</summary>
    /// <param name="part">The part.</param>
    /// <param name="content">Its root.</param>
    public static void Feed(OpenXmlPart part, XElement content) => Feed(part, Encoding.UTF8.GetBytes("<?xml version=\"1.0\" encoding=\"UTF-8\" standalone=\"yes\"?>" + content.ToString(SaveOptions.DisableFormatting)));

    /// <summary>Writes a part.</summary>
    /// <param name="part">The part.</param>
    /// <param name="content">Its bytes.</param>
    public static void Feed(OpenXmlPart part, byte[] content)
    {
        using var stream = new MemoryStream(content, writable: false);
        part.FeedData(stream);
    }

    /// <summary>Words without characters that XML has no place for.</summary>
    /// <param name="text">The words.</param>
    public static string Sound(string text)
        => text.All(System.Xml.XmlConvert.IsXmlChar) ? text : string.Concat(text.EnumerateRunes().Select(r => r.Value is 0x9 or 0xA or 0xD or (>= 0x20 and not 0xFFFE and not 0xFFFF) ? r.ToString() : "\uFFFD"));
}
