using System.Runtime.InteropServices;
using Holdfast.Amounts;

namespace Holdfast.Fitting.Solving;

/// <summary>A prediction with the coordinates of its parameters.</summary>
/// <typeparam name="TPrediction">What each observation should read.</typeparam>
internal sealed class Problem<TPrediction>(TPrediction prediction, Coordinates coordinates) : IProblem
    where TPrediction : struct, IPrediction
{
    private readonly TPrediction prediction = prediction;
    private readonly WeighedResiduals<TPrediction> residuals = new(prediction, coordinates);

    /// <inheritdoc/>
    public Coordinates Coordinates => coordinates;

    /// <inheritdoc/>
    public int Count => prediction.Count;

    /// <inheritdoc/>
    public Refit.End Refit(
        ReadOnlySpan<double> y, ReadOnlySpan<double> w, Span<double> theta, uint held, double mu, Span<double> downhill, Span<double> spread)
    {
        if (coordinates.Count > Normal4.Width)
            return RefitLarge(y, w, theta, held, downhill, spread);
        var end = Solving.Refit.Run(prediction, coordinates, y, w, theta, held, mu, out var normal);
        for (var j = 0; j < downhill.Length; j++)
            downhill[j] = normal[Normal4.Gradient + j];
        if (!spread.IsEmpty)
            Solving.Refit.Spread(normal, coordinates, theta, held, spread);
        return end;
    }

    /// <inheritdoc/>
    public LevenbergMarquardt.End Fit(
        ReadOnlySpan<double> y, ReadOnlySpan<double> w, Span<double> theta, uint held, int mostIterations, Workspace memory)
        => LevenbergMarquardt.Run(residuals, coordinates, y, w, theta, held, mostIterations, memory);

    /// <inheritdoc/>
    public double Evaluate(ReadOnlySpan<double> y, ReadOnlySpan<double> theta, Workspace memory)
        => residuals.Evaluate(theta, y, memory.RootWeight, memory.Residual, memory.Jacobian);

    /// <inheritdoc/>
    public void Predict(ReadOnlySpan<double> theta, Span<double> f)
    {
        Span<double> natural = stackalloc double[theta.Length];
        for (var j = 0; j < theta.Length; j++)
            natural[j] = coordinates.ToNatural(j, theta[j]);
        var p = MemoryMarshal.Cast<double, Number>(natural);
        for (var i = 0; i < f.Length; i++)
            f[i] = prediction.At<Number>(i, p).Value;
    }

    private Refit.End RefitLarge(
        ReadOnlySpan<double> y, ReadOnlySpan<double> w, Span<double> theta, uint held, Span<double> downhill, Span<double> spread)
    {
        const int mostIterations = 500;
        var memory = new Workspace(Count, coordinates.Count);
        var end = LevenbergMarquardt.Run(residuals, coordinates, y, w, theta, held, mostIterations, memory);
        for (var j = 0; j < downhill.Length; j++)
        {
            downhill[j] = 0;
            for (var i = 0; i < Count; i++)
                downhill[j] += memory.Jacobian[j * Count + i] * memory.Residual[i];
        }

        if (!spread.IsEmpty && double.IsFinite(end.S))
        {
            spread.Clear();
            var free = LevenbergMarquardt.Factorise(coordinates, theta, held, memory);
            var inverse = Householder.Inverse(memory.Factor, Count, free);
            for (var k = 0; k < free; k++)
            {
                var slope = coordinates.Slope(memory.Free[k], theta[memory.Free[k]]);
                spread[memory.Free[k]] = inverse[k, k] * slope * slope;
            }
        }

        return new(end.S, end.Stop is not (StopReason.IterationLimit or StopReason.Refused));
    }
}
