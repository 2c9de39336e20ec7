namespace Holdfast.Fitting;

/// <summary>
/// Whether the curve misses more than replicates differ among themselves. Only true replicates count: repeat readings of one flask shrink
/// the pure error and reject every curve.
/// </summary>
/// <param name="PureError">Weighted sum of squares of the readings about the mean of their level.</param>
/// <param name="PureErrorDof">Points less distinct levels.</param>
/// <param name="Misfit">What is left of the sum of squares.</param>
/// <param name="MisfitDof">Distinct levels less parameters.</param>
/// <param name="Test">F of misfit over pure error.</param>
public sealed record LackOfFit(double PureError, int PureErrorDof, double Misfit, int MisfitDof, FTest Test)
{
    /// <summary>The test, or null without replicates or without levels to spare.</summary>
    /// <param name="x">Levels; replicates have exactly the same x.</param>
    /// <param name="y">Readings.</param>
    /// <param name="w">Weights.</param>
    /// <param name="s">Weighted sum of squares of the fit.</param>
    /// <param name="p">Number of parameters.</param>
    public static LackOfFit? Of(IReadOnlyList<double> x, IReadOnlyList<double> y, IReadOnlyList<double> w, double s, int p)
    {
        ArgumentNullException.ThrowIfNull(x);
        double pure = 0;
        int levels = 0, points = 0;
        foreach (var level in Enumerable.Range(0, x.Count).Where(i => w[i] > 0).GroupBy(i => x[i]))
        {
            var weight = level.Sum(i => w[i]);
            var mean = level.Sum(i => w[i] * y[i]) / weight;
            pure += level.Sum(i => w[i] * (y[i] - mean) * (y[i] - mean));
            levels++;
            points += level.Count();
        }

        return Of(pure, points - levels, Math.Max(s - pure, 0), levels - p);
    }

    /// <summary>The test from its two sums of squares, or null without replicates or without levels to spare.</summary>
    /// <param name="pure">Sum of squares within the levels.</param>
    /// <param name="pureDof">Points less levels.</param>
    /// <param name="misfit">What is left of the sum of squares.</param>
    /// <param name="misfitDof">Levels less parameters.</param>
    /// <param name="below">Degrees of freedom of the denominator where it is known less well than by <paramref name="pureDof"/>; null for those.</param>
    public static LackOfFit? Of(double pure, int pureDof, double misfit, int misfitDof, int? below = null)
        => pureDof < 1 || misfitDof < 1 || !(pure > 0) ? null
            : new(pure, pureDof, misfit, misfitDof, FTest.Of(misfit / misfitDof / (pure / pureDof), misfitDof, below ?? pureDof));
}
