using Holdfast.Amounts;
using Holdfast.Statistics;

namespace Holdfast.Calibration;

/// <summary>
/// Additions of known amounts to the sample itself, when the matrix changes the slope. It corrects proportional effects only,
/// never an offset, and it extrapolates: the additions must be straight.
/// </summary>
/// <remarks>J. N. Miller and J. C. Miller, Statistics and Chemometrics for Analytical Chemistry (from memory): x = a/b, with the covariance of a and b kept.</remarks>
/// <param name="Native">Concentration in the measured solution before any addition, in the unit of the additions.</param>
/// <param name="Interval">95 % interval, n − 2 degrees of freedom.</param>
/// <param name="Fit">The line of readings on additions.</param>
/// <param name="Linearity">Its tests.</param>
public sealed record StandardAdditions(Measured Native, Interval Interval, PolynomialFit Fit, Linearity Linearity)
{
    /// <summary>Evaluates additions made up to one final volume.</summary>
    /// <param name="run">Stable name; the sources of uncertainty carry it.</param>
    /// <param name="additions">Added concentration in the final solution, and reading.</param>
    public static Outcome<StandardAdditions> Of(string run, IReadOnlyList<StandardReading> additions)
    {
        ArgumentException.ThrowIfNullOrEmpty(run);
        ArgumentNullException.ThrowIfNull(additions);
        if (additions.Count < 3 || additions.Select(a => a.Level).Distinct().Count() < 2)
            return Outcome<StandardAdditions>.None(CalibrationFindings.NoSlope("fewer than three readings or two different additions"));
        var linearity = Linearity.Of(additions);
        var fit = linearity.Line;
        if (fit.Coefficient(1)!.PDiffersFrom(0) >= 0.05)
            return Outcome<StandardAdditions>.None(CalibrationFindings.NoSlope("the readings do not rise with the additions"));
        double b = fit.Components[1].Coefficient, height = fit.Components[0].Coefficient;
        var native = Measured.From(height / b - fit.Centre,
        [
            new(Part(run, "height", fit, 0), fit.UncertaintyOf(0) / b),
            new(Part(run, "slope", fit, 1), -height / (b * b) * fit.UncertaintyOf(1)),
        ]);
        var half = StudentDistribution.TwoSided(0.95, fit.DegreesOfFreedom) * native.U;
        var findings = new List<Finding>();
        var last = additions.Max(a => a.Level);
        if (last < native.Value)
            findings.Add(CalibrationFindings.LongExtrapolation(run, native.Value, last));
        if (linearity.Verdict == LinearityVerdict.Curved)
            findings.Add(CalibrationFindings.BentAdditions(run));
        return new(new(native, new(native.Value - half, native.Value + half, 0.95), fit, linearity), findings);
    }

    /// <summary>A reading brought back to the sample's own volume, for additions that were not made up to one volume.</summary>
    /// <param name="reading">Reading, in its unit.</param>
    /// <param name="sampleVolume">Volume of the sample, above 0, any unit.</param>
    /// <param name="addedVolume">Volume added, same unit.</param>
    public static double VolumeCorrected(double reading, double sampleVolume, double addedVolume)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(sampleVolume);
        ArgumentOutOfRangeException.ThrowIfNegative(addedVolume);
        return reading * (sampleVolume + addedVolume) / sampleVolume;
    }

    private static Source Part(string run, string name, PolynomialFit fit, int component)
        => new($"{run}/{name}", $"additions {run}, {name}", fit.UncertaintyOf(component), fit.DegreesOfFreedom, Evaluation.Repetition, Group: run, Trail: run);
}
