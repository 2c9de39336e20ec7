namespace Holdfast.Fitting.Lines;

/// <summary>The straight line when each point has its own errors on both axes, which may be correlated.</summary>
/// <remarks>D. York, N. M. Evensen, M. López Martínez and J. De Basabe Delgado, Am. J. Phys. 72 (2004) 367 (from memory).</remarks>
public static class York
{
    private const int MostRounds = 1000;

    /// <summary>The line; no value when the iteration does not settle.</summary>
    /// <param name="x">Abscissas, any unit.</param>
    /// <param name="y">Ordinates, any unit.</param>
    /// <param name="ux">Standard uncertainties of x, above 0.</param>
    /// <param name="uy">Standard uncertainties of y, above 0.</param>
    /// <param name="correlation">Correlation of the two errors of each point, −1 to 1; null for none.</param>
    /// <exception cref="ArgumentException">Unequal lengths, fewer than three points, or an uncertainty that is not above 0.</exception>
    public static Outcome<LineWithErrors> Through(
        IReadOnlyList<double> x, IReadOnlyList<double> y, IReadOnlyList<double> ux, IReadOnlyList<double> uy, IReadOnlyList<double>? correlation = null)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(y);
        ArgumentNullException.ThrowIfNull(ux);
        ArgumentNullException.ThrowIfNull(uy);
        var n = x.Count;
        if (n < 3 || y.Count != n || ux.Count != n || uy.Count != n || (correlation is not null && correlation.Count != n))
            throw new ArgumentException("The line needs three or more points, each with its two uncertainties.", nameof(x));
        if (ux.Concat(uy).Any(u => !(u > 0)))
            throw new ArgumentException("Every uncertainty must be above 0.", nameof(ux));
        var slope = StraightLine.Through([.. x], [.. y]).Slope;
        double[] weight = new double[n], beta = new double[n];
        for (var round = 0; round < MostRounds; round++)
        {
            for (var i = 0; i < n; i++)
                weight[i] = Weight(i, slope);
            var total = weight.Sum();
            double meanX = Mean(x, weight, total), meanY = Mean(y, weight, total), above = 0, below = 0;
            for (var i = 0; i < n; i++)
            {
                var (u, v) = (x[i] - meanX, y[i] - meanY);
                var (vx, vy, cxy) = (ux[i] * ux[i], uy[i] * uy[i], (correlation?[i] ?? 0) * ux[i] * uy[i]);
                beta[i] = weight[i] * (u * vy + slope * v * vx - (slope * u + v) * cxy);
                above += weight[i] * beta[i] * v;
                below += weight[i] * beta[i] * u;
            }

            var next = above / below;
            var settled = Math.Abs(next - slope) <= 1e-15 * Math.Abs(next);
            slope = next;
            if (settled || round == MostRounds - 1)
                return Finish(settled, meanX, meanY, total);
        }

        throw new InvalidOperationException("The last round always returns.");

        double Weight(int i, double b)
        {
            var (vx, vy) = (ux[i] * ux[i], uy[i] * uy[i]);
            return 1 / (vy + b * b * vx - 2 * b * (correlation?[i] ?? 0) * ux[i] * uy[i]);
        }

        Outcome<LineWithErrors> Finish(bool settled, double meanX, double meanY, double total)
        {
            if (!settled || !double.IsFinite(slope))
            {
                return Outcome<LineWithErrors>.None(Finding.Of("HF-411", Holdfast.Weight.Stop,
                    "The line with errors on both axes did not settle: x and y hardly vary together. Measure over a wider range."));
            }

            var intercept = meanY - slope * meanX;
            double[] adjusted = [.. beta.Select(v => meanX + v)];
            var meanAdjusted = Mean(adjusted, weight, total);
            var slopeVariance = 1 / adjusted.Select((v, i) => weight[i] * (v - meanAdjusted) * (v - meanAdjusted)).Sum();
            var chi = Enumerable.Range(0, n).Sum(i => Weight(i, slope) * Math.Pow(y[i] - intercept - slope * x[i], 2));
            return new(
                new(intercept, slope, Math.Sqrt(1 / total + meanAdjusted * meanAdjusted * slopeVariance), Math.Sqrt(slopeVariance), chi), []);
        }
    }

    private static double Mean(IReadOnlyList<double> values, double[] weight, double total) => values.Select((v, i) => weight[i] * v).Sum() / total;
}
