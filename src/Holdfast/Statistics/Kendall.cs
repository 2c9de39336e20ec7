namespace Holdfast.Statistics;

/// <summary>Rank correlation: do two quantities rise together, whatever the shape?</summary>
/// <remarks>M. G. Kendall, Biometrika 30 (1938) 81–93; τ-b and its variance with ties from Rank Correlation Methods (both from memory).</remarks>
/// <param name="Tau">τ-b, −1 to 1; no unit.</param>
/// <param name="S">Pairs that agree in order less pairs that disagree.</param>
/// <param name="PIncreasing">One-sided p of a rise; no unit.</param>
/// <param name="PDecreasing">One-sided p of a fall; no unit.</param>
/// <param name="Exact">True when p counts every order; false for the normal approximation.</param>
/// <param name="N">How many pairs of values.</param>
public sealed record Kendall(double Tau, int S, double PIncreasing, double PDecreasing, bool Exact, int N)
{
    private const int PermuteUpTo = 9;
    private const int CountUpTo = 60;

    /// <summary>Two-sided p; no unit.</summary>
    public double P => Math.Min(1, 2 * Math.Min(PIncreasing, PDecreasing));

    /// <summary>Correlates two lists.</summary>
    /// <param name="x">Level, time or order; any unit.</param>
    /// <param name="y">Values in the same order; any unit.</param>
    /// <exception cref="ArgumentException">The lists differ in length.</exception>
    public static Outcome<Kendall> Of(IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        Values.Require(x);
        Values.Require(y);
        if (x.Count != y.Count)
            throw new ArgumentException($"There are {x.Count} and {y.Count} values; as many of each are needed.", nameof(y));
        var n = x.Count;
        int[] tiesX = Ties(x), tiesY = Ties(y);
        double pairs = 0.5 * n * (n - 1), pairsX = pairs - tiesX.Sum(t => 0.5 * t * (t - 1)), pairsY = pairs - tiesY.Sum(t => 0.5 * t * (t - 1));
        if (n < 3 || pairsX == 0 || pairsY == 0)
            return Outcome<Kendall>.None(NoScatter.Of(n));
        var s = Score(x, [.. y]);
        var tied = tiesX.Length < n || tiesY.Length < n;
        var (up, down) = (tied, n) switch
        {
            (false, <= CountUpTo) => Counted(s, n),
            (true, <= PermuteUpTo) => Permuted(s, x, y),
            _ => Approximated(s, n, tiesX, tiesY),
        };
        return new(new(s / Math.Sqrt(pairsX * pairsY), s, up, down, n <= (tied ? PermuteUpTo : CountUpTo), n), []);
    }

    private static int[] Ties(IReadOnlyList<double> values) => [.. values.GroupBy(v => v).Select(g => g.Count())];

    private static int Score(IReadOnlyList<double> x, double[] y)
    {
        var s = 0;
        for (var i = 1; i < y.Length; i++)
        {
            for (var j = 0; j < i; j++)
                s += Math.Sign(x[i] - x[j]) * Math.Sign(y[i] - y[j]);
        }

        return s;
    }

    /// <summary>Without ties the number of inversions follows the Mahonian counts, built one item at a time.</summary>
    private static (double Up, double Down) Counted(int s, int n)
    {
        double[] shares = [1];
        for (var k = 2; k <= n; k++)
        {
            var next = new double[shares.Length + k - 1];
            for (var i = 0; i < shares.Length; i++)
            {
                for (var j = 0; j < k; j++)
                    next[i + j] += shares[i] / k;
            }

            shares = next;
        }

        var inversions = (n * (n - 1) / 2 - s) / 2;
        return (shares.Take(inversions + 1).Sum(), shares.Skip(inversions).Sum());
    }

    private static (double Up, double Down) Permuted(int s, IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        int above = 0, below = 0, all = 0;
        double[] order = [.. y];
        Visit(0);
        return ((double)above / all, (double)below / all);

        void Visit(int from)
        {
            if (from == order.Length)
            {
                var score = Score(x, order);
                all++;
                above += score >= s ? 1 : 0;
                below += score <= s ? 1 : 0;
                return;
            }

            for (var i = from; i < order.Length; i++)
            {
                (order[from], order[i]) = (order[i], order[from]);
                Visit(from + 1);
                (order[from], order[i]) = (order[i], order[from]);
            }
        }
    }

    private static (double Up, double Down) Approximated(int s, double n, int[] tiesX, int[] tiesY)
    {
        var variance = (n * (n - 1) * (2 * n + 5) - Fifth(tiesX) - Fifth(tiesY)) / 18
            + Cubes(tiesX) * Cubes(tiesY) / (9 * n * (n - 1) * (n - 2))
            + Squares(tiesX) * Squares(tiesY) / (2 * n * (n - 1));
        var z = s / Math.Sqrt(variance);
        return (NormalDistribution.Above(z), NormalDistribution.Below(z));

        static double Fifth(int[] ties) => ties.Sum(t => (double)t * (t - 1) * (2 * t + 5));
        static double Cubes(int[] ties) => ties.Sum(t => (double)t * (t - 1) * (t - 2));
        static double Squares(int[] ties) => ties.Sum(t => (double)t * (t - 1));
    }
}
