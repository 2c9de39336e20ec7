namespace Holdfast.Statistics;

/// <summary>Do two groups differ in any way: place, width or shape?</summary>
/// <remarks>
/// Largest distance of the two cumulative distributions. p counts the orders of the pooled values that give as large a distance, step by step along the paths
/// (J. L. Hodges, Ark. Mat. 3 (1958) 469; from memory): exact without ties, cautious with them.
/// </remarks>
/// <param name="D">Largest distance; no unit.</param>
/// <param name="P">Two-sided p; no unit.</param>
public sealed record KolmogorovSmirnov(double D, double P)
{
    /// <summary>Compares two groups.</summary>
    /// <param name="first">Values of the first group.</param>
    /// <param name="second">Values of the second group, same unit.</param>
    public static KolmogorovSmirnov Of(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        Values.Require(first);
        Values.Require(second);
        double[] a = [.. first.Order()], b = [.. second.Order()];
        long apart = 0, m = a.Length, n = b.Length;
        for (int i = 0, j = 0; i < m && j < n;)
        {
            var value = Math.Min(a[i], b[j]);
            while (i < m && a[i] == value)
                i++;
            while (j < n && b[j] == value)
                j++;
            apart = Math.Max(apart, Math.Abs(i * n - j * m));
        }

        return new((double)apart / (m * n), Chance(apart, m, n));
    }

    // Chance that a random path from (0, 0) to (m, n) leaves the band |i·n − j·m| < apart; whole numbers, so that no rounding decides.
    private static double Chance(long apart, long m, long n)
    {
        var left = new double[n + 1];
        for (long i = 0; i <= m; i++)
        {
            for (long j = 0; j <= n; j++)
            {
                if (Math.Abs(i * n - j * m) >= apart)
                    left[j] = 1;
                else if (i + j == 0)
                    left[j] = 0;
                else
                    left[j] = ((i > 0 ? i * left[j] : 0) + (j > 0 ? j * left[j - 1] : 0)) / (i + j);
            }
        }

        return left[n];
    }
}
