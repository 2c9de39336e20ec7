using Holdfast.Statistics;

namespace Holdfast.Fitting.Solving;

/// <summary>
/// How a curve is fitted to a series with one error model: what was read less what the curve predicts has the covariance V of everything that is stated,
/// plus a scatter from vessel to vessel in proportion to the uptake. Parameters, V and scatter are refreshed in turn until none moves. For an isotherm
/// the concentration left is predicted through the mass balance, so that the error of the reading stays on the reading.
/// </summary>
internal sealed class SeriesSettlement(Func<double[], IProblem> turned, Model model, SeriesPoints points, ErrorSources sources, FitOptions options)
{
    private const int MostRounds = 80;
    private const int FirstScoring = 30;
    // The other form of scatter must be e times as likely.
    private const double BetterForm = 2;
    private const double SettledMove = 1e-6;
    private const double AcceptedMove = 1e-4;

    private readonly double[] y = points.Response;
    private readonly double[] ones = [.. Enumerable.Repeat(1.0, points.Count)];
    private readonly int p = model.Card.Parameters.Count;

    /// <summary>Weights that do without the curve, for a first fit: what is stated of each reading and a few per cent of it.</summary>
    public static double[] FirstWeights(SeriesPoints points)
    {
        const double scatter = 0.03;
        var largest = points.Y.Max(v => Math.Abs(v.Value));
        return [.. points.Y.Select(v => 1 / (v.Variance + Math.Pow(scatter * v.Value, 2) + Math.Pow(scatter / 10 * largest, 2)))];
    }

    /// <summary>The fit, from where a first fit with independent weights ended.</summary>
    /// <param name="first">The first fit.</param>
    public FitResult Reach(FitResult first)
    {
        if (first.Parameters.Count == 0)
            return FitResult.None(model.Card, points.Plain, first.Findings, first.Stop);
        var usual = Settle(first, options.Form ?? ScatterForm.Sorbent);
        if (points.Vessels is null || options.Form is not null || usual?.Deviance is not { } deviance)
            return Written(first, usual);
        var other = Settle(first, ScatterForm.Amount);
        return Written(first, other?.Deviance < deviance - BetterForm ? other : usual);
    }

    // Parameters and scatter of one form; null where the curve was lost on the way.
    private Settled? Settle(FitResult first, ScatterForm form)
    {
        double[] theta = [.. first.Theta];
        double sigma2 = -1;
        var memory = new Workspace(points.Count, p);
        var moved = double.PositiveInfinity;
        for (var round = 0; round < MostRounds && moved > SettledMove; round++)
        {
            if (Read(first.Problem!.Coordinates, theta, form) is not { } curve)
                return null;
            var scatter = curve.Scatter(sources);
            if (sigma2 < 0)
                sigma2 = scatter.Restricted(curve.Residual, 0, FirstScoring);
            if (scatter.For(sigma2) is not { } at)
                return null;
            var before = sigma2;
            sigma2 = scatter.Next(at.Projector, curve.Residual, sigma2);
            double[] from = [.. theta];
            var end = turned(at.Covariance).Fit(y, ones, theta, 0, options.MostIterations, memory);
            if (!double.IsFinite(end.S) || end.Runaway >= 0)
                return new(form, theta, sigma2, end, true, null);
            moved = Math.Abs(sigma2 - before) / (sigma2 + 1e-6);
            for (var j = 0; j < p; j++)
                moved = Math.Max(moved, Math.Abs(theta[j] - from[j]) / first.Problem!.Coordinates.Size(j, theta[j]));
        }

        return Read(first.Problem!.Coordinates, theta, form) is { } last
            ? new(form, theta, sigma2, null, moved <= AcceptedMove, last.Scatter(sources).Deviance(last.Residual, sigma2))
            : null;
    }

    private FitResult Written(FitResult first, Settled? settled)
    {
        if (settled is null)
            return Lost(first);
        var coordinates = first.Problem!.Coordinates;
        var (theta, sigma2, ended) = (settled.Theta, settled.Sigma2, settled.Ended);
        var memory = new Workspace(points.Count, p);
        for (var restart = 0; ; restart++)
        {
            if (Read(coordinates, theta, settled.Form) is not { } curve || curve.Scatter(sources).For(sigma2) is not { } at)
                return Lost(first);
            var problem = turned(at.Covariance);
            var end = problem.Fit(y, ones, theta, 0, options.MostIterations, memory);
            var report = new Report(problem, model.Card, model, points.Plain, options, memory, ones, theta, ended ?? end)
            {
                XUnit = points.Plain.XUnit,
                YUnit = points.Plain.YUnit,
                WeightsSettled = settled.IsSettled,
                OtherMinima = first.OtherMinima,
                Response = y,
                Series = Statistics(curve, at, sigma2, settled.Form, coordinates, theta),
            };
            var result = report.Write();
            if (report.Better is null || restart == 3)
                return result;
            report.Better.CopyTo(theta, 0);
            ended = null;
        }
    }

    private SeriesStatistics Statistics(Curve curve, VesselScatter.At at, double sigma2, ScatterForm form, Coordinates coordinates, double[] theta)
    {
        var pinned = Enumerable.Range(0, p).Where(j => theta[j] >= coordinates.Upper[j] || theta[j] <= coordinates.Lower[j]).ToArray();
        var gain = at.Gain();
        var variance = at.VarianceOfScatter();
        var adjusted = at.Adjusted(gain, variance);
        foreach (var j in pinned)
        {
            for (var k = 0; k < p; k++)
                adjusted[j, k] = adjusted[k, j] = 0;
        }

        var deviance = curve.Scatter(sources).Deviance(curve.Residual, sigma2);
        var (lack, replicate) = Replicates(curve, at);
        var n = points.Count;
        return new(
            adjusted, [.. sources.Groups(curve.Levers).Select(g => (at.Carried(gain, g.Covariance), g.Freedom))], at.Growth(gain), Math.Sqrt(variance / 2), deviance, Criteria.OfDeviance(n, p, deviance), lack, [.. at.Covariance],
            new SeriesErrors(
                form, Math.Sqrt(sigma2), sigma2 > 0 ? 2 * sigma2 * sigma2 / variance : null, replicate is { } r ? Math.Sqrt(r.Sigma2) : null, replicate?.Freedom ?? 0,
                [.. Enumerable.Range(0, n).Select(i => Math.Sqrt(at.Covariance[i * n + i]) / (points.Vessels is null ? 1 : -curve.Levers[i].ByY))]));
    }

    // Vessels of one setting differ by their own errors alone, whatever the curve: the level means are free.
    private (LackOfFit? Lack, (double Sigma2, int Freedom)? Scatter) Replicates(Curve curve, VesselScatter.At at)
    {
        if (points.Settings is not { } settings)
            return (null, null);
        int[] levels = [.. settings.Distinct()];
        var n = points.Count;
        if (n - levels.Length < 1)
            return (null, null);
        var means = new double[n * levels.Length];
        for (var i = 0; i < n; i++)
            means[i * levels.Length + Array.IndexOf(levels, settings[i])] = 1;
        var free = new VesselScatter(sources.Covariance(curve.Levers), curve.Reach, means, levels.Length);
        var sigma2 = free.Restricted(curve.Residual, 0, FirstScoring);
        (double, int)? scatter = (sigma2, n - levels.Length);
        if (levels.Length - p < 1 || free.For(sigma2) is not { } within || curve.Scatter(sources).For(sigma2) is not { } about)
            return (null, scatter);
        var (pure, dof, above) = (within.Left(curve.Residual), n - levels.Length, levels.Length - p);
        // A group of sources of ν degrees of freedom moves both sums of squares by the error of its size: it cancels only as far as both rest on it alike.
        var apart = 0.0;
        foreach (var (covariance, freedom) in sources.Groups(curve.Levers))
        {
            double inPure = within.Rests(covariance), inMisfit = about.Rests(covariance) - inPure;
            apart += Math.Pow(inMisfit / above - inPure / dof, 2) / freedom;
        }

        var below = Math.Max((int)(1 / (1.0 / dof + apart)), 1);
        return (LackOfFit.Of(pure, dof, Math.Max(about.Left(curve.Residual) - pure, 0), above, below), scatter);
    }

    private Curve? Read(Coordinates coordinates, double[] theta, ScatterForm form)
    {
        var n = points.Count;
        double[] natural = [.. theta.Select((t, j) => coordinates.ToNatural(j, t))], by = new double[p];
        var curve = new Curve(new double[n], new double[n], new Lever[n], new double[n * p]);
        for (var i = 0; i < n; i++)
        {
            double predicted;
            if (points.Vessels is { } vessels)
            {
                var (start, dose) = (vessels.Readings.XValues[i], vessels.Doses[i]);
                predicted = model.ConcentrationLeft(start, dose, natural, by);
                curve.Levers[i] = Lever.OfVessel(dose, model.SlopeAt(predicted, natural));
                curve.Reach[i] = form == ScatterForm.Amount ? start - predicted : curve.Levers[i].ByY * (start - predicted) / dose;
            }
            else
            {
                predicted = curve.Reach[i] = model.Value(points.Plain.XValues[i], natural, by);
                curve.Levers[i] = Lever.Plain;
            }

            curve.Residual[i] = y[i] - predicted;
            for (var j = 0; j < p; j++)
                curve.Jacobian[i * p + j] = by[j] * coordinates.Slope(j, theta[j]);
        }

        return curve.Residual.Concat(curve.Reach).Concat(curve.Jacobian).Concat(curve.Levers.Select(l => l.ByX)).All(double.IsFinite) ? curve : null;
    }

    private FitResult Lost(FitResult first)
        => FitResult.None(model.Card, points.Plain, [Finding.Of("HF-411", Weight.Stop,
            $"The fit of {model.Card.Name} did not settle under the error model of the series: its slope runs away at a point. Measure where the curve bends, or choose another curve.",
            [.. points.Plain.Ids])], first.IsFit ? StopReason.IterationLimit : first.Stop);

    private sealed record Settled(ScatterForm Form, double[] Theta, double Sigma2, LevenbergMarquardt.End? Ended, bool IsSettled, double? Deviance);

    private sealed record Curve(double[] Reach, double[] Residual, Lever[] Levers, double[] Jacobian)
    {
        public VesselScatter Scatter(ErrorSources sources)
            => new(sources.Covariance(Levers), Reach, Jacobian, Jacobian.Length / Reach.Length);
    }
}

/// <summary>What the error model of a series says of a fit.</summary>
/// <param name="Spread">Covariance of the parameters by θ, corrected for few vessels; zero for a parameter on a bound.</param>
/// <param name="Shares">Parts of it that groups of sources add, by θ, each with its degrees of freedom.</param>
/// <param name="Growth">How it moves with the square of the scatter between vessels, by θ.</param>
/// <param name="ScatterSpread">Standard deviation of the estimate of that square, over √2.</param>
/// <param name="Deviance">−2 ln of the full likelihood, constants dropped.</param>
/// <param name="Criteria">Criteria from the full likelihood.</param>
/// <param name="LackOfFit">Against replicates of a setting.</param>
/// <param name="Covariance">V of what was read, by rows, in the square of its unit.</param>
/// <param name="Errors">What a reader is told.</param>
internal sealed record SeriesStatistics(
    double[,] Spread, IReadOnlyList<(double[,] Share, double Freedom)> Shares, double[,] Growth, double ScatterSpread, double Deviance, Criteria? Criteria, LackOfFit? LackOfFit, double[] Covariance, SeriesErrors Errors)
{
    /// <summary>
    /// Degrees of freedom of the variance of a combination of parameters (Welch and Satterthwaite), no fewer than 1. It moves with the square of the scatter by
    /// ∂Φ/∂σ², which is to be as uncertain as v·√(2/ν); the scatter of a new vessel moves with the same square.
    /// </summary>
    /// <param name="direction">∂(combination)/∂θ.</param>
    /// <param name="reach">How often the square of the scatter comes on top of the variance: 0 for the curve alone.</param>
    public double Freedom(ReadOnlySpan<double> direction, double reach = 0)
    {
        var total = Form(Spread, direction) + reach * Errors.VesselScatter * Errors.VesselScatter;
        var uncertain = Math.Pow((Form(Growth, direction) + reach) * ScatterSpread, 2);
        foreach (var (share, freedom) in Shares)
        {
            var part = Form(share, direction);
            uncertain += part * part / freedom;
        }

        return uncertain > 0 ? Math.Max(total * total / uncertain, 1) : double.PositiveInfinity;
    }

    /// <summary>The quantile of t for a combination of parameters.</summary>
    /// <param name="confidence">Confidence.</param>
    /// <param name="direction">∂(combination)/∂θ.</param>
    /// <param name="reach">How often the square of the scatter comes on top: 0 for the curve alone.</param>
    public double Quantile(double confidence, ReadOnlySpan<double> direction, double reach = 0) => StudentDistribution.TwoSided(confidence, Freedom(direction, reach));

    private static double Form(double[,] m, ReadOnlySpan<double> g)
    {
        double sum = 0;
        for (var i = 0; i < g.Length; i++)
        {
            for (var j = 0; j < g.Length; j++)
                sum += g[i] * m[i, j] * g[j];
        }

        return sum;
    }
}
