namespace Holdfast.Kinetics;

/// <summary>
/// What a kinetic series' numbers allow to be said. Each rule is one comparison; thresholds are common practice. Two readings are not rules here
/// because no number can carry them: second order from the R² of t/q on t (time stands on both axes) and a mechanism from a kinetic curve.
/// </summary>
public static class KineticEvidence
{
    /// <summary>How second order stands that rests on the R² of t/q on t, whatever it is.</summary>
    public const Standing SecondOrderFromItsLine = Standing.NotShown;

    /// <summary>How chemisorption, film or pore control stand that rest on a kinetic curve alone, whatever its fit.</summary>
    public const Standing MechanismFromCurve = Standing.NotShown;

    /// <summary>Points that carry the rate: uptake between 10 and 80 % of that at equilibrium.</summary>
    /// <param name="uptake">Uptakes.</param>
    /// <param name="qe">Uptake at equilibrium, same unit, above 0.</param>
    public static int PointsOnTheRise(ReadOnlySpan<double> uptake, double qe)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(qe);
        var count = 0;
        foreach (var q in uptake)
            count += q > 0.1 * qe && q < 0.8 * qe ? 1 : 0;
        return count;
    }

    /// <summary>Whether a rate constant is known: three points on the rise.</summary>
    /// <param name="pointsOnTheRise">From <see cref="PointsOnTheRise"/>.</param>
    public static Standing RateConstant(int pointsOnTheRise) => pointsOnTheRise >= 3 ? Standing.Holds : Standing.NotShown;

    /// <summary>Whether qe was measured and not extrapolated: every curve within 2 AICc units of the best reaches 95 % of its qe, and none lacks a plateau.</summary>
    /// <param name="smallestShare">Smallest q(last)/qe of those curves.</param>
    /// <param name="elovichAmongThem">Whether Elovich, which never levels off, is one of them.</param>
    public static Standing PlateauMeasured(double smallestShare, bool elovichAmongThem)
        => smallestShare >= 0.95 && !elovichAmongThem ? Standing.Holds : Standing.NotShown;

    /// <summary>Whether one curve may be named rather than another: not below 2 AICc units, firmly above 10.</summary>
    /// <param name="deltaAicc">AICc of the other less that of the named curve.</param>
    public static Standing RatherThan(double deltaAicc) => deltaAicc < 2 ? Standing.NotShown : deltaAicc <= 10 ? Standing.Weak : Standing.Holds;

    /// <summary>Whether the fit describes the plateau: within 10 % or within twice its uncertainty.</summary>
    /// <param name="qeFitted">Fitted qe.</param>
    /// <param name="plateauMean">Mean of the readings on the plateau, same unit, above 0.</param>
    /// <param name="u">Standard uncertainty of that mean, same unit.</param>
    public static Standing DescribesPlateau(double qeFitted, double plateauMean, double u)
    {
        var gap = Math.Abs(qeFitted - plateauMean);
        return gap > 0.1 * Math.Abs(plateauMean) && gap > 2 * u ? Standing.Contradicted : Standing.Holds;
    }

    /// <summary>Whether stages on √t are shown: some split into two or more segments has a lower AICc than one line and than every smooth curve.</summary>
    /// <param name="found">From <see cref="WeberMorrisSegments.Search"/>.</param>
    /// <param name="bestSmoothAicc">Lowest AICc of a smooth curve through the same readings; null when none could be compared.</param>
    public static Standing Stages(IReadOnlyList<Segmentation> found, double? bestSmoothAicc)
    {
        var split = found.Where(s => s.Lines.Count > 1 && s.Aicc is not null).MinBy(s => s.Aicc);
        if (split is null || bestSmoothAicc is null || found[0].Aicc is not { } one)
            return Standing.NotShown;
        return split.Aicc < one && split.Aicc < bestSmoothAicc ? Standing.Holds : Standing.NotShown;
    }

    /// <summary>Whether pores may be the only control: one line, an intercept whose interval contains 0, and uptake below 30 % of its final value.</summary>
    /// <param name="segments">Number of segments of the best split.</param>
    /// <param name="interceptLow">Lower end of the intercept's 95 % interval.</param>
    /// <param name="interceptHigh">Upper end.</param>
    /// <param name="largestFraction">Largest F of the readings used.</param>
    public static Standing SolePoreControl(int segments, double interceptLow, double interceptHigh, double largestFraction)
    {
        if (interceptLow > 0 || interceptHigh < 0)
            return Standing.Contradicted;
        return segments == 1 && largestFraction < 0.3 ? Standing.NotContradicted : Standing.NotShown;
    }

    /// <summary>Whether uptake levels off instead of falling: the highest reading is not above the last by more than 2·√2·u.</summary>
    /// <param name="highest">Highest uptake.</param>
    /// <param name="last">Last uptake, same unit.</param>
    /// <param name="u">Standard uncertainty of one uptake, same unit.</param>
    public static Standing LevelsOff(double highest, double last, double u)
        => highest - last > 2 * Math.Sqrt(2) * u ? Standing.Contradicted : Standing.Holds;

    /// <summary>Whether there is any rate to speak of: the slope of uptake on ln t differs from 0.</summary>
    /// <param name="p">Two-sided p of that slope.</param>
    public static Standing AnyRate(double p) => p > 0.05 ? Standing.NotShown : Standing.Holds;

    /// <summary>Whether an order is known: an interval no wider than 1 and no bound reached.</summary>
    /// <param name="low">Lower end of its 95 % interval; null when open.</param>
    /// <param name="high">Upper end; null when open.</param>
    /// <param name="atBound">Whether the fit ended at a bound.</param>
    public static Standing Order(double? low, double? high, bool atBound) => !atBound && high - low <= 1 ? Standing.Holds : Standing.NotShown;
}
