using Holdfast.Statistics;

namespace Holdfast.Calibration;

/// <summary>
/// Is it a line? Judged by curvature (Mandel), by lack of fit against replicates, by the order of residual signs and by reading
/// each standard back. The correlation coefficient is not among them: it measures spread against scatter, not straightness.
/// </summary>
/// <remarks>ISO 8466-1 uses Mandel's test at 99 % (from memory); lack of fit as in N. R. Draper and H. Smith, Applied Regression Analysis, 2.</remarks>
/// <param name="Levels">How many levels.</param>
/// <param name="Readings">How many readings.</param>
/// <param name="Line">The straight line that is judged.</param>
/// <param name="Mandel">Gain of a quadratic term, 1 and n − 3 degrees of freedom; null without them.</param>
/// <param name="LackOfFit">Scatter of level means about the line over replicate scatter; null without replicates or with two levels.</param>
/// <param name="ResidualSigns">Sign of the mean residual of each level, lowest first, for example "--++--".</param>
/// <param name="LargestResidualPercent">Largest residual in % of its reading, zero level left out; no unit.</param>
/// <param name="BackCalculated">Each level above zero read back on the line.</param>
public sealed record Linearity(
    int Levels,
    int Readings,
    PolynomialFit Line,
    FTest? Mandel,
    FTest? LackOfFit,
    string ResidualSigns,
    double LargestResidualPercent,
    IReadOnlyList<BackCalculated> BackCalculated)
{
    /// <summary>Level of Mandel's test; no unit.</summary>
    public const double MandelAlpha = 0.01;

    /// <summary>Level of the lack-of-fit test; no unit.</summary>
    public const double LackOfFitAlpha = 0.05;

    /// <summary>Tests a set of standards.</summary>
    /// <param name="standards">Two or more levels.</param>
    /// <param name="weights">Weights, or null for equal ones.</param>
    /// <exception cref="ArgumentException">Fewer than two levels.</exception>
    public static Linearity Of(IReadOnlyList<StandardReading> standards, Weights? weights = null)
    {
        ArgumentNullException.ThrowIfNull(standards);
        double[] x = [.. standards.Select(s => s.Level)], y = [.. standards.Select(s => s.Signal)];
        double[]? w = weights is null ? null : [.. x.Select(weights.At)];
        var line = PolynomialFit.Of(x, y, 1, w);
        var levels = Level.Of(standards);
        return new(
            levels.Count,
            standards.Count,
            line,
            Curvature(line, x, y, w, levels.Count),
            Misfit(line, levels),
            string.Concat(levels.Select(l => l.Readings.Mean < line.At(l.Value) ? '-' : '+')),
            standards.Where(s => s.Level != 0 && s.Signal != 0).Select(s => 100 * Math.Abs((s.Signal - line.At(s.Level)) / s.Signal)).DefaultIfEmpty(0).Max(),
            [.. levels.Where(l => l.Value > 0).Select((l, i) => new BackCalculated(l.Value, (l.Readings.Mean - line.At(0)) / line.SlopeAt(0), IsLowest: i == 0))]);
    }

    /// <summary>What the tests say together.</summary>
    public LinearityVerdict Verdict
        => Mandel?.P < MandelAlpha || LackOfFit?.P < LackOfFitAlpha ? LinearityVerdict.Curved
            : Mandel is null || Levels < 5 || LackOfFit is null ? LinearityVerdict.NotTestable
            : Levels < 6 || Readings < 3 * Levels ? LinearityVerdict.NotShownToBend
            : LinearityVerdict.Linear;

    /// <summary>Lack of fit of any polynomial against the replicates, or null where the data have none to give.</summary>
    /// <param name="fit">A fitted line or parabola.</param>
    public static FTest? LackOfFitOf(PolynomialFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return Misfit(fit, Level.Of(fit.X.Zip(fit.Y, (x, y) => new StandardReading(x, y))));
    }

    private static FTest? Curvature(PolynomialFit line, double[] x, double[] y, double[]? w, int levels)
    {
        var below = x.Length - 3;
        if (levels < 3 || below < 1)
            return null;
        var parabola = PolynomialFit.Of(x, y, 2, w);
        return IsExact(line) ? null : new("Mandel, quadratic term", (line.SumOfSquares - parabola.SumOfSquares) / (parabola.SumOfSquares / below), 1, below);
    }

    private static FTest? Misfit(PolynomialFit fit, IReadOnlyList<Level> levels)
    {
        var below = fit.X.Count - levels.Count;
        var above = fit.DegreesOfFreedom - below;
        if (below < 1 || above < 1 || IsExact(fit))
            return null;
        var index = levels.Select((l, i) => (l.Value, i)).ToDictionary(p => p.Value, p => p.i);
        double[] sum = new double[levels.Count], weight = new double[levels.Count];
        for (var i = 0; i < fit.X.Count; i++)
        {
            sum[index[fit.X[i]]] += fit.Weights[i] * fit.Y[i];
            weight[index[fit.X[i]]] += fit.Weights[i];
        }

        var pure = Enumerable.Range(0, fit.X.Count).Sum(i => fit.Weights[i] * Math.Pow(fit.Y[i] - sum[index[fit.X[i]]] / weight[index[fit.X[i]]], 2));
        return new("lack of fit against replicates", Math.Max(0, fit.SumOfSquares - pure) / above / (pure / below), above, below);
    }

    /// <summary>Readings that lie on the curve to their last digit hide their scatter; no test can use them.</summary>
    private static bool IsExact(PolynomialFit fit)
        => fit.SumOfSquares <= 1e-24 * fit.Y.Select((y, i) => fit.Weights[i] * y * y).Sum();
}

/// <summary>One standard read back on the curve.</summary>
/// <param name="Level">Its level, in the unit of the standards.</param>
/// <param name="Found">What the curve makes of its mean reading, same unit.</param>
/// <param name="IsLowest">True for the lowest level above zero, which may miss by 20 % instead of 10 %.</param>
public sealed record BackCalculated(double Level, double Found, bool IsLowest)
{
    /// <summary>Error in %; no unit.</summary>
    public double ErrorPercent => 100 * (Found - Level) / Level;

    /// <summary>True within 10 %, or 20 % at the lowest level (common practice).</summary>
    public bool Passes => Math.Abs(ErrorPercent) <= LargestErrorPercent;

    /// <summary>Largest error that passes, %; no unit.</summary>
    public double LargestErrorPercent => IsLowest ? 20 : 10;
}

/// <summary>What the tests of linearity say together.</summary>
public enum LinearityVerdict
{
    /// <summary>A test failed: the standards bend.</summary>
    Curved,

    /// <summary>Fewer than five levels, or no replicates.</summary>
    NotTestable,

    /// <summary>No test failed, but fewer than six levels of three readings: "not shown to bend", not "linear".</summary>
    NotShownToBend,

    /// <summary>No test failed on six or more levels of three.</summary>
    Linear,
}
