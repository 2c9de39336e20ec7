using Holdfast.Amounts;

namespace Holdfast.Fitting;

/// <summary>The fitted curve: values, bands, and parameters that carry their uncertainty on.</summary>
public sealed partial class FitResult
{
    /// <summary>The fitted curve's value.</summary>
    /// <param name="x">Abscissa, in the unit of the data.</param>
    /// <exception cref="InvalidOperationException">There is no curve or there are no parameters.</exception>
    public double ValueAt(double x) => Curve().Value(x, [.. Values]);

    /// <summary>Where the curve itself lies: value ± quantile · √(g′Cg) with g = ∂f/∂p; null when ν = 0.</summary>
    /// <param name="x">Abscissa, in the unit of the data.</param>
    public CurveBand? ConfidenceBand(double x) => Band(x, 0);

    /// <summary>
    /// Where one new reading would lie: the variance of a reading is added to that of the curve, in a series with its error model that of a new vessel with
    /// the scatter between vessels; null when ν = 0.
    /// </summary>
    /// <param name="x">Abscissa, in the unit of the data.</param>
    /// <param name="weight">Weight of the new reading, on the scale of the weights of the fit.</param>
    public CurveBand? PredictionBand(double x, double weight = 1)
    {
        if (Errors is { } errors)
            return Band(x, Math.Pow(errors.VesselScatter * ValueAt(x), 2));
        var scale = Scatter == ScatterModel.Known ? 1 : ResidualSd ?? 0;
        return Band(x, scale * scale / weight);
    }

    /// <summary>
    /// The parameters with their covariance as shared sources, so that everything derived from them is correlated as it should be. The
    /// covariance is split into independent columns (Cholesky); all belong to one group, which counts once with ν degrees of freedom.
    /// </summary>
    /// <param name="fitId">Id of the fit; it names the group and begins the id of each source.</param>
    /// <param name="name">What it is in words; null for the name of the curve.</param>
    /// <returns>One number for each parameter; empty when there is no covariance.</returns>
    public IReadOnlyList<Measured> MeasuredParameters(string fitId, string? name = null)
    {
        if (Covariance is null)
            return [];
        var factor = Cholesky(Covariance);
        var dof = Series is { } series ? Enumerable.Range(0, P).Min(j => series.Freedom(Unit(j)))
            : Scatter == ScatterModel.Known ? double.PositiveInfinity : Nu;
        var sources = Enumerable.Range(0, P).Select(k => new Source(
            FormattableString.Invariant($"{fitId}/{k + 1}"), $"{name ?? Card.Name}, fit: {Card.Parameters[k].Symbol}", 1, dof,
            Scatter == ScatterModel.Known ? Evaluation.OtherKnowledge : Evaluation.Repetition, Group: fitId)).ToArray();
        return [.. Parameters.Select((p, j) => Measured.From(
            p.Value, Enumerable.Range(0, j + 1).Select(k => new Contribution(sources[k], factor[j, k]))))];
    }

    /// <summary>A quantity derived from the parameters, to first order (delta method); null when there is no covariance.</summary>
    /// <param name="formula">The quantity from the parameters in the card's order.</param>
    public Measured? Derived(Func<IReadOnlyList<Measured>, Measured> formula)
    {
        ArgumentNullException.ThrowIfNull(formula);
        return Covariance is null ? null : formula(MeasuredParameters("fit"));
    }

    private CurveBand? Band(double x, double extra)
    {
        if (Covariance is null || Quantile is not { } quantile)
            return null;
        var slopes = new double[P];
        var value = Curve().Value(x, [.. Values], slopes);
        var variance = extra;
        for (var i = 0; i < P; i++)
        {
            for (var j = 0; j < P; j++)
                variance += slopes[i] * Covariance[i, j] * slopes[j];
        }

        if (Series is not null)
            quantile = Series.Quantile(Confidence, [.. slopes.Select((g, j) => g * Problem!.Coordinates.Slope(j, Theta[j]))]);
        var se = Math.Sqrt(Math.Max(variance, 0));
        return new(value, se, value - quantile * se, value + quantile * se);
    }

    private double[] Unit(int j) => [.. Enumerable.Range(0, P).Select(k => k == j ? 1.0 : 0)];

    private Model Curve()
    {
        if (Model is null || Parameters.Count == 0)
            throw new InvalidOperationException($"There is no fitted curve of {Card.Name} to read ({Stop}).");
        return Model;
    }

    private static double[,] Cholesky(double[,] c)
    {
        var p = c.GetLength(0);
        var factor = new double[p, p];
        for (var j = 0; j < p; j++)
        {
            for (var k = 0; k <= j; k++)
            {
                var sum = c[j, k];
                for (var m = 0; m < k; m++)
                    sum -= factor[j, m] * factor[k, m];
                factor[j, k] = j == k ? Math.Sqrt(Math.Max(sum, 0)) : factor[k, k] > 0 ? sum / factor[k, k] : 0;
            }
        }

        return factor;
    }
}

/// <summary>A band at one x.</summary>
/// <param name="Value">The curve, in the unit of y.</param>
/// <param name="StandardError">Standard error there, in the unit of y.</param>
/// <param name="Lower">Lower edge, in the unit of y.</param>
/// <param name="Upper">Upper edge, in the unit of y.</param>
public readonly record struct CurveBand(double Value, double StandardError, double Lower, double Upper);
