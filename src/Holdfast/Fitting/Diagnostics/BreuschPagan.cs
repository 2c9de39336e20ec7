using Holdfast.Statistics;

namespace Holdfast.Fitting.Diagnostics;

/// <summary>Whether the scatter changes with the size of the reading: n R² of the squared residuals against the fitted values (Koenker's form, which needs no normal errors).</summary>
/// <remarks>T. S. Breusch and A. R. Pagan, Econometrica 47 (1979) 1287; R. Koenker, J. Econometrics 17 (1981) 107 (from memory).</remarks>
/// <param name="Statistic">n R², chi-square with one degree of freedom when the scatter is constant.</param>
/// <param name="P">Probability of more.</param>
public sealed record BreuschPagan(double Statistic, double P)
{
    /// <summary>The test of the weighted residuals of a fit (of a series: made independent) against its fitted values; null without residuals or spread.</summary>
    /// <param name="fit">The fit.</param>
    public static BreuschPagan? Of(FitResult fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return Of(fit.IndependentResiduals, fit.Fitted);
    }

    /// <summary>The test of residuals against levels.</summary>
    /// <param name="residuals">Residuals, weighted so that their scatter should be constant.</param>
    /// <param name="level">What the scatter may change with, as many.</param>
    public static BreuschPagan? Of(IReadOnlyList<double> residuals, IReadOnlyList<double> level)
    {
        ArgumentNullException.ThrowIfNull(residuals);
        ArgumentNullException.ThrowIfNull(level);
        if (residuals.Count < 3 || level.Max() <= level.Min())
            return null;
        double[] squares = [.. residuals.Select(r => r * r)];
        if (StraightLine.Through([.. level], squares).RSquared is not { } share)
            return null;
        var statistic = residuals.Count * share;
        return new(statistic, ChiSquareDistribution.Above(statistic, 1));
    }
}
