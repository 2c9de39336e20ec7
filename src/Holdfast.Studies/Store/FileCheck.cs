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
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WriteNumber("entries", daybook.Version);
            json.WriteString("fingerprint", daybook.Fingerprint);
            json.WriteString("sha256", HashOf(files.Database));
            json.WriteEndObject();
        }
        stream.WriteByte((byte)'\n');
        DurableFile.Write(files.Check, stream.ToArray());
    }

    /// <summary>What does not agree, or null. A study that was not closed has newer entries than the note: that is no damage.</summary>
    public static string? Compare(StudyFiles files, Daybook daybook)
    {
        if (!File.Exists(files.Check))
            return null;
        long entries;
        string? fingerprint, sha256;
        try
        {
            using var json = JsonDocument.Parse(PlainFile.Read(files.Check, 4096));
            var root = json.RootElement;
            entries = root.GetProperty("entries").GetInt64();
            fingerprint = root.GetProperty("fingerprint").GetString();
            sha256 = root.GetProperty("sha256").GetString();
        }
        catch (Exception e) when (e is JsonException or KeyNotFoundException or InvalidOperationException or FormatException or StudyException)
        {
            return "study.check cannot be read";
        }
        if (entries > daybook.Version)
            return $"study.db ends at entry {Ordinal.Text(daybook.Version)}, study.check knows {Ordinal.Text(entries)}";
        if (entries < 1 || !string.Equals(daybook.Entries[(int)entries - 1].Hash, fingerprint, StringComparison.Ordinal))
            return "study.check names another fingerprint than study.db has";
        return entries == daybook.Version && !string.Equals(sha256, HashOf(files.Database), StringComparison.Ordinal)
            ? "a byte of study.db (or of study.check) changed since it was closed; its entries are whole"
            : null;
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
