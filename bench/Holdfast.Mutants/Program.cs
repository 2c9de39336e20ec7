using System.Diagnostics;
using System.Globalization;
using Holdfast.Mutants;

// Does a test notice when a limit, a comparison or a sign of a rule is changed?
//   dotnet run -c Release --project bench/Holdfast.Mutants -- [every nth change, 1 for all] [seconds a change may take]
// Works on a copy below artifacts/mutants, with every change built in. A first run of each group of test classes, without any change, notes which changes made a difference in
// it: a change that made none anywhere has survived already, and any other is tried on the groups that it reaches, the quickest first. What was found is kept in artifacts/mutants.tsv, so that a stopped run goes on;
// delete it after a change of sources or tests. The end writes docs/mutants.md; a reason that stands there for a survivor is kept.
var every = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 1;
var patience = TimeSpan.FromSeconds(args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 300);
string root = Directory.GetCurrentDirectory(), kept = Path.Combine(root, "artifacts", "mutants.tsv");
string[] thresholds = ["Kinetics/RisingPoints.cs", "Regeneration/CycleEvidence.cs", "BatchSorption/Attribution.cs"];
string[] sources = [.. Directory.EnumerateFiles(Path.Combine("src", "Holdfast.Claims"), "*.cs", SearchOption.AllDirectories)
    .Concat(thresholds.Select(t => Path.Combine("src", "Holdfast", t)))
    .Where(f => !f.Contains("/obj/", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

// Too slow to be asked for each change.
string[] slow = ["CoverageTests", "UnsupportedVerdictTests", "ResampledFitTests"];
string[] classes = [.. Directory.EnumerateFiles(Path.Combine("tests", "Holdfast.Claims.Tests"), "*Tests.cs", SearchOption.AllDirectories).Select(f => Path.GetFileNameWithoutExtension(f)).Except(slow).Order(StringComparer.Ordinal)];

var copy = new Copy(root, Path.Combine(root, "artifacts", "mutants"));
if (copy.Build(sources) is not { } mutants)
    return 1;
string[] names = [.. mutants.Select((m, i) => string.Create(CultureInfo.InvariantCulture, $"{m.File} {m.Change} #{mutants.Take(i).Count(o => o.File == m.File && o.Change == m.Change)}"))];

// One process a group, so that a study worked out once serves all tests of the group.
string[] plain = ["EdgeTests", "EqualCaseTests", "DecisionCheckTests", "FlagCaseTests", "CapacityTests", "EquilibriumReachedTests", "RateStepTests", "StatementTests"];
string[] judging = ["PinnedVerdictTests", "RuleTests", "ClaimTests", "DefenceTests", "IntervalTests", "DemoVerdictTests", "SensorVerdictTests", "ReuseVerdictTests", "WaterVerdictTests", "NotPrecipitationTests", "PrecipitationGuardTests", "NamedLimitTests", "ConstituentTests"];
string[][] groups = [plain, judging, [.. classes.Except(plain).Except(judging)]];
var reach = new List<(string[] Names, HashSet<int> Differed)>();
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

    reach.Add((group, [.. (File.Exists(notes) ? File.ReadAllLines(notes) : []).Select(n => int.Parse(n, CultureInfo.InvariantCulture))]));
    Console.WriteLine($"{group.Length} classes: {reach[^1].Differed.Count} changes make a difference, {clock.Elapsed.TotalSeconds:0.0} s");
}

Console.WriteLine($"{mutants.Count(m => reach.Any(r => r.Differed.Contains(m.Number)))} of {mutants.Count} changes make a difference somewhere");
var found = File.Exists(kept) ? File.ReadAllLines(kept).Select(l => l.Split('\t')).ToDictionary(c => c[0], c => c[1], StringComparer.Ordinal) : [];
Mutant[] asked = [.. mutants.Where(m => m.Number % every == 0)];
foreach (var mutant in asked.Where(m => !found.ContainsKey(Key(m))))
{
    var reached = reach.Where(r => r.Differed.Contains(mutant.Number)).ToArray();
    var result = reached.Length == 0 ? "not reached" : reached.Any(r => !copy.Run(mutant.Number, r.Names, patience).Passed) ? "killed"
        : "survived";
    found[Key(mutant)] = result;
    File.AppendAllText(kept, $"{Key(mutant)}\t{result}\n");
    if (result != "killed")
        Console.WriteLine($"{result} {Key(mutant)}");
}

var page = Path.Combine("docs", "mutants.md");
var text = SurvivorPage.Of(mutants.Count, [.. asked.Select(m => (m, found[Key(m)]))], SurvivorPage.Reasons(page));
Console.WriteLine(text.Split("\n\n")[2]);
File.WriteAllText(page, text);
return 0;

// By what is changed, not where it stands: a line added above keeps what was found.
string Key(Mutant m) => names[m.Number - 1];
