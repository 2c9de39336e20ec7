using Holdfast.Amounts;

namespace Holdfast.Regeneration;

/// <summary>
/// What one cycle of sorption and elution tells. Each formula is read by every number type. Uptake of a vessel is
/// <see cref="BatchSorption.BatchQuantities.Uptake"/> with the mass present in that cycle.
/// </summary>
/// <remarks>Mass balance of the solute over the cycles; no outside source is needed.</remarks>
public static class CycleQuantities
{
    /// <summary>Solute sorbed in a cycle, (C0 − Ce)·V, mg.</summary>
    /// <param name="c0">Start concentration of the cycle, mg/L.</param>
    /// <param name="c">Concentration at its end, mg/L.</param>
    /// <param name="volume">Volume of liquid, L.</param>
    public static T Sorbed<T>(T c0, T c, T volume) where T : struct, IReal<T> => (c0 - c) * volume;

    /// <summary>Solute taken off by the eluent, C·V, mg.</summary>
    /// <param name="c">Concentration of the eluate, mg/L.</param>
    /// <param name="volume">Volume of eluent, L.</param>
    public static T Eluted<T>(T c, T volume) where T : struct, IReal<T> => c * volume;

    /// <summary>Solute left on the solid after a cycle, L = L(before) + sorbed − eluted, mg.</summary>
    /// <param name="leftBefore">Left after the cycle before, mg; 0 before the first.</param>
    /// <param name="sorbed">Sorbed in this cycle, mg.</param>
    /// <param name="eluted">Eluted in this cycle, mg.</param>
    public static T LeftOn<T>(T leftBefore, T sorbed, T eluted) where T : struct, IReal<T> => leftBefore + sorbed - eluted;

    /// <summary>Share of what was on the solid that the eluent took off; no unit.</summary>
    /// <param name="leftBefore">Left after the cycle before, mg; 0 before the first.</param>
    /// <param name="sorbed">Sorbed in this cycle, mg; not 0 together with the former.</param>
    /// <param name="eluted">Eluted in this cycle, mg.</param>
    public static T DesorptionEfficiency<T>(T leftBefore, T sorbed, T eluted) where T : struct, IReal<T> => eluted / (leftBefore + sorbed);

    /// <summary>Uptake per mass present, from an uptake that was divided by the first mass, mg/g.</summary>
    /// <param name="uptake">Uptake on the first mass, mg/g.</param>
    /// <param name="firstMass">Mass weighed in at first.</param>
    /// <param name="massPresent">Mass present in this cycle, same unit, not 0.</param>
    public static T OnMassPresent<T>(T uptake, T firstMass, T massPresent) where T : struct, IReal<T> => uptake * firstMass / massPresent;

    /// <summary>Share of a fall in uptake that is lost sorbent and not lost capacity: 1 − slope on the mass present / slope on the first mass.</summary>
    /// <param name="slopeOnFirstMass">Change per cycle on the first mass, mg/g, not 0.</param>
    /// <param name="slopeOnMassPresent">Change per cycle on the mass present, mg/g.</param>
    public static T ShareByLostSorbent<T>(T slopeOnFirstMass, T slopeOnMassPresent) where T : struct, IReal<T>
        => 1 - slopeOnMassPresent / slopeOnFirstMass;
}
