using Holdfast.Amounts;
using Holdfast.Statistics;

namespace Holdfast.Calibration;

/// <summary>
/// The curve of one run: what was fitted, over which range, with which weights and why. It reads samples back, and everything
/// read on it shares its uncertainty.
/// </summary>
public sealed class CalibrationCurve
{
    private const double LargestScatterAlpha = 0.01;
    private const double BendPercent = 2;

    private readonly Source[] parts;

    internal CalibrationCurve(
        CalibrationOptions options, CurveKind kind, PolynomialFit fit, Weights weights, IReadOnlyList<StandardReading> standards,
        Linearity linearity, DetectionLimits limits, IReadOnlyList<string> reasons)
    {
        Options = options;
        Kind = kind;
        Fit = fit;
        Weights = weights;
        Standards = standards;
        Linearity = linearity;
        Limits = limits;
        Reasons = reasons;
        var levels = Level.Of(standards);
        Top = levels[^1].Value;
        TopReading = levels[^1].Readings.Mean;
        Lowest = levels.Where(l => l.Value > 0).Min(l => l.Value);
        parts = [.. Enumerable.Range(0, fit.Components.Length).Select(Part)];
    }

    /// <summary>What was known about the run.</summary>
    public CalibrationOptions Options { get; }

    /// <summary>The shape in use.</summary>
    public CurveKind Kind { get; }

    /// <summary>The fit: coefficients, covariance, residuals.</summary>
    public PolynomialFit Fit { get; }

    /// <summary>The weights in use.</summary>
    public Weights Weights { get; }

    /// <summary>The standards in use, those above the range left out.</summary>
    public IReadOnlyList<StandardReading> Standards { get; }

    /// <summary>The tests of a straight line over the range in use.</summary>
    public Linearity Linearity { get; }

    /// <summary>Every named limit, and the ones that are reported.</summary>
    public DetectionLimits Limits { get; }

    /// <summary>How range, shape and weights were chosen, in the order of the choices.</summary>
    public IReadOnlyList<string> Reasons { get; }

    /// <summary>
    /// The quadratic over every standard offered, where the line was shortened because they bend and a quadratic is allowed: a reading above the straight
    /// part but inside the standards is read on it. Null otherwise.
    /// </summary>
    public CalibrationCurve? Bent { get; internal init; }

    /// <summary>Top of the range, in the unit of the standards.</summary>
    public double Top { get; }

    /// <summary>Mean reading of the top standard, in the unit of the readings.</summary>
    public double TopReading { get; }

    /// <summary>Lowest standard above zero, in the unit of the standards.</summary>
    public double Lowest { get; }

    /// <summary>Concentration that absorbs 1 % (A = 0.0044), in the unit of the standards; meaningful for absorbance only.</summary>
    public double CharacteristicConcentration => FlameLine.OnePercentAbsorbance / Fit.SlopeAt(0);

    /// <summary>Chooses a curve for a run and says how.</summary>
    /// <param name="standards">All readings of the standards, struck ones left out by the caller.</param>
    /// <param name="blanks">Independent blank readings, in the unit of the readings; may be empty.</param>
    /// <param name="options">What is known about the run.</param>
    /// <exception cref="ArgumentException">A level is negative or a reading is not finite.</exception>
    public static Outcome<CalibrationCurve> Of(IReadOnlyList<StandardReading> standards, IReadOnlyList<double> blanks, CalibrationOptions? options = null)
        => new CurveSelection(standards, blanks, options ?? new()).Choose();

    /// <summary>Reads a sample back.</summary>
    /// <param name="sampleId">Stable name of the sample or of its portion; the reading's source of uncertainty carries it.</param>
    /// <param name="readings">Its readings on this curve, in the unit of the readings.</param>
    /// <param name="dilution">Dilution factor of the portion that was read, 1 or more, with its uncertainty; no unit.</param>
    /// <param name="isSaturated">True when the instrument said that the detector was full.</param>
    /// <exception cref="ArgumentException">No reading, one that is not finite, or a dilution below 1.</exception>
    public ReadBack Read(string sampleId, IReadOnlyList<double> readings, Measured? dilution = null, bool isSaturated = false)
    {
        ArgumentException.ThrowIfNullOrEmpty(sampleId);
        var factor = dilution ?? 1;
        ArgumentOutOfRangeException.ThrowIfLessThan(factor.Value, 1, nameof(dilution));
        var summary = Summary.Of(readings);
        var mean = summary.Mean;
        var findings = new List<Finding>();
        if (isSaturated || Math.Sign(Fit.SlopeAt(Top)) * (mean - TopReading) > 0)
        {
            if (!isSaturated && Bent?.Read(sampleId, readings, dilution) is { Signed: not null } bent)
                return bent with { Findings = [CalibrationFindings.ReadOnQuadratic(sampleId, Top, Bent.Top, Options.ConcentrationUnit), .. bent.Findings] };
            var next = RangeGuard.NextDilution(factor.Value, mean, TopReading, isSaturated);
            return new(sampleId, ReadBackKind.AboveTop, mean, summary.N, factor, null, null, null, next, [CalibrationFindings.AboveTop(sampleId, mean, TopReading, next)]);
        }

        var (readingU, readingFreedom) = ReadingUncertainty(sampleId, summary, findings);
        var level = InversePrediction.Solve(Fit, mean) ?? Top;
        var freedom = Weights.DegreesOfFreedom(Fit, level, readingFreedom is null ? summary.N : 0);
        if (InversePrediction.Of(Fit, mean, readingU, readingFreedom, freedom) is not { } prediction)
            return new(sampleId, ReadBackKind.OffCurve, mean, summary.N, factor, null, null, null, null, [CalibrationFindings.OffCurve(sampleId, mean)]);
        var concentration = Concentration(sampleId, prediction, readingU, readingFreedom, freedom) * Options.StandardScale * factor;
        CheckBend(sampleId, mean, prediction, findings);
        var kind = Place(sampleId, prediction, factor.Value, findings);
        var limit = Limits.Detection.Value * factor.Value;
        return new(
            sampleId, kind, mean, summary.N, factor, concentration, prediction,
            kind == ReadBackKind.NotDetected ? new(concentration, limit, Limits.Detection.Definition) : null, null, findings);
    }

    private (double U, double? DegreesOfFreedom) ReadingUncertainty(string sampleId, Summary readings, List<Finding> findings)
    {
        var level = InversePrediction.Solve(Fit, readings.Mean) ?? Top;
        var expected = Fit.ResidualSd / Math.Sqrt(Weights.At(level));
        if (readings.Sd is { } own && expected > 0)
        {
            var freedom = Math.Min(Fit.DegreesOfFreedom, Weights.Scatter?.DegreesOfFreedom(1, level * level) ?? double.PositiveInfinity);
            var test = FTest.OfScatter(own, readings.N - 1, expected, freedom);
            if (test.P < LargestScatterAlpha)
            {
                findings.Add(CalibrationFindings.LessRepeatable(sampleId, test.F, test.Critical(1 - LargestScatterAlpha)));
                return (own / Math.Sqrt(readings.N), readings.N - 1);
            }
        }

        return (expected / Math.Sqrt(readings.N), null);
    }

    /// <summary>
    /// The concentration in the measured portion: x moves by u(reading)/slope with the reading and by −p(x)·u(part)/slope with each part of the curve.
    /// A reading whose scatter is the curve's own joins the curve's group, so that one estimate of scatter is not counted as two.
    /// </summary>
    private Measured Concentration(string sampleId, InversePrediction prediction, double readingU, double? readingFreedom, double freedom)
    {
        var reading = new Source(
            $"{Options.Run}/{sampleId}/reading", $"reading of {sampleId}", readingU, readingFreedom ?? freedom, Evaluation.Repetition,
            Group: readingFreedom is null ? Options.Run : null, Unit: Options.SignalUnit, Trail: sampleId);
        var basis = Fit.Basis(prediction.X);
        return Measured.From(
            prediction.X,
            [new(reading, readingU / prediction.Slope), .. parts.Select((part, k) => new Contribution(part, -basis[k] * part.U / prediction.Slope))]);
    }

    private Source Part(int component)
    {
        var power = Fit.ThroughOrigin ? component + 1 : component;
        var name = power switch { 0 => "height", 1 => "slope", _ => "curvature" };
        var unit = power switch
        {
            0 => Options.SignalUnit,
            1 => $"{Options.SignalUnit}/({Options.ConcentrationUnit})",
            _ => $"{Options.SignalUnit}/({Options.ConcentrationUnit})²",
        };
        return new(
            $"{Options.Run}/{name}", $"calibration {Options.Run}, {name}", Fit.UncertaintyOf(component), Fit.DegreesOfFreedom,
            Evaluation.Repetition, Group: Options.Run, Unit: unit, Trail: Options.Run);
    }

    private void CheckBend(string sampleId, double mean, InversePrediction prediction, List<Finding> findings)
    {
        if (Kind == CurveKind.Quadratic || Linearity.Verdict != LinearityVerdict.Curved || prediction.X <= 0)
            return;
        var parabola = PolynomialFit.Of(Fit.X, Fit.Y, 2, Fit.Weights);
        if (InversePrediction.Solve(parabola, mean) is not { } bent)
            return;
        var apart = Math.Abs(bent - prediction.X);
        if (apart > BendPercent / 100 * prediction.X || apart > prediction.U)
            findings.Add(CalibrationFindings.BendAtSample(sampleId, 100 * apart / prediction.X));
    }

    private ReadBackKind Place(string sampleId, InversePrediction prediction, double dilution, List<Finding> findings)
    {
        var (x, unit) = (prediction.X, Options.ConcentrationUnit);
        if (x + StudentDistribution.TwoSided(0.99, prediction.DegreesOfFreedom) * prediction.U < 0)
            findings.Add(CalibrationFindings.BelowBlank(sampleId, x, prediction.U, unit));
        if (x < Limits.Critical.Value)
        {
            findings.Add(CalibrationFindings.NotDetected(sampleId, x * dilution, Limits.Detection.Value * dilution, unit));
            return ReadBackKind.NotDetected;
        }

        if (x < Limits.Detection.Value)
        {
            findings.Add(CalibrationFindings.BarelyDetected(sampleId, x * dilution, Limits.Detection.Value * dilution, unit));
            return ReadBackKind.BelowDetectionLimit;
        }

        if (x >= Lowest)
            return ReadBackKind.InRange;
        findings.Add(CalibrationFindings.BelowLowest(sampleId, x, Lowest, unit));
        return ReadBackKind.BelowLowestStandard;
    }
}
