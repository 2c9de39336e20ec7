using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis.CSharp;

namespace Holdfast.Mutants;

/// <summary>A copy of the house with every change built in, each switched on by HOLDFAST_MUTANT, and its tests.</summary>
/// <param name="root">The repository.</param>
/// <param name="folder">Where the copy lies.</param>
internal sealed class Copy(string root, string folder)
{
    private static readonly string[] Parts =
    [
        "src", "tests/Holdfast.Claims.Tests", "tests/Shared", "tests/Directory.Build.props", "bench/Holdfast.Verdicts", "bench/Holdfast.Coverage", "samples", "reference", "Directory.Build.props",
        "Directory.Packages.props", "BannedSymbols.txt", "global.json", ".editorconfig",
    ];

    private readonly string program = Path.Combine(folder, "artifacts", "bin", "Holdfast.Claims.Tests", "release", "Holdfast.Claims.Tests.dll");

    /// <summary>Writes the copy with all changes and builds it, leaving out those that the language refuses.</summary>
    /// <param name="sources">Files to change, from the root.</param>
    /// <returns>The changes, or null when the copy cannot be built.</returns>
    public List<Mutant>? Build(IReadOnlyList<string> sources)
    {
        Write();
        var texts = sources.ToDictionary(s => s, s => CSharpSyntaxTree.ParseText(File.ReadAllText(Path.Combine(root, s))).GetRoot(), StringComparer.Ordinal);
        var constants = new[] { "src", "tests" }.SelectMany(part => Directory.EnumerateFiles(Path.Combine(folder, part), "*.cs", SearchOption.AllDirectories)).Where(f => !f.Contains("/obj/", StringComparison.Ordinal))
            .SelectMany(f => Switching.WantedConstant(CSharpSyntaxTree.ParseText(File.ReadAllText(f)).GetRoot())).ToHashSet(StringComparer.Ordinal);
        var leftOut = sources.ToDictionary(s => s, _ => new HashSet<int>(), StringComparer.Ordinal);
        var mutants = new List<Mutant>();
        for (var round = 1; round <= 12; round++)
        {
            mutants.Clear();
            foreach (var source in sources)
                File.WriteAllText(Path.Combine(folder, source), new Switching(source, mutants, leftOut[source], constants).Visit(texts[source]).ToFullString());
            var (built, refused) = Compile();
            Console.WriteLine($"round {round}: {mutants.Count} changes, the compiler refuses {refused.Count} lines {(refused.Count > 0 ? refused[0] : "")}");
            if (built)
                return mutants;
            if (refused.Count == 0)
                return null;
            foreach (var (file, line) in refused)
            {
                // Where the language wants a constant, the name of one that is a property now stands on the refused line.
                var words = Regex.Matches(File.ReadLines(Path.Combine(folder, file)).ElementAt(line - 1), @"\w+", RegexOptions.NonBacktracking).Select(m => m.Value).ToHashSet(StringComparer.Ordinal);
                foreach (var mutant in mutants.Where(m => (m.File == file && words.Contains(m.Number.ToString(CultureInfo.InvariantCulture))) || (m.Constant is { } name && words.Contains(name))))
                    leftOut[mutant.File].Add(mutant.Line);
            }
        }

        return null;
    }

    /// <summary>Runs test classes, up to the first failure.</summary>
    /// <param name="number">The change that is switched on; 0 for none.</param>
    /// <param name="classes">Names of the classes.</param>
    /// <param name="limit">Time after which a run that goes on counts as failed: a change that makes a test endless is noticed as well.</param>
    /// <param name="notes">File that receives the numbers of the changes that made a difference, or null.</param>
    /// <returns>Whether all tests passed, and what was said.</returns>
    public (bool Passed, string Said) Run(int number, IEnumerable<string> classes, TimeSpan limit, string? notes = null)
    {
        var start = new ProcessStartInfo("dotnet", [program, "-stopOnFail", "-noLogo", "-parallel", "none", .. classes.SelectMany(c => new[] { "-class", "*." + c })]) { WorkingDirectory = folder, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["HOLDFAST_MUTANT"] = number.ToString(CultureInfo.InvariantCulture);
        start.Environment["HOLDFAST_MUTANT_NOTES"] = notes;
        start.Environment["DOTNET_TieredPGO"] = "0";
        using var test = Process.Start(start)!;
        var output = test.StandardOutput.ReadToEndAsync();
        _ = test.StandardError.ReadToEndAsync();
        if (test.WaitForExit(limit))
            return (test.ExitCode == 0, output.Result);
        test.Kill(entireProcessTree: true);
        return (false, "out of time");
    }

    private void Write()
    {
        // A file that was moved must not stay behind in the copy.
        foreach (var old in new[] { "src", "tests", "bench" }.Select(part => Path.Combine(folder, part)).Where(Directory.Exists))
            Directory.Delete(old, recursive: true);
        var listed = Process.Start(new ProcessStartInfo("git", ["-c", "core.quotePath=false", "ls-files", "--cached", "--others", "--exclude-standard", .. Parts]) { WorkingDirectory = root, UseShellExecute = false, RedirectStandardOutput = true })!;
        foreach (var file in listed.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(f => File.Exists(Path.Combine(root, f))))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(folder, file))!);
            File.Copy(Path.Combine(root, file), Path.Combine(folder, file), overwrite: true);
        }

        File.WriteAllText(Path.Combine(folder, "src", "Holdfast", "MutantSwitch.cs"), """
            namespace Holdfast;

            public static class MutantSwitch
            {
                private static readonly int Active = int.TryParse(System.Environment.GetEnvironmentVariable("HOLDFAST_MUTANT"), out var number) ? number : 0;
                private static readonly bool[]? Differed = Begin();

                public static T Of<T>(int number, T asIs, T changed)
                {
                    if (Differed is not null && !System.Collections.Generic.EqualityComparer<T>.Default.Equals(asIs, changed))
                        Differed[number] = true;
                    return number == Active ? changed : asIs;
                }

                private static bool[]? Begin()
                {
                    if (System.Environment.GetEnvironmentVariable("HOLDFAST_MUTANT_NOTES") is not { Length: > 0 } file)
                        return null;
                    var differed = new bool[100_000];
                    System.AppDomain.CurrentDomain.ProcessExit += (_, _) => System.IO.File.WriteAllLines(file, System.Linq.Enumerable.Range(0, differed.Length).Where(i => differed[i]).Select(i => i.ToString(System.Globalization.CultureInfo.InvariantCulture)));
                    return differed;
                }
            }
            """);
    }

    private (bool Built, List<(string File, int Line)> Refused) Compile()
    {
        var build = Process.Start(new ProcessStartInfo("dotnet", ["build", "-c", "Release", "tests/Holdfast.Claims.Tests", "-p:RunAnalyzers=false", "-p:TreatWarningsAsErrors=false", "-p:CheckForOverflowUnderflow=false", "-v", "q", "-nologo"]) { WorkingDirectory = folder, UseShellExecute = false, RedirectStandardOutput = true })!;
        var said = build.StandardOutput.ReadToEnd();
        build.WaitForExit();
        List<(string, int)> refused =
        [
            .. Regex.Matches(said, @"^(?<file>[^(\n]+)\((?<line>\d+),\d+\): error", RegexOptions.Multiline | RegexOptions.NonBacktracking)
                .Select(m => (Path.GetRelativePath(folder, m.Groups["file"].Value.Trim()), int.Parse(m.Groups["line"].Value, CultureInfo.InvariantCulture))).Distinct(),
        ];
        if (build.ExitCode != 0 && refused.Count == 0)
            Console.Error.WriteLine(said);
        return (build.ExitCode == 0, refused);
    }
}
