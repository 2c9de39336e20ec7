using Holdfast.Amounts;

namespace Holdfast.Composition;

/// <summary>Loss on heating: how much water, how many linkers.</summary>
public static class MassLoss
{
    private const double CoverageFactor = 2;

    /// <summary>Waters in one formula, n = w·M/(M(H₂O)·(1 − w)), w the fraction lost and M the molar mass of what stays.</summary>
    /// <param name="lossPercent">Loss, percent of the mass before heating.</param>
    /// <param name="dry">Formula of what stays.</param>
    public static Measured Waters(Measured lossPercent, Formula dry)
    {
        ArgumentNullException.ThrowIfNull(dry);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(lossPercent.Value, 100, nameof(lossPercent));
        var fraction = lossPercent / 100;
        return fraction * dry.Mass / (Formula.Parse("H2O").Mass * (1 - fraction));
    }

    /// <summary>Hydrates that fit a number of waters within twice its uncertainty, in halves; more than one means that the loss does not tell.</summary>
    /// <param name="waters">Waters in one formula.</param>
    public static IReadOnlyList<double> Hydrates(Measured waters)
    {
        var reach = CoverageFactor * waters.U;
        int first = (int)Math.Ceiling(2 * (waters.Value - reach) - 1e-9), last = (int)Math.Floor(2 * (waters.Value + reach) + 1e-9);
        return [.. Enumerable.Range(Math.Max(0, first), Math.Max(0, last - Math.Max(0, first) + 1)).Select(h => h / 2.0)];
    }

    /// <summary>Linkers of a framework from its plateau before it burns, the residue being 100 %: each linker carries the same share.</summary>
    /// <param name="plateau">Mass of the emptied framework, percent of the oxide that stays.</param>
    /// <param name="framework">Formula of the ideal emptied framework.</param>
    /// <param name="residue">Formula of the oxide that stays of it.</param>
    /// <param name="linkers">Linkers in the ideal formula.</param>
    public static Measured Linkers(Measured plateau, Formula framework, Formula residue, int linkers)
    {
        ArgumentNullException.ThrowIfNull(framework);
        ArgumentNullException.ThrowIfNull(residue);
        var ideal = 100 * framework.Mass / residue.Mass;
        return (plateau - 100) / ((ideal - 100) / linkers);
    }
}
