using System.Globalization;
using System.Text;

namespace Holdfast.Coverage;

/// <summary>The page of results, worst first.</summary>
internal static class Page
{
    private const double Low = 0.93, High = 0.97;

    /// <summary>The page of vessels and the page of the powder, those of which everything was counted.</summary>
    /// <param name="counts">What was counted.</param>
    public static IEnumerable<(string File, string Text)> All(Counts counts)
    {
        if (Simulated.Vessels.All(c => counts.Studies(c) > 0))
        {
            yield return ("coverage.md", Of("Coverage of the intervals", "How often a printed 95 % interval holds the truth: studies simulated from a hidden truth, through calibration, dilution, weighing and work-up, with the errors that\n"
                + "are stated of each and nothing else known. Measurements of the powder have [a page of their own](coverage-powder.md).", Simulated.Vessels, counts));
        }

        if (Simulated.Powder.All(c => counts.Studies(c) > 0))
        {
            yield return ("coverage-powder.md", Of("Coverage of the intervals of the powder", "How often a printed 95 % interval holds the truth: files as instruments and people write them, made from a hidden truth, are read, taken in and worked out as the program\n"
                + "does; only what such a file says is known.", Simulated.Powder, counts));
        }
    }

    private static string Of(string title, string what, IReadOnlyList<Simulated> conditions, Counts counts)
    {
        var rows = conditions.SelectMany(c => counts.Of(c).Select(t => (Condition: c, Tally: t))).Where(r => r.Tally.Printed > 0).ToArray();
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"# {title}\n\n{what}\n`dotnet run --project bench/Holdfast.Coverage -c Release` writes this page; it can be stopped and goes on where it was.\n");
        text.Append("An open side of an interval holds everything on it. ± is the binomial standard deviation. *printed* is the share of studies in which the number was printed at all.\n");
        text.Append("*surely below* counts conditions that lie below 93 % by more than two of these deviations: with few studies many others fall below by chance.\n\n");
        text.Append(CultureInfo.InvariantCulture, $"{conditions.Count} conditions, {conditions.Sum(counts.Studies):N0} studies, at least {conditions.Min(counts.Studies):N0} of each.\n\n");
        text.Append("## All conditions together\n\n| quantity | curve | covered | below 93 % | 93 to 97 % | above 97 % | surely below |\n| --- | --- | --- | --- | --- | --- | --- |\n");
        foreach (var group in rows.GroupBy(r => (r.Condition.Curve, r.Tally.Quantity)))
        {
            var sum = group.Select(r => r.Tally).Aggregate((a, b) => a.Plus(b));
            double[] shares = [.. group.Select(r => r.Tally.Share!.Value)];
            text.Append(CultureInfo.InvariantCulture,
                $"| {group.Key.Quantity} | {group.Key.Curve} | {100 * sum.Share:0.0} ± {100 * sum.Error:0.0} % | {shares.Count(s => s < Low)} | {shares.Count(s => s is >= Low and <= High)} | {shares.Count(s => s > High)} | {group.Count(r => r.Tally.Share + 2 * r.Tally.Error < Low)} |\n");
        }

        text.Append("\n## Parameters, worst first\n\nMissed low: the whole interval lies below the truth.\n\n");
        text.Append("| condition | parameter | covered | missed low | missed high | printed |\n| --- | --- | --- | --- | --- | --- |\n");
        foreach (var (condition, tally) in rows.OrderBy(r => r.Tally.Share).ThenBy(r => r.Condition.Name, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture,
                $"| {condition.Name} | {tally.Quantity} | {100 * tally.Share:0.0} ± {100 * tally.Error:0.0} % | {100.0 * tally.Below / tally.Printed:0.0} % | {100.0 * tally.Above / tally.Printed:0.0} % | {100.0 * tally.Printed / tally.Studies:0} % |\n");
        }

        return text.ToString();
    }
}
