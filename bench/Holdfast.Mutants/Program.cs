using System.Diagnostics;
using System.Globalization;
using Holdfast.Mutants;

// Does a test notice when a limit, a comparison or a sign of a rule is changed?
//   dotnet run -c Release --project bench/Holdfast.Mutants -- [every nth change, 1 for all] [seconds a change may take]
// Works on a copy below artifacts/mutants, with every change built in. A first run of each test class, without any change, notes which changes made a difference in it: a change that made none
// anywhere has survived already, and any other is tried on the classes that it reaches, the quickest first. What was found is kept in artifacts/mutants.tsv, so that a stopped run goes on;
// delete it after a change of sources or tests. The end writes docs/mutants.md; a reason that stands there for a survivor is kept.
var every = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 1;
var patience = TimeSpan.FromSeconds(args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 300);
string root = Directory.GetCurrentDirectory(), kept = Path.Combine(root, "artifacts", "mutants.tsv");
string[] thresholds = ["Kinetics/RisingPoints.cs", "Regeneration/CycleEvidence.cs", "BatchSorption/Attribution.cs", "BatchSorption/ControlCorrection.cs"];
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
var reach = new List<(string Name, HashSet<int> Differed, TimeSpan Time)>();
foreach (var name in classes)
{
    var notes = Path.Combine(root, "artifacts", "mutants", name + ".notes");
    var clock = Stopwatch.StartNew();
    var (passed, said) = copy.Run(0, [name], TimeSpan.FromMinutes(20), notes);
    if (!passed)
    {
        Console.Error.WriteLine($"{name} fails without any change: {said}");
        return 1;
    }

    reach.Add((name, [.. File.ReadAllLines(notes).Select(n => int.Parse(n, CultureInfo.InvariantCulture))], clock.Elapsed));
    Console.WriteLine($"{name}: {reach[^1].Differed.Count} changes make a difference, {clock.Elapsed.TotalSeconds:0.0} s");
}

reach.Sort((a, b) => a.Time.CompareTo(b.Time));
Console.WriteLine($"{mutants.Count(m => reach.Any(r => r.Differed.Contains(m.Number)))} of {mutants.Count} changes make a difference somewhere");
var found = File.Exists(kept) ? File.ReadAllLines(kept).Select(l => l.Split('\t')).ToDictionary(c => c[0], c => c[1], StringComparer.Ordinal) : [];
Mutant[] asked = [.. mutants.Where(m => m.Number % every == 0)];
foreach (var mutant in asked.Where(m => !found.ContainsKey(Key(m))))
{
    // Those of a second or two by themselves first: they notice most, and a study worked out once serves all the slower ones.
    var reached = reach.Where(r => r.Differed.Contains(mutant.Number)).ToArray();
    var quick = reached.Where(r => r.Time < TimeSpan.FromSeconds(4)).Select(r => r.Name).ToArray();
    var rest = reached.Select(r => r.Name).Except(quick).ToArray();
    var result = reached.Length == 0 ? "not reached"
        : (quick.Length > 0 && !copy.Run(mutant.Number, quick, patience).Passed) || (rest.Length > 0 && !copy.Run(mutant.Number, rest, patience).Passed) ? "killed"
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
