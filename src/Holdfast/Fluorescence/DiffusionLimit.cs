using Holdfast.Amounts;

namespace Holdfast.Fluorescence;

/// <summary>
/// The bimolecular constant against what diffusion allows. Above the limit, collisions alone are excluded. Below it nothing is decided: an emitter
/// that lives for milliseconds has a small constant whatever quenches it.
/// </summary>
/// <remarks>kq = K/τ0. Limit 2·10¹⁰ L/(mol·s) in water, common practice; about 0.7·10¹⁰ by Smoluchowski for equal radii at 25 °C (from memory).</remarks>
public static class DiffusionLimit
{
    /// <summary>What diffusion in water allows at most, L/(mol·s).</summary>
    public const double InWater = 2e10;

    /// <summary>kq = K/τ0, L/(mol·s).</summary>
    /// <param name="constant">Quenching constant, L/mol.</param>
    /// <param name="lifetime">Lifetime without quencher, measured in this medium, s.</param>
    public static T Bimolecular<T>(T constant, T lifetime) where T : struct, IReal<T> => constant / lifetime;

    /// <summary>How "by collisions alone" stands: contradicted above the limit, otherwise not shown, never shown.</summary>
    /// <param name="bimolecular">kq, L/(mol·s).</param>
    public static Ruling CollisionsAlone(double bimolecular) => bimolecular > InWater ? Ruling.Contradicted : Ruling.NotShownYet;

    /// <summary>What the constant says, in words.</summary>
    /// <param name="bimolecular">kq, L/(mol·s).</param>
    public static Finding Says(double bimolecular)
        => CollisionsAlone(bimolecular) == Ruling.Contradicted
            ? FluorescenceFindings.FasterThanDiffusion(bimolecular) : FluorescenceFindings.DiffusionDoesNotDecide(bimolecular);
}
