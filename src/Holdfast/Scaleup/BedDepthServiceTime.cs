using System.Globalization;
using Holdfast.Statistics;

namespace Holdfast.Scaleup;

/// <summary>
/// Service time over bed depth: t_b = N0·Z/(C0·U) − ln(C0/C_b − 1)/(k·C0). Three depths or more at one velocity; the slope gives the capacity, the
/// intercept the rate, both the depth below which the front is out at once.
/// </summary>
/// <remarks>Equation as in Adsorption Technology and Design, Elsevier 1998, eqs 6.55 to 6.59, p. 184.</remarks>
public sealed class BedDepthServiceTime
{
    private readonly PolynomialFit line;
    private readonly double c0;
    private readonly double velocity;
    private readonly double log;

    private BedDepthServiceTime(PolynomialFit line, double c0, double velocity, double log) => (this.line, this.c0, this.velocity, this.log) = (line, c0, velocity, log);

    /// <summary>N0, mg per litre of bed.</summary>
    public Estimate Capacity => line.Coefficient(1)! with { Method = "depth-service line, slope", Value = Slope * c0 * velocity, StandardError = SlopeError * c0 * velocity };

    /// <summary>k, L/(mg min). Below 0 when the line cuts the wrong side of the origin.</summary>
    public Estimate Rate
    {
        get
        {
            var k = -log / (Intercept * c0);
            return line.Coefficient(0)! with { Method = "depth-service line, intercept", Value = k, StandardError = Math.Abs(k / Intercept) * InterceptError };
        }
    }

    /// <summary>Critical depth Z0 = −intercept/slope, cm, with the covariance of the two.</summary>
    public Estimate CriticalDepth
    {
        get
        {
            double bySlope = Intercept / (Slope * Slope), byIntercept = -1 / Slope;
            var variance = bySlope * bySlope * line.Covariance(1, 1) + byIntercept * byIntercept * line.Covariance(0, 0) + 2 * bySlope * byIntercept * line.Covariance(0, 1);
            return line.Coefficient(1)! with { Method = "depth-service line, where it meets 0", Value = -Intercept / Slope, StandardError = Math.Sqrt(Math.Max(0, variance)) };
        }
    }

    /// <summary>Service time at a depth, min.</summary>
    /// <param name="depth">Bed depth, cm.</param>
    public Estimate ServiceTime(double depth) => new("depth-service line", line.At(depth), line.UncertaintyAt(depth), line.DegreesOfFreedom, line.X.Count);

    /// <summary>Service time at a depth and another velocity, min: the slope scales with the velocity, the intercept stays.</summary>
    /// <param name="depth">Bed depth, cm.</param>
    /// <param name="newVelocity">Superficial velocity, cm/min, above 0.</param>
    public double ServiceTimeAt(double depth, double newVelocity)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(newVelocity);
        return Slope * velocity / newVelocity * depth + Intercept;
    }

    /// <summary>The line through service times.</summary>
    /// <param name="depths">Bed depths, cm.</param>
    /// <param name="times">Service times in the same order, min.</param>
    /// <param name="breakShare">C_b/C0 at which service ends, between 0 and 0.5.</param>
    /// <param name="c0">Inlet concentration, mg/L, above 0.</param>
    /// <param name="velocity">Superficial velocity, the same for all, cm/min, above 0.</param>
    public static Outcome<BedDepthServiceTime> Of(IReadOnlyList<double> depths, IReadOnlyList<double> times, double breakShare, double c0, double velocity)
    {
        Values.Require(depths);
        Values.Require(times);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(c0);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(velocity);
        if (!(breakShare > 0 && breakShare < 0.5))
            throw new ArgumentOutOfRangeException(nameof(breakShare), breakShare, "The share at which service ends lies between 0 and 0.5.");
        if (depths.Distinct().Count() < 3)
        {
            return Outcome<BedDepthServiceTime>.None(Finding.Of("HF-644", Weight.Stop, string.Create(CultureInfo.InvariantCulture,
                $"There are {depths.Distinct().Count()} bed depths: a depth-service line needs three or more at one velocity.")));
        }

        var line = PolynomialFit.Of(depths, times);
        return new(new(line, c0, velocity, Math.Log(1 / breakShare - 1)), line.Coefficients[1] > 0
            ? []
            : [Finding.Of("HF-645", Weight.Stop, "Service time does not rise with depth: there is no front to plan with. Check flow, channels and depths.")]);
    }

    private double Slope => line.Coefficients[1];

    private double Intercept => line.Coefficients[0];

    private double SlopeError => Math.Sqrt(line.Covariance(1, 1));

    private double InterceptError => Math.Sqrt(line.Covariance(0, 0));
}
