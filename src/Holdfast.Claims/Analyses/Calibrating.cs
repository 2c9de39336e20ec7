using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Calibration;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>Turns the runs of a study into calibration curves and the readings of its samples into concentrations.</summary>
internal sealed class Calibrating
{
    // What a run's file may say about itself, as the reader keeps it.
    private const string UsedUpTo = "Calibrated to";
    private const string LineOf = "Calibration";
    private const string Shape = "Calibration curve";
    private const string Weighed = "Calibration weights";

    private readonly Study study;
    private readonly RecordedAmounts recorded;
    private readonly Dictionary<string, Sample> samples;
    private readonly Dictionary<string, CalibratedRun> runs = new(StringComparer.OrdinalIgnoreCase);
    private readonly ILookup<string, Reading> bySample;
    private readonly ILookup<string, Reading> onlyBelow;
    private readonly Lazy<(VarianceFunction Law, int Freedom)?> repeats;

    /// <summary>Calibrates every absorption run of a study.</summary>
    /// <param name="study">The study.</param>
    /// <param name="recorded">Its recorded amounts.</param>
    public Calibrating(Study study, RecordedAmounts recorded)
    {
        this.study = study;
        this.recorded = recorded;
        samples = study.Samples.ToDictionary(s => s.Code, StringComparer.Ordinal);
        var struck = study.Strikes.Select(s => s.Target).ToHashSet(StringComparer.Ordinal);
        var standing = study.Readings.Where(r => r.Value is not null && !struck.Contains(r.Id) && samples.ContainsKey(r.Sample)).ToArray();
        onlyBelow = study.Readings.Where(r => r is { Value: null, Below: not null } && r.Signal == SpectrometryProperties.ReportedConcentration.Name && !struck.Contains(r.Id))
            .ToLookup(r => r.Sample, StringComparer.Ordinal);
        var counting = standing.Where(r => !struck.Contains(r.Sample)).ToImmutableArray();
        // A struck vessel keeps its number, so that figures and trails still show what was struck; it counts nowhere.
        bySample = standing.ToLookup(r => r.Sample, StringComparer.Ordinal);
        repeats = new(Repeats);
        foreach (var run in study.Runs.Where(r => SpectrometryProperties.IsCalibrated(r.Signal)))
            runs[run.Id] = Calibrate(run, [.. counting.Where(r => r.Run == run.Id)]);
        // A run lends the line of its own standards, also when it was told to use another's.
        CalibratedRun[] lenders = [.. runs.Values.Where(r => r.Curve is not null)];
        foreach (var run in runs.Values.Where(r => r.Curve is null || study.Calibrations.ContainsKey(r.Run.Id)).ToArray())
            runs[run.Run.Id] = Borrow(run, lenders);
        Runs = [.. study.Runs.Where(r => runs.ContainsKey(r.Id)).Select(r => runs[r.Id])];
    }

    /// <summary>The calibrated runs in the order they came.</summary>
    public ImmutableArray<CalibratedRun> Runs { get; }

    /// <summary>The concentration of a sample from all its readings that are not struck themselves; null when it was not read.</summary>
    /// <param name="sample">The sample.</param>
    public Concentration? Of(Sample sample)
    {
        var readings = bySample[sample.Code].ToImmutableArray();
        var absorbances = readings.Where(r => SpectrometryProperties.IsCalibrated(r.Signal)).ToImmutableArray();
        var reported = readings.Where(r => r.Signal == SpectrometryProperties.ReportedConcentration.Name).ToImmutableArray();
        // Where no line belongs to the absorbances, a concentration that came beside them is what is known.
        if (!absorbances.IsEmpty && (reported.IsEmpty || absorbances.Any(r => runs.GetValueOrDefault(r.Run)?.Curve is not null)))
            return FromAbsorbance(sample, absorbances);
        if (!reported.IsEmpty)
            return FromReport(sample, reported);
        // "< 0.05" alone bounds what is left and gives no value.
        return readings.IsEmpty && onlyBelow[sample.Code].ToImmutableArray() is { IsEmpty: false } below
            ? new Concentration(null, below.Max(r => r.Below!.Value * r.Dilution), null, below, [])
            : null;
    }

    private CalibratedRun Calibrate(Run run, ImmutableArray<Reading> readings)
    {
        var standards = Role(readings, SampleRole.Standard)
            .Select(r => (Known: samples[r.Sample].Number(SpectrometryProperties.StandardConcentration), Reading: r))
            .Where(s => s.Known is not null)
            .Select(s => new StandardReading(s.Known!.Value, s.Reading.Value!.Value, s.Reading.Id))
            .ToImmutableArray();
        var (possible, below) = (standards.RemoveAll(s => s.Level < 0), standards.RemoveAll(s => s.Level >= 0));
        var blanks = Role(readings, SampleRole.Blank).GroupBy(r => r.Sample, StringComparer.Ordinal).Select(g => g.Average(r => r.Value!.Value)).ToImmutableArray();
        var outcome = possible.IsEmpty
            ? Outcome<CalibrationCurve>.None()
            : CalibrationCurve.Of(possible, blanks, new CalibrationOptions
            {
                Run = run.Id,
                Top = run.Number("", UsedUpTo),
                Curve = run.Detail(Shape)?.ToUpperInvariant() switch { "LINE" => CurveKind.Line, "QUADRATIC" => CurveKind.Quadratic, _ => null },
                Weighting = run.Detail(Weighed)?.ToUpperInvariant() switch { "EQUAL" => Weighting.Equal, "BY SCATTER" => Weighting.VarianceFunction, _ => null },
                Flame = run.Detail("Element") is { } element ? FlameLine.Of(element) : null,
            });
        Finding[] refused = below.IsEmpty ? []
            : [Finding.Of("HF-454", Weight.Caution, $"Run {run.Id}: {Phrase.Count(below.Length, "standard reading")} at a concentration below 0 ({Phrase.With(below[0].Level, "mg/L")}) cannot be and is left out. Correct the concentration of the standard.", run.Id)];
        return new CalibratedRun(run, [.. possible.Select(s => (s.Level, s.Signal))], blanks, [.. outcome.Findings, .. refused])
        {
            Curve = outcome.Value,
            Checks = outcome.Value is { } curve ? Checked(run, curve, readings) : [],
        };
    }

    private CalibratedRun Borrow(CalibratedRun run, CalibratedRun[] lenders)
    {
        var chosen = study.Calibrations.GetValueOrDefault(run.Run.Id);
        var named = run.Run.Detail(LineOf);
        var lender = chosen is not null ? Array.Find(lenders, l => l.Run.Id == chosen)
            : named is not null ? Array.Find(lenders, l => named.Contains(l.Run.Id, StringComparison.OrdinalIgnoreCase))
            : lenders.Length == 1 ? lenders[0] : null;
        if (lender is null)
        {
            return run with
            {
                Curve = null,
                Checks = [],
                Findings = run.Findings.Add(Finding.Of("HF-462", Weight.Stop, $"Run {run.Run.Id} has no calibration. " + (chosen is not null ? $"It was to use the one of {chosen}, which has none."
                    : lenders.Length == 0 ? "Take in its standards, or say which of its samples are standards."
                    : $"Use the one of {string.Join(" or ", lenders.Select(l => l.Run.Id))}."), run.Run.Id)),
            };
        }

        var borrowed = run with { Curve = lender.Curve, BorrowedFrom = lender.Run.Id };
        return borrowed with
        {
            Checks = Checked(run.Run, lender.Curve!, [.. study.Readings.Where(r => r.Run == run.Run.Id && r.Value is not null && samples.ContainsKey(r.Sample) && !study.IsStruck(r))]),
            Findings = run.Findings.Add(Finding.Of("HF-463", Weight.Caution,
                $"Run {run.Run.Id} {(chosen is null ? "has no standards of its own and uses" : "was told to use")} the line of {lender.Run.Id}. Drift between the two cannot be seen.", run.Run.Id)),
        };
    }

    private ImmutableArray<CheckReading> Checked(Run run, CalibrationCurve curve, ImmutableArray<Reading> readings)
        => [.. Role(readings, SampleRole.CheckStandard)
            .GroupBy(r => r.Sample, StringComparer.Ordinal)
            .Select(g => (Known: samples[g.Key].Number(SpectrometryProperties.StandardConcentration), Readings: g.ToArray()))
            .Where(c => c.Known > 0)
            .Select(c => new CheckReading(
                c.Readings[0].Sample, c.Readings.Min(r => r.Order), c.Known!.Value,
                curve.Read($"{run.Id}/{c.Readings[0].Sample}", [.. c.Readings.Select(r => r.Value!.Value)]).Signed))];

    private Concentration FromAbsorbance(Sample sample, ImmutableArray<Reading> readings)
    {
        var findings = new List<Finding>();
        var values = new List<Measured>();
        double? detection = null, quantification = null;
        foreach (var portion in readings.GroupBy(r => (r.Run, r.Portion, r.Dilution)).OrderBy(g => g.Min(r => r.Order)))
        {
            var run = runs.GetValueOrDefault(portion.Key.Run);
            if (run?.Curve is not { } curve)
            {
                findings.Add(Finding.Of("HF-464", Weight.Stop, $"{sample.Code}: run {portion.Key.Run} has no calibration, so no concentration follows.", sample.Code));
                continue;
            }

            // The portion's own name keeps the reading's source apart from other runs and portions of the same sample.
            var id = readings.All(r => r.Run == portion.Key.Run && r.Portion == portion.Key.Portion)
                ? sample.Code
                : string.Create(CultureInfo.InvariantCulture, $"{sample.Code} ({portion.Key.Run}, portion {portion.Key.Portion})");
            var dilution = recorded.Dilution(portion.Key.Dilution, id, portion.First().Origin.ToString());
            var back = curve.Read(id, [.. portion.Select(r => r.Value!.Value)], dilution);
            findings.AddRange(back.Findings);
            if (back.Signed is { } value)
                values.Add(value);
            detection = Smallest(detection, curve.Limits.Detection.Value * portion.Key.Dilution);
            quantification = Smallest(quantification, curve.Limits.Quantification.Value * portion.Key.Dilution);
        }

        if (values.Count > 1 && Differ(values) is { } apart)
            findings.Add(Finding.Of("HF-465", Weight.Caution, $"{sample.Code}: two portions give {apart}. They should agree; look for a dilution slip or a matrix effect.", sample.Code));
        return new Concentration(values.Count == 0 ? null : Mean(values), detection, quantification, readings, [.. findings]);
    }

    // What is stated with the value wins, then the apparatus sheet, then repeated values of the whole study pooled, then an assumption that is named.
    private Concentration FromReport(Sample sample, ImmutableArray<Reading> readings)
    {
        // A reading of a diluted liquid counts times its factor; where the report held the dilution already, the factor was kept as 1.
        var mean = readings.Average(InTheVessel);
        var (n, trail) = (readings.Length, readings[0].Origin.ToString());
        if (readings.All(r => r.U is not null))
        {
            var stated = Math.Sqrt(readings.Sum(r => Math.Pow(r.U!.Value * r.Dilution, 2))) / n;
            return new(
                Measured.From(mean, new Source("reported:" + sample.Code, $"scatter that came with the concentration of {sample.Code}", stated, double.PositiveInfinity, Evaluation.Repetition, Unit: "mg/L", Trail: trail)),
                null, null, readings, []);
        }

        if (!recorded.StatesReported && repeats.Value is { } pooled)
        {
            var source = new Source(
                "reported:" + sample.Code, string.Create(CultureInfo.InvariantCulture, $"scatter of repeated reported values, pooled ({pooled.Freedom} degrees of freedom)"),
                pooled.Law.Sd(mean) / Math.Sqrt(n), pooled.Freedom, Evaluation.Repetition, Group: "repeats of reported values", Unit: "mg/L", Trail: trail);
            return new(Measured.From(mean, source), null, null, readings, [Finding.Of("HF-466", Weight.Caution,
                $"{sample.Code}: the concentration came without its calibration; only the scatter of repeated values, pooled over the study, is known.", sample.Code)]);
        }

        return new(recorded.Reported(mean, sample.Code, trail), null, null, readings, [Finding.Of("HF-466", Weight.Caution,
            $"{sample.Code}: the concentration came without its readings; "
            + (recorded.StatesReported ? "the apparatus sheet says how well such values are known." : "2 % and 0.01 mg/L are assumed. State u(Ce), enter it in the apparatus sheet, or take in the instrument's file."), sample.Code)]);
    }

    // Every sample that was reported more than once adds to one law of scatter; a single pair would be too noisy to weigh with.
    private (VarianceFunction Law, int Freedom)? Repeats()
    {
        const int fewest = 4;
        var groups = bySample
            .Select(g => g.Where(r => r.Signal == SpectrometryProperties.ReportedConcentration.Name).Select(InTheVessel).ToArray())
            .Where(v => v.Length > 1)
            .Select(v => (Level: Math.Abs(v.Average()), Sd: Math.Sqrt(v.Sum(x => Math.Pow(x - v.Average(), 2)) / (v.Length - 1)), DegreesOfFreedom: v.Length - 1.0))
            .ToArray();
        var freedom = (int)groups.Sum(g => g.DegreesOfFreedom);
        return freedom >= fewest && VarianceFunction.Of(groups) is { } law ? (law, freedom) : null;
    }

    private static double InTheVessel(Reading reading) => reading.Value!.Value * reading.Dilution;

    private static Measured Mean(List<Measured> values)
    {
        Measured sum = 0;
        foreach (var value in values)
            sum += value;
        return sum / values.Count;
    }

    private static string? Differ(List<Measured> values)
    {
        var low = values.MinBy(v => v.Value);
        var high = values.MaxBy(v => v.Value);
        var gap = high - low;
        return gap.Value > 2 * gap.U
            ? $"{RoundedNumber.Of(low.Value, low.U).PlusMinus} and {RoundedNumber.Of(high.Value, high.U).PlusMinus} mg/L"
            : null;
    }

    private IEnumerable<Reading> Role(IEnumerable<Reading> readings, SampleRole role) => readings.Where(r => samples[r.Sample].Role == role);

    private static double? Smallest(double? a, double b) => a is { } known ? Math.Min(known, b) : b;
}
