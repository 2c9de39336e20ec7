using Holdfast.Amounts;

namespace Holdfast.BatchSorption;

/// <summary>Whether all solute is found again: dissolved, rinsed off and extracted, over what was added (rule B9).</summary>
public static class MassBalance
{
    /// <summary>Lower end of the window, share of what was added. OECD Test Guideline 106, from memory.</summary>
    public const double Lowest = 0.90;

    /// <summary>Upper end of the window, share of what was added. OECD Test Guideline 106, from memory.</summary>
    public const double Highest = 1.10;

    /// <summary>Recovered share of what was added; no unit.</summary>
    /// <param name="added">Solute put in, mg, not 0.</param>
    /// <param name="dissolved">Solute found in the liquid, mg.</param>
    /// <param name="rinsed">Solute found in the rinses, mg.</param>
    /// <param name="extracted">Solute brought off the solid, mg.</param>
    public static T Recovery<T>(T added, T dissolved, T rinsed, T extracted) where T : struct, IReal<T>
        => (dissolved + rinsed + extracted) / added;

    /// <summary>Whether the balance closes: the 90 % interval of the recovery inside the window holds, wholly outside contradicts, across is not shown.</summary>
    /// <param name="recovery">Recovered share; no unit.</param>
    public static Standing Closes(Measured recovery)
    {
        var arm = Significance.OneSidedPoint(recovery) * recovery.U;
        double low = recovery.Value - arm, high = recovery.Value + arm;
        if (low >= Lowest && high <= Highest)
            return Standing.Holds;
        return high < Lowest || low > Highest ? Standing.Contradicted : Standing.NotShown;
    }
}
