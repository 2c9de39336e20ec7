namespace Holdfast.Statistics;

/// <summary>Are values of one group usually larger than those of another, whatever their shape?</summary>
/// <remarks>
/// H. B. Mann and D. R. Whitney, Ann. Math. Stat. 18 (1947) 50; normal approximation with the correction for ties and for continuity. Shift by J. L. Hodges and
/// E. L. Lehmann, Ann. Math. Stat. 34 (1963) 598: the median of all differences (both from memory).
/// </remarks>
/// <param name="U">Pairs in which the first is larger, ties counted half.</param>
/// <param name="P">Two-sided p; no unit.</param>
/// <param name="FirstLarger">Chance that a value of the first group is larger than one of the second; no unit.</param>
/// <param name="Shift">Hodges–Lehmann shift, first less second, in the unit of the values.</param>
public sealed record MannWhitney(double U, double P, double FirstLarger, double Shift)
{
    /// <summary>Compares two groups; no value when all values are alike.</summary>
    /// <param name="first">Values of the first group.</param>
    /// <param name="second">Values of the second group, same unit.</param>
    public static Outcome<MannWhitney> Of(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        Values.Require(first);
        Values.Require(second);
        double[] a = [.. first.Order()], b = [.. second.Order()];
        double m = a.Length, n = b.Length, all = m + n;
        double u = a.Sum(v => 0.5 * (Below(b, v) + AtOrBelow(b, v)));
        var ties = a.Concat(b).GroupBy(v => v).Sum(g => Math.Pow(g.Count(), 3) - g.Count());
        var variance = m * n / 12 * (all + 1 - ties / (all * (all - 1)));
        if (!(variance > 0))
            return Outcome<MannWhitney>.None(NoScatter.Of((int)all));
        var z = Math.Max(0, Math.Abs(u - m * n / 2) - 0.5) / Math.Sqrt(variance);
        return new(new(u, Math.Min(1, NormalDistribution.Beyond(z)), u / (m * n), MedianDifference(a, b)), []);
    }

    // The k-th smallest of all differences, found by halving: how many lie at or below a trial is counted in one pass over both sorted groups.
    private static double MedianDifference(double[] a, double[] b)
    {
        var count = (long)a.Length * b.Length;
        return count % 2 == 1 ? Ranked(count / 2 + 1) : 0.5 * (Ranked(count / 2) + Ranked(count / 2 + 1));

        double Ranked(long rank)
        {
            double low = a[0] - b[^1], high = a[^1] - b[0];
            for (var step = 0; step < 200 && low < high; step++)
            {
                var middle = low + 0.5 * (high - low);
                if (middle <= low || middle >= high)
                    break;
                if (AtMost(middle) >= rank)
                    high = middle;
                else
                    low = middle;
            }

            return high;
        }

        long AtMost(double difference)
        {
            long found = 0;
            var j = 0;
            foreach (var v in b)
            {
                while (j < a.Length && a[j] - v <= difference)
                    j++;
                found += j;
            }

            return found;
        }
    }

    private static int Below(double[] sorted, double value) => Count(sorted, v => v < value);

    private static int AtOrBelow(double[] sorted, double value) => Count(sorted, v => v <= value);

    private static int Count(double[] sorted, Func<double, bool> before)
    {
        int low = 0, high = sorted.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = before(sorted[middle]) ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
