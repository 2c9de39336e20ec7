namespace Holdfast.Kinetics;

/// <summary>Points of a kinetic series that carry its rate: those between the first uptake and the plateau.</summary>
public static class RisingPoints
{
    /// <summary>Share of the uptake at equilibrium above which a point counts; common practice; no unit.</summary>
    public const double From = 0.1;

    /// <summary>Share of the uptake at equilibrium below which a point counts; common practice; no unit.</summary>
    public const double To = 0.8;

    /// <summary>Uptakes between 10 and 80 % of that at equilibrium.</summary>
    /// <param name="uptake">Uptakes.</param>
    /// <param name="qe">Uptake at equilibrium, same unit, above 0.</param>
    public static int Count(ReadOnlySpan<double> uptake, double qe)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(qe);
        var count = 0;
        foreach (var q in uptake)
            count += q > From * qe && q < To * qe ? 1 : 0;
        return count;
    }
}
