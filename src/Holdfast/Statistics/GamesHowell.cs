namespace Holdfast.Statistics;

/// <summary>All pairs of groups at once when their scatters differ: Welch for each pair, judged by the studentised range.</summary>
/// <remarks>P. A. Games and J. F. Howell, J. Educ. Stat. 1 (1976) 113–125 (from memory).</remarks>
public static class GamesHowell
{
    /// <summary>Compares every pair, later group less earlier.</summary>
    /// <param name="groups">Two or more groups in one unit, each with replicates.</param>
    /// <param name="confidence">Of all intervals together; no unit.</param>
    public static Outcome<IReadOnlyList<Comparison>> AllPairs(IReadOnlyList<Group> groups, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(groups);
        if (groups.FirstOrDefault(g => g.Summary.Sd is null or 0) is { } flat)
            return Outcome<IReadOnlyList<Comparison>>.None(NoScatter.Of(flat.Values.Count, flat.Name));
        var k = groups.Count;
        return new([.. Pairs.Of(k).Select(pair =>
        {
            var d = TwoMeans.Welch(groups[pair.Later].Values, groups[pair.Earlier].Values).Value!;
            var half = StudentizedRange.Quantile(confidence, k, d.DegreesOfFreedom) / Math.Sqrt(2) * d.StandardError;
            return new Comparison(
                groups[pair.Later].Name, groups[pair.Earlier].Name, d,
                StudentizedRange.Above(Math.Abs(d.T(0)) * Math.Sqrt(2), k, d.DegreesOfFreedom),
                new(d.Value - half, d.Value + half, confidence), "Games–Howell, all pairs", k * (k - 1) / 2);
        })], []);
    }
}
