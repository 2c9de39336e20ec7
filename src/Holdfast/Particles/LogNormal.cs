namespace Holdfast.Particles;

/// <summary>Averages of a log-normal distribution from its geometric mean and geometric standard deviation.</summary>
/// <remarks>T. Hatch and S. P. Choate, J. Franklin Inst. 207 (1929) 369 (from memory).</remarks>
/// <param name="GeometricMean">Median by number, in the unit of the sizes.</param>
/// <param name="Gsd">Geometric standard deviation, above 1; no unit.</param>
public sealed record LogNormal(double GeometricMean, double Gsd)
{
    /// <summary>Mean by number.</summary>
    public double Mean => At(0.5);

    /// <summary>Σd³/Σd².</summary>
    public double Sauter => At(2.5);

    /// <summary>Σd⁴/Σd³.</summary>
    public double VolumeMean => At(3.5);

    /// <summary>Median by volume.</summary>
    public double VolumeMedian => At(3);

    /// <summary>Density by number, 1 per unit of the sizes.</summary>
    /// <param name="size">Above 0, in the unit of the sizes.</param>
    public double Density(double size)
    {
        var s = Math.Log(Gsd);
        var z = Math.Log(size / GeometricMean) / s;
        return Statistics.NormalDistribution.Density(z) / (s * size);
    }

    private double At(double power) => GeometricMean * Math.Exp(power * Math.Log(Gsd) * Math.Log(Gsd));
}
