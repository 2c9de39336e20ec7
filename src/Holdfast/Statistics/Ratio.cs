namespace Holdfast.Statistics;

/// <summary>Ratio of two independent means, first over second.</summary>
public static class Ratio
{
    /// <summary>Ratio of arithmetic means; its standard error to first order from the two groups' own scatter.</summary>
    /// <remarks>u(r)/r = √(s₁²/(n₁ m₁²) + s₂²/(n₂ m₂²)); use only while the second mean is well away from zero, else see <see cref="FiellerInterval"/>.</remarks>
    /// <param name="first">Values above the bar.</param>
    /// <param name="second">Values below the bar, same unit.</param>
    /// <param name="freedom">How the degrees of freedom are counted.</param>
    public static Outcome<Estimate> OfMeans(IReadOnlyList<double> first, IReadOnlyList<double> second, RatioFreedom freedom = RatioFreedom.Satterthwaite)
    {
        Summary a = Summary.Of(first), b = Summary.Of(second);
        if (TwoMeans.Refusal(a, b) is { } refusal)
            return Outcome<Estimate>.None(refusal);
        if (b.Mean == 0)
            return Outcome<Estimate>.None(Finding.Of("HF-449", Weight.Stop, "The mean below the bar is 0: a ratio to it does not exist. Compare differences instead."));
        var ratio = a.Mean / b.Mean;
        double va = TwoMeans.VarianceOfMean(a) / (b.Mean * b.Mean), vb = TwoMeans.VarianceOfMean(b) * ratio * ratio / (b.Mean * b.Mean);
        var dof = freedom switch
        {
            RatioFreedom.SmallerGroup => Math.Min(a.N, b.N) - 1,
            RatioFreedom.Sum => a.N + b.N - 2,
            _ => WelchSatterthwaite.Of((va, a.N - 1), (vb, b.N - 1)),
        };
        return new(new("ratio of means, first order", ratio, Math.Sqrt(va + vb), dof, a.N + b.N), []);
    }

    /// <summary>Ratio of arithmetic means with a standard deviation of one value that is common to both, for example pooled over all cycles.</summary>
    /// <param name="first">Values above the bar; one is enough.</param>
    /// <param name="second">Values below the bar, same unit; one is enough, and their mean is not 0.</param>
    /// <param name="sd">Standard deviation of one value, in the unit of the values.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom behind it.</param>
    public static Estimate WithSd(IReadOnlyList<double> first, IReadOnlyList<double> second, double sd, double degreesOfFreedom)
    {
        Values.Require(first);
        Values.Require(second);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(sd);
        Probability.RequireDegreesOfFreedom(degreesOfFreedom);
        var below = CentredSums.Mean(second);
        ArgumentOutOfRangeException.ThrowIfZero(below, nameof(second));
        var ratio = CentredSums.Mean(first) / below;
        return new(
            "ratio of means, pooled sd, first order", ratio, sd / Math.Abs(below) * Math.Sqrt(1.0 / first.Count + ratio * ratio / second.Count),
            degreesOfFreedom, first.Count + second.Count);
    }

    /// <summary>Ratio of two independent estimates, for example of two slopes; its standard error to first order, degrees of freedom after Satterthwaite.</summary>
    /// <param name="above">Estimate above the bar.</param>
    /// <param name="below">Estimate below the bar, same unit, not 0.</param>
    public static Estimate Of(Estimate above, Estimate below)
    {
        ArgumentNullException.ThrowIfNull(above);
        ArgumentNullException.ThrowIfNull(below);
        ArgumentOutOfRangeException.ThrowIfZero(below.Value, nameof(below));
        var ratio = above.Value / below.Value;
        double own = above.StandardError / below.Value, other = ratio * below.StandardError / below.Value;
        return new(
            "ratio of estimates, first order", ratio, Math.Sqrt(own * own + other * other),
            WelchSatterthwaite.Of((own * own, above.DegreesOfFreedom), (other * other, below.DegreesOfFreedom)), above.N + below.N);
    }

    /// <summary>Distance of two independent estimates in standard errors of their difference, not below 0; no unit.</summary>
    /// <param name="first">One estimate.</param>
    /// <param name="second">The other, same unit.</param>
    public static double Deviations(Estimate first, Estimate second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return Math.Abs(first.Value - second.Value)
            / Math.Sqrt(first.StandardError * first.StandardError + second.StandardError * second.StandardError);
    }

    /// <summary>Ratio of geometric means: Welch on the natural logarithms.</summary>
    /// <param name="first">Values above the bar, all above 0.</param>
    /// <param name="second">Values below the bar, same unit, all above 0.</param>
    /// <exception cref="ArgumentException">A value is 0 or less.</exception>
    public static Outcome<Estimate> OfGeometricMeans(IReadOnlyList<double> first, IReadOnlyList<double> second)
    {
        var found = TwoMeans.Welch(Logarithms(first), Logarithms(second));
        return found with { Value = OnLogarithms(found.Value, "Welch on ln, ratio of geometric means") };
    }

    /// <summary>Geometric mean of replicate ratios, for example of selectivities.</summary>
    /// <param name="values">Values above 0.</param>
    /// <exception cref="ArgumentException">A value is 0 or less.</exception>
    public static Outcome<Estimate> GeometricMean(IReadOnlyList<double> values)
    {
        var found = Summary.Of(Logarithms(values)).MeanEstimate();
        return found with { Value = OnLogarithms(found.Value, "geometric mean, t on ln") };
    }

    /// <summary>Exact limits of the ratio of two uncorrelated normal estimates, or null when the lower one is not different from zero.</summary>
    /// <remarks>E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175–185 (from memory): the values r for which |a − r b| ≤ t √(u²(a) + r² u²(b)).</remarks>
    /// <param name="above">Estimate above the bar.</param>
    /// <param name="below">Estimate below the bar, independent of the other.</param>
    /// <param name="degreesOfFreedom">Common degrees of freedom.</param>
    /// <param name="confidence">Between 0 and 1; no unit.</param>
    public static Interval? FiellerInterval(Estimate above, Estimate below, double degreesOfFreedom, double confidence = 0.95)
    {
        ArgumentNullException.ThrowIfNull(above);
        ArgumentNullException.ThrowIfNull(below);
        var t = StudentDistribution.TwoSided(confidence, degreesOfFreedom);
        var g = Math.Pow(t * below.StandardError / below.Value, 2);
        if (g >= 1)
            return null;
        var ratio = above.Value / below.Value;
        var half = t / Math.Abs(below.Value) * Math.Sqrt((1 - g) * above.StandardError * above.StandardError + ratio * ratio * below.StandardError * below.StandardError);
        return new((ratio - half) / (1 - g), (ratio + half) / (1 - g), confidence);
    }

    private static Estimate? OnLogarithms(Estimate? e, string method)
        => e is null ? null : e with { Method = method, Value = Math.Exp(e.Value), Scale = Scale.Logarithmic };

    private static double[] Logarithms(IReadOnlyList<double> values)
    {
        Values.Require(values);
        if (values.Any(v => v <= 0))
            throw new ArgumentException("A logarithm needs values above 0; compare the means themselves instead.", nameof(values));
        return [.. values.Select(v => Math.Log(v))];
    }
}

/// <summary>How the degrees of freedom of a ratio of two means are counted.</summary>
public enum RatioFreedom
{
    /// <summary>Welch–Satterthwaite: between the smaller group's and the sum.</summary>
    Satterthwaite,

    /// <summary>Those of the smaller group: the cautious choice.</summary>
    SmallerGroup,

    /// <summary>n₁ + n₂ − 2, when both groups scatter alike.</summary>
    Sum,
}
