namespace Holdfast.Statistics;

/// <summary>How many replicates a plan needs.</summary>
/// <param name="N">Replicates in each group, or pairs.</param>
/// <param name="Power">Power reached with that many; no unit.</param>
public sealed record SampleSize(int N, double Power)
{
    private const int Most = 100_000;

    /// <summary>Two means that differ.</summary>
    /// <param name="effect">True difference over sd; no unit.</param>
    /// <param name="power">Wanted power; no unit.</param>
    /// <param name="alpha">Level of the test; no unit.</param>
    /// <param name="sides">One or two sides.</param>
    public static SampleSize ForTwoMeans(double effect, double power = 0.8, double alpha = 0.05, Sides sides = Sides.Two)
        => Smallest(power, effect, n => Statistics.Power.TwoMeans(effect, n, alpha, sides));

    /// <summary>One mean, or pairs, that differ from a fixed value.</summary>
    /// <param name="effect">True distance over sd; no unit.</param>
    /// <param name="power">Wanted power; no unit.</param>
    /// <param name="alpha">Level of the test; no unit.</param>
    /// <param name="sides">One or two sides; one against a limit.</param>
    public static SampleSize ForOneMean(double effect, double power = 0.8, double alpha = 0.05, Sides sides = Sides.Two)
        => Smallest(power, effect, n => Statistics.Power.OneMean(effect, n, alpha, sides));

    /// <summary>Two means that are equal within a margin; true difference 0.</summary>
    /// <param name="margin">Margin over sd; no unit.</param>
    /// <param name="power">Wanted power; no unit.</param>
    /// <param name="alpha">Level of each one-sided test; no unit.</param>
    public static SampleSize ForEquivalenceOfTwoMeans(double margin, double power = 0.8, double alpha = 0.05)
        => Smallest(power, margin, n => Statistics.Power.EquivalenceOfTwoMeans(margin, n, 0, alpha));

    /// <summary>One mean, or pairs, equal to a target within a margin; true difference 0.</summary>
    /// <param name="margin">Margin over sd; no unit.</param>
    /// <param name="power">Wanted power; no unit.</param>
    /// <param name="alpha">Level of each one-sided test; no unit.</param>
    public static SampleSize ForEquivalenceOfOneMean(double margin, double power = 0.8, double alpha = 0.05)
        => Smallest(power, margin, n => Statistics.Power.EquivalenceOfOneMean(margin, n, 0, alpha));

    /// <summary>Several groups that differ.</summary>
    /// <param name="effect">Cohen's f; no unit.</param>
    /// <param name="groups">How many groups.</param>
    /// <param name="power">Wanted power; no unit.</param>
    /// <param name="alpha">Level of the test; no unit.</param>
    public static SampleSize ForOneWay(double effect, int groups, double power = 0.8, double alpha = 0.05)
        => Smallest(power, effect, n => Statistics.Power.OneWay(effect, groups, n, alpha));

    private static SampleSize Smallest(double wanted, double effect, Func<int, double> power)
    {
        Probability.Require(wanted);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(effect);
        int high = 2, low = 1;
        while (power(high) < wanted)
        {
            (low, high) = (high, high * 2);
            if (high > Most)
                throw new ArgumentOutOfRangeException(nameof(effect), "The effect is too small: more than 100,000 replicates would be needed.");
        }

        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = power(middle) < wanted ? (middle, high) : (low, middle);
        }

        return new(high, power(high));
    }
}
