using System.Globalization;
using System.Text;
using Holdfast.Claims;
using Holdfast.Simulated;

namespace Holdfast.Verdicts;

/// <summary>The page that says how often each rule is wrong.</summary>
internal static class VerdictPage
{
    /// <summary>The page as text.</summary>
    /// <param name="conditions">Every condition.</param>
    /// <param name="ledger">What was counted.</param>
    public static string Of(IReadOnlyList<Condition> conditions, Ledger ledger)
    {
        var text = new StringBuilder();
        text.Append("""
            # How often a verdict is wrong

            Written by `dotnet run -c Release --project bench/Holdfast.Verdicts`; not by hand. Each row is a kind of study whose truth the simulation knows. The bars: *holds* of a claim
            that is false, or whose truth lies on the margin, in at most 5 % of studies; *contradicted* of a claim that is true or on the margin in at most 5 %; *holds* of a true claim in at
            least 80 %, with as many vessels as the rule itself advises. A bar counts as missed when the share lies beyond it by more than three standard errors, which with so many rows is no chance: four wrong ones of 20, 83 of 1,200. *Mute* studies
            support neither verdict. *Between*: the truth lies between what matters and what is tolerated, and either verdict may be given. Rows with whole studies go through readings, calibration, work-up, fits and the ground a claim stands on; the others draw replicate values and ask the rule's
            own decision.

            """);
        var missed = conditions.Where(c => c.In(ledger).Missed(c).Any()).ToArray();
        var waiting = conditions.Count(c => c.In(ledger).Studies == 0);
        text.Append(CultureInfo.InvariantCulture, $"\n{conditions.Count} conditions of {conditions.Select(c => c.Rule).Distinct().Count()} rules; {conditions.Count - missed.Length - waiting} are not shown to miss a bar, {missed.Length} do not{(missed.Length == 0 ? "" : " and stand first")}, {waiting} were not run yet.\n");
        if (missed.Length > 0)
            Table(text, "Bars missed", missed, ledger);
        foreach (var rule in conditions.GroupBy(c => c.Rule).OrderBy(g => g.Key, StringComparer.Ordinal))
            Table(text, rule.Key, [.. rule], ledger);
        string[] without = [.. Defence.Rules.Select(r => r.Id).Except(conditions.Select(c => c.Rule)).Order(StringComparer.Ordinal)];
        text.Append(CultureInfo.InvariantCulture, $"\n## Not simulated\n\n{string.Join("; ", without.Select(w => $"`{w}` {EstimateConditions.WithoutChance.GetValueOrDefault(w, "has no conditions yet")}"))}.\n");
        return text.ToString();
    }

    private static void Table(StringBuilder text, string heading, IReadOnlyList<Condition> conditions, Ledger ledger)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n## {heading}\n\n| studies | the claim is | n | holds % | open % | contradicted % | bars |\n| --- | --- | --- | --- | --- | --- | --- |\n");
        foreach (var c in conditions)
        {
            var count = c.In(ledger);
            string Share(int part) => count.Studies == 0 ? "" : (100.0 * part / count.Studies).ToString("0.0", CultureInfo.InvariantCulture);
            var missed = string.Join(", ", count.Missed(c));
            text.Append(CultureInfo.InvariantCulture, $"| {(heading == c.Rule ? "" : c.Rule + ": ")}{c.Name} | {Word(c.Truth)} | {count.Studies} | {Share(count.Holds)} | {Share(count.Open)} | {Share(count.Contradicted)} | {(count.Studies == 0 ? "not run yet" : missed.Length == 0 ? "met" : "missed: " + missed)} |\n");
        }
    }

    private static string Word(Truth truth) => truth switch
    {
        Truth.True => "true",
        Truth.Margin => "on the margin",
        Truth.False => "false",
        Truth.Between => "between",
        _ => "mute",
    };
}
