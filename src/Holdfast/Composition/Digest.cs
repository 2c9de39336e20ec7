using Holdfast.Amounts;

namespace Holdfast.Composition;

/// <summary>Loading of a powder from a solution it was dissolved into: (c − c_blank)·V·f/m.</summary>
/// <remarks>
/// What did not dissolve makes it a lower bound. Hydrofluoric and perchloric acid are for licensed practice only; the supplier's safety data sheet and local
/// rules decide.
/// </remarks>
public static class Digest
{
    /// <summary>Loading, mg/g.</summary>
    /// <param name="reading">Concentration read, mg/L.</param>
    /// <param name="blank">Concentration in the digestion blank, read at the same dilution, mg/L.</param>
    /// <param name="millilitres">Volume of the digest, mL.</param>
    /// <param name="dilution">How many times it was diluted before reading; no unit.</param>
    /// <param name="milligrams">Powder dissolved, mg.</param>
    public static T Loading<T>(T reading, T blank, T millilitres, T dilution, T milligrams) where T : struct, IReal<T>
        => (reading - blank) * millilitres * dilution / milligrams;

    /// <summary>Atoms of an element in a gram of powder, mmol/g.</summary>
    /// <param name="element">The element.</param>
    /// <param name="loading">Loading, mg/g.</param>
    /// <exception cref="ArgumentException">The element has no standard atomic weight.</exception>
    public static Measured Moles(Element element, Measured loading)
    {
        ArgumentNullException.ThrowIfNull(element);
        return loading / (element.Weight ?? throw new ArgumentException($"{element.Name} has no standard atomic weight.", nameof(element)));
    }
}
