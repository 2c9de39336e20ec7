using MathNet.Numerics.RootFinding;

namespace Holdfast.Statistics;

/// <summary>The zero of a function that changes sign (R. P. Brent's method, from MathNet.Numerics).</summary>
internal static class Root
{
    private const int MostSteps = 60;
    private const double FarAway = 1e4;

    /// <summary>The zero between two ends; the upper end is doubled away from the lower until the sign changes.</summary>
    /// <param name="function">A continuous function.</param>
    /// <param name="low">Lower end, in the function's own unit.</param>
    /// <param name="high">Upper end, in the function's own unit.</param>
    public static double Of(Func<double, double> function, double low, double high)
    {
        var atLow = function(low);
        for (var i = 0; i < MostSteps && Math.Sign(function(high)) == Math.Sign(atLow); i++)
            high = low + 2 * (high - low);
        return Brent.FindRoot(function, low, high, 1e-13 * Math.Max(1, Math.Abs(high)), 200);
    }

    /// <summary>The zero on either side of a start; both ends move away from it until the sign changes.</summary>
    /// <param name="function">A continuous function.</param>
    /// <param name="start">Where to begin, in the function's own unit.</param>
    public static double Near(Func<double, double> function, double start)
    {
        var step = 0.5;
        for (var i = 0; i < MostSteps && Math.Sign(function(start - step)) == Math.Sign(function(start + step)); i++)
            step *= 2;
        return Brent.FindRoot(function, start - step, start + step, 1e-13 * Math.Max(1, Math.Abs(start) + step), 200);
    }

    /// <summary>ln of a found over a wanted probability, held finite where the found one has vanished; no unit.</summary>
    /// <param name="found">Probability found; no unit.</param>
    /// <param name="wanted">Probability wanted; no unit.</param>
    public static double LogRatio(double found, double wanted) => found > 0 ? Math.Log(found / wanted) : -FarAway;
}
