namespace Holdfast.Fluorescence;

/// <summary>Metal ions whose solutions absorb visible light: their quenching must be separated from their absorption.</summary>
/// <remarks>Colours of the hydrated ions, common knowledge of the trade.</remarks>
public static class ColouredQuenchers
{
    private static readonly string[] Symbols = ["Cu", "Fe", "Cr", "Co", "Ni"];

    /// <summary>A finding when a coloured ion was read without its absorbance, else null.</summary>
    /// <param name="symbol">Symbol of the metal: "Ni".</param>
    /// <param name="hasAbsorbance">Whether the absorbance at excitation and emission is known.</param>
    public static Finding? WithoutAbsorbance(string symbol, bool hasAbsorbance)
        => !hasAbsorbance && Symbols.Contains(symbol, StringComparer.OrdinalIgnoreCase) ? FluorescenceFindings.ColouredWithoutAbsorbance(symbol) : null;
}
