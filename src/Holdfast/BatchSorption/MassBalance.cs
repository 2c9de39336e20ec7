using Holdfast.Amounts;

namespace Holdfast.BatchSorption;

/// <summary>Whether all solute is found again: dissolved, rinsed off and extracted, over what was added (rule B9).</summary>
public static class MassBalance
{
    /// <summary>Recovered share of what was added; no unit.</summary>
    /// <param name="added">Solute put in, mg, not 0.</param>
    /// <param name="dissolved">Solute found in the liquid, mg.</param>
    /// <param name="rinsed">Solute found in the rinses, mg.</param>
    /// <param name="extracted">Solute brought off the solid, mg.</param>
    public static T Recovery<T>(T added, T dissolved, T rinsed, T extracted) where T : struct, IReal<T>
        => (dissolved + rinsed + extracted) / added;
}
