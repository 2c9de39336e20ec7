using Holdfast.Statistics;

namespace Holdfast.Calibration;

/// <summary>The weight of a reading at any level: needed for the standards and again at the sample's own reading.</summary>
/// <param name="Kind">How the weights were made.</param>
/// <param name="Scatter">The variance function behind them, or null.</param>
/// <param name="Floor">Level below which weights stop growing: half the lowest above zero (own rule), or 0 where the variance function saw a zero standard.</param>
/// <param name="Mean">Mean of the raw weights over the standards; scaled weights have mean 1.</param>
public sealed record Weights(Weighting Kind, VarianceFunction? Scatter, double Floor, double Mean)
{
    /// <summary>Weights for a set of standards, or null when their scatter cannot give any.</summary>
    /// <param name="kind">How to weight.</param>
    /// <param name="standards">The standards in use.</param>
    public static Weights? Of(Weighting kind, IReadOnlyList<StandardReading> standards)
    {
        ArgumentNullException.ThrowIfNull(standards);
        var levels = Level.Of(standards);
        var scatter = kind == Weighting.VarianceFunction
            ? VarianceFunction.Of([.. levels.Where(l => l.Readings.N > 1).Select(l => (l.Value, l.Readings.Sd!.Value, l.Readings.N - 1.0))])
            : null;
        if (kind == Weighting.VarianceFunction && scatter is null)
            return null;
        var halfLowest = levels.Where(l => l.Value > 0).Select(l => l.Value).DefaultIfEmpty(1).Min() / 2;
        return Scaled(new(kind, scatter, scatter is not null && levels[0] is { Value: 0, Readings.N: > 1 } ? 0 : halfLowest, 1), standards);
    }

    /// <summary>Weights by a law of scatter that is already known.</summary>
    /// <param name="scatter">The law.</param>
    /// <param name="standards">The standards in use.</param>
    public static Weights Of(VarianceFunction scatter, IReadOnlyList<StandardReading> standards)
    {
        ArgumentNullException.ThrowIfNull(scatter);
        ArgumentNullException.ThrowIfNull(standards);
        return Scaled(new(Weighting.VarianceFunction, scatter, 0, 1), standards);
    }

    private static Weights Scaled(Weights raw, IReadOnlyList<StandardReading> standards)
        => raw with { Mean = standards.Average(s => raw.At(s.Level)) };

    /// <summary>Weight of a reading, scaled so that the standards' mean is 1; no unit.</summary>
    /// <param name="level">Concentration, in the unit of the standards.</param>
    public double At(double level)
    {
        var bounded = Math.Max(level, Floor);
        var raw = Kind switch
        {
            Weighting.VarianceFunction => 1 / Math.Pow(Scatter!.Sd(bounded), 2),
            Weighting.InverseLevel => 1 / bounded,
            Weighting.InverseSquareLevel => 1 / (bounded * bounded),
            _ => 1,
        };
        return raw / Mean;
    }

    /// <summary>
    /// Degrees of freedom behind the variance of a mean reading about the curve, curve included: those of the fit, or fewer where the law of scatter has fewer
    /// at that level. A law found from few readings knows the scatter of a low sample from the blanks and the zero standard alone.
    /// </summary>
    /// <param name="fit">The curve.</param>
    /// <param name="level">Concentration, in the unit of the standards.</param>
    /// <param name="replicates">Readings of the sample; 0 for the curve alone.</param>
    public double DegreesOfFreedom(PolynomialFit fit, double level, int replicates)
    {
        ArgumentNullException.ThrowIfNull(fit);
        if (Scatter is null)
            return fit.DegreesOfFreedom;
        var basis = fit.Basis(level);
        var gain = new double[fit.X.Count];
        for (var i = 0; i < gain.Length; i++)
        {
            var at = fit.Basis(fit.X[i]);
            for (var k = 0; k < basis.Length; k++)
                gain[i] += fit.Weights[i] * basis[k] * at[k] / fit.Components[k].SquaredLength;
        }

        var own = replicates > 0 ? 1.0 / replicates : 0;
        var square = own * level * level;
        for (var i = 0; i < gain.Length; i++)
        {
            own += gain[i] * gain[i];
            square += gain[i] * gain[i] * fit.X[i] * fit.X[i];
        }

        return Math.Min(fit.DegreesOfFreedom, Scatter.DegreesOfFreedom(own, square));
    }
}
