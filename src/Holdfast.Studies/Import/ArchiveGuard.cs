using System.IO.Compression;
using System.Xml;

namespace Holdfast.Studies.Import;

/// <summary>
/// Unpacks a ZIP archive once, counting, before any program part trusts it: too many parts, too large, too dense, parts that are not what
/// their header says.
/// </summary>
internal static class ArchiveGuard
{
    private static readonly uint[] Table = [.. Enumerable.Range(0, 256).Select(i =>
    {
        // CRC-32 of ISO 3309 and RFC 1952, reflected polynomial.
        var c = (uint)i;
        for (var k = 0; k < 8; k++)
            c = (c & 1) == 0 ? c >> 1 : 0xEDB88320u ^ (c >> 1);
        return c;
    })];

    /// <summary>Throws when the archive is past a limit or damaged.</summary>
    /// <param name="bytes">The archive.</param>
    /// <param name="fileName">Its name, for the message.</param>
    /// <param name="cancel">Stops it.</param>
    /// <param name="isOffice">True for a workbook, whose parts of XML are looked over too; false for an archive whose files are other people's affair.</param>
    /// <exception cref="StudyException">Past a limit (HF-407) or damaged (HF-406).</exception>
    public static void Check(byte[] bytes, string fileName, CancellationToken cancel, bool isOffice = true)
    {
        try
        {
            using var archive = new ZipArchive(new MemoryStream(bytes, writable: false), ZipArchiveMode.Read);
            if (archive.Entries.Count > Limits.ArchiveEntries)
                throw Limits.Exceeded(fileName, "more than 5000 parts");
            var names = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
            var buffer = new byte[1 << 16];
            var total = 0L;
            foreach (var entry in archive.Entries)
            {
                if (!names.Add(entry.FullName))
                    throw Damaged(fileName, $"it holds {entry.FullName} twice");
                var (length, crc) = (0L, uint.MaxValue);
                using var part = entry.Open();
                for (int read; (read = part.Read(buffer)) > 0;)
                {
                    cancel.ThrowIfCancellationRequested();
                    length += read;
                    total += read;
                    if (total > Limits.Unpacked || (total > Limits.RatioFrom && total / bytes.Length >= Limits.Ratio))
                        throw Limits.Exceeded(fileName, "far more in it than its size says");
                    foreach (var b in buffer.AsSpan(0, read))
                        crc = Table[(crc ^ b) & 0xFF] ^ (crc >> 8);
                }
                if (length != entry.Length || ~crc != entry.Crc32)
                    throw Damaged(fileName, $"its part {entry.FullName} is not what its header says");
                if (!isOffice)
                    continue;
                if (entry.FullName.EndsWith(".xml", StringComparison.OrdinalIgnoreCase) || entry.FullName.EndsWith(".rels", StringComparison.OrdinalIgnoreCase))
                {
                    using var xml = entry.Open();
                    SafeXml.Check(xml, cancel);
                }
            }
        }
        catch (Exception e) when (e is InvalidDataException or IOException or NotSupportedException or XmlException)
        {
            throw Damaged(fileName, "its archive cannot be unpacked", e);
        }
    }

    /// <summary>The message for a damaged file.</summary>
    public static StudyException Damaged(string fileName, string what, Exception? inner = null)
        => new(Codes.Unreadable, $"{fileName} is damaged: {what}. Nothing is taken in from it. Save it again, or export it as CSV.", inner);
}
