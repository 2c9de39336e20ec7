using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Mutants;
using Microsoft.CodeAnalysis.CSharp;

// Does a test notice when a limit, a comparison or a sign of a rule is changed?
//   dotnet run --project bench/Holdfast.Mutants -- [every nth change, 1 for all] [seconds a change may take]
// Works on a copy below artifacts/mutants, with every change built in and switched by HOLDFAST_MUTANT. What was found is kept in artifacts/mutants.tsv, so that a stopped
// run goes on; delete it after a change. A run over every change writes docs/mutants.md.
var every = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 1;
var patience = TimeSpan.FromSeconds(args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 120);
string root = Directory.GetCurrentDirectory(), copy = Path.Combine(root, "artifacts", "mutants"), kept = Path.Combine(root, "artifacts", "mutants.tsv");
string[] thresholds = ["Isotherms/IsothermEvidence.cs", "Kinetics/KineticEvidence.cs", "Regeneration/CycleEvidence.cs", "BatchSorption/Attribution.cs", "BatchSorption/ControlCorrection.cs"];
string[] sources = [.. Directory.EnumerateFiles(Path.Combine("src", "Holdfast.Claims"), "*.cs", SearchOption.AllDirectories)
    .Concat(thresholds.Select(t => Path.Combine("src", "Holdfast", t)))
    .Where(f => !f.Contains("/obj/", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];
string[] classes = ["EdgeTests", "RuleTests", "DecisionCheckTests", "ClaimTests", "FlagCaseTests", "IntervalTests", "DefenceTests", "CapacityTests", "EquilibriumReachedTests", "RateStepTests", "NotPrecipitationTests", "NamedLimitTests", "StatementTests", "ConstituentTests"];

Copy(root, copy);
var leftOut = sources.ToDictionary(s => s, _ => new HashSet<int>(), StringComparer.Ordinal);
var mutants = new List<Mutant>();
var program = Path.Combine(copy, "artifacts", "bin", "Holdfast.Claims.Tests", "release", "Holdfast.Claims.Tests.dll");
for (var round = 1; ; round++)
{
    mutants.Clear();
    foreach (var source in sources)
        File.WriteAllText(Path.Combine(copy, source), new Switching(source, mutants, leftOut[source]).Visit(CSharpSyntaxTree.ParseText(File.ReadAllText(source)).GetRoot()).ToFullString());
    var refused = Build();
    Console.WriteLine($"round {round}: {mutants.Count} changes, the compiler refuses {refused.Count} lines {(refused.Count > 0 ? refused[0] : "")}");
    if (refused.Count == 0)
        break;
    if (round == 12)
        return 1;
    foreach (var (file, line) in refused)
    {
        // Where the language wants a constant, the name of one that is a property now stands on the refused line.
        var words = Regex.Matches(File.ReadLines(Path.Combine(copy, file)).ElementAt(line - 1), @"\w+", RegexOptions.NonBacktracking).Select(m => m.Value).ToHashSet(StringComparer.Ordinal);
        foreach (var mutant in mutants.Where(m => (m.File == file && words.Contains(m.Number.ToString(CultureInfo.InvariantCulture))) || (m.Constant is { } name && words.Contains(name))))
            leftOut[mutant.File].Add(mutant.Line);
    }
}

var found = File.Exists(kept) ? File.ReadAllLines(kept).Select(l => l.Split('\t')).ToDictionary(c => c[0], c => c[1], StringComparer.Ordinal) : [];
var whole = Run(0, TimeSpan.FromMinutes(20), out var clean);
if (!whole)
{
    Console.Error.WriteLine($"The tests fail without any change ({clean}).");
    return 1;
}

Mutant[] asked = [.. mutants.Where(m => m.Number % every == 0)];
foreach (var mutant in asked.Where(m => !found.ContainsKey(Key(m))))
{
    found[Key(mutant)] = Run(mutant.Number, patience, out _) ? "survived" : "killed";
    File.AppendAllText(kept, $"{Key(mutant)}\t{found[Key(mutant)]}\n");
    if (found[Key(mutant)] == "survived")
        Console.WriteLine($"survived {Key(mutant)}");
}

var survivors = asked.Where(m => found[Key(m)] == "survived").ToArray();
var counted = string.Create(CultureInfo.InvariantCulture, $"{asked.Length} of {mutants.Count} changes tried, {asked.Length - survivors.Length} killed ({100.0 * (asked.Length - survivors.Length) / asked.Length:0.0} %), {survivors.Length} survived");
Console.WriteLine(counted);
if (every == 1)
    File.WriteAllLines(Path.Combine("docs", "mutants.md"), ["# Changes that no test noticed", "", $"Written by `dotnet run -c Release --project bench/Holdfast.Mutants`: {counted}.", "", .. survivors.Select(m => string.Create(CultureInfo.InvariantCulture, $"- `{m.File}` line {m.Line}: `{m.Change}`"))]);
return 0;

static string Key(Mutant m) => string.Create(CultureInfo.InvariantCulture, $"{m.File}:{m.Line} {m.Change} #{m.Number}");

static void Copy(string from, string to)
{
    var listed = Process.Start(new ProcessStartInfo("git", ["ls-files", "src", "tests/Holdfast.Claims.Tests", "tests/Shared", "tests/Directory.Build.props", "bench/Holdfast.Verdicts", "samples/demo", "reference", "Directory.Build.props", "Directory.Packages.props", "BannedSymbols.txt", "global.json", ".editorconfig"]) { WorkingDirectory = from, UseShellExecute = false, RedirectStandardOutput = true })!;
    foreach (var file in listed.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries))
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(to, file))!);
        File.Copy(Path.Combine(from, file), Path.Combine(to, file), overwrite: true);
    }

    File.WriteAllText(Path.Combine(to, "src", "Holdfast", "MutantSwitch.cs"), """
        namespace Holdfast;

        public static class MutantSwitch
        {
            private static readonly int Active = int.TryParse(System.Environment.GetEnvironmentVariable("HOLDFAST_MUTANT"), out var number) ? number : 0;

            public static bool Is(int number) => number == Active;
        }
        """);
}

List<(string File, int Line)> Build()
{
    var build = Process.Start(new ProcessStartInfo("dotnet", ["build", "-c", "Release", "tests/Holdfast.Claims.Tests", "-p:RunAnalyzers=false", "-p:TreatWarningsAsErrors=false", "-p:CheckForOverflowUnderflow=false", "-v", "q", "-nologo"]) { WorkingDirectory = copy, UseShellExecute = false, RedirectStandardOutput = true })!;
    var said = build.StandardOutput.ReadToEnd();
    build.WaitForExit();
    return [.. Regex.Matches(said, @"^(?<file>[^(\n]+)\((?<line>\d+),\d+\): error", RegexOptions.Multiline | RegexOptions.NonBacktracking)
        .Select(m => (Path.GetRelativePath(copy, m.Groups["file"].Value.Trim()), int.Parse(m.Groups["line"].Value, CultureInfo.InvariantCulture))).Distinct()];
}

bool Run(int number, TimeSpan limit, out string said)
{
    var start = new ProcessStartInfo("dotnet", [program, "-stopOnFail", "-noLogo", "-parallel", "none", .. classes.SelectMany(c => new[] { "-class", "*." + c })]) { WorkingDirectory = copy, UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
    start.Environment["HOLDFAST_MUTANT"] = number.ToString(CultureInfo.InvariantCulture);
    using var test = Process.Start(start)!;
    var output = test.StandardOutput.ReadToEndAsync();
    _ = test.StandardError.ReadToEndAsync();
    // A change that makes a test go on for ever is noticed as well.
    var ended = test.WaitForExit(limit);
    if (!ended)
        test.Kill(entireProcessTree: true);
    said = ended ? output.Result : "out of time";
    return ended && test.ExitCode == 0;
}
