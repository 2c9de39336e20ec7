namespace Holdfast.Particles;

/// <summary>Numbers of the outline of one particle.</summary>
public static class ParticleShape
{
    /// <summary>4πA/P²: 1 for a disk, π/4 for a square; a perimeter of pixels is too long, so calibrate on disks. No unit.</summary>
    /// <param name="area">Area, above 0.</param>
    /// <param name="perimeter">Perimeter, above 0, in the same length unit.</param>
    public static double Circularity(double area, double perimeter)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(area);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(perimeter);
        return 4 * Math.PI * area / (perimeter * perimeter);
    }

    /// <summary>Diameter of the disk of the same area, 2√(A/π), in the unit whose square the area has.</summary>
    /// <param name="area">Area, 0 or above.</param>
    public static double EquivalentDiameter(double area)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(area);
        return 2 * Math.Sqrt(area / Math.PI);
    }

    /// <summary>Longest over shortest caliper width, 1 or more; no unit.</summary>
    /// <param name="longest">Above 0.</param>
    /// <param name="shortest">Above 0, same unit, not longer.</param>
    public static double AspectRatio(double longest, double shortest)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(shortest);
        ArgumentOutOfRangeException.ThrowIfLessThan(longest, shortest);
        return longest / shortest;
    }
}
