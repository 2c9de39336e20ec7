namespace Holdfast.Statistics;

/// <summary>Do values rise (or fall) with the order of their groups, whatever the shape of the rise?</summary>
/// <remarks>
/// T. J. Terpstra, Indag. Math. 14 (1952) 327–333; A. R. Jonckheere, Biometrika 41 (1954) 133–145; tie-corrected variance as in
/// M. Hollander and D. A. Wolfe, Nonparametric Statistical Methods, 6.2 (all from memory).
/// </remarks>
/// <param name="J">Pairs of values from different groups that rise with the order; ties count half.</param>
/// <param name="Mean">J expected without a trend.</param>
/// <param name="Variance">Variance of J without a trend.</param>
/// <param name="ExactPIncreasing">Exact one-sided p for a rise, where no values are equal.</param>
/// <param name="ExactPDecreasing">Exact one-sided p for a fall, where no values are equal.</param>
/// <param name="N">How many values.</param>
public sealed record JonckheereTerpstra(double J, double Mean, double Variance, double? ExactPIncreasing, double? ExactPDecreasing, int N)
{
    private const int ExactUpTo = 60;

    /// <summary>Tests groups given in their order.</summary>
    /// <param name="ordered">Two or more groups, in the order of level.</param>
    /// <exception cref="ArgumentException">Fewer than two groups.</exception>
    public static Outcome<JonckheereTerpstra> Of(IReadOnlyList<Group> ordered)
    {
        ArgumentNullException.ThrowIfNull(ordered);
        if (ordered.Count < 2)
            throw new ArgumentException($"There are {ordered.Count} groups; a trend needs two or more.", nameof(ordered));
        var j = Pairs.Of(ordered.Count).Sum(pair => ordered[pair.Later].Values.Sum(
            late => ordered[pair.Earlier].Values.Sum(early => late > early ? 1 : late < early ? 0 : 0.5)));
        int[] sizes = [.. ordered.Select(g => g.Values.Count)];
        int[] ties = [.. ordered.SelectMany(g => g.Values).GroupBy(v => v).Select(g => g.Count())];
        var n = sizes.Sum();
        var variance = VarianceOf(n, sizes, ties);
        if (variance <= 0)
            return Outcome<JonckheereTerpstra>.None(NoScatter.Of(n));
        var most = (n * (double)n - sizes.Sum(s => (double)s * s)) / 2;
        var exact = ties.All(t => t == 1) && n <= ExactUpTo ? Counts(sizes) : null;
        return new(new(j, most / 2, variance, Tail(exact, (int)j, up: true), Tail(exact, (int)j, up: false), n), []);
    }

    /// <summary>Standard normal value of J; positive for a rise; no unit.</summary>
    public double Z => (J - Mean) / Math.Sqrt(Variance);

    /// <summary>One-sided p for a rise, normal approximation; no unit.</summary>
    public double PIncreasing => NormalDistribution.Above(Z);

    /// <summary>One-sided p for a fall, normal approximation; no unit.</summary>
    public double PDecreasing => NormalDistribution.Below(Z);

    private static double VarianceOf(double n, int[] sizes, int[] ties)
    {
        double first = n * (n - 1) * (2 * n + 5) - Third(sizes) - Third(ties);
        double second = Cubes(sizes) * Cubes(ties), third = Squares(sizes) * Squares(ties);
        return first / 72 + (n > 2 ? second / (36 * n * (n - 1) * (n - 2)) : 0) + third / (8 * n * (n - 1));

        static double Third(int[] counts) => counts.Sum(c => (double)c * (c - 1) * (2 * c + 5));
        static double Cubes(int[] counts) => counts.Sum(c => (double)c * (c - 1) * (c - 2));
        static double Squares(int[] counts) => counts.Sum(c => (double)c * (c - 1));
    }

    /// <summary>
    /// Share of all arrangements for each J: the Gaussian multinomial, a product of (1 − q^(m+1))...(1 − q^(m+s)) / (1 − q)...(1 − q^s).
    /// </summary>
    private static double[] Counts(int[] sizes)
    {
        double[] shares = [1];
        var before = 0;
        foreach (var size in sizes)
        {
            for (var i = 1; i <= size; i++)
                shares = DividedBy(Times(shares, before + i), i, scale: i / (double)(before + i));
            before += size;
        }

        return shares;
    }

    private static double[] Times(double[] polynomial, int power)
    {
        var product = new double[polynomial.Length + power];
        for (var i = 0; i < polynomial.Length; i++)
        {
            product[i] += polynomial[i];
            product[i + power] -= polynomial[i];
        }

        return product;
    }

    private static double[] DividedBy(double[] polynomial, int power, double scale)
    {
        var quotient = new double[polynomial.Length - power];
        for (var i = 0; i < quotient.Length; i++)
            quotient[i] = polynomial[i] * scale + (i >= power ? quotient[i - power] : 0);
        return quotient;
    }

    private static double? Tail(double[]? shares, int j, bool up)
        => shares is null ? null : up ? shares.Skip(j).Sum() : shares.Take(j + 1).Sum();
}
