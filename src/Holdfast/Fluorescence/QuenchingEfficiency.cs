using Holdfast.Amounts;

namespace Holdfast.Fluorescence;

/// <summary>Share of the signal that the quencher takes. A definition (any text on quenching); nothing is fitted.</summary>
public static class QuenchingEfficiency
{
    /// <summary>E = 1 − F/F0, no unit. With measured numbers its uncertainty holds that of F0, which all levels share.</summary>
    /// <param name="signal">F, in any unit.</param>
    /// <param name="withoutQuencher">F0, in the same unit.</param>
    public static T Of<T>(T signal, T withoutQuencher) where T : struct, IReal<T> => 1 - signal / withoutQuencher;
}
