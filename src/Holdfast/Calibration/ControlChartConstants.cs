using Holdfast.Statistics;
using MathNet.Numerics;

namespace Holdfast.Calibration;

/// <summary>How ranges and standard deviations of small normal samples relate to the true standard deviation.</summary>
public static class ControlChartConstants
{
    /// <summary>Mean of s/σ; no unit.</summary>
    /// <remarks>c₄ = √(2/(n − 1)) Γ(n/2)/Γ((n − 1)/2).</remarks>
    /// <param name="n">Values in a sample, 2 or more.</param>
    public static double C4(int n)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(n, 2);
        return Math.Sqrt(2.0 / (n - 1)) * Math.Exp(SpecialFunctions.GammaLn(n / 2.0) - SpecialFunctions.GammaLn((n - 1) / 2.0));
    }

    /// <summary>Mean range over σ; no unit.</summary>
    /// <remarks>d₂ = ∫ (1 − Φⁿ − (1 − Φ)ⁿ) dz (L. H. C. Tippett, Biometrika 17 (1925) 364–387; from memory).</remarks>
    /// <param name="n">Values in a sample, 2 or more.</param>
    public static double D2(int n)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(n, 2);
        return GaussLegendre.Integrate(z => 1 - Math.Pow(NormalDistribution.Below(z), n) - Math.Pow(NormalDistribution.Above(z), n), -9, 9, 12);
    }
}
