namespace Holdfast.Isotherms;

/// <summary>The shape of an isotherm read off its points before any curve is fitted, in the classes of Giles (C, L, H, S) and one more.</summary>
/// <remarks>C. H. Giles and co-workers 1960 (classes from memory); the rule by the ratio q/C and its uncertainty is ours.</remarks>
public enum IsothermShape
{
    /// <summary>C: uptake in proportion to concentration. Try Henry; no capacity can be read.</summary>
    Straight,

    /// <summary>L: q/C falls. Try Langmuir, Freundlich, Sips, Toth, Redlich-Peterson.</summary>
    Bending,

    /// <summary>H: at two or more starting concentrations nothing was left to read. Only the capacity is knowable; lower the detection limit.</summary>
    HighAffinity,

    /// <summary>S: q/C rises first, then falls. Sips with n above 1, a ligand in solution, or precipitation.</summary>
    SShaped,

    /// <summary>q/C rises towards the end. Partition, BET or precipitation.</summary>
    UpwardEnd,
}

/// <summary>Reads the shape.</summary>
public static class IsothermShapes
{
    /// <summary>The shape by the ratio q/C: two ratios differ when their logarithms do by more than three combined uncertainties.</summary>
    /// <param name="concentration">Equilibrium concentrations above 0, rising.</param>
    /// <param name="uptake">Uptakes.</param>
    /// <param name="relativeUncertainty">Relative standard uncertainty of each q/C.</param>
    /// <param name="belowLimit">Number of starting concentrations whose Ce is below the limit of quantification.</param>
    /// <returns>The shape, or null with fewer than four usable points.</returns>
    public static IsothermShape? Of(
        ReadOnlySpan<double> concentration, ReadOnlySpan<double> uptake, ReadOnlySpan<double> relativeUncertainty, int belowLimit = 0)
    {
        if (concentration.Length != uptake.Length || concentration.Length != relativeUncertainty.Length)
            throw new ArgumentException("Concentrations, uptakes and uncertainties go in threes.", nameof(uptake));
        if (belowLimit >= 2)
            return IsothermShape.HighAffinity;
        var ratio = new List<(double Log, double U)>();
        for (var i = 0; i < concentration.Length; i++)
        {
            if (i > 0 && concentration[i] < concentration[i - 1])
                throw new ArgumentException("Concentrations rise.", nameof(concentration));
            if (concentration[i] > 0 && uptake[i] > 0)
                ratio.Add((Math.Log(uptake[i] / concentration[i]), relativeUncertainty[i]));
        }

        if (ratio.Count < 4)
            return null;

        // With n points there are many pairs: three combined uncertainties keep chance differences rare.
        static bool Above((double Log, double U) a, (double Log, double U) b) => a.Log - b.Log > 3 * Math.Sqrt(a.U * a.U + b.U * b.U);
        bool RisesTo(int j) => ratio.Take(j).Any(earlier => Above(ratio[j], earlier));
        bool FallsFrom(int j) => ratio.Skip(j + 1).Any(later => Above(ratio[j], later));
        var all = Enumerable.Range(0, ratio.Count);
        if (all.Any(j => RisesTo(j) && FallsFrom(j)))
            return IsothermShape.SShaped;
        if (all.Any(RisesTo))
            return IsothermShape.UpwardEnd;
        return all.Any(FallsFrom) ? IsothermShape.Bending : IsothermShape.Straight;
    }
}
