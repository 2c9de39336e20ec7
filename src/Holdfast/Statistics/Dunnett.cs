namespace Holdfast.Statistics;

/// <summary>Every group against one control at once.</summary>
/// <remarks>C. W. Dunnett, J. Am. Stat. Assoc. 50 (1955) 1096–1121 (from memory), two-sided; unequal replicates allowed.</remarks>
public static class Dunnett
{
    /// <summary>Compares each group with the control, group less control.</summary>
    /// <param name="analysis">The analysis of variance that gives the pooled sd.</param>
    /// <param name="control">Index of the control group.</param>
    /// <param name="confidence">Of all intervals together; no unit.</param>
    public static IReadOnlyList<Comparison> AgainstControl(OneWay analysis, int control, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        ArgumentOutOfRangeException.ThrowIfNegative(control);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(control, analysis.Groups.Count);
        int[] others = [.. Enumerable.Range(0, analysis.Groups.Count).Where(i => i != control)];
        int[] replicates = [.. others.Select(i => analysis.Groups[i].Values.Count)];
        var inControl = analysis.Groups[control].Values.Count;
        var critical = ManyToOne.Quantile(confidence, inControl, replicates, analysis.WithinFreedom);
        return [.. others.Select(i =>
        {
            var d = analysis.Difference(i, control);
            var half = critical * d.StandardError;
            return new Comparison(
                analysis.Groups[i].Name, analysis.Groups[control].Name, d,
                ManyToOne.Above(d.T(0), inControl, replicates, analysis.WithinFreedom),
                new(d.Value - half, d.Value + half, confidence), "Dunnett, against one control", others.Length);
        })];
    }
}
