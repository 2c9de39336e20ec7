using Holdfast.Statistics;

namespace Holdfast.Calibration;

/// <summary>From a reading back to a concentration, with the uncertainty split into the reading's own part and the curve's shared part.</summary>
/// <remarks>
/// First order: u² = (u²(reading) + u²(curve at x))/slope², the formula of J. N. Miller and J. C. Miller and of ISO 8466-1 (from
/// memory) for a line, and its counterpart for weights and for a parabola. Exact limits of a line: E. C. Fieller (1954).
/// </remarks>
/// <param name="X">Concentration, in the unit of the standards.</param>
/// <param name="Slope">Slope of the curve there, unit of the reading per unit of concentration.</param>
/// <param name="ReadingU">Standard uncertainty from the sample's own readings, in the unit of concentration.</param>
/// <param name="CurveU">Standard uncertainty from the curve, shared by all samples of the run, in the unit of concentration.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of both together.</param>
/// <param name="Symmetric">X ± t·u, 95 %.</param>
/// <param name="Fieller">Exact 95 % limits of a line, or null for other curves.</param>
/// <param name="G">t²u²(b)/b² of a line: how well its slope is known; 0 for other curves; no unit.</param>
public sealed record InversePrediction(
    double X, double Slope, double ReadingU, double CurveU, double DegreesOfFreedom, Interval Symmetric, Interval? Fieller, double G)
{
    private const double Confidence = 0.95;
    private const double FiellerFrom = 0.005;

    /// <summary>Combined standard uncertainty, in the unit of concentration.</summary>
    public double U => Math.Sqrt(ReadingU * ReadingU + CurveU * CurveU);

    /// <summary>The 95 % interval to report: the exact one where the slope is not known well (g above 0.005).</summary>
    public Interval Interval => G > FiellerFrom && Fieller is { } exact ? exact : Symmetric;

    /// <summary>Reads a mean reading back, or gives null where the curve has no such reading or its slope is not different from zero.</summary>
    /// <param name="fit">The curve.</param>
    /// <param name="reading">Mean reading, in the unit of the readings.</param>
    /// <param name="readingU">Standard uncertainty of that mean, same unit.</param>
    /// <param name="readingFreedom">Degrees of freedom of it when it was found from the sample's own scatter; null when it is the curve's.</param>
    /// <param name="curveFreedom">Degrees of freedom of the scatter behind curve and reading where a law of scatter had to be found; null for those of the fit.</param>
    public static InversePrediction? Of(PolynomialFit fit, double reading, double readingU, double? readingFreedom = null, double? curveFreedom = null)
    {
        ArgumentNullException.ThrowIfNull(fit);
        if (fit.DegreesOfFreedom < 1 || Solve(fit, reading) is not { } x)
            return null;
        var slope = fit.SlopeAt(x);
        double own = readingU / Math.Abs(slope), shared = fit.UncertaintyAt(x) / Math.Abs(slope);
        var known = curveFreedom ?? fit.DegreesOfFreedom;
        var dof = readingFreedom is { } m ? WelchSatterthwaite.Of((own * own, m), (shared * shared, known)) : known;
        var t = StudentDistribution.TwoSided(Confidence, dof);
        var half = t * Math.Sqrt(own * own + shared * shared);
        var g = fit.Degree == 1 ? Math.Pow(StudentDistribution.TwoSided(Confidence, fit.DegreesOfFreedom) * fit.UncertaintyOf(fit.Components.Length - 1) / slope, 2) : 0;
        return g >= 1 ? null : new(
            x, slope, own, shared, dof, new(x - half, x + half, Confidence),
            fit is { Degree: 1, ThroughOrigin: false } ? ExactLimits(fit, reading, readingU, t) : null, g);
    }

    /// <summary>The level at which the curve shows a reading, on the branch that runs through the standards; null when there is none.</summary>
    /// <param name="fit">The curve.</param>
    /// <param name="reading">Reading, in the unit of the readings.</param>
    public static double? Solve(PolynomialFit fit, double reading)
    {
        ArgumentNullException.ThrowIfNull(fit);
        var c = fit.Coefficients;
        if (fit.Degree == 1)
            return c[1] == 0 ? null : fit.ThroughOrigin ? reading / c[1] : fit.Centre + (reading - fit.Components[0].Coefficient) / c[1];
        var root = c[1] * c[1] - 4 * c[2] * (c[0] - reading);
        var sign = Math.Sign(fit.SlopeAt(0.5 * (fit.X.Min() + fit.X.Max())));
        if (root <= 0 || sign == 0)
            return null;
        var steep = sign * Math.Sqrt(root);
        return Math.Sign(c[1]) == sign ? 2 * (reading - c[0]) / (c[1] + steep) : (steep - c[1]) / (2 * c[2]);
    }

    private static Interval? ExactLimits(PolynomialFit fit, double reading, double readingU, double t)
    {
        double b = fit.Components[1].Coefficient, height = fit.UncertaintyOf(0), tilt = fit.UncertaintyOf(1), middle = fit.Centre;
        var g = Math.Pow(t * tilt / b, 2);
        if (g >= 1)
            return null;
        var d = (reading - fit.Components[0].Coefficient) / b;
        var half = t / Math.Abs(b) * Math.Sqrt((1 - g) * (readingU * readingU + height * height) + d * d * tilt * tilt);
        return new(middle + (d - half) / (1 - g), middle + (d + half) / (1 - g), Confidence);
    }
}
