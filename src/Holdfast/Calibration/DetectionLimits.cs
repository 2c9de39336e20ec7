using Holdfast.Statistics;

namespace Holdfast.Calibration;

/// <summary>Every named limit that the data of a run can give.</summary>
/// <remarks>
/// L. A. Currie, Pure Appl. Chem. 67 (1995) 1699–1723; ICH Q2; J. N. Miller and J. C. Miller; ISO 11843-2; DIN 32645 (all from memory).
/// Intervals: a limit scales with the standard deviation behind it, so chi-square factors apply (0.69 to 1.83 times for ten blanks).
/// </remarks>
/// <param name="All">All limits, each with its definition.</param>
/// <param name="Critical">Below this signed value a sample is reported as not detected.</param>
/// <param name="Detection">The detection limit that is reported.</param>
/// <param name="Quantification">The quantification limit that goes with it.</param>
public sealed record DetectionLimits(
    IReadOnlyList<DetectionLimit> All, DetectionLimit Critical, DetectionLimit Detection, DetectionLimit Quantification)
{
    private const double Alpha = 0.05;

    /// <summary>Collects the limits of a curve and its blanks.</summary>
    /// <param name="fit">The curve.</param>
    /// <param name="weights">Its weights.</param>
    /// <param name="blanks">Independent blank readings, in the unit of the readings; fewer than two count as none.</param>
    /// <param name="reported">Which definition is reported; a definition that needs blanks falls back to the line without them.</param>
    /// <param name="replicates">Readings that a sample will get.</param>
    public static DetectionLimits Of(PolynomialFit fit, Weights weights, IReadOnlyList<double> blanks, LimitDefinition reported, int replicates)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(weights);
        ArgumentNullException.ThrowIfNull(blanks);
        ArgumentOutOfRangeException.ThrowIfLessThan(replicates, 1);
        DetectionLimit[] all = [.. OfLine(fit, weights, replicates), .. OfBlanks(blanks, fit.SlopeAt(0))];
        var fromBlanks = all.Any(l => l.Definition == LimitDefinition.TenSd);
        return new(
            all,
            Named(fromBlanks ? LimitDefinition.CriticalOfBlanks : LimitDefinition.CriticalOfLine)!,
            Named(reported) ?? Named(LimitDefinition.DetectionOfLine)!,
            Named(fromBlanks ? LimitDefinition.TenSd : LimitDefinition.QuantificationOfLine)!);

        DetectionLimit? Named(LimitDefinition definition) => all.FirstOrDefault(l => l.Definition == definition);
    }

    /// <summary>Limits from independent blanks; none from fewer than two, or from blanks that do not scatter.</summary>
    /// <param name="blanks">Blank readings, in the unit of the readings.</param>
    /// <param name="slope">Slope near zero, unit of the reading per unit of concentration.</param>
    public static IReadOnlyList<DetectionLimit> OfBlanks(IReadOnlyList<double> blanks, double slope)
    {
        ArgumentNullException.ThrowIfNull(blanks);
        if (blanks.Count < 2 || slope == 0 || Summary.Of(blanks).Sd is not { } sd || sd == 0)
            return [];
        int n = blanks.Count, dof = n - 1;
        var t = StudentDistribution.Quantile(1 - Alpha, dof);
        var own = Math.Sqrt(1 + 1.0 / n);
        var unit = sd / Math.Abs(slope);
        return
        [
            Scaled(LimitDefinition.CriticalOfBlanks, t * own * unit, n, dof),
            Scaled(LimitDefinition.DetectionOfBlanks, NoncentralStudent.NoncentralityFor(t, dof, 1 - Alpha) * own * unit, n, dof),
            Scaled(LimitDefinition.ThreeSd, 3 * unit, n, dof),
            Scaled(LimitDefinition.ThreePointThreeSd, 3.3 * unit, n, dof),
            Scaled(LimitDefinition.TenSd, 10 * unit, n, dof),
        ];
    }

    /// <summary>Limits from the scatter of the standards about the curve, carried to level 0.</summary>
    /// <param name="fit">The curve.</param>
    /// <param name="weights">Its weights; a reading near zero has the weight of level 0.</param>
    /// <param name="replicates">Readings that a sample will get.</param>
    public static IReadOnlyList<DetectionLimit> OfLine(PolynomialFit fit, Weights weights, int replicates)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(weights);
        var n = fit.X.Count;
        var dof = weights.DegreesOfFreedom(fit, 0, replicates);
        var critical = StudentDistribution.Quantile(1 - Alpha, dof) * UncertaintyAt(fit, weights, 0, replicates);
        var two = StudentDistribution.TwoSided(0.95, dof);
        var quantified = 2 * critical;
        for (var step = 0; step < 200; step++)
            quantified = 3 * two * UncertaintyAt(fit, weights, quantified, replicates);
        DetectionLimit[] limits =
        [
            Scaled(LimitDefinition.InterceptPlusThreeS, 3 * fit.ResidualSd / Math.Sqrt(weights.At(0)) / Math.Abs(fit.SlopeAt(0)), n, dof),
            Scaled(LimitDefinition.CriticalOfLine, critical, n, dof),
            Scaled(LimitDefinition.DetectionOfLine, 2 * critical, n, dof),
            new(LimitDefinition.QuantificationOfLine, quantified, null, n),
        ];
        return double.IsFinite(quantified) ? limits : limits[..3];
    }

    /// <summary>US method limit: t(0.99, n − 1) times the sd of seven or more low spikes taken through the whole method.</summary>
    /// <param name="spikes">Concentrations found, in one unit.</param>
    /// <exception cref="ArgumentException">Fewer than seven spikes.</exception>
    public static DetectionLimit OfSpikes(IReadOnlyList<double> spikes)
    {
        ArgumentNullException.ThrowIfNull(spikes);
        if (spikes.Count < 7)
            throw new ArgumentException("A method limit needs seven or more low spikes.", nameof(spikes));
        var n = spikes.Count;
        return Scaled(LimitDefinition.MethodOfSpikes, StudentDistribution.Quantile(0.99, n - 1) * Summary.Of(spikes).Sd!.Value, n, n - 1);
    }

    private static double UncertaintyAt(PolynomialFit fit, Weights weights, double level, int replicates)
    {
        var reading = fit.ResidualSd * fit.ResidualSd / (replicates * weights.At(level));
        var curve = fit.UncertaintyAt(level);
        return Math.Sqrt(reading + curve * curve) / Math.Abs(fit.SlopeAt(level));
    }

    private static DetectionLimit Scaled(LimitDefinition definition, double value, int n, double dof)
        => new(definition, value, new(value * StandardDeviationFactor.At(0.025, dof), value * StandardDeviationFactor.At(0.975, dof), 0.95), n);
}
