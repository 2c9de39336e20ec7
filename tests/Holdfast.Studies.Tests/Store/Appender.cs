using System.Diagnostics;
using System.Globalization;

namespace Holdfast.Studies.Tests.Store;

/// <summary>A writer in a process of its own, to be killed or obstructed.</summary>
internal static class Appender
{
    /// <summary>How to start it on a study.</summary>
    public static ProcessStartInfo Start(string folder, int count, params string[] before)
    {
        var command = new[] { "dotnet", Path.Combine(AppContext.BaseDirectory, "Holdfast.Studies.Appender.dll"), folder, count.ToString(CultureInfo.InvariantCulture) };
        string[] line = [.. before, .. command];
        var start = new ProcessStartInfo(line[0]) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        foreach (var argument in line[1..])
            start.ArgumentList.Add(argument);
        start.Environment["DOTNET_TieredPGO"] = "0";
        return start;
    }

    /// <summary>Runs it to its end and returns what it said.</summary>
    public static (int Exit, string[] Lines) Run(string folder, int count, params string[] before)
    {
        using var process = Process.Start(Start(folder, count, before))!;
        var errors = process.StandardError.ReadToEndAsync();
        var lines = process.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        process.WaitForExit();
        _ = errors.Result;
        return (process.ExitCode, lines);
    }

    /// <summary>Numbers and hashes of the entries that it said are kept; a line cut short by a kill says nothing.</summary>
    public static List<(long Number, string Hash)> Kept(IEnumerable<string> lines)
        => [.. lines.Select(l => l.Split(' ')).Where(l => l is ["kept", _, { Length: 64 }]).Select(l => (long.Parse(l[1], CultureInfo.InvariantCulture), l[2]))];
}
