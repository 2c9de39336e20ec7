using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Studies.Package;

/// <summary>
/// A study copied to another place, or returned from one, and read back: no copy is called good before every byte of it was read again. The copy is made
/// beside its name and takes the name at the end, so that one that was cut short never looks like a study.
/// </summary>
/// <param name="Folder">Where the copy is.</param>
/// <param name="ReadBack">What reading every byte of the copy found.</param>
/// <param name="Findings">What could not be brought along: originals that are missing or damaged where it came from.</param>
/// <param name="FromPlain">True when the history came from plain/, since study.db was missing or damaged.</param>
public sealed record StudyCopy(string Folder, Inspection ReadBack, ImmutableArray<Finding> Findings, bool FromPlain)
{
    /// <summary>True when the copy is whole: the same history, and every original with its fingerprint.</summary>
    public bool IsGood => ReadBack.IsSound && Findings.IsEmpty;

    /// <summary>Copies a study out. It may be open elsewhere: what was kept up to now is copied.</summary>
    /// <param name="from">The study folder.</param>
    /// <param name="to">A folder that is not there yet.</param>
    /// <param name="clock">Where the time comes from.</param>
    /// <exception cref="StudyException">The study is damaged (HF-432) or none (HF-434), the new folder is there already (HF-434), or the disk is in the way (HF-43x).</exception>
    public static StudyCopy Out(string from, string to, TimeProvider clock)
    {
        using var study = StudyFolder.OpenToRead(from);
        return Into(to, fresh => Whole(study.Daybook, study.Files.Originals, fresh, clock), fromPlain: false);
    }

    /// <summary>Returns a study from a copy, or, where its study.db is damaged or missing, from its plain form.</summary>
    /// <param name="from">A study folder, its folder plain, a folder that holds one, or a package that was handed over, packed or not.</param>
    /// <param name="to">A folder that is not there yet.</param>
    /// <param name="clock">Where the time comes from.</param>
    /// <exception cref="StudyException">Neither form can be read (HF-432, HF-406), the new folder is there already (HF-434), or the disk is in the way (HF-43x).</exception>
    public static StudyCopy In(string from, string to, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(from);
        if (HandedOver.Is(from))
        {
            var package = HandedOver.Open(from);
            return Into(to, fresh =>
            {
                var (study, findings) = package.Return(fresh, clock);
                return [.. findings, .. study.Close()];
            }, fromPlain: false);
        }
        var files = StudyFiles.In(from);
        if (PlainFile.Is(files.Database))
        {
            try
            {
                return Out(from, to, clock);
            }
            catch (StudyException e) when (e.Code is Codes.Damage && PlainFile.Is(Path.Combine(files.Plain, PlainPackage.HistoryFile)))
            {
                // Told by FromPlain: the copy then holds what plain/ knew.
            }
        }

        var plain = PlainFile.Is(Path.Combine(files.Root, PlainPackage.HistoryFile)) ? files.Root : files.Plain;
        return Into(to, fresh =>
        {
            var (study, findings) = PlainPackage.Return(plain, fresh, clock);
            return [.. findings, .. study.Close()];
        }, fromPlain: true);
    }

    private static StudyCopy Into(string to, Func<string, ImmutableArray<Finding>> make, bool fromPlain)
    {
        var target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(to));
        SafePath.RefuseLink(target);
        if (Path.Exists(target))
            throw new StudyException(Codes.NotAStudy, $"{Path.GetFileName(target)} is there already and is left as it is. Name a folder that is not there yet.");
        var fresh = target + ".copying-" + Path.GetRandomFileName()[..4];
        ImmutableArray<Finding> findings;
        try
        {
            findings = make(fresh);
            Directory.Move(fresh, target);
            DurableFile.FlushFolder(Path.GetDirectoryName(target)!);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw DiskTrouble.Of(e, target);
        }
        finally
        {
            Discard(fresh);
        }

        return new StudyCopy(target, Inspection.Of(target, everyByte: true), findings, fromPlain);
    }

    private static ImmutableArray<Finding> Whole(Daybook daybook, string originals, string fresh, TimeProvider clock)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        using var study = StudyFolder.Begin(fresh, clock, daybook);
        PlainPackage.ReturnOriginals(study, sha256 => PlainPackage.OriginalIn(originals, sha256), findings);
        findings.AddRange(study.Close());
        return findings.ToImmutable();
    }

    // What is left of a copy that was cut short; it was ours alone.
    private static void Discard(string folder)
    {
        try
        {
            if (!Directory.Exists(folder))
                return;
            foreach (var file in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories))
                File.SetAttributes(file, FileAttributes.Normal);
            Directory.Delete(folder, recursive: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It is no study by its name, and can be deleted by hand.
        }
    }

    /// <summary>What came of it, in one sentence.</summary>
    public string Sentence => string.Create(CultureInfo.InvariantCulture,
        $"{ReadBack.Entries} entries, {ReadBack.Originals} originals, fingerprint {ReadBack.Fingerprint}");
}
