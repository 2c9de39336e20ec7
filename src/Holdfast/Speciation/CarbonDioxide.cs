namespace Holdfast.Speciation;

/// <summary>Where a water's carbonate comes from.</summary>
/// <param name="LgPressure">lg of the pressure of carbon dioxide that the water stands open to, atm; null when it is not open.</param>
/// <param name="Total">Total carbonate in a closed vessel, mol/L; null when it is open or has none.</param>
public sealed record CarbonDioxide(double? LgPressure, double? Total)
{
    /// <summary>No carbonate at all.</summary>
    public static CarbonDioxide None { get; } = new(null, null);

    /// <summary>Open to the air.</summary>
    public static CarbonDioxide Air { get; } = new(CarbonateConstants.LgAir, null);

    /// <summary>A closed vessel.</summary>
    /// <param name="total">Total carbonate, mol/L, above 0.</param>
    public static CarbonDioxide Closed(double total)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(total);
        return new(null, total);
    }
}
