using System.Globalization;
using System.Text;
using Holdfast.Simulated;

namespace Holdfast.Power;

/// <summary>The page that says whether plans obtain the power that they promise.</summary>
internal static class PowerPage
{
    /// <summary>A row on one line of a terminal.</summary>
    /// <param name="row">The row.</param>
    /// <param name="count">What was counted.</param>
    public static string Line(Row row, Count count) => string.Create(
        CultureInfo.InvariantCulture, $"{row.Rule,-34} {row.Plan.Vessels.Length,4} vessels  promised {100 * row.Promised,5:0.0}  obtained {100 * count.Obtained,5:0.0} ± {100 * count.Error:0.0}  {(count.Misses(row.Promised) ? "MISSED" : ""),-7} {row.Name}");

    /// <summary>The page as text, the largest difference first.</summary>
    /// <param name="ledger">What was counted.</param>
    public static string Of(Ledger ledger)
    {
        var missed = Row.All.Count(r => r.In(ledger).Misses(r.Promised));
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"""
            # Whether a plan obtains the power that it promises

            Written by `dotnet run -c Release --project bench/Holdfast.Power`; not by hand. Each row is a plan worked out for one kind of claim (and for equilibrium, where the claim stands on it). Studies that
            follow the plan are invented in a world in which the claim is true and the rest is as the plan supposes; they are read, calibrated, worked up, fitted and judged with their ground, as any study is
            (`PlanTrial`). *Obtained* is the share in which the claim holds, with its binomial standard error. A row counts as missed where the difference is larger than {100 * Count.Tolerated:0} points by more than
            two standard errors.

            In the world of a dose that suffices, removal levels off there; in that of a best dose or pH it falls away by the margin to either side. What noise takes from every sound study, however many
            vessels it has, is taken from what is found here (`PlanPower.Limits`): controls, calibration or range speak by chance against what stands on them (in three of two hundred studies; in eleven where each
            of many levels has a control of its own); a true curve misses its replicates; a true Langmuir capacity stays open in twenty-three of a hundred, most of all since noise bends a wider curve that goes
            elsewhere.

            {Row.All.Count} plans of {Row.All.Select(r => r.Rule).Distinct().Count()} kinds of claim; {missed} missed.

            | claim | supposed | vessels | promised % | obtained % | ± | difference | studies | |
            | --- | --- | --- | --- | --- | --- | --- | --- | --- |

            """);
        foreach (var row in Row.All.OrderByDescending(r => Math.Abs(r.In(ledger).Obtained - r.Promised)))
        {
            var count = row.In(ledger);
            text.Append(CultureInfo.InvariantCulture, $"| {row.Rule} | {row.Name} | {row.Plan.Vessels.Length} | {100 * row.Promised:0.0} | {100 * count.Obtained:0.0} | {100 * count.Error:0.0} | {100 * (count.Obtained - row.Promised):+0.0;−0.0} | {count.Studies} | {(count.Misses(row.Promised) ? "missed" : "met")} |\n");
        }

        return text.ToString();
    }
}
