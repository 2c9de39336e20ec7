using Holdfast.Amounts;

namespace Holdfast.Regeneration;

/// <summary>
/// Liquid that pores, filter and tube hold back from one step to the next. It dilutes the next start solution, which looks like removal, and
/// brings eluent with it, which moves the pH. Rinse until neutral and measure the pH at the start of each cycle.
/// </summary>
/// <remarks>Mixing of two volumes; complete dissociation of a strong acid, activity 1.</remarks>
public static class HeldBackLiquid
{
    /// <summary>Share of the next liquid that is held-back liquid, v/(V + v): the removal that dilution alone would show; no unit.</summary>
    /// <param name="volume">Volume of fresh liquid, any unit.</param>
    /// <param name="heldBack">Volume held back, same unit.</param>
    public static T ApparentRemovedShare<T>(T volume, T heldBack) where T : struct, IReal<T> => heldBack / (volume + heldBack);

    /// <summary>Concentration of the eluent's acid in the next liquid, mol/L.</summary>
    /// <param name="acid">Acid in the eluent, mol/L.</param>
    /// <param name="volume">Volume of fresh liquid, any unit.</param>
    /// <param name="heldBack">Volume held back, same unit.</param>
    public static T AddedAcid<T>(T acid, T volume, T heldBack) where T : struct, IReal<T> => acid * ApparentRemovedShare(volume, heldBack);

    /// <summary>pH that the added acid gives to water without a buffer that was neutral, −log10[H].</summary>
    /// <param name="addedAcid">Added acid, mol/L, well above 1e-7.</param>
    public static T PhIfUnbuffered<T>(T addedAcid) where T : struct, IReal<T> => -T.Log(addedAcid) / Math.Log(10);

    /// <summary>Whether held-back liquid may be left out: holds while its share stays within the uncertainty of the removal (rule R5).</summary>
    /// <param name="apparentRemovedShare">Share of held-back liquid; no unit.</param>
    /// <param name="removedShareU">Standard uncertainty of the removed share; no unit.</param>
    public static Ruling MayBeLeftOut(double apparentRemovedShare, double removedShareU)
        => apparentRemovedShare > removedShareU ? Ruling.Contradicted : Ruling.Holds;
}
