using Holdfast.Amounts;

namespace Holdfast.BatchSorption;

/// <summary>
/// What one vessel tells: removal, uptake, distribution coefficient. Each formula is read by every number type; read with
/// <see cref="Measured"/>, the calibration line or stock that C0 and Ce share is carried as their correlation.
/// </summary>
/// <remarks>
/// Mass balance of the dissolved species between the start and the separation; no outside source is needed. Values stay signed:
/// a vessel that ends above its start keeps its negative uptake.
/// </remarks>
public static class BatchQuantities
{
    /// <summary>Removed share of the start concentration, R/100 = (C0 − C)/C0.</summary>
    /// <param name="c0">Start concentration, mg/L, not 0.</param>
    /// <param name="c">Concentration at the end, mg/L.</param>
    public static T RemovedShare<T>(T c0, T c) where T : struct, IReal<T> => (c0 - c) / c0;

    /// <summary>Removal in percent, R = 100·(C0 − C)/C0.</summary>
    /// <param name="c0">Start concentration, mg/L, not 0.</param>
    /// <param name="c">Concentration at the end, mg/L.</param>
    public static T Removal<T>(T c0, T c) where T : struct, IReal<T> => 100 * RemovedShare(c0, c);

    /// <summary>Uptake, q = (C0 − C)·V/m, mg/g.</summary>
    /// <param name="c0">Start concentration, mg/L.</param>
    /// <param name="c">Concentration at the end, mg/L.</param>
    /// <param name="volume">Volume of liquid, L.</param>
    /// <param name="mass">Mass of dry sorbent, g.</param>
    public static T Uptake<T>(T c0, T c, T volume, T mass) where T : struct, IReal<T> => (c0 - c) * volume / mass;

    /// <summary>Distribution coefficient, Kd = q/C, L/g. It grows without bound as C nears 0: look at its uncertainty.</summary>
    /// <param name="c0">Start concentration, mg/L.</param>
    /// <param name="c">Concentration at the end, mg/L, not 0.</param>
    /// <param name="volume">Volume of liquid, L.</param>
    /// <param name="mass">Mass of dry sorbent, g.</param>
    public static T DistributionCoefficient<T>(T c0, T c, T volume, T mass) where T : struct, IReal<T> => (c0 - c) / c * (volume / mass);

    /// <summary>Uptake in mmol/g.</summary>
    /// <param name="uptake">Uptake, mg/g.</param>
    /// <param name="molarMass">Molar mass of the species that the milligrams count, g/mol.</param>
    public static T MolarUptake<T>(T uptake, T molarMass) where T : struct, IReal<T> => uptake / molarMass;

    /// <summary>Dose s = m/V, g/L.</summary>
    /// <param name="mass">Mass of dry sorbent, g.</param>
    /// <param name="volume">Volume of liquid, L.</param>
    public static T Dose<T>(T mass, T volume) where T : struct, IReal<T> => mass / volume;

    /// <summary>Dry mass, m·(1 − w), g.</summary>
    /// <param name="mass">Mass as weighed, g.</param>
    /// <param name="moisture">Water in the powder as a share of the mass as weighed, 0 to 1.</param>
    public static T DryMass<T>(T mass, T moisture) where T : struct, IReal<T> => mass * (1 - moisture);

    /// <summary>
    /// Least removal, in percent, when the end concentration is below a limit: 100·(1 − limit/C0). It is printed as "more than".
    /// </summary>
    /// <param name="c0">Start concentration, mg/L, not 0.</param>
    /// <param name="limit">Detection limit in the vessel's liquid, dilution included, mg/L.</param>
    public static T LeastRemoval<T>(T c0, T limit) where T : struct, IReal<T> => Removal(c0, limit);
}
