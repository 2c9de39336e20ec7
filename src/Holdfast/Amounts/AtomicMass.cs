namespace Holdfast.Amounts;

/// <summary>Atomic masses of the elements that are taken from water, to five figures.</summary>
/// <remarks>Conventional values of the IUPAC Commission on Isotopic Abundances and Atomic Weights, 2021 (from memory).</remarks>
public static class AtomicMass
{
    /// <summary>Mass of one mole of atoms, g/mol, or null for an element that is not listed.</summary>
    /// <param name="symbol">Symbol of the element: "Ni"; null gives null.</param>
    public static double? Of(string? symbol) => symbol switch
    {
        "Ag" => 107.87,
        "Al" => 26.982,
        "As" => 74.922,
        "Ba" => 137.33,
        "Ca" => 40.078,
        "Cd" => 112.41,
        "Co" => 58.933,
        "Cr" => 51.996,
        "Cu" => 63.546,
        "Eu" => 151.96,
        "Fe" => 55.845,
        "Hg" => 200.59,
        "K" => 39.098,
        "La" => 138.91,
        "Mg" => 24.305,
        "Mn" => 54.938,
        "Na" => 22.990,
        "Ni" => 58.693,
        "P" => 30.974,
        "Pb" => 207.2,
        "Sr" => 87.62,
        "U" => 238.03,
        "Zn" => 65.38,
        _ => null,
    };
}
