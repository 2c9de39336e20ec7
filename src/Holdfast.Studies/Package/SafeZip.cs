using System.Buffers;
using System.Collections.Immutable;
using System.IO.Compression;
using System.Text;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;

namespace Holdfast.Studies.Package;

/// <summary>
/// A ZIP archive from a stranger, read into memory and nowhere else: counted while it is unpacked, sizes and checks compared with what its headers say, and refused where
/// one of its names could be a path that leads out, is there twice, or is a link.
/// </summary>
public static class SafeZip
{
    private const int LongestName = 240;
    private const int UnixTypeMask = 0xF000, UnixLink = 0xA000, UnixFile = 0x8000, UnixFolder = 0x4000;

    private static readonly SearchValues<char> Nowhere = SearchValues.Create("\\:*?\"<>|");

    // Devices of Windows, whatever stands behind the point.
    private static readonly ImmutableHashSet<string> Devices = ImmutableHashSet.Create(StringComparer.OrdinalIgnoreCase,
        ["CON", "PRN", "AUX", "NUL", .. Enumerable.Range(1, 9).SelectMany(n => new[] { "COM" + Ordinal.Text(n), "LPT" + Ordinal.Text(n) })]);

    /// <summary>True for a file that begins like an archive with entries, or an empty one (APPNOTE 6.3.10, 4.3.7 and 4.3.16).</summary>
    /// <param name="path">The file.</param>
    public static bool Is(string path)
    {
        try
        {
            using var handle = PlainFile.Open(path);
            Span<byte> head = stackalloc byte[4];
            return RandomAccess.Read(handle, head, 0) == 4 && head[0] == 'P' && head[1] == 'K' && head[2] is 3 or 5 && head[3] is 4 or 6;
        }
        catch (Exception e) when (e is StudyException or IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>Every file of an archive, by name; entries that are folders are left out.</summary>
    /// <param name="archive">The archive.</param>
    /// <param name="fileName">Its name, for messages.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="StudyException">Past a limit (HF-407), or damaged, or a name in it is none that may be (HF-406).</exception>
    public static ImmutableSortedDictionary<string, byte[]> Read(byte[] archive, string fileName, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(archive);
        ArchiveGuard.Check(archive, fileName, cancel, isOffice: false);
        var files = ImmutableSortedDictionary.CreateBuilder<string, byte[]>(StringComparer.Ordinal);
        var known = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        using var zip = new ZipArchive(new MemoryStream(archive, writable: false), ZipArchiveMode.Read);
        foreach (var entry in zip.Entries)
        {
            var name = entry.FullName;
            var isFolder = name.EndsWith('/') && entry.Length == 0;
            if (WhatIsWrong(isFolder ? name[..^1] : name) is { } wrong)
                throw Refused(fileName, $"one of its entries is named {Shown(name)}: {wrong}");
            if (((entry.ExternalAttributes >> 16) & UnixTypeMask) is not (0 or UnixFile or UnixFolder))
                throw Refused(fileName, $"{Shown(name)} in it is {(((entry.ExternalAttributes >> 16) & UnixTypeMask) == UnixLink ? "a link" : "no ordinary file")}");
            if (!known.Add(name.Normalize()))
                throw Refused(fileName, $"it holds {Shown(name)} twice");
            if (isFolder)
                continue;
            using var from = entry.Open();
            using var to = new MemoryStream();
            from.CopyTo(to);
            files[name] = to.ToArray();
        }

        return files.ToImmutable();
    }

    /// <summary>Why a name may not stand in an archive, in words; null for one that may.</summary>
    /// <param name="name">The name, with "/" between folders.</param>
    public static string? WhatIsWrong(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        if (name.Length is 0 or > LongestName)
            return $"a name has 1 to {Ordinal.Text(LongestName)} signs";
        if (name.AsSpan().ContainsAny(Nowhere) || name.Any(char.IsControl))
            return "it holds a sign that no file name may hold everywhere";
        if (name.Any(char.IsSurrogate) && !name.EnumerateRunes().All(r => r != Rune.ReplacementChar))
            return "it holds half a sign";
        if (name.EnumerateRunes().Any(r => Rune.GetUnicodeCategory(r) is System.Globalization.UnicodeCategory.Format))
            return "it holds a sign that cannot be seen";
        foreach (var part in name.Split('/'))
        {
            if (part.Length == 0 || part is "." or "..")
                return "it leads out of its folder, or nowhere";
            if (part[^1] is '.' or ' ' || part[0] == ' ')
                return "a part of it ends with a point or a space";
            if (Devices.Contains(part.Split('.')[0].TrimEnd()))
                return "a part of it names a device";
        }

        return null;
    }

    private static string Shown(string name)
        => "“" + string.Concat((name.Length > 60 ? name[..60] + "…" : name).Select(c => char.IsControl(c) || char.IsSurrogate(c) || char.GetUnicodeCategory(c) == System.Globalization.UnicodeCategory.Format ? $"\\u{(int)c:x4}" : c.ToString())) + "”";

    private static StudyException Refused(string fileName, string what)
        => new(Codes.Unreadable, $"{fileName} is not unpacked: {what}. Nothing is taken from it. Ask for the package once more.");
}
