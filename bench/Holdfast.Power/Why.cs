using Holdfast.Claims;
using Holdfast.Claims.Plans;

namespace Holdfast.Power;

/// <summary>What stood in the way where a claim did not hold.</summary>
internal static class Why
{
    /// <summary>Writes it, the most frequent first.</summary>
    /// <param name="row">The plan and its claim.</param>
    /// <param name="studies">How many studies are judged.</param>
    public static int Write(Row row, int studies)
    {
        var question = PlanQuestion.Read([row.Rule]).Questions[0];
        Verdict[] open = [.. Enumerable.Range(0, studies).Select(seed => PlanTrial.Verdict(row.Plan, question, (ulong)seed)).Where(v => v.Ruling != Ruling.Holds)];
        Console.WriteLine(PowerPage.Line(row, new(studies, studies - open.Length)));
        foreach (var series in row.Plan.Series)
            Console.WriteLine($"  {series.Name}: {string.Join(", ", series.Levels.Select(l => $"{l.X} {series.Unit} × {series.VesselsAt(l)} and {l.Blanks}"))}");
        foreach (var reason in open.SelectMany(Reasons).GroupBy(r => r, StringComparer.Ordinal).OrderByDescending(g => g.Count()))
            Console.WriteLine($"  {reason.Count(),4} {reason.Key}");
        return 0;
    }

    // A failed gate, what the claim stands on, or the reason as it stands.
    private static IEnumerable<string> Reasons(Verdict verdict)
    {
        string[] gates = [.. verdict.Gates.Where(g => !g.Passed).Select(g => "gate: " + g.Name)];
        var ground = verdict.Reason.IndexOf("It stands on", StringComparison.Ordinal);
        return gates.Length > 0 ? gates : [ground < 0 ? verdict.Reason : verdict.Reason[ground..]];
    }
}
