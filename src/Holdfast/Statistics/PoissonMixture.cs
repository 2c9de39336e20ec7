using MathNet.Numerics;

namespace Holdfast.Statistics;

/// <summary>A sum weighted by Poisson probabilities, as the noncentral distributions need.</summary>
internal static class PoissonMixture
{
    /// <summary>Sum over j of Poisson(j; mean) · term(j), from the heaviest j outward until the weights vanish.</summary>
    /// <param name="mean">Mean of the Poisson weights, 0 or more; no unit.</param>
    /// <param name="term">Term j, between 0 and 1.</param>
    public static double Sum(double mean, Func<int, double> term)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(mean);
        if (mean == 0)
            return term(0);
        var start = (int)mean;
        var heaviest = Math.Exp(start * Math.Log(mean) - mean - SpecialFunctions.GammaLn(start + 1));
        var sum = 0.0;
        for (double j = start, weight = heaviest; weight > 1e-18; j++, weight *= mean / j)
            sum += weight * term((int)j);
        for (double j = start - 1, weight = heaviest * start / mean; j >= 0 && weight > 1e-18; weight *= j / mean, j--)
            sum += weight * term((int)j);
        return sum;
    }
}
