namespace Holdfast.Statistics;

/// <summary>Difference of two means, first less second. The design, not the data, chooses between paired and unpaired.</summary>
public static class TwoMeans
{
    /// <summary>Welch: each group keeps its own variance. The default for two independent groups.</summary>
    /// <remarks>B. L. Welch, Biometrika 34 (1947) 28–35; degrees of freedom after Welch and Satterthwaite.</remarks>
    /// <param name="first">Values of the first group.</param>
    /// <param name="second">Values of the second group, same unit.</param>
    public static Outcome<Estimate> Welch(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        Summary a = Summary.Of(first), b = Summary.Of(second);
        if (Refusal(a, b) is { } refusal)
            return Outcome<Estimate>.None(refusal);
        double va = VarianceOfMean(a), vb = VarianceOfMean(b);
        return new(new("Welch, difference of means", a.Mean - b.Mean, Math.Sqrt(va + vb), WelchSatterthwaite.Of((va, a.N - 1), (vb, b.N - 1)), a.N + b.N), []);
    }

    /// <summary>Student: both groups share one variance.</summary>
    /// <param name="first">Values of the first group.</param>
    /// <param name="second">Values of the second group, same unit.</param>
    public static Outcome<Estimate> Pooled(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        Values.Require(first);
        Values.Require(second);
        var dof = first.Count + second.Count - 2;
        var squares = CentredSums.SquaresAboutMean(first) + CentredSums.SquaresAboutMean(second);
        return dof < 1 || squares == 0
            ? Outcome<Estimate>.None(NoScatter.Of(Math.Min(first.Count, second.Count)))
            : new(WithSd(first, second, Math.Sqrt(squares / dof), dof), []);
    }

    /// <summary>With a standard deviation known from elsewhere, for example pooled over a whole series.</summary>
    /// <param name="first">Values of the first group; one is enough.</param>
    /// <param name="second">Values of the second group, same unit; one is enough.</param>
    /// <param name="sd">Standard deviation of one value, in the unit of the values.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom behind it; infinite when it is taken as known.</param>
    public static Estimate WithSd(IReadOnlyList<double> first, IReadOnlyList<double> second, double sd, double degreesOfFreedom)
    {
        Values.Require(first);
        Values.Require(second);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(sd);
        Probability.RequireDegreesOfFreedom(degreesOfFreedom);
        return new(
            "pooled sd, difference of means",
            CentredSums.Mean(first) - CentredSums.Mean(second),
            sd * Math.Sqrt(1.0 / first.Count + 1.0 / second.Count),
            degreesOfFreedom,
            first.Count + second.Count);
    }

    /// <summary>Paired: the mean of the differences, when the design measured each thing both ways.</summary>
    /// <param name="first">Values of the first way.</param>
    /// <param name="second">Values of the second way, same order and unit.</param>
    /// <exception cref="ArgumentException">The lists differ in length.</exception>
    public static Outcome<Estimate> Paired(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        Values.Require(first);
        Values.Require(second);
        if (first.Count != second.Count)
            throw new ArgumentException($"There are {first.Count} and {second.Count} values; pairs need as many of each.", nameof(second));
        var mean = Summary.Of([.. first.Zip(second, (a, b) => a - b)]).MeanEstimate();
        return mean with { Value = mean.Value is { } m ? m with { Method = "paired, mean difference" } : null };
    }

    /// <summary>Variance of a group's mean.</summary>
    internal static double VarianceOfMean(Summary group) => group.Sd!.Value * group.Sd.Value / group.N;

    /// <summary>The reason why two groups cannot be compared, or null.</summary>
    internal static Finding? Refusal(Summary a, Summary b)
        => a.N < 2 || b.N < 2 ? NoScatter.Of(Math.Min(a.N, b.N))
            : a.Sd == 0 && b.Sd == 0 ? NoScatter.Of(a.N + b.N)
            : null;
}
