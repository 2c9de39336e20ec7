using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Runs of one powder over one column of angles, "1. Lauf; 2. Lauf; 3. Lauf": counts of like runs add up, and the sum is what a line is fitted to.</summary>
internal static class RepeatedRuns
{
    private const string Add = "add-up", Apart = "powders-of-their-own";

    /// <summary>One curve for columns that only number runs; the columns as they are elsewhere; null while it is asked.</summary>
    /// <param name="source">The grid.</param>
    /// <param name="lines">Lines above the scan.</param>
    /// <param name="curves">Its columns of intensities.</param>
    public static List<(string Name, double?[] Values, string Unit)>? Together(MeasurementSource source, IEnumerable<string> lines, List<(string Name, double?[] Values, string Unit)> curves)
    {
        if (!RepeatWords.AreOfOne([.. curves.Select(c => c.Name)], w => ScanWords.Column(w) == ScanColumn.Intensity))
            return curves;
        var id = source.Question("runs");
        var heads = string.Join(", ", curves.Select(c => $"“{c.Name}”"));
        // A line that takes up the name of a run says something of it alone.
        var isExplained = lines.Any(l => curves.Exists(c => l.Contains(c.Name, StringComparison.OrdinalIgnoreCase)) && !curves.TrueForAll(c => l.Contains(c.Name, StringComparison.OrdinalIgnoreCase)));
        var answer = isExplained ? source.Talk.Ask(id, Codes.Ambiguous, $"{heads}: are these runs of one powder, or powders of their own?", [Add, Apart], [.. curves.Select(c => c.Name)])
            : source.Talk.Assume(id, Codes.Ambiguous, $"{heads} are runs of one powder: their counts are added up.", [Add, Apart], [.. curves.Select(c => c.Name)]);
        source.Talk.Explain(id, ["one pattern, the sum of the runs", "a pattern each, with the noise of one run"]);
        return answer is null ? null : answer == Apart ? curves
            : [(string.Join(" + ", curves.Select(c => c.Name)), [.. curves[0].Values.Select((_, i) => curves.Aggregate((double?)0, (sum, c) => sum + c.Values[i]))], curves[0].Unit)];
    }
}
