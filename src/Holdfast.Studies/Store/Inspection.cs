using System.Collections.Immutable;
using System.Security.Cryptography;
using Holdfast.Studies.History;
using Holdfast.Studies.Package;

namespace Holdfast.Studies.Store;

/// <summary>A study folder looked over for damage; nothing is repaired in place.</summary>
/// <param name="Findings">What was found; damage weighs <see cref="Weight.Stop"/> and names the file.</param>
/// <param name="Entries">Entries that are whole, counted from the first.</param>
/// <param name="Fingerprint">Hash of the last whole entry.</param>
/// <param name="Samples">Samples at present.</param>
/// <param name="Readings">Readings at present.</param>
/// <param name="Strikes">Strikes at present.</param>
/// <param name="Originals">Files that the history keeps: taken in, undone takes included, and handed in with a seal.</param>
/// <param name="EveryByte">True when the originals were re-read and hashed, false when only their presence and length were looked at.</param>
public sealed record Inspection(ImmutableArray<Finding> Findings, long Entries, string Fingerprint, int Samples, int Readings, int Strikes, int Originals, bool EveryByte)
{
    private const int MostEntriesOfAFolder = 100_000;

    /// <summary>True when nothing is damaged.</summary>
    public bool IsSound => !Findings.Any(f => f.Weight == Weight.Stop);

    /// <summary>Looks a study over.</summary>
    /// <param name="folder">The study folder.</param>
    /// <param name="everyByte">True to re-read every original and compare its hash.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="StudyException">It is not a study (HF-434) or of a newer version (HF-435).</exception>
    public static Inspection Of(string folder, bool everyByte, CancellationToken cancel = default)
    {
        var files = StudyFiles.In(folder);
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var (daybook, damage) = StudyFolder.Salvage(folder);
        if (damage is not null)
            findings.Add(Damaged("study.db", damage));
        LookAtDatabase(files, daybook, damage is null, findings);
        if (daybook.Version == 0)
            return new Inspection(findings.ToImmutable(), 0, daybook.Fingerprint, 0, 0, 0, 0, everyByte);

        var taken = daybook.Files.ToList();
        foreach (var file in taken)
        {
            cancel.ThrowIfCancellationRequested();
            LookAtOriginal(files, file, everyByte, findings);
        }
        LookAround(files, taken, findings);
        if (damage is null)
            findings.AddRange(PlainPackage.Differences(files, daybook));
        findings.AddRange(daybook.ClockFindings());
        var study = daybook.Study;
        return new Inspection(findings.ToImmutable(), daybook.Version, daybook.Fingerprint,
            study.Samples.Length, study.Readings.Length, study.Strikes.Length, taken.Count, everyByte);
    }

    private static void LookAtDatabase(StudyFiles files, Daybook daybook, bool readable, ImmutableArray<Finding>.Builder findings)
    {
        if (!readable)
            return;
        using (var connection = EntryTable.Open(files.Database, toWrite: false))
        {
            if (EntryTable.Structure(connection) is { } structure)
                findings.Add(Damaged("study.db", structure));
        }
        if (FileCheck.Compare(files, daybook) is { } difference)
            findings.Add(Damaged("study.db", difference));
    }

    private static void LookAtOriginal(StudyFiles files, TakenFile file, bool everyByte, ImmutableArray<Finding>.Builder findings)
    {
        var path = files.Original(file.Sha256);
        var name = $"originals/{file.Sha256} ({file.FileName})";
        if (!PlainFile.Is(path))
            findings.Add(Damaged(name, "it is missing or not an ordinary file"));
        else if (new FileInfo(path).Length != file.Bytes)
            findings.Add(Damaged(name, $"it has {Ordinal.Text(new FileInfo(path).Length)} bytes instead of {Ordinal.Text(file.Bytes)}"));
        else if (everyByte && !string.Equals(HashOf(path), file.Sha256, StringComparison.Ordinal))
            findings.Add(Damaged(name, "its bytes are not those that were taken in"));
    }

    private static void LookAround(StudyFiles files, List<TakenFile> taken, ImmutableArray<Finding>.Builder findings)
    {
        var known = taken.Select(t => t.Sha256).ToHashSet(StringComparer.Ordinal);
        var seen = 0;
        var options = new EnumerationOptions { RecurseSubdirectories = true, MaxRecursionDepth = 32, AttributesToSkip = FileAttributes.None, IgnoreInaccessible = true };
        foreach (var item in new DirectoryInfo(files.Root).EnumerateFileSystemInfos("*", options).OrderBy(i => i.FullName, StringComparer.Ordinal))
        {
            if (++seen > MostEntriesOfAFolder)
            {
                findings.Add(Finding.Of(Codes.LimitExceeded, Weight.Caution, $"The folder holds more than {Ordinal.Text(MostEntriesOfAFolder)} files; the rest was not looked at."));
                return;
            }
            var name = Path.GetRelativePath(files.Root, item.FullName).Replace('\\', '/');
            if (item.LinkTarget is not null)
                findings.Add(Finding.Of(Codes.Damage, Weight.Caution, $"{name} is a link. Holdfast does not follow it; nothing rests on it.", name));
            else if (name.StartsWith("originals/", StringComparison.Ordinal) && !known.Contains(item.Name))
                findings.Add(Finding.Of(Codes.Damage, Weight.Note, $"{name} is not named by the history: a take that was not finished, or a file put there by hand.", name));
            else if (!name.Contains('/', StringComparison.Ordinal) && IsCopyOfStudy(name))
                findings.Add(Finding.Of(Codes.ChangedElsewhere, Weight.Caution, $"{name} looks like a copy made by a program that synchronises folders. It is not read.", name));
        }
    }

    private static bool IsCopyOfStudy(string name)
        => name.StartsWith("study", StringComparison.OrdinalIgnoreCase) && name.EndsWith(".db", StringComparison.OrdinalIgnoreCase)
            && !string.Equals(name, "study.db", StringComparison.Ordinal);

    private static Finding Damaged(string name, string what)
        => Finding.Of(Codes.Damage, Weight.Stop, $"Damage in {name}: {what}. Return it into a new folder from a copy, or from plain/: holdfast copy-in.", name);

    private static string HashOf(string path)
    {
        using var handle = PlainFile.Open(path);
        using var stream = new FileStream(handle, FileAccess.Read);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }
}
