using System.Runtime.InteropServices;
using Holdfast.Amounts;

namespace Holdfast.Fitting.Solving;

/// <summary>A prediction whose readings share errors: least squares through their covariance (A. C. Aitken 1935; from memory).</summary>
/// <typeparam name="TPrediction">What each observation should read.</typeparam>
/// <param name="prediction">The model.</param>
/// <param name="coordinates">The coordinates of its parameters.</param>
/// <param name="covariance">Covariance of the readings by rows, in the square of their unit.</param>
internal sealed class GeneralisedProblem<TPrediction>(TPrediction prediction, Coordinates coordinates, double[] covariance) : IProblem
    where TPrediction : struct, IPrediction
{
    private const int MostSteps = 200;

    private readonly TPrediction prediction = prediction;
    private readonly double[] whole = TriangleOf(covariance, prediction.Count, []);

    /// <inheritdoc/>
    public Coordinates Coordinates => coordinates;

    /// <inheritdoc/>
    public int Count => prediction.Count;

    /// <inheritdoc/>
    public Refit.End Refit(
        ReadOnlySpan<double> y, ReadOnlySpan<double> w, Span<double> theta, uint held, double mu, Span<double> downhill, Span<double> spread)
    {
        var memory = new Workspace(Count, coordinates.Count);
        var end = Fit(y, w, theta, held, MostSteps, memory);
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

    /// <inheritdoc/>
    public LevenbergMarquardt.End Fit(
        ReadOnlySpan<double> y, ReadOnlySpan<double> w, Span<double> theta, uint held, int mostIterations, Workspace memory)
        => LevenbergMarquardt.Run(Turned(w), coordinates, y, w, theta, held, mostIterations, memory);

    /// <inheritdoc/>
    public double Evaluate(ReadOnlySpan<double> y, ReadOnlySpan<double> theta, Workspace memory)
        => Turned(memory.RootWeight).Evaluate(theta, y, memory.RootWeight, memory.Residual, memory.Jacobian);

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

    // An observation of weight 0 is left out of the covariance too, so that the others are turned as if it had never been read.
    private TurnedResiduals<TPrediction> Turned(ReadOnlySpan<double> w)
        => new(prediction, coordinates, w.Contains(0) ? TriangleOf(covariance, Count, w) : whole);

    private static double[] TriangleOf(double[] covariance, int n, ReadOnlySpan<double> w)
    {
        double[] l = [.. covariance];
        for (var i = 0; i < w.Length; i++)
        {
            for (var j = 0; w[i] == 0 && j < n; j++)
                l[i * n + j] = l[j * n + i] = i == j ? 1 : 0;
        }

        Triangle.Factor(l, n);
        return l;
    }
}
