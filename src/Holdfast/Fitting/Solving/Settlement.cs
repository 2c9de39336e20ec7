namespace Holdfast.Fitting.Solving;

/// <summary>How a fit is reached: every start polished, the lowest sum of squares kept, the weights settled, the profile walked, and the
/// whole begun again when the profile comes across something lower.</summary>
internal sealed class Settlement(IProblem problem, ModelCard card, Model? model, Points points, FitOptions options, string xUnit, string yUnit)
{
    private const int MostRounds = 200;
    private const int MostRestarts = 3;
    private const double SameCurve = 1e-6;

    private readonly double[] y = points.YValues;
    private readonly Workspace memory = new(points.Count, card.Parameters.Count);
    private readonly Coordinates coordinates = problem.Coordinates;

    /// <summary>The fit.</summary>
    /// <param name="weights">First weights.</param>
    /// <param name="starts">Natural starting parameters.</param>
    /// <param name="reweigh">How the weights follow the parameters; null when they stand.</param>
    public FitResult Reach(double[] weights, List<double[]> starts, Reweigh? reweigh)
    {
        if (starts.Count == 0)
        {
            return FitResult.None(card, points, [Finding.Of("HF-413", Weight.Stop,
                $"{card.Name} takes no value near these points within its limits. Choose another curve.", [.. points.Ids])]);
        }

        var minima = starts.Select(s => Polish(s, weights)).Where(m => double.IsFinite(m.S)).OrderBy(m => m.S).ToList();
        if (minima.Count == 0)
        {
            return FitResult.None(card, points, [Finding.Of("HF-413", Weight.Stop,
                $"{card.Name} has no value at some point, whatever its parameters. Look for x below the range of the curve.", [.. points.Ids])]);
        }

        minima = Distinct(minima);
        var theta = minima[0].Theta;
        var end = problem.Fit(y, weights, theta, 0, options.MostIterations, memory);
        if (end.Stop == StopReason.IterationLimit)
            TryOnceMore(starts, weights, ref theta, ref end);
        var settled = reweigh is null || SettleWeights(ref weights, theta, ref end, reweigh);
        for (var restart = 0; ; restart++)
        {
            var report = new Report(problem, card, model, points, options, memory, weights, theta, end)
            {
                XUnit = xUnit,
                YUnit = yUnit,
                WeightsSettled = settled,
                OtherMinima = [.. minima.Skip(1).Where(m => m.S >= end.S).Select(m => new Minimum(Natural(m.Theta), m.S))],
            };
            var result = report.Write();
            if (report.Better is null || restart == MostRestarts)
                return result;
            report.Better.CopyTo(theta, 0);
            end = problem.Fit(y, weights, theta, 0, options.MostIterations, memory);
        }
    }

    // Small curves are brought near by the fast solver first; when that leads nowhere the thorough one starts from the start itself.
    private (double[] Theta, double S) Polish(double[] start, double[] weights)
    {
        var theta = Theta(start);
        if (theta.Length > Normal4.Width)
            return (theta, problem.Fit(y, weights, theta, 0, options.MostIterations, memory).S);
        Span<double> downhill = stackalloc double[theta.Length];
        var end = problem.Refit(y, weights, theta, 0, Damping.Cold, downhill, []);
        if (end.Settled)
            return (theta, end.S);
        theta = Theta(start);
        return (theta, problem.Fit(y, weights, theta, 0, options.MostIterations, memory).S);
    }

    // The fast solver may have led astray: the thorough one goes from every start itself before the fit is given up.
    private void TryOnceMore(List<double[]> starts, double[] weights, ref double[] theta, ref LevenbergMarquardt.End end)
    {
        foreach (var start in starts)
        {
            var other = Theta(start);
            var otherEnd = problem.Fit(y, weights, other, 0, options.MostIterations, memory);
            var better = otherEnd.Stop is StopReason.Converged or StopReason.StalledByRounding
                ? end.Stop == StopReason.IterationLimit || otherEnd.S < end.S
                : end.Stop == StopReason.IterationLimit && otherEnd.S < end.S;
            if (better)
                (theta, end) = (other, otherEnd);
        }

        // The memory must hold the point that is kept.
        end = problem.Fit(y, weights, theta, 0, options.MostIterations, memory);
    }

    // Two minima are one when they draw the same curve, whatever the order in which it names its parameters.
    private List<(double[] Theta, double S)> Distinct(List<(double[] Theta, double S)> minima)
    {
        var kept = new List<(double[] Theta, double S, double[] Curve)>();
        var scale = y.Max(Math.Abs);
        foreach (var (theta, s) in minima)
        {
            var curve = new double[y.Length];
            problem.Predict(theta, curve);
            if (!kept.Exists(k => k.Curve.Zip(curve, (a, b) => Math.Abs(a - b)).Max() <= SameCurve * scale))
                kept.Add((theta, s, curve));
        }

        return [.. kept.Select(k => (k.Theta, k.S))];
    }

    private bool SettleWeights(ref double[] weights, double[] theta, ref LevenbergMarquardt.End end, Reweigh reweigh)
    {
        weights = [.. weights];
        for (var round = 0; round < MostRounds; round++)
        {
            var before = (double[])theta.Clone();
            reweigh(Natural(theta), weights);
            end = problem.Fit(y, weights, theta, 0, options.MostIterations, memory);
            var moved = Enumerable.Range(0, theta.Length).Max(j => Math.Abs(theta[j] - before[j]) / coordinates.Size(j, theta[j]));
            if (moved <= 1e-11)
                return true;
        }

        return false;
    }

    private double[] Theta(IReadOnlyList<double> natural) => [.. natural.Select((b, j) => coordinates.ToTheta(j, b))];

    private double[] Natural(IReadOnlyList<double> theta) => [.. theta.Select((t, j) => coordinates.ToNatural(j, t))];
}

/// <summary>New weights from the parameters of the last round.</summary>
/// <param name="p">Natural parameters.</param>
/// <param name="weights">Receives the weights.</param>
internal delegate void Reweigh(ReadOnlySpan<double> p, Span<double> weights);
