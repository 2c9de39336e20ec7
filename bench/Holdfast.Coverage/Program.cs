using System.Globalization;
using Holdfast.Coverage;

// holdfast coverage: [studies a condition] [which conditions ...]. Each further argument picks conditions by parts of their names between commas:
// "steep, proportional noise" those that have both, a whole name that one alone. "worst:30" picks the conditions whose counts so far are worst.
const int block = 20;
var wanted = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 1000;
var root = AppContext.BaseDirectory;
while (!File.Exists(Path.Combine(root, "Holdfast.slnx")))
    root = Path.GetDirectoryName(root) ?? throw new DirectoryNotFoundException("Run it inside the repository: it writes docs/coverage.md.");
var counts = new Counts(Path.Combine(root, "artifacts", "coverage", "counts.csv"));
Simulated[] conditions = args.Length < 2 ? [.. Simulated.All] : [.. args.Skip(1).SelectMany(Picked).Distinct()];
if (conditions.Length == 0)
{
    Console.Error.WriteLine($"No condition is called {string.Join(" or ", args.Skip(1))}; docs/coverage.md lists them.");
    return 1;
}

var gate = new Lock();
while (conditions.Where(c => counts.Studies(c) < wanted).ToArray() is { Length: > 0 } left)
{
    var least = left.Min(counts.Studies);
    Parallel.ForEach(left.Where(c => counts.Studies(c) == least), new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, condition =>
    {
        var tallies = condition.Count(least, Math.Min(block, wanted - least));
        lock (gate)
            counts.Keep(condition, tallies);
    });
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{TimeProvider.System.GetLocalNow():HH:mm:ss} {left.Length} conditions have {conditions.Min(counts.Studies)} studies or more"));
}

foreach (var (file, text) in Page.All(counts))
    File.WriteAllText(Path.Combine(root, "docs", file), text);
return 0;

IEnumerable<Simulated> Picked(string choice)
{
    const string worst = "worst:";
    if (choice.StartsWith(worst, StringComparison.Ordinal))
        return counts.WorstFirst().Take(int.Parse(choice[worst.Length..], CultureInfo.InvariantCulture));
    var parts = choice.Split(", ");
    return Simulated.All.Where(c => c.Name == choice || parts.All(c.Name.Split(", ").Contains));
}
