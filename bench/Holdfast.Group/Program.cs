using System.Diagnostics;
using System.Globalization;
using Holdfast;
using Holdfast.Claims.Comparisons;
using Holdfast.Studies.History;
using Holdfast.Studies.Store;
using Holdfast.Verdicts;

// A group's folder of many small studies, from disk to lines to pairs, and how often "better than" is said wrongly:
//   dotnet run -c Release --project bench/Holdfast.Group -- time 50 100 200
//   dotnet run -c Release --project bench/Holdfast.Group -- truth 400
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
int[] counts = [.. args.Skip(1).Select(a => int.Parse(a, CultureInfo.InvariantCulture))];
switch (args.FirstOrDefault())
{
    case "time":
        Timed(counts.Length == 0 ? [50, 100, 200] : counts);
        return 0;
    case "truth":
        Truth(counts.Length == 0 ? 400 : counts[0]);
        return 0;
    default:
        Console.Error.WriteLine("Say time or truth, with numbers of studies or pairs.");
        return 2;
}

// Twenty-four vessels at eight start concentrations each, read through a calibration of their own.
static void Timed(int[] counts)
{
    var root = Directory.CreateTempSubdirectory("holdfast-group-").FullName;
    try
    {
        for (var i = 0; i < counts.Max(); i++)
            Write(Path.Combine(root, FormattableString.Invariant($"study-{i:000}")), (ulong)i + 1);
        // What is compiled on first use is no cost of a study.
        Line(GroupFolder.Studies(root)[0]);
        Console.WriteLine("studies  map, s  a study, ms  compare, s  pairs  processor, s (mapping alone)");
        foreach (var count in counts.Order())
        {
            var cpu = Process.GetCurrentProcess().TotalProcessorTime;
            var watch = Stopwatch.StartNew();
            StudyLine[] lines = [.. GroupFolder.Studies(root).Take(count).AsParallel().AsOrdered().Select(Line)];
            var mapped = watch.Elapsed.TotalSeconds;
            var mapping = Process.GetCurrentProcess().TotalProcessorTime - cpu;
            watch.Restart();
            var pairs = StudyComparison.Of(lines, [], null, StudyComparison.UsualMargin).Pairs;
            var asked = pairs.AsParallel().Count(p => p.Next is not null);
            var compared = watch.Elapsed.TotalSeconds;
            cpu = Process.GetCurrentProcess().TotalProcessorTime - cpu;
            Console.WriteLine($"{count,7}  {mapped,6:F2}  {1000 * mapped / count,11:F1}  {compared,10:F2}  {pairs.Length,5}  {cpu.TotalSeconds,12:F2} ({mapping.TotalSeconds:F2})  ({asked} ask for an experiment)");
        }
    }
    finally
    {
        Directory.Delete(root, recursive: true);
    }
}

static StudyLine Line((string Name, string Path) at)
{
    using var study = StudyFolder.OpenToRead(at.Path);
    return StudyLine.Of(at.Name, study.Study);
}

static void Write(string folder, ulong seed)
{
    var made = Small(1 + 0.002 * seed).Build(seed);
    using var study = StudyFolder.Begin(folder, "bench", TimeProvider.System, new StudyBegun("small", made.Analyte, true));
    study.Append(study.Daybook.Version, "bench", new TakenIn { Samples = made.Samples, Runs = made.Runs, Readings = made.Readings, Apparatus = made.Apparatus });
    study.Close();
}

// Whole studies and poor ones: three levels leave no curve, so that uptakes are read between levels.
static void Truth(int pairs)
{
    Console.WriteLine("ratio  levels  vessels  pairs  first better  not shown  contradicted  not compared");
    foreach (var (starts, vessels) in new (double[], int)[] { ([2, 5, 10, 15, 20, 30, 40, 60], 3), ([5, 15, 30, 60], 2), ([10, 20, 40], 3) })
    {
        foreach (var ratio in new[] { 1.0, 1.05, 1.10, 1.15, 1.2, 1.3 })
        {
            ComparedPair[] judged = [.. Enumerable.Range(1, pairs).Select(i => Pair(ratio, starts, vessels, (ulong)i)).OfType<ComparedPair>()];
            int Count(Ruling ruling) => judged.Count(p => p.FirstBetter == ruling);
            Console.WriteLine($"{ratio,5:F2}  {starts.Length,6}  {vessels,7}  {pairs,5}  {Count(Ruling.Holds),12}  {Count(Ruling.NotShownYet),9}  {Count(Ruling.Contradicted),12}  {pairs - judged.Count(p => p.IsComparable),12}");
        }
    }
}

static ComparedPair? Pair(double ratio, double[] starts, int vessels, ulong seed)
    => StudyComparison.Of(
        [
            StudyLine.Of("a", (Small(ratio) with { Starts = [.. starts], Vessels = vessels }).Build(seed)),
            StudyLine.Of("b", (Small(1) with { Starts = [.. starts], Vessels = vessels }).Build(1_000_000 + seed)),
        ],
        [], new(5, null, null), StudyComparison.UsualMargin).Pairs.FirstOrDefault();

static SimulatedStudy Small(double ratio) => new() { Uptake = c => ratio * 10 * 0.35 * c / (1 + 0.35 * c), Rate = null, Controls = null };
