using Holdfast.Studies.Package;

namespace Holdfast.Reports.Documents;

/// <summary>Files in one archive (ZIP, ISO/IEC 21320-1), in the order given and with a settled date: the same files give the same bytes.</summary>
public static class Packed
{
    /// <summary>The archive.</summary>
    /// <param name="files">The files.</param>
    public static byte[] Of(IEnumerable<DocumentFile> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        return SettledZip.Write(files.Select(f => (f.Name, f.Bytes)));
    }
}
