using MathNet.Numerics;

namespace Holdfast.Statistics;

/// <summary>The standard normal distribution, with tails that keep their digits far out (erfc, W. J. Cody's rational approximations).</summary>
public static class NormalDistribution
{
    /// <summary>Density at z.</summary>
    /// <param name="z">Standard deviations from the mean; no unit.</param>
    public static double Density(double z) => Math.Exp(-0.5 * z * z) / MathNet.Numerics.Constants.Sqrt2Pi;

    /// <summary>Probability of a value below z.</summary>
    /// <param name="z">Standard deviations from the mean; no unit.</param>
    public static double Below(double z) => 0.5 * SpecialFunctions.Erfc(-z / MathNet.Numerics.Constants.Sqrt2);

    /// <summary>Probability of a value above z.</summary>
    /// <param name="z">Standard deviations from the mean; no unit.</param>
    public static double Above(double z) => 0.5 * SpecialFunctions.Erfc(z / MathNet.Numerics.Constants.Sqrt2);

    /// <summary>Probability of a value further from 0 than z, on either side.</summary>
    /// <param name="z">Standard deviations from the mean; no unit.</param>
    public static double Beyond(double z) => SpecialFunctions.Erfc(Math.Abs(z) / MathNet.Numerics.Constants.Sqrt2);

    /// <summary>The value that a given probability lies below.</summary>
    /// <param name="probability">Between 0 and 1; no unit.</param>
    public static double Quantile(double probability)
    {
        Probability.Require(probability);
        return -MathNet.Numerics.Constants.Sqrt2 * SpecialFunctions.ErfcInv(2 * probability);
    }
}
