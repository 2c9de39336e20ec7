using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Studies.Package;

/// <summary>
/// The study as a Data Package: CSV tables, the whole history, datapackage.json. A pure function of the history, so the same study
/// gives the same bytes everywhere, and enough to make the study anew.
/// </summary>
public static class PlainPackage
{
    /// <summary>The file that carries the history.</summary>
    public const string HistoryFile = "history.jsonl";

    private const long LargestFile = 1L << 30;

    /// <summary>Every file of the package, by name.</summary>
    /// <param name="daybook">The study's history.</param>
    public static ImmutableSortedDictionary<string, byte[]> Files(Daybook daybook)
    {
        ArgumentNullException.ThrowIfNull(daybook);
        var tables = PlainTables.Of(daybook.Study);
        var files = ImmutableSortedDictionary.CreateBuilder<string, byte[]>(StringComparer.Ordinal);
        foreach (var table in tables)
            files[table.Name + ".csv"] = table.ToBytes();
        files[HistoryFile] = History(daybook);
        files[PackageDescriptor.FileName] = PackageDescriptor.Write(daybook, tables, files);
        return files.ToImmutable();
    }

    /// <summary>Its tables, in a fixed order.</summary>
    /// <param name="study">The study.</param>
    public static ImmutableArray<PlainTable> Tables(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return PlainTables.Of(study);
    }

    /// <summary>Writes the package and the folder's README anew; files that are right already are left alone.</summary>
    /// <param name="files">The study's files.</param>
    /// <param name="daybook">Its history.</param>
    /// <exception cref="StudyException">The disk is full or read-only or failed (HF-43x).</exception>
    public static void Write(StudyFiles files, Daybook daybook)
    {
        ArgumentNullException.ThrowIfNull(files);
        try
        {
            SafePath.RefuseLink(files.Plain);
            DurableFile.MakeFolder(files.Plain);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw DiskTrouble.Of(e, files.Plain);
        }
        foreach (var (name, bytes) in Expected(files, daybook))
        {
            if (!IsThere(name, bytes))
                DurableFile.Write(name, bytes);
        }
    }

    /// <summary>Files of the package on the disk that are not what the history says; stale ones are a note, changed ones a warning.</summary>
    /// <param name="files">The study's files.</param>
    /// <param name="daybook">Its history.</param>
    public static ImmutableArray<Finding> Differences(StudyFiles files, Daybook daybook)
    {
        ArgumentNullException.ThrowIfNull(files);
        ArgumentNullException.ThrowIfNull(daybook);
        var descriptor = Path.Combine(files.Plain, PackageDescriptor.FileName);
        if (!File.Exists(descriptor))
            return [Finding.Of(Codes.Damage, Weight.Note, "plain/ has not been written yet. It is made when the study is closed.", "plain")];
        var expected = Expected(files, daybook);
        var different = expected.Where(f => !IsThere(f.Key, f.Value)).Select(f => f.Key).ToList();
        if (different.Count == 0)
            return [];

        // A study that was not closed leaves the package of an earlier entry: every file must then be as it was at that entry.
        if (EntriesOf(descriptor) is { } entries && entries >= 1 && entries < daybook.Version
            && Expected(files, daybook.At(entries)).All(f => IsThere(f.Key, f.Value)))
        {
            return [Finding.Of(Codes.Damage, Weight.Note,
                $"plain/ shows the study as of entry {Ordinal.Text(entries)}; it now has {Ordinal.Text(daybook.Version)}. Close the study to refresh it.", "plain")];
        }
        return [.. different.Select(f => Path.GetRelativePath(files.Root, f).Replace('\\', '/')).Select(name => Finding.Of(Codes.Damage, Weight.Caution,
            $"{name} is not what the history says: it was changed or damaged. No result rests on it. Close the study to write it anew.", name))];
    }

    /// <summary>Makes a study anew from its plain form. Its history, and so its fingerprint, is the same.</summary>
    /// <param name="plainFolder">The folder plain.</param>
    /// <param name="newFolder">Where the study is made; no study may be there.</param>
    /// <param name="clock">Where the time comes from.</param>
    /// <param name="originalsFolder">Where the originals are; null for the folder originals beside plain.</param>
    /// <returns>The study, open for writing, and what could not be returned: originals that are missing or damaged.</returns>
    /// <exception cref="StudyException">The plain form is damaged (HF-432), unreadable (HF-406), newer (HF-435), or the new folder has a study (HF-434).</exception>
    public static (StudyFolder Study, ImmutableArray<Finding> Findings) Return(string plainFolder, string newFolder, TimeProvider clock, string? originalsFolder = null)
    {
        ArgumentNullException.ThrowIfNull(plainFolder);
        originalsFolder ??= Path.Combine(Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(plainFolder)))!, "originals");
        var daybook = Read(PlainFile.Read(Path.Combine(plainFolder, HistoryFile), LargestFile), Descriptor(Path.Combine(plainFolder, PackageDescriptor.FileName)));
        return Return(daybook, sha256 => OriginalIn(originalsFolder, sha256), newFolder, clock);
    }

    /// <summary>Makes a study anew from a history that was read, and originals from wherever they lie.</summary>
    /// <param name="daybook">The history.</param>
    /// <param name="original">The bytes of an original by its fingerprint; null where there are none.</param>
    /// <param name="newFolder">Where the study is made; no study may be there.</param>
    /// <param name="clock">Where the time comes from.</param>
    internal static (StudyFolder Study, ImmutableArray<Finding> Findings) Return(Daybook daybook, Func<string, byte[]?> original, string newFolder, TimeProvider clock)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var study = StudyFolder.Begin(newFolder, clock, daybook);
        try
        {
            ReturnOriginals(study, original, findings);
            Write(study.Files, daybook);
            return (study, findings.ToImmutable());
        }
        catch
        {
            study.Dispose();
            throw;
        }
    }

    /// <summary>Brings every original that the history names into a study, each checked against its fingerprint.</summary>
    /// <param name="study">The study, open for writing.</param>
    /// <param name="original">The bytes of one by its fingerprint; null where there are none.</param>
    /// <param name="findings">Receives those that are missing or damaged.</param>
    internal static void ReturnOriginals(StudyFolder study, Func<string, byte[]?> original, ImmutableArray<Finding>.Builder findings)
    {
        foreach (var file in study.Daybook.Files)
        {
            if (original(file.Sha256) is { } bytes && IsOf(bytes, file.Sha256))
            {
                study.KeepOriginal(bytes);
            }
            else
            {
                findings.Add(Finding.Of(Codes.Damage, Weight.Caution,
                    $"The original {file.FileName} is missing or damaged, so it was not returned. Its readings are kept and cannot be checked.", file.Sha256));
            }
        }
    }

    /// <summary>The bytes of an original in a folder whose files are named by their fingerprints; null where there is no such file.</summary>
    /// <param name="originalsFolder">The folder.</param>
    /// <param name="sha256">Its fingerprint.</param>
    internal static byte[]? OriginalIn(string originalsFolder, string sha256)
    {
        var path = Path.Combine(originalsFolder, Path.GetFileName(StudyFiles.In(originalsFolder).Original(sha256)));
        return PlainFile.Is(path) ? PlainFile.Read(path, LargestFile) : null;
    }

    /// <summary>The history that its file holds, checked line by line and against the fingerprint that the description names.</summary>
    /// <param name="bytes">history.jsonl.</param>
    /// <param name="described">datapackage.json; null where it cannot be read.</param>
    /// <exception cref="StudyException">Damaged (HF-432).</exception>
    internal static Daybook Read(byte[] bytes, JsonDocument? described)
    {
        using var descriptor = described;
        var entries = ImmutableArray.CreateBuilder<Entry>();
        var hash = Chain.Start;
        for (var at = 0; at < bytes.Length;)
        {
            var length = Array.IndexOf(bytes, (byte)'\n', at) - at;
            if (length < 0)
                throw Damaged($"its last line, {Ordinal.Text(entries.Count + 1)}, is not whole");
            try
            {
                entries.Add(EntryText.Read(bytes.AsSpan(at, length), hash));
            }
            catch (Exception e) when (e is JsonException or InvalidDataException)
            {
                throw Damaged($"line {Ordinal.Text(entries.Count + 1)} is not an entry ({e.Message.TrimEnd('.')})");
            }
            if (entries[^1].Number != entries.Count)
                throw Damaged($"line {Ordinal.Text(entries.Count)} is entry {Ordinal.Text(entries[^1].Number)}");
            hash = entries[^1].Hash;
            at += length + 1;
        }
        if (entries.Count == 0 || entries[0].Change is not StudyBegun)
            throw Damaged("it does not begin with the beginning of a study");
        var fingerprint = descriptor?.RootElement.TryGetProperty("holdfast:fingerprint", out var f) == true && f.ValueKind == JsonValueKind.String ? f.GetString() : null;
        if (!string.Equals(fingerprint, hash, StringComparison.Ordinal))
            throw Damaged("it does not lead to the fingerprint that datapackage.json names");
        return Sense.Of(entries.ToImmutable()) is (_, { } senseless) ? throw Damaged(senseless) : new Daybook(entries.ToImmutable());
    }

    private static bool IsOf(byte[] bytes, string sha256)
        => string.Equals(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes)), sha256, StringComparison.Ordinal);

    private static ImmutableSortedDictionary<string, byte[]> Expected(StudyFiles files, Daybook daybook)
        => Files(daybook).ToImmutableSortedDictionary(f => Path.Combine(files.Plain, f.Key), f => f.Value, StringComparer.Ordinal)
            .Add(files.Readme, Encoding.UTF8.GetBytes(FolderReadme.Of(daybook)));

    private static byte[] History(Daybook daybook)
    {
        using var stream = new MemoryStream();
        foreach (var entry in daybook.Entries)
        {
            stream.Write(entry.Bytes.AsSpan());
            stream.WriteByte((byte)'\n');
        }
        return stream.ToArray();
    }

    private static bool IsThere(string path, byte[] bytes)
        => PlainFile.Is(path) && new FileInfo(path).Length == bytes.Length && PlainFile.Read(path, LargestFile).AsSpan().SequenceEqual(bytes);

    private static long? EntriesOf(string descriptor)
    {
        using var json = Descriptor(descriptor);
        return json?.RootElement.TryGetProperty("holdfast:entries", out var n) == true && n.TryGetInt64(out var entries) ? entries : null;
    }

    private static JsonDocument? Descriptor(string path)
    {
        try
        {
            return Descriptor(PlainFile.Read(path, LargestFile));
        }
        catch (StudyException)
        {
            return null;
        }
    }

    /// <summary>A description of a package; null where the bytes are none.</summary>
    /// <param name="bytes">datapackage.json.</param>
    internal static JsonDocument? Descriptor(byte[] bytes)
    {
        try
        {
            var json = JsonDocument.Parse(bytes);
            if (json.RootElement.ValueKind == JsonValueKind.Object)
                return json;
            json.Dispose();
            return null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static StudyException Damaged(string what)
        => new(Codes.Damage, $"The plain form is damaged: {HistoryFile}: {what}. No study is made from it. Use another copy.");
}
