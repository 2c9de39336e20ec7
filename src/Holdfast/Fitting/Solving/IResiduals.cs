namespace Holdfast.Fitting.Solving;

/// <summary>What the thorough solver minimises the squares of: residuals of a model, each by its own weight or all through one covariance.</summary>
internal interface IResiduals
{
    /// <summary>Residuals and slopes at a point.</summary>
    /// <param name="theta">Where, in the solver's coordinates.</param>
    /// <param name="y">Readings.</param>
    /// <param name="rootWeight">Square roots of the weights; 0 leaves an observation out.</param>
    /// <param name="residual">Receives the residuals.</param>
    /// <param name="jacobian">Receives the slopes of the model by θ, by columns, weighed alike.</param>
    /// <returns>The sum of squares; not a number when a value or slope is not finite.</returns>
    double Evaluate(ReadOnlySpan<double> theta, ReadOnlySpan<double> y, ReadOnlySpan<double> rootWeight, Span<double> residual, Span<double> jacobian);

    /// <summary>The sum of squares of the readings themselves, weighed alike: what the residuals are small against.</summary>
    /// <param name="y">Readings.</param>
    /// <param name="rootWeight">Square roots of the weights.</param>
    double Size(ReadOnlySpan<double> y, ReadOnlySpan<double> rootWeight);
}

/// <summary>Residuals that are independent of one another: each by its own weight.</summary>
/// <typeparam name="TPrediction">What each observation should read.</typeparam>
/// <param name="prediction">The model.</param>
/// <param name="coordinates">The coordinates of its parameters.</param>
internal readonly struct WeighedResiduals<TPrediction>(TPrediction prediction, Coordinates coordinates) : IResiduals
    where TPrediction : struct, IPrediction
{
    private readonly TPrediction prediction = prediction;

    /// <inheritdoc/>
    public double Evaluate(ReadOnlySpan<double> theta, ReadOnlySpan<double> y, ReadOnlySpan<double> rootWeight, Span<double> residual, Span<double> jacobian)
        => LevenbergMarquardt.Evaluate(prediction, coordinates, theta, y, rootWeight, residual, jacobian);

    /// <inheritdoc/>
    public double Size(ReadOnlySpan<double> y, ReadOnlySpan<double> rootWeight)
    {
        double sum = 0;
        for (var i = 0; i < y.Length; i++)
            sum += rootWeight[i] * rootWeight[i] * y[i] * y[i];
        return sum;
    }
}

/// <summary>Residuals that share errors: turned by the triangle L of their covariance V = L·L′ until they are independent and of unit variance.</summary>
/// <typeparam name="TPrediction">What each observation should read.</typeparam>
/// <param name="prediction">The model.</param>
/// <param name="coordinates">The coordinates of its parameters.</param>
/// <param name="triangle">L by rows; a row and column of the unit matrix for an observation that is left out.</param>
internal readonly struct TurnedResiduals<TPrediction>(TPrediction prediction, Coordinates coordinates, double[] triangle) : IResiduals
    where TPrediction : struct, IPrediction
{
    private readonly TPrediction prediction = prediction;

    /// <inheritdoc/>
    public double Evaluate(ReadOnlySpan<double> theta, ReadOnlySpan<double> y, ReadOnlySpan<double> rootWeight, Span<double> residual, Span<double> jacobian)
    {
        if (!double.IsFinite(LevenbergMarquardt.Evaluate(prediction, coordinates, theta, y, rootWeight, residual, jacobian)))
            return double.NaN;
        Triangle.Forward(triangle, y.Length, residual);
        for (var j = 0; j < theta.Length; j++)
            Triangle.Forward(triangle, y.Length, jacobian.Slice(j * y.Length, y.Length));
        double sum = 0;
        foreach (var r in residual)
            sum += r * r;
        return sum;
    }

    /// <inheritdoc/>
    public double Size(ReadOnlySpan<double> y, ReadOnlySpan<double> rootWeight)
    {
        var turned = new double[y.Length];
        double sum = 0;
        for (var i = 0; i < y.Length; i++)
            turned[i] = rootWeight[i] * y[i];
        Triangle.Forward(triangle, y.Length, turned);
        foreach (var v in turned)
            sum += v * v;
        return sum;
    }
}
