namespace Holdfast.Statistics;

/// <summary>
/// A number estimated from scattered values, with all that a verdict needs: intervals and one-sided bounds at any confidence,
/// and p against any limit. Intervals rest on Student's t.
/// </summary>
/// <param name="Method">How it was found, in words: "Welch, difference of means".</param>
/// <param name="Value">The estimate, in the unit of the values.</param>
/// <param name="StandardError">Its standard error: in the unit of the value, or of ln(value) on the logarithmic scale.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the standard error; may be broken or infinite.</param>
/// <param name="N">How many values it rests on.</param>
/// <param name="Scale">The scale on which the error is symmetric.</param>
public sealed record Estimate(string Method, double Value, double StandardError, double DegreesOfFreedom, int N, Scale Scale = Scale.Plain)
{
    /// <summary>Two-sided interval.</summary>
    /// <param name="confidence">Between 0 and 1; 0.90 is the one that judges equivalence at 5 %; no unit.</param>
    public Interval Interval(double confidence = 0.95)
    {
        var half = StudentDistribution.TwoSided(confidence, DegreesOfFreedom);
        return new(Shifted(-half), Shifted(half), confidence);
    }

    /// <summary>The value that the truth exceeds with the stated confidence.</summary>
    /// <param name="confidence">One-sided, between 0 and 1; no unit.</param>
    public double LowerBound(double confidence = 0.95) => Shifted(-StudentDistribution.Quantile(confidence, DegreesOfFreedom));

    /// <summary>The value that the truth stays below with the stated confidence.</summary>
    /// <param name="confidence">One-sided, between 0 and 1; no unit.</param>
    public double UpperBound(double confidence = 0.95) => Shifted(StudentDistribution.Quantile(confidence, DegreesOfFreedom));

    /// <summary>Distance from a fixed value in standard errors: Student's t.</summary>
    /// <param name="from">The fixed value, in the unit of the estimate.</param>
    public double T(double from)
        => (Scale == Scale.Logarithmic ? Math.Log(Value / from) : Value - from) / StandardError;

    /// <summary>Two-sided p of "the truth equals this value".</summary>
    /// <param name="value">In the unit of the estimate: 0 for a difference, 1 for a ratio.</param>
    public double PDiffersFrom(double value) => StudentDistribution.Beyond(T(value), DegreesOfFreedom);

    /// <summary>One-sided p of "the truth is not above this limit": small p shows that it is above.</summary>
    /// <param name="limit">In the unit of the estimate.</param>
    public double PAbove(double limit) => StudentDistribution.Above(T(limit), DegreesOfFreedom);

    /// <summary>One-sided p of "the truth is not below this limit": small p shows that it is below.</summary>
    /// <param name="limit">In the unit of the estimate.</param>
    public double PBelow(double limit) => StudentDistribution.Above(-T(limit), DegreesOfFreedom);

    /// <summary>The same estimate with the larger of its own standard error and a propagated one, each with its degrees of freedom.</summary>
    /// <param name="standardError">Propagated standard uncertainty, on the scale of the estimate's own.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of the propagated one; infinite when taken as known.</param>
    public Estimate AtLeast(double standardError, double degreesOfFreedom = double.PositiveInfinity)
    {
        Probability.RequireDegreesOfFreedom(degreesOfFreedom);
        return standardError > StandardError
            ? this with { StandardError = standardError, DegreesOfFreedom = degreesOfFreedom, Method = $"{Method}, propagated uncertainty" }
            : this;
    }

    private double Shifted(double standardErrors)
        => Scale == Scale.Logarithmic ? Value * Math.Exp(standardErrors * StandardError) : Value + standardErrors * StandardError;
}

/// <summary>The scale on which an estimate scatters symmetrically.</summary>
public enum Scale
{
    /// <summary>The values themselves.</summary>
    Plain,

    /// <summary>Their natural logarithm: ratios, sizes, selectivities.</summary>
    Logarithmic,
}
