namespace Holdfast.Statistics;

/// <summary>Effective degrees of freedom of a sum of independently estimated variances (F. E. Satterthwaite, Biometrics Bull. 2 (1946) 110–114).</summary>
internal static class WelchSatterthwaite
{
    /// <summary>ν = (Σ v)² / Σ v²/ν; a part without variance does not count.</summary>
    /// <param name="parts">Variances, in one unit, with their degrees of freedom.</param>
    public static double Of(params ReadOnlySpan<(double Variance, double DegreesOfFreedom)> parts)
    {
        double total = 0, weighed = 0;
        foreach (var (variance, dof) in parts)
        {
            total += variance;
            if (variance > 0 && !double.IsPositiveInfinity(dof))
                weighed += variance * variance / dof;
        }

        return weighed == 0 ? double.PositiveInfinity : total * total / weighed;
    }
}
