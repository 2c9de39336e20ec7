using Holdfast.Amounts;

namespace Holdfast.Fluorescence;

/// <summary>A sorbent that senses also removes: what is free in the liquid is less than what was added, and the axis of the curve must be the free one.</summary>
public static class QuencherDepletion
{
    /// <summary>Share of the quencher above which added and free must be told apart (common practice); no unit.</summary>
    public const double Matters = 0.10;

    /// <summary>Share of the quencher taken up, D·q/Q (mass balance); no unit.</summary>
    /// <param name="dose">Sorbent per volume, g/L.</param>
    /// <param name="uptake">Uptake at this level, µmol/g.</param>
    /// <param name="added">Quencher added, µmol/L, above 0.</param>
    public static T Share<T>(T dose, T uptake, T added) where T : struct, IReal<T> => dose * uptake / added;

    /// <summary>A finding when the share is above one tenth, else null.</summary>
    /// <param name="level">Quencher added, in <paramref name="unit"/>.</param>
    /// <param name="share">Share taken up; no unit.</param>
    /// <param name="unit">Unit of the level.</param>
    public static Finding? Says(double level, double share, string unit)
        => share > Matters ? FluorescenceFindings.QuencherTakenUp(level, share, unit) : null;
}
