using Holdfast.Statistics;

namespace Holdfast.Claims.NextExperiments;

/// <summary>
/// How many vessels the next experiment needs for a power of 80 %. A scatter found with few vessels is itself uncertain, so plans rest
/// on the value that the true one stays below with 80 % confidence.
/// </summary>
/// <param name="N">Vessels per setting.</param>
/// <param name="Basis">How it was found, in words.</param>
internal sealed record Replication(int N, string Basis)
{
    private const double Target = 0.8;
    private const double SmallestEffect = 0.1;
    private const int Least = 3;
    private const int Bearable = 24;

    /// <summary>Three separate vessels, where no scatter is known to plan with.</summary>
    public static Replication WithoutPilot { get; } = new(Least, "three separate vessels, the least that show a scatter (common practice)");

    /// <summary>Two means to be shown equal within a margin.</summary>
    /// <param name="margin">Largest difference that counts as none, in the unit of the values.</param>
    /// <param name="sd">Standard deviation of one vessel, in the unit of the values.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom behind it.</param>
    public static Replication Equivalence(double margin, double sd, double degreesOfFreedom)
        => Of("equivalence test of two means", margin, sd, degreesOfFreedom, e => SampleSize.ForEquivalenceOfTwoMeans(e, Target));

    /// <summary>One mean to be shown equal to a target within a margin.</summary>
    /// <param name="margin">Largest distance that counts as none, in the unit of the values.</param>
    /// <param name="sd">Standard deviation of one vessel, in the unit of the values.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom behind it.</param>
    public static Replication EquivalenceToTarget(double margin, double sd, double degreesOfFreedom)
        => Of("equivalence test of one mean", margin, sd, degreesOfFreedom, e => SampleSize.ForEquivalenceOfOneMean(e, Target));

    /// <summary>Two means to be told apart.</summary>
    /// <param name="difference">Difference to be seen, in the unit of the values.</param>
    /// <param name="sd">Standard deviation of one vessel, in the unit of the values.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom behind it.</param>
    public static Replication TwoMeans(double difference, double sd, double degreesOfFreedom)
        => Of("two-sided t test of two means", difference, sd, degreesOfFreedom, e => SampleSize.ForTwoMeans(e, Target));

    /// <summary>One mean to be shown on one side of a limit.</summary>
    /// <param name="distance">Distance of the mean from the limit, in the unit of the values.</param>
    /// <param name="sd">Standard deviation of one vessel, in the unit of the values.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom behind it.</param>
    public static Replication AgainstLimit(double distance, double sd, double degreesOfFreedom)
        => Of("one-sided t test against a limit", distance, sd, degreesOfFreedom, e => SampleSize.ForOneMean(e, Target, sides: Sides.One));

    /// <summary>A curve to be told from its rival where the sum of squares between them is known.</summary>
    /// <param name="separation">Mean squared distance of the two curves at the chosen settings, in the unit of the values squared.</param>
    /// <param name="sd">Standard deviation of one vessel, in the unit of the values.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom behind it.</param>
    /// <remarks>Noncentrality 7.849 gives a chi-square test of one degree of freedom a power of 80 % at 5 %.</remarks>
    public static int ForCurves(double separation, double sd, double degreesOfFreedom)
    {
        const double noncentrality = 7.8489;
        var planned = Planned(sd, degreesOfFreedom);
        return (int)Math.Clamp(Math.Ceiling(noncentrality * planned * planned / separation), 1, 1000);
    }

    /// <summary>"3 vessels".</summary>
    /// <param name="what">The word for one.</param>
    public string Each(string what) => Phrase.Count(N, what);

    private static Replication Of(string test, double effect, double sd, double degreesOfFreedom, Func<double, SampleSize> size)
    {
        var planned = Planned(sd, degreesOfFreedom);
        var ratio = Math.Abs(effect) / planned;
        if (!(ratio > 0) || !double.IsFinite(ratio))
            return WithoutPilot;
        var found = size(Math.Max(ratio, SmallestEffect));
        var n = Math.Max(Least, found.N);
        var basis = $"{test}, power {Phrase.With(100 * Target, "%")}, effect {Phrase.Number(ratio)} standard deviations; "
            + $"standard deviation taken at its 80 % upper bound, {Phrase.Number(planned / sd)} times what was found";
        return new(n, n <= Bearable ? basis : basis + "; so many vessels are hardly possible: claim less, or find a steadier method");
    }

    private static double Planned(double sd, double degreesOfFreedom)
        => double.IsPositiveInfinity(degreesOfFreedom) ? sd : sd * StandardDeviationFactor.At(0.8, Math.Max(1, degreesOfFreedom));
}
