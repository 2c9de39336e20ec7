using System.Globalization;
using Holdfast.Simulated;
using Holdfast.Verdicts;

// How often each rule is wrong, and how often it is rightly right, where the truth is known:
//   dotnet run -c Release --project bench/Holdfast.Verdicts -- [studies a condition, twenty times as many where values are drawn] [only rules that start with ...]
// Counts are kept in artifacts/verdicts.csv after every twenty studies: a stopped run goes on where it stopped; delete the file after a change of a rule.
// A full run writes docs/verdicts.md. "distances" instead of a number simulates the distances of AICc.
if (args.FirstOrDefault() == "distances")
    return AiccDistances.Run(args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 500);
var studies = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 100;
var ledger = new Ledger(Path.Combine("artifacts", "verdicts.csv"), ends: 3);
Condition[] drawn = [.. NumberConditions.All(), .. PowderConditions.All()], all = [.. drawn, .. StudyConditions.All()];
Condition[] asked = [.. all.Where(c => args.Length < 2 || c.Rule.StartsWith(args[1], StringComparison.Ordinal))];
foreach (var condition in asked)
{
    condition.Fill(ledger, drawn.Contains(condition) ? 20 * studies : studies);
    var count = condition.In(ledger);
    Console.WriteLine($"{condition.Rule,-34} {condition.Truth,-7} {count.Holds,5} {count.Open,5} {count.Contradicted,5}  {string.Join(", ", count.Missed(condition)),-20} {condition.Name}");
}

if (asked.Length == all.Length)
    File.WriteAllText(Path.Combine("docs", "verdicts.md"), VerdictPage.Of(all, ledger));
return asked.Any(c => c.In(ledger).Missed(c).Any()) ? 1 : 0;
