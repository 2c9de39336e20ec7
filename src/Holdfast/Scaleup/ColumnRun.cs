using Holdfast.Fitting;

namespace Holdfast.Scaleup;

/// <summary>Fits the curve of a fixed bed, from starts that the run itself gives.</summary>
public static class ColumnRun
{
    /// <summary>Every curve of a fixed bed, ordered by name. The logistic stands here once, whatever its names.</summary>
    public static IReadOnlyList<Model> Curves { get; } = Model.AllIn(typeof(ColumnRun).Namespace!);

    /// <summary>Fits k and τ, started at τ = time at half and k = ln 81/(t90 − t10).</summary>
    /// <param name="points">Time and C/C0.</param>
    /// <param name="options">How; null for the defaults.</param>
    public static FitResult Fit<TCurve>(Points points, FitOptions? options = null) where TCurve : struct, ICurve<TCurve>
    {
        ArgumentNullException.ThrowIfNull(points);
        options ??= FitOptions.Default;
        return Fitting.Fit.Of<TCurve>(points, Start(points) is { } start ? options with { Starts = [.. options.Starts, start] } : options);
    }

    private static double[]? Start(Points points)
    {
        var order = Enumerable.Range(0, points.Count).OrderBy(i => points.X[i]).ToArray();
        double[] x = [.. order.Select(i => points.X[i])], y = [.. order.Select(i => points.Y[i])];
        return Crossing(0.5) is { } half && Crossing(0.1) is { } ten && Crossing(0.9) is { } ninety && half > 0 && ninety > ten
            ? [Math.Log(81) / (ninety - ten), half]
            : null;

        double? Crossing(double share)
        {
            for (var i = 1; i < x.Length; i++)
            {
                if (y[i] >= share && y[i - 1] < share)
                    return x[i - 1] + (x[i] - x[i - 1]) * (share - y[i - 1]) / (y[i] - y[i - 1]);
            }

            return null;
        }
    }
}
