using System.CommandLine;
using System.Globalization;
using Holdfast.Studies;
using Holdfast.Studies.Store;

namespace Holdfast.Cli;

/// <summary>Reads the words, runs the verb, and turns every trouble into one plain message and a documented exit code.</summary>
internal static class CommandLine
{
    /// <summary>Every verb, in the order of the work.</summary>
    public static IReadOnlyList<IVerb> Verbs { get; } =
        [.. Catalogue.Of<IVerb>().OrderBy(v => v.Place)];

    /// <summary>The program's version.</summary>
    public static string Version { get; } = typeof(CommandLine).Assembly.GetName().Version!.ToString(3);

    /// <summary>Runs one command line.</summary>
    /// <param name="words">As typed.</param>
    /// <param name="door">The world.</param>
    /// <returns>The exit code.</returns>
    public static int Run(string[] words, Door door)
    {
        ArgumentNullException.ThrowIfNull(words);
        if (words.Length == 0 || words is ["-h"] or ["--help"] or ["-?"] or ["help"])
            return Help.Overview(door);
        if (words is ["--version"])
        {
            door.Out.WriteLine("holdfast " + Version);
            return Exit.Done;
        }

        var verb = Verbs.FirstOrDefault(v => string.Equals(v.Command(door).Name, words[0], StringComparison.Ordinal));
        if (verb is null)
            return Help.Unknown(words[0], door);
        if (words.Length == 2 && words[1] is "-h" or "--help" or "-?")
            return Help.Of(verb, door);
        return Act(verb, words, door);
    }

    private static int Act(IVerb verb, string[] words, Door door)
    {
        var root = new RootCommand { verb.Command(door) };
        var parsed = root.Parse(words);
        if (parsed.Errors.Count > 0)
        {
            foreach (var error in parsed.Errors)
                door.Error.WriteLine(error.Message);
            door.Error.WriteLine($"holdfast {words[0]} -h shows how it is used.");
            return Exit.NotUnderstood;
        }

        try
        {
            return parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false, Output = door.Out, Error = door.Error });
        }
        catch (StudyException trouble)
        {
            door.Error.WriteLine($"{trouble.Code} {trouble.Message}");
            return Exit.Of(trouble.Code);
        }
        catch (OperationCanceledException)
        {
            door.Error.WriteLine("Stopped. The study is as it was.");
            return Exit.Stopped;
        }
#pragma warning disable CA1031 // The outermost door: a fault of ours becomes a report and a plain message, never a stack trace on the screen.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return Faulted(fault, door);
        }
    }

    private static int Faulted(Exception fault, Door door)
    {
        var name = "holdfast-fault-" + door.Clock.GetUtcNow().ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture) + "-" + Path.GetRandomFileName() + ".txt";
        var path = Path.Combine(Path.GetTempPath(), name);
        try
        {
            // A folder shared with others: a name that nobody can lay a link under, and a file that nobody else can read.
            using var report = new StreamWriter(new FileStream(path, DurableFile.ForOwner(FileMode.CreateNew)));
            report.Write(fault.ToString());
            door.Error.WriteLine($"HF-450 This is a fault in Holdfast, not in your data. Nothing half-done was kept. The details are in {path}.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            door.Error.WriteLine($"HF-450 This is a fault in Holdfast, not in your data ({fault.GetType().Name}: {fault.Message}). Nothing half-done was kept.");
        }

        return Exit.Fault;
    }
}
