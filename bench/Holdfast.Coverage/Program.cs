using System.Globalization;
using Holdfast.Coverage;

// holdfast coverage: [studies a condition] [words a condition's name must hold ...]
const int block = 20;
var wanted = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 1000;
var root = AppContext.BaseDirectory;
while (!File.Exists(Path.Combine(root, "Holdfast.slnx")))
    root = Path.GetDirectoryName(root) ?? throw new DirectoryNotFoundException("Run it inside the repository: it writes docs/coverage.md.");
var counts = new Counts(Path.Combine(root, "artifacts", "coverage", "counts.csv"));
Condition[] conditions = [.. Condition.All.Where(c => args.Skip(1).All(w => c.Name.Contains(w, StringComparison.Ordinal)))];
var gate = new Lock();
while (conditions.Where(c => counts.Studies(c) < wanted).ToArray() is { Length: > 0 } left)
{
    var least = left.Min(counts.Studies);
    Parallel.ForEach(left.Where(c => counts.Studies(c) == least), new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, condition =>
    {
        var tallies = Tally.Count(condition, least, Math.Min(block, wanted - least));
        lock (gate)
            counts.Keep(condition, tallies);
    });
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{TimeProvider.System.GetLocalNow():HH:mm:ss} {left.Length} conditions have {conditions.Min(counts.Studies)} studies or more"));
}

File.WriteAllText(Path.Combine(root, "docs", "coverage.md"), Page.Of(counts));
