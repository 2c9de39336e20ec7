using System.Globalization;
using Holdfast.Statistics;

namespace Holdfast.Calibration;

/// <summary>Chooses weights, range and shape for a run, in that order, and writes down why.</summary>
internal sealed class CurveSelection
{
    private const double HarmlessPercent = 2;
    private const double FarOffInSd = 3;
    private const double StrongBend = -0.3;

    private readonly IReadOnlyList<double> blanks;
    private readonly CalibrationOptions options;
    private readonly List<Finding> findings = [];
    private readonly List<string> reasons = [];
    private readonly StandardReading[] offered;
    private NoiseLaw law = new(NoiseKind.Constant, NoiseEvidence.Nothing, null, 0);

    public CurveSelection(IReadOnlyList<StandardReading> standards, IReadOnlyList<double> blanks, CalibrationOptions options)
    {
        ArgumentNullException.ThrowIfNull(standards);
        ArgumentNullException.ThrowIfNull(blanks);
        if (standards.Any(s => !(s.Level >= 0 && double.IsFinite(s.Level) && double.IsFinite(s.Signal))))
            throw new ArgumentException("Levels must be 0 or more, and every reading finite.", nameof(standards));
        if (blanks.Any(b => !double.IsFinite(b)))
            throw new ArgumentException("Every blank reading must be finite.", nameof(blanks));
        (this.blanks, this.options) = (blanks, options);
        offered = [.. standards.Where(s => options.Top is not { } top || s.Level <= top).OrderBy(s => s.Level)];
    }

    /// <summary>The curve, or the reason why there is none.</summary>
    public Outcome<CalibrationCurve> Choose()
    {
        var levels = Level.Of(offered);
        if (levels.Count < 2 || offered.Length < 3)
            return Refuse(Invariant($"{offered.Length} readings of {levels.Count} levels give no line with an uncertainty"));
        if (options.Top is { } top)
            reasons.Add(Invariant($"Standards above {top:G4} {options.ConcentrationUnit} were left out as told."));
        law = NoiseLaw.Of(offered, blanks);
        var (kind, used) = ChooseRangeAndShape(levels);
        var weights = WeightsFor(used);
        var fit = FitOf(kind, used, weights);
        if (fit.DegreesOfFreedom < 1)
            return Refuse("there are as many parameters as readings");
        if (SlopeProblem(fit, kind, used, weights) is { } problem)
            return Refuse(problem);
        if (kind == CurveKind.LineThroughZero && ZeroRefusal(used, weights) is { } refusal)
        {
            findings.Add(refusal);
            reasons.Add("The intercept is kept: it differs from zero.");
            kind = CurveKind.Line;
            fit = FitOf(kind, used, weights);
        }

        var linearity = Linearity.Of(used, weights);
        Remark(kind, fit, used, weights, linearity);
        var limits = DetectionLimits.Of(fit, weights, blanks, options.Limit, options.SampleReplicates);
        RemarkBlanks(fit, limits);
        var curve = new CalibrationCurve(options, kind, fit, weights, used, linearity, limits, reasons) { Bent = Bent(kind, used, levels) };
        RemarkInstrument(curve);
        return new(curve, findings);
    }

    private (CurveKind Kind, IReadOnlyList<StandardReading> Used) ChooseRangeAndShape(IReadOnlyList<Level> levels)
    {
        if (options.Curve is { } told)
        {
            reasons.Add(told switch
            {
                CurveKind.Line => "A straight line was asked for.",
                CurveKind.LineThroughZero => "A line through zero was asked for.",
                _ => "A quadratic was asked for.",
            });
            return (told == CurveKind.Quadratic && levels.Count < 3 ? CurveKind.Line : told, offered);
        }

        var weights = WeightsFor(offered);
        var full = Linearity.Of(offered, weights);
        var highest = levels[^1].Value;
        if (full.Verdict != LinearityVerdict.Curved)
        {
            reasons.Add(Invariant($"A straight line to {highest:G4} {options.ConcentrationUnit}: {Tests(full)}, so no test shows a bend."));
            return (CurveKind.Line, offered);
        }

        var why = FailedTest(full);
        if (LargestBendPercent(full, weights) is { } bend && bend <= HarmlessPercent)
        {
            findings.Add(CalibrationFindings.SmallBend(why, bend));
            reasons.Add(Invariant($"The standards bend ({why}), but line and quadratic differ by {bend:G2} % at most: the line is kept."));
            return (CurveKind.Line, offered);
        }

        var straight = LinearRange.Of(offered, WeightsFor).Longest;
        var bent = QuadraticAllowed(levels, weights);
        if (straight is not null && (options.WhenCurved == WhenCurved.ShortenRange || !bent))
        {
            findings.Add(CalibrationFindings.Shortened(highest, straight.Top, why, options.ConcentrationUnit));
            reasons.Add(Invariant(
                $"A straight line to {straight.Top:G4} {options.ConcentrationUnit} ({straight.Standards.Count} readings; {Tests(straight.Linearity)}), because the standards bend up to {highest:G4} {options.ConcentrationUnit} ({Tests(full)})."));
            return (CurveKind.Line, straight.Standards);
        }

        if (bent)
        {
            findings.Add(CalibrationFindings.Quadratic(why));
            reasons.Add(Invariant($"A quadratic to {highest:G4} {options.ConcentrationUnit}, because the line is refused ({Tests(full)})."));
            return (CurveKind.Quadratic, offered);
        }

        findings.Add(CalibrationFindings.Curved(why));
        reasons.Add(Invariant($"A straight line although the standards bend ({why}): neither five straight levels nor enough levels for a quadratic."));
        return (CurveKind.Line, offered);
    }

    // The author never loses a reading that lies between her standards: where the line was cut short, the quadratic over all of them stands by.
    private CalibrationCurve? Bent(CurveKind kind, IReadOnlyList<StandardReading> used, IReadOnlyList<Level> levels)
    {
        if (kind != CurveKind.Line || used.Count == offered.Length)
            return null;
        var weights = WeightsFor(offered);
        if (!QuadraticAllowed(levels, weights))
            return null;
        var fit = FitOf(CurveKind.Quadratic, offered, weights);
        return new(
            options, CurveKind.Quadratic, fit, weights, offered, Linearity.Of(offered, weights),
            DetectionLimits.Of(fit, weights, blanks, options.Limit, options.SampleReplicates), ["The quadratic over every standard, for readings above the straight part."]);
    }

    /// <summary>Five levels with replicates, six without, and no turning point between zero and the top.</summary>
    private bool QuadraticAllowed(IReadOnlyList<Level> levels, Weights weights)
    {
        var replicated = levels.All(l => l.Readings.N > 1);
        if (levels.Count < (replicated ? 5 : 6))
            return false;
        var fit = FitOf(CurveKind.Quadratic, offered, weights);
        return Math.Sign(fit.SlopeAt(levels[0].Value)) == Math.Sign(fit.SlopeAt(levels[^1].Value));
    }

    // The law of scatter is found once, from all standards and blanks, before any range or shape is judged by it.
    private Weights WeightsFor(IReadOnlyList<StandardReading> used)
        => options.Weighting is { } told ? Weights.Of(told, used) ?? Weights.Of(Weighting.Equal, used)!
            : law.Function is { } scatter ? Weights.Of(scatter, used)
            : Weights.Of(Weighting.Equal, used)!;

    private static PolynomialFit FitOf(CurveKind kind, IReadOnlyList<StandardReading> used, Weights weights)
        => PolynomialFit.Of(
            [.. used.Select(s => s.Level)], [.. used.Select(s => s.Signal)], kind == CurveKind.Quadratic ? 2 : 1,
            [.. used.Select(s => weights.At(s.Level))], kind == CurveKind.LineThroughZero);

    private static string? SlopeProblem(PolynomialFit fit, CurveKind kind, IReadOnlyList<StandardReading> used, Weights weights)
    {
        if (kind == CurveKind.Quadratic)
            return Math.Sign(fit.SlopeAt(used[0].Level)) == Math.Sign(fit.SlopeAt(used[^1].Level)) ? null : "the quadratic turns inside the standards";
        var slope = fit.Coefficient(1)!;
        if (slope.PDiffersFrom(0) >= 0.05 || slope.Value == 0)
            return Invariant($"the slope {slope.Value:G3} ± {slope.StandardError:G2} does not differ from zero");
        for (var i = 0; i < used.Count; i++)
        {
            StandardReading[] rest = [.. used.Where((_, j) => j != i)];
            if (rest.Select(s => s.Level).Distinct().Count() > 1 && FitOf(CurveKind.Line, rest, weights).SlopeAt(0) * slope.Value <= 0)
                return Invariant($"the slope changes sign without one reading of {used[i].Level:G4}");
        }

        return null;
    }

    private static Finding? ZeroRefusal(IReadOnlyList<StandardReading> used, Weights weights)
        => FitOf(CurveKind.Line, used, weights).Coefficient(0) is { } intercept && intercept.PDiffersFrom(0) < 0.05
            ? CalibrationFindings.ZeroRefused(intercept.T(0), intercept.PDiffersFrom(0))
            : null;

    private void Remark(CurveKind kind, PolynomialFit fit, IReadOnlyList<StandardReading> used, Weights weights, Linearity linearity)
    {
        if (law.Kind != NoiseKind.Constant)
        {
            var weighted = weights.Kind != Weighting.Equal;
            findings.Add(weighted ? CalibrationFindings.Weighted(law) : CalibrationFindings.Unweighted(law));
            reasons.Add(Invariant($"Scatter {CalibrationFindings.Words(law)} (2 ln likelihood ratio {law.Ratio:G3}, limit {NoiseLaw.Decides}): {(weighted ? "weighted" : "not weighted, as told")}."));
        }

        var replicated = used.Count > linearity.Levels;
        if (linearity.Levels < 5 || !replicated)
            findings.Add(CalibrationFindings.NotTestable(linearity.Levels, replicated));
        if (options.Curve is CurveKind.Line or CurveKind.LineThroughZero && linearity.Verdict == LinearityVerdict.Curved)
        {
            findings.Add(LargestBendPercent(linearity, weights) is { } bend && bend <= HarmlessPercent
                ? CalibrationFindings.SmallBend(FailedTest(linearity), bend)
                : CalibrationFindings.CurvedAsTold(FailedTest(linearity)));
        }

        if (kind == CurveKind.Quadratic && fit.Coefficients is var c && c[2] * used[^1].Level / c[1] < StrongBend)
            findings.Add(CalibrationFindings.StrongBend(c[2] * used[^1].Level / c[1]));
        if (used.Where(s => s.Level == 0).ToList() is { Count: > 0 } zeros && zeros.All(s => s.Signal == 0))
            findings.Add(CalibrationFindings.TypedZero());
        RemarkStandards(kind, fit, used, weights);
    }

    private void RemarkStandards(CurveKind kind, PolynomialFit fit, IReadOnlyList<StandardReading> used, Weights weights)
    {
        var worst = Enumerable.Range(0, used.Count).MaxBy(i => Math.Abs(fit.Residuals[i]) * Math.Sqrt(fit.Weights[i]));
        var off = Math.Abs(fit.Residuals[worst]) * Math.Sqrt(fit.Weights[worst]) / fit.ResidualSd;
        if (off > FarOffInSd && used.Count > fit.Components.Length + 1)
        {
            var without = FitOf(kind, [.. used.Where((_, i) => i != worst)], weights);
            findings.Add(CalibrationFindings.OffStandard(used[worst], off, fit.SlopeAt(0), without.SlopeAt(0), options.ConcentrationUnit));
        }

        var isLowest = true;
        foreach (var level in Level.Of(used).Where(l => l.Value > 0))
        {
            var back = new BackCalculated(level.Value, InversePrediction.Solve(fit, level.Readings.Mean) ?? double.PositiveInfinity, isLowest);
            isLowest = false;
            if (!back.Passes)
                findings.Add(CalibrationFindings.LevelFailed(back, options.ConcentrationUnit));
        }
    }

    private void RemarkBlanks(PolynomialFit fit, DetectionLimits limits)
    {
        if (blanks.Count == 0)
            return;
        if (limits.All.All(l => l.Definition != LimitDefinition.TenSd))
            findings.Add(CalibrationFindings.BlanksWithoutScatter(blanks.Count));
        else if (blanks.Count < 10)
            findings.Add(CalibrationFindings.FewBlanks(blanks.Count, StandardDeviationFactor.At(0.025, blanks.Count - 1), StandardDeviationFactor.At(0.975, blanks.Count - 1)));
        if (InversePrediction.Solve(fit, blanks.Average()) is { } found && CarryOver.Contamination("mean", found, limits.Detection.Value) is { } contaminated)
            findings.Add(contaminated);
    }

    private void RemarkInstrument(CalibrationCurve curve)
    {
        if (options.Flame is { } flame && curve.CharacteristicConcentration > 2 * flame.Characteristic)
            findings.Add(CalibrationFindings.Insensitive(curve.CharacteristicConcentration, flame));
        if (options.Stocks.Distinct(StringComparer.Ordinal).ToList() is [var only])
            findings.Add(CalibrationFindings.OneStock(only));
        if (options.Age is { } age && age > TimeSpan.FromDays(1))
            findings.Add(CalibrationFindings.Old(age.TotalDays));
    }

    /// <summary>Largest difference between line and quadratic at a standard above zero, in %, or null where it exceeds a reading's own uncertainty.</summary>
    private static double? LargestBendPercent(Linearity full, Weights weights)
    {
        var line = full.Line;
        var parabola = PolynomialFit.Of(line.X, line.Y, 2, line.Weights);
        var largest = 0.0;
        foreach (var level in line.X.Distinct().Where(l => l > 0))
        {
            var apart = Math.Abs(parabola.At(level) - line.At(level));
            if (apart > parabola.ResidualSd / Math.Sqrt(weights.At(level)))
                return null;
            largest = Math.Max(largest, 100 * apart / Math.Abs(line.SlopeAt(level) * level));
        }

        return largest;
    }

    private static string Tests(Linearity l)
    {
        var mandel = l.Mandel is { } m ? Invariant($"Mandel F {m.F:G4}, p {m.P:G2}") : "Mandel not testable";
        return l.LackOfFit is { } f ? Invariant($"{mandel}; lack of fit F {f.F:G4}, p {f.P:G2}") : mandel;
    }

    /// <summary>The test that speaks loudest, for a short sentence.</summary>
    private static string FailedTest(Linearity l)
        => l.LackOfFit is { } f && !(l.Mandel?.P <= f.P) ? Invariant($"lack of fit F {f.F:G3}, p {f.P:G2}") : Invariant($"Mandel F {l.Mandel!.F:G3}, p {l.Mandel.P:G2}");

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private Outcome<CalibrationCurve> Refuse(string why)
    {
        findings.Add(CalibrationFindings.NoSlope(why));
        return new(null, findings);
    }
}
