namespace Holdfast.Statistics;

/// <summary>Does one value lie further from the mean than chance allows? A flag only: striking needs a physical reason in the log.</summary>
/// <remarks>F. E. Grubbs, Technometrics 11 (1969) 1–21; NIST/SEMATECH e-Handbook 1.3.5.17.1. Two outliers hide each other.</remarks>
/// <param name="G">Largest distance from the mean in standard deviations; no unit.</param>
/// <param name="Critical">Critical value at the chosen level; no unit.</param>
/// <param name="Index">Index of the farthest value.</param>
/// <param name="Alpha">Level of the two-sided test; no unit.</param>
public sealed record Grubbs(double G, double Critical, int Index, double Alpha)
{
    /// <summary>True when the farthest value deserves a flag.</summary>
    public bool IsFlagged => G > Critical;

    /// <summary>Tests the farthest of the values.</summary>
    /// <param name="values">Three or more values, all in one unit.</param>
    /// <param name="alpha">Level of the two-sided test; no unit.</param>
    public static Outcome<Grubbs> Of(IReadOnlyList<double> values, double alpha = 0.05)
    {
        var s = Summary.Of(values);
        if (s.N < 3 || s.Sd is null or 0)
            return Outcome<Grubbs>.None(NoScatter.Of(s.N < 3 ? 1 : s.N));
        var farthest = Enumerable.Range(0, s.N).MaxBy(i => Math.Abs(values[i] - s.Mean));
        return new(new(Math.Abs(values[farthest] - s.Mean) / s.Sd.Value, CriticalValue(s.N, alpha), farthest, alpha), []);
    }

    /// <summary>Critical value; no unit.</summary>
    /// <param name="n">How many values, 3 or more.</param>
    /// <param name="alpha">Level of the two-sided test; no unit.</param>
    public static double CriticalValue(int n, double alpha = 0.05)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(n, 3);
        Probability.Require(alpha);
        var t = StudentDistribution.Quantile(1 - alpha / (2 * n), n - 2);
        return (n - 1) / Math.Sqrt(n) * Math.Sqrt(t * t / (n - 2 + t * t));
    }
}
