using System.Collections.Immutable;
using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Studies.Tests;

/// <summary>A place to work in that is gone afterwards, and a clock that only moves when it is told.</summary>
internal sealed class Bench : IDisposable
{
    public Bench()
    {
        Root = Directory.CreateTempSubdirectory("holdfast-test-").FullName;
        Folder = Path.Combine(Root, "ni-study");
    }

    public string Root { get; }

    /// <summary>Where the study is.</summary>
    public string Folder { get; }

    public StoppedClock Clock { get; } = new();

    public StudyFolder Begin() => StudyFolder.Begin(Folder, "Ada", Clock, new StudyBegun("ni-study", "Ni", Invented: true));

    public StudyFolder Open() => StudyFolder.Open(Folder, Clock);

    /// <summary>Writes a text file beside the study and returns its path.</summary>
    public string File(string name, string text) => File(name, System.Text.Encoding.UTF8.GetBytes(text));

    public string File(string name, byte[] bytes)
    {
        var path = Path.Combine(Root, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        System.IO.File.WriteAllBytes(path, bytes);
        return path;
    }

    public void Dispose()
    {
        // Links are not followed: what they lead to is not ours.
        var own = new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint };
        foreach (var file in Directory.EnumerateFiles(Root, "*", own))
            System.IO.File.SetAttributes(file, FileAttributes.Normal);
        Directory.Delete(Root, recursive: true);
    }

    /// <summary>A take with one vessel, one run and two readings.</summary>
    public static TakenIn Take(StudyFolder study, string code, double mass, string file = "invented bytes")
    {
        var bytes = System.Text.Encoding.UTF8.GetBytes(file + code);
        var sha = study.KeepOriginal(bytes);
        var origin = new Origin(sha, code + ".csv", null, 2, "mass");
        var number = study.Study.ReadingsEver;
        return new TakenIn
        {
            Files = [new TakenFile(sha, code + ".csv", bytes.Length)],
            Samples = [new Sample(code, SampleRole.Vessel, ImmutableSortedDictionary.Create<string, Fact>(StringComparer.Ordinal)
                .Add("mass", new Fact("mass", mass, null, null, null, "as written", origin)))],
            Runs = [new Run("run-" + code, "absorbance", ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal).Add("Element", "Ni"), origin)],
            Readings =
            [
                new Reading(Id(number + 1), code, "run-" + code, 1, "absorbance", 0.1, null, 1, 1, "0.100", origin),
                new Reading(Id(number + 2), code, "run-" + code, 2, "absorbance", null, 0.05, 1, 1, "<0.05", origin),
            ],
        };
    }

    public static string Id(int number) => "R-" + number.ToString("0000", System.Globalization.CultureInfo.InvariantCulture);
}

/// <summary>Time that moves only when it is told to.</summary>
internal sealed class StoppedClock : TimeProvider
{
    public DateTimeOffset Now { get; set; } = new(2026, 5, 12, 12, 0, 0, TimeSpan.Zero);

    public override TimeZoneInfo LocalTimeZone { get; } = TimeZoneInfo.CreateCustomTimeZone("bench", TimeSpan.FromHours(2), "bench", "bench");

    public override DateTimeOffset GetUtcNow() => Now;
}
