namespace Holdfast.Statistics;

/// <summary>Gap of the farthest value to its neighbour over the range (r10), for 3 to 10 values. A flag only.</summary>
/// <remarks>
/// R. B. Dean and W. J. Dixon, Anal. Chem. 23 (1951) 636–638 (from memory). Two-sided 5 % limits simulated for this project with
/// 1.2 million draws for each n, good to 0.002 (reference/measurement/critical-values.csv).
/// </remarks>
/// <param name="Q">Gap over range; no unit.</param>
/// <param name="Critical">Two-sided 5 % limit; no unit.</param>
/// <param name="Value">The value the gap belongs to, in its own unit.</param>
public sealed record Dixon(double Q, double Critical, double Value)
{
    private static readonly double[] Limits = [0.970, 0.829, 0.710, 0.625, 0.568, 0.526, 0.493, 0.466];

    /// <summary>True when the value deserves a flag.</summary>
    public bool IsFlagged => Q > Critical;

    /// <summary>Tests the end with the wider gap.</summary>
    /// <param name="values">Three to ten values, all in one unit.</param>
    public static Outcome<Dixon> Of(IReadOnlyList<double> values)
    {
        Values.Require(values);
        double[] sorted = [.. values.Order()];
        var n = sorted.Length;
        if (n < 3 || sorted[^1] == sorted[0])
            return Outcome<Dixon>.None(NoScatter.Of(n < 3 ? 1 : n));
        if (n > 10)
            throw new ArgumentException("The table reaches from 3 to 10 values; use Grubbs for more.", nameof(values));
        double below = sorted[1] - sorted[0], above = sorted[^1] - sorted[^2];
        return new(new(Math.Max(below, above) / (sorted[^1] - sorted[0]), CriticalValue(n), above >= below ? sorted[^1] : sorted[0]), []);
    }

    /// <summary>Two-sided 5 % limit; no unit.</summary>
    /// <param name="n">How many values, 3 to 10.</param>
    public static double CriticalValue(int n)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(n, 3);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(n, 10);
        return Limits[n - 3];
    }
}
