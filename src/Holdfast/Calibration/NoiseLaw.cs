using Holdfast.Statistics;

namespace Holdfast.Calibration;

/// <summary>How the instrument's scatter goes with the level: constant, in proportion to it, or both; found before any curve is judged.</summary>
/// <remarks>
/// sd² = sd₀² + (c·x)². Where levels have replicates their variances and that of the blanks decide, whatever the curve; single standards are judged by their residuals about the
/// richest curve they allow, by restricted likelihood (H. D. Patterson and R. Thompson, Biometrika 58 (1971) 545; from memory), together with the blanks,
/// which show the scatter at level 0. A scatter that does not grow must be given up by a likelihood ratio beyond 2.71, its one-sided 5 % point.
/// </remarks>
/// <param name="Kind">Which law.</param>
/// <param name="Evidence">What showed it.</param>
/// <param name="Function">The law itself; null when constant.</param>
/// <param name="Ratio">2 ln of the likelihood ratio against constant scatter; no unit.</param>
public sealed record NoiseLaw(NoiseKind Kind, NoiseEvidence Evidence, VarianceFunction? Function, double Ratio)
{
    /// <summary>A likelihood ratio below this leaves the scatter constant: the one-sided 5 % point of a variance at its bound.</summary>
    public const double Decides = 2.71;

    // Below this share of the scatter at the top, the scatter at 0 is nothing: the law is proportional.
    private const double Nothing = 0.1;
    private const double LeastRatio = 0.03, LargestRatio = 300;

    /// <summary>The law of a run.</summary>
    /// <param name="standards">Readings of the standards, three or more.</param>
    /// <param name="blanks">Independent blank readings; fewer than three count as none.</param>
    public static NoiseLaw Of(IReadOnlyList<StandardReading> standards, IReadOnlyList<double> blanks)
    {
        ArgumentNullException.ThrowIfNull(standards);
        ArgumentNullException.ThrowIfNull(blanks);
        var replicated = Level.Of(standards).Where(l => l.Readings.N > 1).ToArray();
        var top = standards.Max(s => s.Level);
        double[] used = blanks.Count > 2 ? [.. blanks] : [];
        return replicated.Length > 1 ? OfReplicates(replicated, used, top) : OfResiduals(standards, used, top);
    }

    private static NoiseLaw OfReplicates(Level[] levels, double[] blanks, double top)
    {
        (double Level, double Sd, double Dof)[] groups = [.. levels.Select(l => (l.Value, l.Readings.Sd!.Value, l.Readings.N - 1.0))];
        var evidence = NoiseEvidence.Replicates;
        // Three readings of a zero standard leave the scatter of a low sample to two degrees of freedom: the blanks stand at the same level.
        if (blanks.Length > 0 && Summary.Of(blanks).Sd is > 0 and { } scatter)
        {
            groups = [.. groups, (0, scatter, blanks.Length - 1.0)];
            evidence = NoiseEvidence.ReplicatesAndBlanks;
        }

        if (VarianceFunction.Of(groups) is not { } function)
            return new(NoiseKind.Constant, evidence, null, 0);
        var pooled = groups.Sum(g => g.Dof * g.Sd * g.Sd) / groups.Sum(g => g.Dof);
        var ratio = groups.Sum(g => g.Dof * (Deviance(g.Sd * g.Sd, pooled) - Deviance(g.Sd * g.Sd, Math.Pow(function.Sd(g.Level), 2))));
        return Named(function, evidence, ratio, top);
    }

    private static NoiseLaw OfResiduals(IReadOnlyList<StandardReading> standards, double[] blanks, double top)
    {
        double[] x = [.. standards.Select(s => s.Level)], y = [.. standards.Select(s => s.Signal)];
        var degree = x.Distinct().Count() >= 6 ? 2 : 1;
        if (x.Length < degree + 3)
            return new(NoiseKind.Constant, NoiseEvidence.Nothing, null, 0);
        var mean = blanks.Length == 0 ? 0 : blanks.Average();
        var blankSquares = blanks.Sum(b => (b - mean) * (b - mean));
        var constant = Restricted(0);
        if (!double.IsFinite(constant.Deviance))
            return new(NoiseKind.Constant, NoiseEvidence.Nothing, null, 0);
        var best = (Ratio: 0.0, constant.Deviance, constant.Variance);
        const int steps = 160;
        for (var step = 0; step <= steps; step++)
        {
            var ratio = LeastRatio * Math.Pow(LargestRatio / LeastRatio, step / (double)steps);
            var at = Restricted(ratio);
            if (at.Deviance < best.Deviance)
                best = (ratio, at.Deviance, at.Variance);
        }

        var evidence = blanks.Length > 0 ? NoiseEvidence.ResidualsAndBlanks : NoiseEvidence.Residuals;
        var sd = Math.Sqrt(best.Variance);
        var share = 1 - (degree + 1.0) / x.Length;
        var function = new VarianceFunction(sd, sd * best.Ratio / top).FoundFrom([.. x.Select(v => (v, share)), (0, Math.Max(blanks.Length - 1, 0))]);
        return Named(function, evidence, constant.Deviance - best.Deviance, top);

        // −2 ln of the restricted likelihood at sd(top)²/sd₀² = 1 + ratio², with sd₀² at its best.
        (double Deviance, double Variance) Restricted(double ratio)
        {
            double[] variance = [.. x.Select(v => 1 + Math.Pow(ratio * v / top, 2))];
            var fit = PolynomialFit.Of(x, y, degree, [.. variance.Select(v => 1 / v)]);
            // The fit scales its weights to mean 1: brought back, squares and information are those of the weights meant.
            var scale = variance.Average(v => 1 / v);
            var squares = scale * fit.SumOfSquares + blankSquares;
            double dof = fit.DegreesOfFreedom + Math.Max(blanks.Length - 1, 0);
            if (!(squares > 0))
                return (double.NegativeInfinity, 0);
            var information = fit.Components.Sum(c => Math.Log(scale * c.SquaredLength));
            return (dof * Math.Log(squares / dof) + variance.Sum(Math.Log) + information, squares / dof);
        }
    }

    private static NoiseLaw Named(VarianceFunction function, NoiseEvidence evidence, double ratio, double top)
        => ratio < Decides || function.Slope == 0
            ? new(NoiseKind.Constant, evidence, null, Math.Max(ratio, 0))
            : new(function.Sd0 < Nothing * function.Sd(top) ? NoiseKind.Proportional : NoiseKind.Both, evidence, function, ratio);

    private static double Deviance(double found, double variance) => Math.Log(variance) + found / variance;
}

/// <summary>How scatter goes with the level.</summary>
public enum NoiseKind
{
    /// <summary>The same at every level, as far as these readings show.</summary>
    Constant,

    /// <summary>In proportion to the level, with next to nothing at 0.</summary>
    Proportional,

    /// <summary>A constant part and one in proportion to the level.</summary>
    Both,
}

/// <summary>What a law of scatter rests on.</summary>
public enum NoiseEvidence
{
    /// <summary>Too few readings to tell; taken as constant.</summary>
    Nothing,

    /// <summary>Replicate readings of the standards.</summary>
    Replicates,

    /// <summary>Replicate readings of the standards, and the scatter of the blanks.</summary>
    ReplicatesAndBlanks,

    /// <summary>Residuals of single standards about their curve.</summary>
    Residuals,

    /// <summary>Residuals of single standards, and the scatter of the blanks.</summary>
    ResidualsAndBlanks,
}
