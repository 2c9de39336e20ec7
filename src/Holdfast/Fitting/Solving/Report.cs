using Holdfast.Statistics;

namespace Holdfast.Fitting.Solving;

/// <summary>Turns the end of a fit into its result: rank, covariance, intervals, residuals, and what must be said about them.</summary>
internal sealed class Report(
    IProblem problem, ModelCard card, Model? model, Points points, FitOptions options, Workspace memory, double[] weights, double[] theta,
    LevenbergMarquardt.End end)
{
    private readonly List<Finding> findings = [];
    private readonly int p = card.Parameters.Count;
    private readonly int n = weights.Count(w => w > 0);

    /// <summary>Unit that {x} stands for in the units of parameters.</summary>
    public required string XUnit { get; init; }

    /// <summary>Unit that {y} stands for.</summary>
    public required string YUnit { get; init; }

    /// <summary>False when weights that follow the fit did not settle.</summary>
    public required bool WeightsSettled { get; init; }

    /// <summary>Other minima.</summary>
    public required IReadOnlyList<Minimum> OtherMinima { get; init; }

    /// <summary>What was fitted; null for y of the points.</summary>
    public double[]? Response { get; init; }

    /// <summary>The error model of a series; null for points with weights of their own.</summary>
    public SeriesStatistics? Series { get; init; }

    /// <summary>A point with a lower sum of squares that a profile came across; null when this is the minimum.</summary>
    public double[]? Better { get; private set; }

    private int Nu => n - p;

    // Residuals that are nothing but the rounding of the readings.
    private bool IsExact => Series is null && end.S <= 1e-28 * points.YValues.Select((v, i) => weights[i] * v * v).Sum();

    /// <summary>The result.</summary>
    public FitResult Write()
    {
        var coordinates = problem.Coordinates;
        var free = LevenbergMarquardt.Factorise(coordinates, theta, 0, memory);
        var identifiability = Identifiability.Of(memory, free, coordinates, card.Parameters);
        var stop = end.Stop is not (StopReason.Plateau or StopReason.Refused) && identifiability.Condition > Identifiability.NotIdentifiable
            ? StopReason.RankDeficient
            : end.Stop;
        FindingsOfTheEnd(stop, identifiability);
        if (stop is StopReason.Plateau or StopReason.RankDeficient or StopReason.Refused)
            return FitResult.None(card, points, findings, stop);

        var scatter = Scatter();
        // Points without scatter were computed: their parameters are numbers, and nothing is left to give them an uncertainty.
        double? variance = IsExact ? null : scatter is ScatterModel.Known || Series is not null && Nu > 0 ? 1 : Nu > 0 ? end.S / Nu : null;
        var unscaled = Spread(Householder.Inverse(memory.Factor, memory.Rows, free), free);
        var covariance = variance is { } v ? Natural(Series?.Spread ?? unscaled, v) : null;
        double?[] quantiles = [.. Enumerable.Range(0, p).Select(j => Quantile(j, scatter))];
        var parameters = new FittedParameter[p];
        for (var j = 0; j < p; j++)
            parameters[j] = Parameter(j, covariance, unscaled, quantiles[j], variance);
        var leverages = Leverages(free);
        var predicted = new double[points.Count];
        problem.Predict(theta, predicted);
        double[] natural = [.. parameters.Select(q => q.Value)];
        double[] fitted = Response is null ? predicted : [.. points.X.Select(x => model!.Value(x, natural))];
        var scale = Math.Sqrt(variance ?? 0);
        var result = new FitResult(card, points, stop)
        {
            N = n,
            IsExact = IsExact && Nu > 0,
            Parameters = parameters,
            SumOfSquares = end.S,
            Scatter = scatter,
            Quantile = quantiles.Max(),
            Confidence = options.Confidence,
            Covariance = covariance,
            Criteria = Series is not null ? Series.Criteria : IsExact ? null : Criteria.Of(n, p, end.S, points.UValues is not null),
            Weights = weights,
            Fitted = fitted,
            Residuals = [.. points.Y.Select((y, i) => y - fitted[i])],
            Leverages = leverages,
            StandardisedResiduals = scale > 0
                ? [.. memory.Residual.Select((r, i) => leverages[i] < 1 ? r / (scale * Math.Sqrt(1 - leverages[i])) : 0)]
                : [],
            LackOfFit = Series is not null ? Series.LackOfFit : LackOfFit.Of(points.X, points.Y, weights, end.S, p),
            Series = Series,
            IndependentResiduals = [.. memory.Residual],
            Response = Response ?? points.YValues,
            Predicted = predicted,
            Identifiability = identifiability,
            OtherMinima = OtherMinima,
            Model = model,
            Problem = problem,
            Theta = theta,
            Findings = findings,
        };
        FindingsOfTheFit(result);
        return result;
    }

    private FittedParameter Parameter(int j, double[,]? covariance, double[,] unscaled, double? quantile, double? variance)
    {
        var definition = card.Parameters[j];
        var value = problem.Coordinates.ToNatural(j, theta[j]);
        if (IsExact)
            value = double.Parse(value.ToString("E10", System.Globalization.CultureInfo.InvariantCulture), System.Globalization.CultureInfo.InvariantCulture);
        var pinned = theta[j] >= problem.Coordinates.Upper[j] || theta[j] <= problem.Coordinates.Lower[j];
        double? se = covariance is not null && !pinned ? Math.Sqrt(covariance[j, j]) : null;
        Interval? wald = se is { } e && quantile is { } t ? new(value - t * e, value + t * e, options.Confidence) : null;
        ProfileInterval? interval = null;
        if (options.Profiles && quantile is { } cut && variance is { } v && v > 0)
        {
            var profile = new Profile(problem, Response ?? points.YValues, weights, theta, unscaled, end.S, v);
            // What the estimated scatter adds to the covariance widens the profile in the same measure.
            var widened = Series is not null && unscaled[j, j] > 0 && Series.Spread[j, j] > 0 ? cut * Math.Sqrt(Series.Spread[j, j] / unscaled[j, j]) : cut;
            interval = profile.Of(j, widened, options.Confidence);
            Better ??= profile.Better;
        }

        return new(definition, UnitTemplate.Fill(definition.Unit, XUnit, YUnit), value, se, wald, interval, pinned);
    }

    private double? Quantile(int j, ScatterModel scatter)
    {
        if (Series is null)
            return scatter == ScatterModel.Known ? StudentQuantile(double.PositiveInfinity) : Nu > 0 ? StudentQuantile(Nu) : null;
        if (Nu <= 0)
            return null;
        Span<double> direction = stackalloc double[p];
        direction[j] = 1;
        return Series.Quantile(options.Confidence, direction);
    }

    private ScatterModel Scatter()
    {
        if (Series is not null)
            return ScatterModel.ByVessel;
        if (points.UValues is null)
            return ScatterModel.Estimated;
        if (Nu <= 0)
            return ScatterModel.Known;
        var above = ChiSquareDistribution.Above(end.S, Nu);
        if (above < 0.025)
        {
            Add("HF-418", Weight.Caution, FormattableString.Invariant(
                $"The scatter is {Math.Sqrt(end.S / Nu):0.0} times the stated uncertainties (chi-square {end.S:0.0} on {Nu}): they are scaled up to it."));
            return ScatterModel.KnownButExceeded;
        }

        if (above > 0.975)
        {
            Add("HF-418", Weight.Note, FormattableString.Invariant(
                $"The scatter is only {Math.Sqrt(end.S / Nu):0.00} of the stated uncertainties. They may be too large; they are kept."));
        }

        return ScatterModel.Known;
    }

    private double StudentQuantile(double dof) => StudentDistribution.TwoSided(options.Confidence, dof);

    // (J′WJ)⁻¹ by θ over all parameters, zero for those on a bound.
    private double[,] Spread(double[,] inverse, int free)
    {
        var all = new double[p, p];
        for (var a = 0; a < free; a++)
        {
            for (var b = 0; b < free; b++)
                all[memory.Free[a], memory.Free[b]] = inverse[a, b];
        }

        return all;
    }

    private double[,] Natural(double[,] unscaled, double variance)
    {
        var natural = new double[p, p];
        for (var i = 0; i < p; i++)
        {
            for (var j = 0; j < p; j++)
                natural[i, j] = unscaled[i, j] * variance * problem.Coordinates.Slope(i, theta[i]) * problem.Coordinates.Slope(j, theta[j]);
        }

        return natural;
    }

    private double[] Leverages(int free)
    {
        var leverages = new double[points.Count];
        Span<double> row = stackalloc double[free], solved = stackalloc double[free];
        for (var i = 0; i < leverages.Length; i++)
        {
            for (var k = 0; k < free; k++)
                row[k] = memory.Jacobian[memory.Free[k] * memory.Rows + i];
            Householder.Forward(memory.Factor, memory.Rows, free, row, solved);
            foreach (var z in solved)
                leverages[i] += z * z;
        }

        return leverages;
    }

    private void FindingsOfTheEnd(StopReason stop, Identifiability identifiability)
    {
        if (stop == StopReason.Plateau)
        {
            var symbol = card.Parameters[end.Runaway].Symbol;
            Add("HF-415", Weight.Stop, FormattableString.Invariant(
                $"{card.Name}: {symbol} ran out of the range of the data, where the curve no longer depends on it. The points hold no information on it."));
        }
        else if (stop == StopReason.RankDeficient)
        {
            Add("HF-416", Weight.Stop, $"{card.Name}: {(identifiability.Determined!.StartsWith("nothing", StringComparison.Ordinal) ? "" : "only ")}{identifiability.Determined} is determined. Measure where the curve bends before reading a single parameter.");
        }
        else if (stop == StopReason.IterationLimit)
        {
            Add("HF-411", Weight.Stop, $"The fit of {card.Name} did not settle. Its numbers are not a least-squares answer; try other starts or a simpler curve.");
        }
        else if (stop == StopReason.OnBound)
        {
            var pinned = Enumerable.Range(0, p).Where(j => theta[j] >= problem.Coordinates.Upper[j] || theta[j] <= problem.Coordinates.Lower[j]);
            var symbols = string.Join(", ", pinned.Select(j => card.Parameters[j].Symbol));
            Add("HF-414", Weight.Caution, $"{card.Name}: {symbols} sits on its bound. It has no standard error; the simpler curve at the bound describes the points as well.");
        }
        else if (identifiability.Determined is { } determined)
        {
            Add("HF-416", Weight.Caution, FormattableString.Invariant(
                $"{card.Name}: the parameters are hard to tell apart; mainly {determined} is determined."));
        }

        if (!WeightsSettled)
            Add("HF-411", Weight.Stop, $"{card.Name}: the weights that follow the fit did not settle. State the uncertainties of the readings instead.");
    }

    private void FindingsOfTheFit(FitResult result)
    {
        if (Nu == 0)
            Add("HF-410", Weight.Stop, FormattableString.Invariant($"{n} points and {p} parameters: the curve passes through every point. No uncertainty, no comparison."));
        else if (Nu <= 2 && result.Scatter is ScatterModel.Estimated or ScatterModel.ByVessel)
            Add("HF-410", Weight.Caution, FormattableString.Invariant($"Only {Nu} degrees of freedom: intervals are {result.Quantile:0.0} standard errors wide on each side. Measure more points."));
        if (Nu > 0 && IsExact)
            Add("HF-428", Weight.Note, $"Every point lies on {card.Name} to the last digit. Such points were computed, not measured; errors and criteria mean nothing.");
        if (Nu > 0 && result.Aicc is null && !IsExact)
            Add("HF-429", Weight.Caution, FormattableString.Invariant($"{card.Name} is not comparable at n = {n}: AICc needs more than {p + 2} points."));
        foreach (var parameter in result.Parameters.Where(q => q.Profile is { IsClosed: false }))
        {
            if (parameter.Profile!.Lower.Kind == LimitKind.Open || parameter.Profile.Upper.Kind == LimitKind.Open)
                Add("HF-417", Weight.Caution, $"{card.Name}: {OpenSides(parameter.Profile)} for {parameter.Symbol} at {Percent(options.Confidence)} confidence. The points do not reach far enough to bound it.");
        }

        for (var i = 0; i < p; i++)
        {
            for (var j = i + 1; j < p; j++)
            {
                if (result.Correlation(i, j) is { } r && Math.Abs(r) > 0.98)
                    Add("HF-427", Weight.Note, FormattableString.Invariant($"{card.Name}: {card.Parameters[i].Symbol} and {card.Parameters[j].Symbol} are correlated {r:0.000}; read their combination rather than each."));
            }
        }

        if (result.LackOfFit is { Test.P: < 0.05 } lack)
            Add("HF-423", Weight.Caution, FormattableString.Invariant($"{card.Name} misses by more than the replicates differ (F {lack.Test.F:0.0}, p {lack.Test.P:0.000}): the curve does not describe these points."));
        for (var i = 0; i < result.Leverages.Count; i++)
        {
            if (result.Leverages[i] > 2.0 * p / n && n > p)
                Add("HF-419", Weight.Note, FormattableString.Invariant($"{points.Ids[i]} has leverage {result.Leverages[i]:0.00}: it goes far to set the curve of {card.Name} by itself."), points.Ids[i]);
        }

        foreach (var other in OtherMinima)
        {
            if (end.S > 0 && (points.UValues is null && Series is null ? n * Math.Log(other.SumOfSquares / end.S) : other.SumOfSquares - end.S) < 2)
            {
                var values = string.Join(", ", card.Parameters.Select((q, j) => FormattableString.Invariant($"{q.Symbol} {other.Values[j]:G3}")));
                Add("HF-412", Weight.Caution, $"{card.Name} fits as well with {values}. The points do not tell the two apart.");
            }
        }

        if (model is not null)
            findings.AddRange(model.Admissibility([.. result.Values], points.X.Min(), points.X.Max()));
    }

    private static string OpenSides(ProfileInterval profile)
        => profile.Lower.Kind == LimitKind.Open && profile.Upper.Kind == LimitKind.Open ? "no limit at all"
            : profile.Lower.Kind == LimitKind.Open ? "no lower limit" : "no upper limit";

    private static string Percent(double confidence) => FormattableString.Invariant($"{100 * confidence:0.#} %");

    private void Add(string code, Weight weight, string sentence, params string[] concerns) => findings.Add(Finding.Of(code, weight, sentence, concerns));
}
