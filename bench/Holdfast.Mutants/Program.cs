using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Mutants;

// Does a test notice when a limit, a comparison or a sign of a rule is changed?
//   dotnet run -c Release --project bench/Holdfast.Mutants -- [every=12] [from=5] [files=Analyses/Column] [seconds=300] [reach]
// Tries every nth change from a given one on, all of them unless told, in the files whose path holds the given text; "reach" only lists the changes that make no difference in any test.
// Works on a copy below artifacts/mutants, with every change built in. A first run of each group of test classes, without any change, notes which changes made a difference in
// it: a change that made none anywhere has survived already, and any other is tried on the groups that it reaches, the quickest first. What was found is kept in artifacts/mutants.tsv, so that a stopped run goes on;
// delete it after a change of sources or tests. The end writes docs/mutants.md; a reason that stands there for a survivor is kept.
int every = Number("every", 1), from = Number("from", 0);
var patience = TimeSpan.FromSeconds(Number("seconds", 300));
var part = Option("files") ?? "";
string root = Directory.GetCurrentDirectory(), kept = Path.Combine(root, "artifacts", "mutants.tsv");
string[] thresholds = ["Kinetics/RisingPoints.cs", "Regeneration/CycleEvidence.cs", "BatchSorption/Attribution.cs"];
string[] sources = [.. Directory.EnumerateFiles(Path.Combine("src", "Holdfast.Claims"), "*.cs", SearchOption.AllDirectories)
    .Concat(thresholds.Select(t => Path.Combine("src", "Holdfast", t)))
    .Where(f => !f.Contains("/obj/", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

// Too slow to be asked for each change.
string[] slow = ["CoverageTests", "UnsupportedVerdictTests", "ResampledFitTests"];
string[] classes = [.. Directory.EnumerateFiles(Path.Combine("tests", "Holdfast.Claims.Tests"), "*Tests.cs", SearchOption.AllDirectories)
    .SelectMany(f => Regex.Matches(File.ReadAllText(f), @"^public (?:sealed )?(?:partial )?class (\w+Tests)\b", RegexOptions.Multiline)).Select(m => m.Groups[1].Value).Except(slow).Order(StringComparer.Ordinal)];

var copy = new Copy(root, Path.Combine(root, "artifacts", "mutants"));
if (copy.Build(sources) is not { } mutants)
    return 1;
string[] names = [.. mutants.Select((m, i) => string.Create(CultureInfo.InvariantCulture, $"{m.File} {m.Change} #{mutants.Take(i).Count(o => o.File == m.File && o.Change == m.Change)}"))];

// One process a group, so that a study worked out once serves all tests of the group; each pinned study is a group of its own.
string[] plain = ["EdgeTests", "EqualCaseTests", "EqualBoundTests", "DecisionCheckTests", "FlagCaseTests", "CapacityTests", "ControlsCleanTests", "EquilibriumReachedTests", "RateStepTests", "StatementTests", "PhraseTests", "AnalysisNumberTests"];
string[] judging = ["RuleTests", "ClaimTests", "DefenceTests", "IntervalTests", "DemoVerdictTests", "SensorVerdictTests", "ReuseVerdictTests", "WaterVerdictTests", "NotPrecipitationTests", "PrecipitationGuardTests", "NamedLimitTests", "ConstituentTests", "LaterDemoTests", "EmissionStudyTests"];
string[] planning = ["PlanDesignTests", "PlanWarningsTests", "PlanEdgeTests"];
string[] pinned = [.. classes.Where(c => c.EndsWith("NumberTests", StringComparison.Ordinal) && !plain.Contains(c)), "PinnedVerdictTests"];
string[][] groups = [plain, planning, [.. classes.Except(plain).Except(planning).Except(judging).Except(pinned)], judging, .. pinned.Select(c => new[] { c })];
var reach = new List<(string[] Names, HashSet<int> Differed, TimeSpan Takes)>();
foreach (var group in groups)
{
    var notes = Path.Combine(root, "artifacts", "mutants", "differed.txt");
    File.Delete(notes);
    var clock = Stopwatch.StartNew();
    var (passed, said) = copy.Run(0, group, TimeSpan.FromMinutes(20), notes);
    if (!passed)
    {
        Console.Error.WriteLine($"The tests fail without any change: {said}");
        return 1;
    }

    reach.Add((group, [.. (File.Exists(notes) ? File.ReadAllLines(notes) : []).Select(n => int.Parse(n, CultureInfo.InvariantCulture))], clock.Elapsed));
    Console.WriteLine($"{reach[^1].Differed.Count} changes make a difference in {string.Join(' ', group)}, {clock.Elapsed.TotalSeconds:0.0} s");
}

reach = [.. reach.OrderBy(r => r.Takes)];
Console.WriteLine($"{mutants.Count(m => reach.Any(r => r.Differed.Contains(m.Number)))} of {mutants.Count} changes make a difference somewhere");
var found = File.Exists(kept) ? File.ReadAllLines(kept).Select(l => l.Split('\t')).ToDictionary(c => c[0], c => c[1], StringComparer.Ordinal) : [];
if (args.Contains("reach"))
{
    foreach (var mutant in mutants.Where(m => m.File.Contains(part, StringComparison.Ordinal) && !reach.Any(r => r.Differed.Contains(m.Number))))
        Console.WriteLine($"not reached {mutant.File}:{mutant.Line.ToString(CultureInfo.InvariantCulture)} {mutant.Change}");
    return 0;
}

Mutant[] asked = [.. mutants.Where(m => m.Number % every == from % every && m.File.Contains(part, StringComparison.Ordinal))];
foreach (var mutant in asked.Where(m => !found.ContainsKey(Key(m))))
{
    var reached = reach.Where(r => r.Differed.Contains(mutant.Number)).ToArray();
    var result = reached.Length == 0 ? "not reached" : reached.Any(r => !copy.Run(mutant.Number, r.Names, patience).Passed) ? "killed"
        : "survived";
    found[Key(mutant)] = result;
    File.AppendAllText(kept, $"{Key(mutant)}\t{result}\n");
    Console.WriteLine($"{result} {Key(mutant)}");
}

// A page of a part would be taken for one of the whole.
if (part.Length > 0)
    return 0;
var page = Path.Combine("docs", "mutants.md");
var text = SurvivorPage.Of(mutants.Count, [.. asked.Select(m => (m, found[Key(m)]))], SurvivorPage.Reasons(page));
Console.WriteLine(text.Split("\n\n")[2]);
File.WriteAllText(page, text);
return 0;

// By what is changed, not where it stands: a line added above keeps what was found.
string Key(Mutant m) => names[m.Number - 1];

string? Option(string name) => Array.Find(args, a => a.StartsWith(name + "=", StringComparison.Ordinal))?[(name.Length + 1)..];

int Number(string name, int otherwise) => Option(name) is { } text ? int.Parse(text, CultureInfo.InvariantCulture) : otherwise;
