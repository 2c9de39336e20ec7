using Holdfast.Studies;
using Holdfast.Studies.Acts;
using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Web.Live;

/// <summary>Where the bench's study is, or will be: it may be opened on a folder that holds none yet.</summary>
public sealed class StudyPlace
{
    private const int LongestName = 60;
    private readonly Lock gate = new();
    private readonly BenchOptions options;

    /// <summary>The place that was named when the bench was opened.</summary>
    /// <param name="options">Folder, clock, author.</param>
    public StudyPlace(BenchOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        this.options = options;
        (Folder, Who) = (Path.GetFullPath(options.Folder), options.Who);
    }

    /// <summary>The study's folder.</summary>
    public string Folder { get; private set; }

    /// <summary>The author's name as it stands in the Daybook.</summary>
    public string Who { get; private set; }

    /// <summary>Makes the worked example, invented; null where there is none.</summary>
    public Func<Study>? Example => options.Example;

    /// <summary>True when there is a study in the folder.</summary>
    public bool Exists => File.Exists(StudyFiles.In(Folder).Database);

    /// <summary>True when the folder is new or empty, so that a study can have it for its own.</summary>
    public bool IsFree => !Directory.Exists(Folder) || !Directory.EnumerateFileSystemEntries(Folder).Any();

    /// <summary>Names of the folders in it that hold a study.</summary>
    public IReadOnlyList<string> Studies => Exists || !Directory.Exists(Folder)
        ? []
        : [.. Directory.EnumerateDirectories(Folder).Where(d => File.Exists(StudyFiles.In(d).Database)).Select(d => Path.GetFileName(d)).Order(StringComparer.Ordinal)];

    /// <summary>Begins a study.</summary>
    /// <param name="study">What was typed.</param>
    /// <returns>Null when it is begun; otherwise the field in the way and what to do.</returns>
    public (string Field, string Sentence)? Begin(NewStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        lock (gate)
        {
            if (Exists)
                return ("title", "A study was begun here meanwhile, in another window. Reload this page to go on with it.");
            var (title, analyte, author, name) = (Said(study.Title), Said(study.Analyte), Said(study.Author), Said(study.Folder));
            if (title.Length == 0)
                return ("title", "The title is missing. Type a few words that tell this study from others.");
            if (StudyDetail.Named("metal")!.Read(analyte, out var unknown) is not { } metal)
                return ("analyte", unknown);
            if (!IsFree && !IsPlain(name))
                return ("folder", $"“{name}” cannot be the name of a folder. Use letters, digits, hyphens and points, at most {InWords(LongestName)}.");
            var folder = IsFree ? Folder : Path.Combine(Folder, name);
            if (!IsFree && Path.Exists(folder))
                return ("folder", $"{name} is there already and stays as it is. Choose another name.");
            try
            {
                using var begun = StudyFolder.Begin(folder, author.Length == 0 ? Who : author, options.Clock, new StudyBegun(title, metal.Length == 0 ? null : metal, Invented: false));
                begun.Close();
            }
            catch (StudyException e)
            {
                return ("title", $"{e.Code} {e.Message}");
            }

            (Folder, Who) = (folder, author.Length == 0 ? Who : author);
            return null;
        }
    }

    /// <summary>Goes to a study in a folder of this one.</summary>
    /// <param name="name">One of <see cref="Studies"/>.</param>
    /// <returns>True when it is one.</returns>
    public bool GoTo(string name)
    {
        lock (gate)
        {
            if (!Studies.Contains(name, StringComparer.Ordinal))
                return false;
            Folder = Path.Combine(Folder, name);
            return true;
        }
    }

    // A name is data: it never leads out of the folder, and is one on every system.
    private static bool IsPlain(string name)
        => name.Length is > 0 and <= LongestName && name.All(c => char.IsLetterOrDigit(c) || c is '-' or '_' or '.' or ' ')
            && char.IsLetterOrDigit(name[0]) && char.IsLetterOrDigit(name[^1])
            && !new[] { "con", "prn", "aux", "nul", "com", "lpt" }.Contains(name.Split('.')[0].TrimEnd('0', '1', '2', '3', '4', '5', '6', '7', '8', '9').ToLowerInvariant());

    private static string Said(string? words) => (words ?? "").Trim().Normalize();

    private static string InWords(int number) => FormattableString.Invariant($"{number}");
}

/// <summary>What a new study is, as typed.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Analyte">Symbol of the element that is taken up; may be blank.</param>
/// <param name="Author">The author's name; blank for the one the bench was opened with.</param>
/// <param name="Folder">Name of its folder; not read where the bench's own folder is free.</param>
public sealed record NewStudy(string? Title, string? Analyte, string? Author, string? Folder);
