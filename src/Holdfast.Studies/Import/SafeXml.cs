using System.Xml;

namespace Holdfast.Studies.Import;

/// <summary>Reads an XML part through once: no document type, no entity from elsewhere, no endless nesting. What follows may then trust it.</summary>
internal static class SafeXml
{
    private const int DeepestNesting = 256;

    /// <summary>A reader that knows no document type and fetches nothing.</summary>
    /// <param name="xml">The part.</param>
    public static XmlReader Reader(Stream xml) => XmlReader.Create(xml, new XmlReaderSettings
    {
        DtdProcessing = DtdProcessing.Prohibit,
        XmlResolver = null,
        MaxCharactersInDocument = Limits.Unpacked,
    });

    /// <summary>Throws when the XML is not well formed, declares a document type, or nests too deep.</summary>
    /// <param name="xml">The part.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="XmlException">It is not to be trusted.</exception>
    public static void Check(Stream xml, CancellationToken cancel)
    {
        using var reader = Reader(xml);
        for (var n = 0; reader.Read(); n++)
        {
            if (n % 4096 == 0)
                cancel.ThrowIfCancellationRequested();
            if (reader.Depth > DeepestNesting)
                throw new XmlException("It nests deeper than 256 levels.");
        }
    }
}
