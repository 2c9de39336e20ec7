namespace Holdfast.Statistics;

/// <summary>Could values come from a normal distribution? "Not rejected" does not mean that they do.</summary>
/// <remarks>S. S. Shapiro and M. B. Wilk, Biometrika 52 (1965) 591; weights and p by J. P. Royston, Appl. Stat. 44 (1995) 547 (AS R94; from memory).</remarks>
/// <param name="W">Squared correlation of the ordered values with those of a normal sample; no unit.</param>
/// <param name="P">Chance of a smaller W from normal values; no unit.</param>
/// <param name="N">How many values.</param>
public sealed record ShapiroWilk(double W, double P, int N)
{
    /// <summary>Beyond this many values the approximation was not checked by its author.</summary>
    public const int MostValues = 5000;

    private static readonly double[] LastWeight = [0, 0.221157, -0.147981, -2.07119, 4.434685, -2.706056];
    private static readonly double[] LastButOne = [0, 0.042981, -0.293762, -1.752461, 5.682633, -3.582633];

    /// <summary>Tests 4 to 5000 values that are not all alike; no value otherwise.</summary>
    /// <param name="values">All in one unit.</param>
    public static Outcome<ShapiroWilk> Of(IReadOnlyList<double> values)
    {
        Values.Require(values);
        double[] x = [.. values.Order()];
        var n = x.Length;
        if (n < 4 || x[0] == x[^1])
            return Outcome<ShapiroWilk>.None(NoScatter.Of(Math.Min(n, 1)));
        if (n > MostValues)
            return Outcome<ShapiroWilk>.None(Finding.Of("HF-449", Weight.Note, "The test of normality is made for up to 5000 values: look at the plot of quantiles instead."));
        var weights = Weights(n);
        double above = 0;
        for (var i = 0; i < n; i++)
            above += weights[i] * x[i];
        var w = Math.Min(1, above * above / CentredSums.SquaresAboutMean(x));
        return new(new(w, PValue(w, n), n), []);
    }

    private static double[] Weights(int n)
    {
        double[] m = [.. Enumerable.Range(1, n).Select(i => NormalDistribution.Quantile((i - 0.375) / (n + 0.25)))];
        double squares = m.Sum(v => v * v), root = 1 / Math.Sqrt(n);
        var a = new double[n];
        var last = Polynomial(LastWeight, root) + m[^1] / Math.Sqrt(squares);
        var corrected = n > 5 ? 2 : 1;
        double beside = n > 5 ? Polynomial(LastButOne, root) + m[^2] / Math.Sqrt(squares) : 0;
        var scale = n > 5
            ? Math.Sqrt((squares - 2 * m[^1] * m[^1] - 2 * m[^2] * m[^2]) / (1 - 2 * last * last - 2 * beside * beside))
            : Math.Sqrt((squares - 2 * m[^1] * m[^1]) / (1 - 2 * last * last));
        for (var i = corrected; i < n - corrected; i++)
            a[i] = m[i] / scale;
        (a[^1], a[0]) = (last, -last);
        if (n > 5)
            (a[^2], a[1]) = (beside, -beside);
        return a;
    }

    private static double PValue(double w, int n)
    {
        var y = Math.Log(1 - w);
        if (n > 11)
        {
            var ln = Math.Log(n);
            return NormalDistribution.Above((y - Polynomial([-1.5861, -0.31082, -0.083751, 0.0038915], ln)) / Math.Exp(Polynomial([-0.4803, -0.082676, 0.0030302], ln)));
        }

        var gamma = -2.273 + 0.459 * n;
        if (y >= gamma)
            return 0;
        return NormalDistribution.Above(
            (-Math.Log(gamma - y) - Polynomial([0.544, -0.39978, 0.025054, -6.714e-4], n)) / Math.Exp(Polynomial([1.3822, -0.77857, 0.062767, -0.0020322], n)));
    }

    private static double Polynomial(double[] coefficients, double x)
    {
        var sum = 0.0;
        for (var k = coefficients.Length - 1; k >= 0; k--)
            sum = sum * x + coefficients[k];
        return sum;
    }
}
