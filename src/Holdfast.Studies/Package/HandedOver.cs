using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;

namespace Holdfast.Studies.Package;

/// <summary>
/// A package that somebody handed over, as a ZIP archive or unpacked into a folder: looked over, and returned as a study. None of its names becomes a path of this
/// computer: files are asked for by the names that a package has, originals by their fingerprints.
/// </summary>
public sealed class HandedOver
{
    /// <summary>The file that names every other file with its SHA-256, as sha256sum writes it.</summary>
    public const string Sums = "SHA256SUMS";

    /// <summary>Where the plain form lies.</summary>
    public const string Plain = "plain/";

    /// <summary>Where the files taken in and the documents of a seal lie, under their own names.</summary>
    public const string Originals = "originals/";

    private readonly ImmutableSortedDictionary<string, Func<byte[]>> files;
    private readonly Lazy<ImmutableSortedDictionary<string, string>> fingerprints;

    private HandedOver(string name, ImmutableSortedDictionary<string, Func<byte[]>> files, ImmutableArray<Finding> refused)
    {
        (Name, this.files, Refused) = (name, files, refused);
        fingerprints = new(() => files.ToImmutableSortedDictionary(f => f.Key, f => Convert.ToHexStringLower(SHA256.HashData(f.Value())), StringComparer.Ordinal));
    }

    /// <summary>Name of the archive or folder.</summary>
    public string Name { get; }

    /// <summary>What lies in it and is not read: links, names that no package of ours has.</summary>
    public ImmutableArray<Finding> Refused { get; }

    /// <summary>Said where an archive is not byte for byte what is written here from its files: packed anew, by another version, or touched outside its files; null otherwise.</summary>
    public Finding? PackedElsewhere { get; private init; }

    /// <summary>Names of its files, with "/" between folders.</summary>
    public IEnumerable<string> Names => files.Keys;

    /// <summary>True for a ZIP archive, or a folder that is a package and no study.</summary>
    /// <param name="path">Any path.</param>
    public static bool Is(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return Directory.Exists(path) ? PlainFile.Is(Path.Combine(path, Sums)) && !Path.Exists(StudyFiles.In(path).Database) : PlainFile.Is(path) && SafeZip.Is(path);
    }

    /// <summary>Opens a package.</summary>
    /// <param name="path">The archive or folder.</param>
    /// <exception cref="StudyException">Damaged (HF-406), past a limit (HF-407), or no package (HF-434).</exception>
    public static HandedOver Open(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        if (Directory.Exists(path))
            return OfFolder(Path.TrimEndingDirectorySeparator(Path.GetFullPath(path)));
        return Of(Path.GetFileName(path), PlainFile.Read(path, Limits.Unpacked));
    }

    /// <summary>Opens a package that is in memory.</summary>
    /// <param name="name">Name of the archive.</param>
    /// <param name="archive">Its bytes.</param>
    /// <exception cref="StudyException">Damaged (HF-406), past a limit (HF-407), or no package (HF-434).</exception>
    public static HandedOver Of(string name, byte[] archive)
    {
        ArgumentNullException.ThrowIfNull(archive);
        var unpacked = SafeZip.Read(archive, name);
        // Whoever packs a folder anew often packs the folder itself.
        var root = unpacked.ContainsKey(Plain + PlainPackage.HistoryFile) ? "" : unpacked.Keys.Where(k => k.EndsWith("/" + Plain + PlainPackage.HistoryFile, StringComparison.Ordinal)).Select(k => k[..^(Plain.Length + PlainPackage.HistoryFile.Length)]).FirstOrDefault() ?? "";
        return new(name, unpacked.Where(f => f.Key.StartsWith(root, StringComparison.Ordinal)).ToImmutableSortedDictionary(f => f.Key[root.Length..], f => (Func<byte[]>)(() => f.Value), StringComparer.Ordinal), [])
        {
            PackedElsewhere = SettledZip.Write(unpacked.Select(f => (f.Key, (ReadOnlyMemory<byte>)f.Value))).AsSpan().SequenceEqual(archive) ? null
                : Finding.Of(Codes.Damage, Weight.Note, $"The archive {name} was packed anew, by another version, or touched outside its files. Every file in it is compared on its own; compare the SHA-256 of the archive with the one that was told.", name),
        };
    }

    private static HandedOver OfFolder(string folder)
    {
        var found = ImmutableSortedDictionary.CreateBuilder<string, Func<byte[]>>(StringComparer.Ordinal);
        var refused = ImmutableArray.CreateBuilder<Finding>();
        var options = new EnumerationOptions { RecurseSubdirectories = true, MaxRecursionDepth = Limits.Depth, AttributesToSkip = FileAttributes.None, IgnoreInaccessible = true };
        foreach (var item in new DirectoryInfo(folder).EnumerateFileSystemInfos("*", options))
        {
            var name = Path.GetRelativePath(folder, item.FullName).Replace('\\', '/');
            if (item.LinkTarget is not null)
                refused.Add(Finding.Of(Codes.Damage, Weight.Caution, $"{name} is a link. It is not followed, and no package has one.", name));
            else if (item is FileInfo file)
                found[name] = () => PlainFile.Read(file.FullName, Limits.Unpacked);
            if (found.Count > Limits.ArchiveEntries)
                throw Limits.Exceeded(Path.GetFileName(folder), "more than 5000 files");
        }

        return new(Path.GetFileName(folder), found.ToImmutable(), refused.ToImmutable());
    }

    /// <summary>The bytes of a file, or null.</summary>
    /// <param name="name">Its name in the package.</param>
    public byte[]? Read(string name) => files.TryGetValue(name, out var read) ? read() : null;

    /// <summary>The history it holds.</summary>
    /// <exception cref="StudyException">It holds none (HF-434), or a damaged one (HF-432).</exception>
    public Daybook History()
    {
        if (Read(Plain + PlainPackage.HistoryFile) is not { } history)
            throw new StudyException(Codes.NotAStudy, $"{Name} is no package of a study: it holds no {Plain}{PlainPackage.HistoryFile}. Nothing is made from it.");
        return PlainPackage.Read(history, Read(Plain + PackageDescriptor.FileName) is { } descriptor ? PlainPackage.Descriptor(descriptor) : null);
    }

    /// <summary>Every file held against the list of fingerprints, and the plain form and the originals against the history.</summary>
    /// <returns>What is not as it was handed over, each file by name; empty for a whole package.</returns>
    /// <exception cref="StudyException">It holds no history (HF-434), or a damaged one (HF-432).</exception>
    public ImmutableArray<Finding> Check()
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        findings.AddRange(Refused);
        var daybook = History();
        Listed(findings);
        foreach (var (name, bytes) in PlainPackage.Files(daybook))
        {
            if (Read(Plain + name) is not { } there || !there.AsSpan().SequenceEqual(bytes))
                findings.Add(Changed(Plain + name, "it is not what the history says"));
        }
        foreach (var file in daybook.Files.Where(f => !fingerprints.Value.ContainsValue(f.Sha256)))
            findings.Add(Changed(Originals + file.FileName, "no file of the package has its bytes"));
        return findings.ToImmutable();
    }

    /// <summary>Makes the study anew. Its history, and so its fingerprint, is the same.</summary>
    /// <param name="newFolder">Where; no study may be there.</param>
    /// <param name="clock">Where the time comes from.</param>
    /// <returns>The study, open for writing, and what is not as it was handed over.</returns>
    /// <exception cref="StudyException">It holds no history (HF-434), a damaged one (HF-432), or the new folder has a study (HF-434).</exception>
    public (StudyFolder Study, ImmutableArray<Finding> Findings) Return(string newFolder, TimeProvider clock)
    {
        var damaged = Check();
        var (study, missing) = PlainPackage.Return(History(), Original, newFolder, clock);
        return (study, [.. damaged, .. missing]);
    }

    private byte[]? Original(string sha256) => fingerprints.Value.Where(f => f.Value == sha256).Select(f => Read(f.Key)).FirstOrDefault();

    private void Listed(ImmutableArray<Finding>.Builder findings)
    {
        if (Read(Sums) is not { } list)
        {
            findings.Add(Changed(Sums, "it is missing, so only the history and the originals can be checked"));
            return;
        }

        var listed = new HashSet<string>(StringComparer.Ordinal) { Sums };
        foreach (var line in Encoding.UTF8.GetString(list).Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length < 67 || line[64..66] != "  ")
            {
                findings.Add(Changed(Sums, "one of its lines is none that sha256sum writes"));
                continue;
            }

            var name = line[66..];
            listed.Add(name);
            if (!fingerprints.Value.TryGetValue(name, out var own))
                findings.Add(Changed(name, "it is listed and missing"));
            else if (!string.Equals(own, line[..64], StringComparison.Ordinal))
                findings.Add(Changed(name, "its bytes are not those that were handed over"));
        }

        foreach (var name in files.Keys.Where(n => !listed.Contains(n)))
            findings.Add(Changed(name, "it is not listed: it was put there since"));
    }

    private static Finding Changed(string name, string what)
        => Finding.Of(Codes.Damage, Weight.Caution, $"Damage in the package, {name}: {what}. Ask for the package once more.", name);
}
