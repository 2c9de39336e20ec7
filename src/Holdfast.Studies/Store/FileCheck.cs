using System.Security.Cryptography;
using System.Text.Json;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Store;

/// <summary>
/// Fingerprint of the database file at its last close. The hash chain guards the entries; this guards every other byte of the file,
/// and tells a file that lost its newest entries.
/// </summary>
internal static class FileCheck
{
    private const long LargestDatabase = 4L << 30;

    /// <summary>Notes the database as it is now.</summary>
    public static void Write(StudyFiles files, Daybook daybook)
        => DurableFile.Write(files.Check, Text(daybook.Version, daybook.Fingerprint, HashOf(files.Database)));

    /// <summary>What does not agree, or null. A study that was not closed has newer entries than the note: that is no damage.</summary>
    public static string? Compare(StudyFiles files, Daybook daybook)
    {
        if (!File.Exists(files.Check))
            return null;
        byte[] bytes;
        long entries;
        string? fingerprint, sha256;
        try
        {
            bytes = PlainFile.Read(files.Check, 4096);
            using var json = JsonDocument.Parse(bytes);
            var root = json.RootElement;
            entries = root.GetProperty("entries").GetInt64();
            fingerprint = root.GetProperty("fingerprint").GetString();
            sha256 = root.GetProperty("sha256").GetString();
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or StudyException)
        {
            return "study.check cannot be read";
        }
        if (!bytes.AsSpan().SequenceEqual(Text(entries, fingerprint ?? "", sha256 ?? "")))
            return "study.check is not as it was written";
        if (entries > daybook.Version)
            return $"study.db ends at entry {Ordinal.Text(daybook.Version)}, study.check knows {Ordinal.Text(entries)}";
        if (entries < 1 || !string.Equals(daybook.Entries[(int)entries - 1].Hash, fingerprint, StringComparison.Ordinal))
            return "study.check names another fingerprint than study.db has";
        return entries == daybook.Version && !string.Equals(sha256, HashOf(files.Database), StringComparison.Ordinal)
            ? "a byte of study.db (or of study.check) changed since it was closed; its entries are whole"
            : null;
    }

    private static byte[] Text(long entries, string fingerprint, string sha256)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WriteNumber("entries", entries);
            json.WriteString("fingerprint", fingerprint);
            json.WriteString("sha256", sha256);
            json.WriteEndObject();
        }
        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static string HashOf(string path)
    {
        using var handle = PlainFile.Open(path);
        if (RandomAccess.GetLength(handle) > LargestDatabase)
            throw PlainFile.TooLarge(path, RandomAccess.GetLength(handle), LargestDatabase);
        using var stream = new FileStream(handle, FileAccess.Read);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }
}
