namespace Holdfast.Statistics;

/// <summary>How far a true standard deviation may lie from one found with few degrees of freedom.</summary>
/// <remarks>√(ν/χ²) (any text on normal samples); with ν = 2 the 95 % range is 0.52 to 6.28.</remarks>
public static class StandardDeviationFactor
{
    /// <summary>The factor that the true sd stays below with the stated one-sided confidence.</summary>
    /// <param name="confidence">Between 0 and 1; 0.025 and 0.975 make a two-sided 95 % interval; no unit.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of the found sd.</param>
    public static double At(double confidence, double degreesOfFreedom)
        => Math.Sqrt(degreesOfFreedom / ChiSquareDistribution.Quantile(1 - confidence, degreesOfFreedom));
}
