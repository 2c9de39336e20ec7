namespace Holdfast.Statistics;

/// <summary>
/// Probability that a planned experiment shows what is there. For plans only: after the fact the interval says it better.
/// Effects are in units of the standard deviation of one replicate.
/// </summary>
/// <remarks>Exact: noncentral t and F, and for equivalence the average over s rather than a shifted t. J. Cohen's printed 64 and 26 replicates are reproduced.</remarks>
public static class Power
{
    /// <summary>Difference of two means, equal replicates.</summary>
    /// <param name="effect">True difference over sd, above 0; no unit.</param>
    /// <param name="perGroup">Replicates in each group, 2 or more.</param>
    /// <param name="alpha">Level of the test; no unit.</param>
    /// <param name="sides">One or two sides.</param>
    public static double TwoMeans(double effect, int perGroup, double alpha = 0.05, Sides sides = Sides.Two)
        => Difference(effect * Math.Sqrt(Checked(perGroup) / 2.0), 2 * perGroup - 2, alpha, sides);

    /// <summary>One mean, or the mean of paired differences, against a fixed value.</summary>
    /// <param name="effect">True distance over sd, above 0; no unit.</param>
    /// <param name="n">Replicates or pairs, 2 or more.</param>
    /// <param name="alpha">Level of the test; no unit.</param>
    /// <param name="sides">One or two sides; one against a limit.</param>
    public static double OneMean(double effect, int n, double alpha = 0.05, Sides sides = Sides.Two)
        => Difference(effect * Math.Sqrt(Checked(n)), n - 1, alpha, sides);

    /// <summary>Equivalence of two means within ± margin.</summary>
    /// <param name="margin">Margin over sd, above 0; no unit.</param>
    /// <param name="perGroup">Replicates in each group, 2 or more.</param>
    /// <param name="trueDifference">True difference over sd; no unit.</param>
    /// <param name="alpha">Level of each one-sided test; no unit.</param>
    public static double EquivalenceOfTwoMeans(double margin, int perGroup, double trueDifference = 0, double alpha = 0.05)
        => Equivalence(-margin, margin, trueDifference, Math.Sqrt(2.0 / Checked(perGroup)), 2 * perGroup - 2, alpha);

    /// <summary>Equivalence of one mean, or of paired differences, to a target within ± margin.</summary>
    /// <param name="margin">Margin over sd, above 0; no unit.</param>
    /// <param name="n">Replicates or pairs, 2 or more.</param>
    /// <param name="trueDifference">True distance from the target over sd; no unit.</param>
    /// <param name="alpha">Level of each one-sided test; no unit.</param>
    public static double EquivalenceOfOneMean(double margin, int n, double trueDifference = 0, double alpha = 0.05)
        => Equivalence(-margin, margin, trueDifference, Math.Sqrt(1.0 / Checked(n)), n - 1, alpha);

    /// <summary>Equivalence in general: two one-sided t tests of an estimate with a given true standard error.</summary>
    /// <param name="low">Lower margin, in the unit of the estimate.</param>
    /// <param name="high">Upper margin, in the unit of the estimate.</param>
    /// <param name="truth">True value, in the unit of the estimate.</param>
    /// <param name="standardError">True standard error, above 0, in the unit of the estimate.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom with which the standard error will be found.</param>
    /// <param name="alpha">Level of each one-sided test; no unit.</param>
    public static double Equivalence(double low, double high, double truth, double standardError, double degreesOfFreedom, double alpha = 0.05)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(low, high);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(standardError);
        Probability.Require(alpha);
        var t = StudentDistribution.Quantile(1 - alpha, degreesOfFreedom);
        return ScaledChi.Average(
            degreesOfFreedom,
            s => Math.Max(0, NormalDistribution.Below((high - truth) / standardError - t * s) - NormalDistribution.Below((low - truth) / standardError + t * s)),
            upTo: (high - low) / (2 * t * standardError));
    }

    /// <summary>One-way analysis of variance with equal groups.</summary>
    /// <param name="effect">Cohen's f: sd of the true group means over sd of one replicate; no unit.</param>
    /// <param name="groups">How many groups, 2 or more.</param>
    /// <param name="perGroup">Replicates in each, 2 or more.</param>
    /// <param name="alpha">Level of the test; no unit.</param>
    public static double OneWay(double effect, int groups, int perGroup, double alpha = 0.05)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(groups, 2);
        var below = groups * (Checked(perGroup) - 1);
        return NoncentralFisher.Above(FisherDistribution.Quantile(1 - alpha, groups - 1, below), groups - 1, below, groups * perGroup * effect * effect);
    }

    /// <summary>The smallest true difference of two means, over sd, that the plan finds with the wanted power.</summary>
    /// <param name="perGroup">Replicates in each group, 2 or more.</param>
    /// <param name="power">Wanted power; no unit.</param>
    /// <param name="alpha">Level of the two-sided test; no unit.</param>
    public static double SmallestDifferenceOfTwoMeans(int perGroup, double power = 0.8, double alpha = 0.05)
        => Smallest(d => TwoMeans(d, perGroup, alpha), power);

    /// <summary>The smallest true distance of one mean, or of pairs, from a fixed value, over sd, that the plan finds with the wanted power.</summary>
    /// <param name="n">Replicates or pairs, 2 or more.</param>
    /// <param name="power">Wanted power; no unit.</param>
    /// <param name="alpha">Level of the test; no unit.</param>
    /// <param name="sides">One or two sides; one against a limit.</param>
    public static double SmallestDistanceOfOneMean(int n, double power = 0.8, double alpha = 0.05, Sides sides = Sides.Two)
        => Smallest(d => OneMean(d, n, alpha, sides), power);

    /// <summary>The smallest margin, over sd, within which two equal means are shown equal with the wanted power.</summary>
    /// <param name="perGroup">Replicates in each group, 2 or more.</param>
    /// <param name="power">Wanted power; no unit.</param>
    /// <param name="alpha">Level of each one-sided test; no unit.</param>
    public static double SmallestMarginOfTwoMeans(int perGroup, double power = 0.8, double alpha = 0.05)
        => Smallest(m => EquivalenceOfTwoMeans(m, perGroup, 0, alpha), power);

    /// <summary>The smallest margin, over sd, within which one mean, or pairs, on target is shown to lie there with the wanted power.</summary>
    /// <param name="n">Replicates or pairs, 2 or more.</param>
    /// <param name="power">Wanted power; no unit.</param>
    /// <param name="alpha">Level of each one-sided test; no unit.</param>
    public static double SmallestMarginOfOneMean(int n, double power = 0.8, double alpha = 0.05)
        => Smallest(m => EquivalenceOfOneMean(m, n, 0, alpha), power);

    // Two replicates need an effect of some tens of sd at most.
    private static double Smallest(Func<double, double> reached, double power)
    {
        Probability.Require(power);
        return Root.Of(d => reached(d) - power, 1e-6, 100);
    }

    private static double Difference(double noncentrality, double degreesOfFreedom, double alpha, Sides sides)
    {
        Probability.Require(alpha);
        if (sides == Sides.One)
            return NoncentralStudent.Above(StudentDistribution.Quantile(1 - alpha, degreesOfFreedom), degreesOfFreedom, noncentrality);
        var t = StudentDistribution.Quantile(1 - alpha / 2, degreesOfFreedom);
        return NoncentralStudent.Above(t, degreesOfFreedom, noncentrality) + NoncentralStudent.Below(-t, degreesOfFreedom, noncentrality);
    }

    private static int Checked(int replicates)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(replicates, 2);
        return replicates;
    }
}

/// <summary>Whether a test looks to both sides or to the one that was named beforehand.</summary>
public enum Sides
{
    /// <summary>One side, named before the data were seen.</summary>
    One,

    /// <summary>Both sides.</summary>
    Two,
}
