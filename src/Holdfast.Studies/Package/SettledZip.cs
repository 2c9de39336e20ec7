using System.IO.Compression;

namespace Holdfast.Studies.Package;

/// <summary>A ZIP archive that is written here: in the order given and with a settled date, so that the same files give the same bytes.</summary>
public static class SettledZip
{
    /// <summary>The earliest date that an entry can bear (APPNOTE 6.3.10, 4.4.6, MS-DOS date).</summary>
    public static readonly DateTimeOffset Settling = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>An archive (ISO/IEC 21320-1) of files in the order given and with a settled date: the same files give the same bytes.</summary>
    /// <param name="files">Name, with "/" between folders, and bytes of each.</param>
    public static byte[] Write(IEnumerable<(string Name, ReadOnlyMemory<byte> Bytes)> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        using var to = new MemoryStream();
        using (var zip = new ZipArchive(to, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, bytes) in files)
            {
                var entry = zip.CreateEntry(name, CompressionLevel.Optimal);
                entry.LastWriteTime = Settling;
                using var target = entry.Open();
                target.Write(bytes.Span);
            }
        }

        return to.ToArray();
    }
}
