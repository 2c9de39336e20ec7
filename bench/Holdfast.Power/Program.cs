using System.Globalization;
using Holdfast.Power;
using Holdfast.Simulated;

// Whether a plan obtains the power that it promises: studies that follow it are invented, judged by the rules and counted.
//   dotnet run -c Release --project bench/Holdfast.Power -- [studies a row, five times as many where no curve is fitted] [only rules that start with ...]
// Counts are kept in artifacts/power.csv after every twenty studies, by what the plan is and promises: a stopped run goes on where it stopped; delete the file after a change of a rule.
// A full run writes docs/power.md. "why ROW STUDIES" says what stood in the way where a claim did not hold, for a row named as on the page: "capacity scatter=6"; "demo STUDIES" replans the demo.
if (args is ["why", var which, var count])
    return Why.Write(Row.All.First(r => $"{r.Rule} {r.Name}".StartsWith(which, StringComparison.Ordinal)), int.Parse(count, CultureInfo.InvariantCulture));
if (args is ["demo", var seeds])
{
    Console.WriteLine(DemoReplanned.Of(int.Parse(seeds, CultureInfo.InvariantCulture)));
    return 0;
}

var studies = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 400;
var ledger = new Ledger(Path.Combine("artifacts", "power.csv"), ends: 2);
Row[] asked = [.. Row.All.Where(r => args.Length < 2 || r.Rule.StartsWith(args[1], StringComparison.Ordinal))];
foreach (var row in asked)
{
    row.Fill(ledger, row.FitsCurves ? studies : 5 * studies);
    Console.WriteLine(PowerPage.Line(row, row.In(ledger)));
}

if (asked.Length == Row.All.Count)
    File.WriteAllText(Path.Combine("docs", "power.md"), PowerPage.Of(ledger) + DemoReplanned.Of(studies / 4));
return asked.Any(r => r.In(ledger).Misses(r.Promised)) ? 1 : 0;
