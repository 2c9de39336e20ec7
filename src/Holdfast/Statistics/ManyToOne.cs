namespace Holdfast.Statistics;

/// <summary>Largest of several t that share one control and one standard deviation: it judges k groups against a control (Dunnett).</summary>
/// <remarks>
/// C. W. Dunnett, J. Am. Stat. Assoc. 50 (1955) 1096–1121 (from memory): with λ_i = √(n_i/(n_i + n_0)) the statistics are independent
/// once the control's error and s are fixed, so two one-dimensional averages give the probability.
/// </remarks>
public static class ManyToOne
{
    /// <summary>Probability that the largest |t| of all comparisons lies above t.</summary>
    /// <param name="t">Student's t of one comparison; no unit.</param>
    /// <param name="control">Replicates of the control.</param>
    /// <param name="treated">Replicates of each compared group.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of the common standard deviation; may be infinite.</param>
    public static double Above(double t, int control, IReadOnlyList<int> treated, double degreesOfFreedom)
    {
        ArgumentNullException.ThrowIfNull(treated);
        ArgumentOutOfRangeException.ThrowIfLessThan(control, 1);
        var loads = treated.Select(n => Math.Sqrt((double)n / (n + control))).ToArray();
        var limit = Math.Abs(t);
        return ScaledChi.Average(degreesOfFreedom, s => GaussLegendre.Integrate(z => NormalDistribution.Density(z) * Outside(loads, z, limit * s), -8.5, 8.5, 10));
    }

    /// <summary>The |t| that no comparison exceeds with the given probability when nothing differs.</summary>
    /// <param name="probability">Between 0 and 1, for example 0.95; no unit.</param>
    /// <param name="control">Replicates of the control.</param>
    /// <param name="treated">Replicates of each compared group.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of the common standard deviation; may be infinite.</param>
    public static double Quantile(double probability, int control, IReadOnlyList<int> treated, double degreesOfFreedom)
    {
        Probability.Require(probability);
        return Root.Of(t => Above(t, control, treated, degreesOfFreedom) - (1 - probability), 1e-3, 8);
    }

    /// <summary>1 − ∏(1 − p_i), summed so that small probabilities keep their digits.</summary>
    private static double Outside(double[] loads, double z, double limit)
    {
        double outside = 0, inside = 1;
        foreach (var load in loads)
        {
            var own = Math.Sqrt(1 - load * load);
            var p = NormalDistribution.Above((limit - load * z) / own) + NormalDistribution.Below((-limit - load * z) / own);
            outside += inside * p;
            inside *= 1 - p;
        }

        return outside;
    }
}
