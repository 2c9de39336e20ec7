using Holdfast.Statistics;

namespace Holdfast.Amounts;

/// <summary>An uncertainty widened to cover a stated share of what the value may reasonably be (JCGM 100, clause 6 and annex G).</summary>
/// <param name="U">Half-width of the interval, in the unit of the value.</param>
/// <param name="K">Coverage factor: U over the standard uncertainty.</param>
/// <param name="Confidence">Coverage probability; no unit.</param>
/// <param name="DegreesOfFreedom">Effective degrees of freedom, rounded down; infinite when every source is taken as known.</param>
public sealed record ExpandedUncertainty(double U, double K, double Confidence, double DegreesOfFreedom)
{
    /// <summary>Above this many degrees of freedom the normal factor serves, and 2 serves for 95 %.</summary>
    public const double Many = 30;

    /// <summary>Widens the standard uncertainty of a result.</summary>
    /// <param name="result">The result.</param>
    /// <param name="confidence">Coverage probability between 0 and 1; no unit.</param>
    public static ExpandedUncertainty Of(Measured result, double confidence = 0.95)
    {
        var dof = Math.Floor(result.DegreesOfFreedom);
        dof = dof < 1 ? 1 : dof;
        var k = dof <= Many ? StudentDistribution.TwoSided(confidence, dof)
            : confidence == 0.95 ? 2
            : StudentDistribution.TwoSided(confidence, double.PositiveInfinity);
        return new(k * result.U, k, confidence, dof);
    }
}
