namespace Holdfast.Planning;

/// <summary>
/// The two levels that tell most about two parameters (D-optimal), half of the vessels at each, in closed form, for readings of equal uncertainty.
/// They rest on the parameters supposed and cannot show misfit: spend the other half of the vessels between them.
/// </summary>
/// <remarks>
/// Langmuir's and the second-order curve's are those of Michaelis and Menten's; the others were derived here. All are held against a numerical
/// search (reference/design/d-optimal-locally.csv).
/// </remarks>
public static class OptimalLevels
{
    /// <summary>Langmuir: X/(2 + K·X) and X.</summary>
    /// <param name="k">Affinity supposed, one over concentration, above 0.</param>
    /// <param name="lowest">Lowest equilibrium concentration that can be read, 0 or above.</param>
    /// <param name="highest">Highest that can be reached, above the lowest.</param>
    public static (double First, double Second) Langmuir(double k, double lowest, double highest)
    {
        Check(lowest, highest);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(k);
        return (Math.Max(lowest, highest / (2 + k * highest)), highest);
    }

    /// <summary>Pseudo-second-order: T/(2 + k2·qe·T) and T.</summary>
    /// <param name="qe">Uptake at equilibrium supposed, above 0.</param>
    /// <param name="k2">Rate constant supposed, one over uptake and time, above 0.</param>
    /// <param name="earliest">Earliest time that can be sampled, 0 or above.</param>
    /// <param name="latest">Latest time, above the earliest.</param>
    public static (double First, double Second) PseudoSecondOrder(double qe, double k2, double earliest, double latest)
        => Langmuir(k2 * qe, earliest, latest);

    /// <summary>Pseudo-first-order: 1/k − T/(exp(k·T) − 1) and T.</summary>
    /// <param name="k1">Rate constant supposed, one over time, above 0.</param>
    /// <param name="earliest">Earliest time that can be sampled, 0 or above.</param>
    /// <param name="latest">Latest time, above the earliest.</param>
    public static (double First, double Second) PseudoFirstOrder(double k1, double earliest, double latest)
    {
        Check(earliest, latest);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(k1);
        var u = k1 * latest;

        // 1/u − 1/(e^u − 1) by its series where the difference would cancel.
        var share = u < 1e-3 ? 0.5 - u / 12 : 1 / u - 1 / (Math.Exp(u) - 1);
        return (Math.Max(earliest, share * latest), latest);
    }

    /// <summary>Freundlich: X·exp(−n) and X, or both ends when n is above ln(X/L).</summary>
    /// <param name="n">Exponent supposed, above 0.</param>
    /// <param name="lowest">Lowest equilibrium concentration that can be read, above 0.</param>
    /// <param name="highest">Highest that can be reached, above the lowest.</param>
    public static (double First, double Second) Freundlich(double n, double lowest, double highest)
    {
        Check(lowest, highest);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(n);
        return (Math.Max(lowest, highest * Math.Exp(-n)), highest);
    }

    /// <summary>Elovich: ((1 + u)·ln(1 + u)/u − 1)/(α·β) with u = α·β·T, and T.</summary>
    /// <param name="rate">α·β supposed, one over time, above 0.</param>
    /// <param name="earliest">Earliest time that can be sampled, 0 or above.</param>
    /// <param name="latest">Latest time, above the earliest.</param>
    public static (double First, double Second) Elovich(double rate, double earliest, double latest)
    {
        Check(earliest, latest);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(rate);
        var u = rate * latest;
        var first = u < 1e-4 ? latest * (0.5 - u / 6) : ((1 + u) * Math.Log(1 + u) / u - 1) / rate;
        return (Math.Max(earliest, first), latest);
    }

    /// <summary>Stern-Volmer read as F = F0/(1 + K·Q): no quencher and 1/K, where half is quenched, or the upper end before it.</summary>
    /// <param name="k">Quenching constant supposed, one over concentration, above 0.</param>
    /// <param name="highest">Highest concentration that can be reached, above 0.</param>
    public static (double First, double Second) SternVolmer(double k, double highest)
    {
        Check(0, highest);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(k);
        return (0, Math.Min(1 / k, highest));
    }

    /// <summary>Both ends: a straight line, and Langmuir, first and second order when uncertainty is in proportion to the reading.</summary>
    /// <param name="lowest">Lower end.</param>
    /// <param name="highest">Upper end, above the lower.</param>
    public static (double First, double Second) BothEnds(double lowest, double highest)
    {
        if (!(highest > lowest))
            throw new ArgumentOutOfRangeException(nameof(highest), highest, "The upper end is above the lower.");
        return (lowest, highest);
    }

    /// <summary>Equilibrium concentration at which a Langmuir isotherm reaches a coverage: θ/(K·(1 − θ)); 0.8 to 0.9 determine qm.</summary>
    /// <param name="k">Affinity supposed, one over concentration, above 0.</param>
    /// <param name="coverage">θ, above 0 and below 1.</param>
    public static double ForCoverage(double k, double coverage)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(k);
        if (!(coverage > 0 && coverage < 1))
            throw new ArgumentOutOfRangeException(nameof(coverage), coverage, "Coverage lies between 0 and 1.");
        return coverage / (k * (1 - coverage));
    }

    private static void Check(double lowest, double highest)
    {
        if (!(lowest >= 0))
            throw new ArgumentOutOfRangeException(nameof(lowest), lowest, "The lower end is 0 or above.");
        if (!(highest > lowest))
            throw new ArgumentOutOfRangeException(nameof(highest), highest, "The upper end is above the lower.");
    }
}
