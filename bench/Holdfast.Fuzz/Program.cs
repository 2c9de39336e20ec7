// Spoilt files of the powder, read as the program reads them: does any crash it, hang it, fill the memory, or give a number that cannot be?
//   dotnet run -c Release --project bench/Holdfast.Fuzz -- [inputs a kind] [kinds: aif cif jcamp scan table tiff, all without]
//   dotnet run -c Release --project bench/Holdfast.Fuzz -- again KIND NUMBER [file to write the input to]
// Inputs are numbered; a number is the seed of its input and makes the same bytes again. Files of the folder that HOLDFAST_REFERENCE names are spoilt as well; with other files, other inputs.
// What was done is kept in artifacts/fuzz: a stopped run goes on where it was. Delete that folder after a change of readers. Faults are printed and lie in artifacts/fuzz/faults.txt.
using System.Globalization;
using Holdfast.Fuzz;
using Holdfast.Techniques.Tests.Fuzzing;

const int block = 100;
// An input is small; reading and working it out takes some milliseconds.
const double mostSeconds = 2, hangs = 60;
const long mostBytes = 200L << 20;
var root = AppContext.BaseDirectory;
while (!File.Exists(Path.Combine(root, "Holdfast.slnx")))
    root = Path.GetDirectoryName(root) ?? throw new DirectoryNotFoundException("Run it inside the repository: it reads its samples.");
var folder = Path.Combine(root, "artifacts", "fuzz");
var kinds = FuzzedKind.All(root, Environment.GetEnvironmentVariable("HOLDFAST_REFERENCE") is { Length: > 0 } reference ? reference : null);
if (args is ["again", var one, var at, ..])
{
    var (name, bytes, chance) = kinds.Single(k => k.Name == one).Input(int.Parse(at, CultureInfo.InvariantCulture));
    if (args.Length > 3)
        File.WriteAllBytes(args[3], bytes);
    var reading = FuzzedReading.Of(name, bytes, chance);
    Console.WriteLine($"{name}, {bytes.Length} bytes: {reading.End}. {reading.Said} {reading.Fault ?? "No fault."}");
    return reading.Fault is null ? 0 : 1;
}

var wanted = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 20_000;
var faults = 0;
string current = "";
var since = Environment.CpuUsage.TotalTime;
using var watch = new Timer(_ =>
{
    if ((Environment.CpuUsage.TotalTime - since).TotalSeconds < hangs)
        return;
    Console.Error.WriteLine($"{current} does not end.");
    Environment.Exit(3);
}, null, 1000, 1000);
foreach (var kind in kinds.Where(k => args.Length < 2 || args.Skip(1).Contains(k.Name)))
{
    var ledger = new Ledger(folder, kind.Name);
    if (ledger.StoppedIn is { } stopped)
        Console.WriteLine($"{kind.Name}: the run before was stopped in input {stopped}");

    // What is compiled on the first look is no cost of an input.
    foreach (var (name, bytes) in kind.Seeds.Take(12))
        FuzzedReading.Of(name, bytes, new(0, "warm"));
    while (ledger.Next < wanted)
    {
        var ends = new int[4];
        var next = Math.Min(wanted, ledger.Next + block);
        for (var number = ledger.Next; number < next; number++)
        {
            current = string.Create(CultureInfo.InvariantCulture, $"{kind.Name} {number}");
            ledger.Begin(number);
            var (name, bytes, chance) = kind.Input(number);
            since = Environment.CpuUsage.TotalTime;
            var before = GC.GetAllocatedBytesForCurrentThread();
            var reading = FuzzedReading.Of(name, bytes, chance);
            var (seconds, used) = ((Environment.CpuUsage.TotalTime - since).TotalSeconds, GC.GetAllocatedBytesForCurrentThread() - before);
            var fault = reading.Fault
                ?? (seconds > mostSeconds ? string.Create(CultureInfo.InvariantCulture, $"it took {seconds:0.0} s of the processor")
                : used > mostBytes ? string.Create(CultureInfo.InvariantCulture, $"it took {used >> 20} MB") : null);
            ends[fault is null ? (int)reading.End : 3]++;
            if (fault is not null)
                Say(kind.Name, number, $"({name}) {fault}");
        }

        ledger.Keep(next, ends);
    }

    faults += ledger.Ends[3];
    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{kind.Name,-6} {ledger.Next} inputs of {kind.Seeds.Length} files: refused {ledger.Ends[0]}, asked {ledger.Ends[1]}, taken in {ledger.Ends[2]}, faults {ledger.Ends[3]}"));
}

return faults == 0 ? 0 : 1;

void Say(string kind, int number, string fault)
{
    var text = string.Create(CultureInfo.InvariantCulture, $"{kind} {number}: {fault}");
    Console.WriteLine(text.Length > 1200 ? text[..1200] : text);
    File.AppendAllText(Path.Combine(folder, "faults.txt"), text + "\n\n");
}
