using System.Text;

namespace Holdfast.Cli.Tests;

/// <summary>A command line typed in a folder of its own, with a clock that stands still.</summary>
internal sealed class Typed : IDisposable
{
    private readonly StringBuilder output = new();
    private readonly StringBuilder error = new();

    /// <summary>A fresh folder.</summary>
    public Typed()
    {
        Folder = Directory.CreateTempSubdirectory("holdfast-cli-").FullName;
    }

    /// <summary>Where it is typed; a verb on a study gets --study where that is not the current folder.</summary>
    public string Folder { get; set; }

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
        var door = new Door(new StringWriter(output) { NewLine = "\n" }, new StringWriter(error) { NewLine = "\n" }, new StillClock(), "tester", Folder, IsTerminal: false);
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

    public void Dispose()
    {
        foreach (var file in Directory.EnumerateFiles(Folder, "*", SearchOption.AllDirectories))
            System.IO.File.SetAttributes(file, FileAttributes.Normal);
        Directory.Delete(Folder, recursive: true);
    }

    private sealed class StillClock : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;
    }
}
