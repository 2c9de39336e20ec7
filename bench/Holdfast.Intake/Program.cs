// What becomes of files as people really have them: each case below the folders named, without an answer, a line a case, then counts.
using Holdfast.Testing;

var words = args.Where(a => !a.StartsWith("--", StringComparison.Ordinal)).ToArray();
if (words.Length == 0)
{
    Console.Error.WriteLine("Name one or more folders of cases.");
    return 2;
}

var outcomes = words.SelectMany(w => IntakeCase.In(w).Select(c => c.Run()).Concat(PowderFileCase.In(w).Select(c => c.Run()))).ToList();
foreach (var outcome in outcomes)
{
    Console.WriteLine(outcome);
    if (args.Contains("--open"))
    {
        foreach (var line in outcome.Open.Concat(outcome.Said).Concat(outcome.Wrong.Take(6)).Concat(outcome.Missing.Take(6)))
            Console.WriteLine("      " + line);
    }
}

foreach (var group in outcomes.GroupBy(o => o.Human))
    Console.WriteLine($"{group.Key,-12}{group.Count(),3}: {string.Join(", ", group.GroupBy(o => o.Class).OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => $"{g.Key} {g.Count()}"))}");
Console.WriteLine($"as a careful reader would {outcomes.Count(o => o.Meets)} of {outcomes.Count}; values right {outcomes.Sum(o => o.Right)} of {outcomes.Sum(o => o.Expected)}; wrong without a word {outcomes.Count(o => o.Class == "WRONG")}");
return outcomes.Exists(o => o.Class == "WRONG") ? 1 : 0;
