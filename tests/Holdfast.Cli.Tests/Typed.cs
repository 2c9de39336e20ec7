using System.Text;
using System.Text.RegularExpressions;

namespace Holdfast.Cli.Tests;

/// <summary>A command line typed in a folder of its own, with a clock that stands still.</summary>
internal sealed class Typed : IDisposable
{
    private readonly StringBuilder output = new();
    private readonly StringBuilder error = new();
    private readonly string root;

    /// <summary>A fresh folder.</summary>
    public Typed()
    {
        Folder = root = Directory.CreateTempSubdirectory("holdfast-cli-").FullName;
    }

    /// <summary>Where it is typed; a verb on a study gets --study where that is not the current folder.</summary>
    public string Folder { get; set; }

    /// <summary>True where a person reads the results; a script or a pipe does when left out.</summary>
    public bool IsTerminal { get; init; }

    /// <summary>What the last verb wrote as its result.</summary>
    public string Out => output.ToString();

    /// <summary>What the last verb remarked.</summary>
    public string Error => error.ToString();

    /// <summary>Lines that stand ready as answers.</summary>
    public string Answers { get; set; } = "";

    /// <summary>Types one line.</summary>
    public int Type(params string[] words)
    {
        output.Clear();
        error.Clear();
        var door = new Door(new StringWriter(output) { NewLine = "\n" }, new StringWriter(error) { NewLine = "\n" }, new StillClock(), "tester", Folder, IsTerminal);
        return CommandLine.Run(words, door with { In = new StringReader(Answers) });
    }

    /// <summary>Writes a file and returns its path.</summary>
    public string File(string name, string text)
    {
        var path = Path.Combine(Folder, name);
        System.IO.File.WriteAllText(path, text, new UTF8Encoding(false));
        return path;
    }

    /// <summary>Begins a study and goes into it.</summary>
    public void Begin(string name = "study")
    {
        Assert.Equal(Exit.Done, Type("begin", name, "--analyte", "Pb"));
        Folder = Path.Combine(Folder, name);
    }

    /// <summary>Takes a sheet in, and keeps as it is written whatever the intake asks about.</summary>
    public void TakeAsItStands(string path)
    {
        var asked = new Regex("--answer \"(?<question>[^\"=]+)=[^\"]*keep", RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture);
        List<string> words = ["take", path];
        for (var round = 0; round < 5 && Type([.. words]) != Exit.Done; round++)
            words.AddRange(asked.Matches(Error).SelectMany(m => new[] { "--answer", m.Groups["question"].Value + "=keep" }));
        Assert.Contains("Kept as entry", Out, StringComparison.Ordinal);
    }

    public void Dispose()
    {
        // Links are not followed: what they lead to may not be ours.
        var own = new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.ReparsePoint };
        foreach (var file in Directory.EnumerateFiles(root, "*", own))
            System.IO.File.SetAttributes(file, FileAttributes.Normal);
        Directory.Delete(root, recursive: true);
    }

    private sealed class StillClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
    }
}
