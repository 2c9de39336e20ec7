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

    private readonly Study study;
    private readonly RecordedAmounts recorded;
    private readonly Dictionary<string, Sample> samples;
    private readonly Dictionary<string, CalibratedRun> runs = new(StringComparer.OrdinalIgnoreCase);
    private readonly ILookup<string, Reading> bySample;

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
        var counting = standing.Where(r => !struck.Contains(r.Sample)).ToImmutableArray();
        // A struck vessel keeps its number, so that figures and trails still show what was struck; it counts nowhere.
        bySample = standing.ToLookup(r => r.Sample, StringComparer.Ordinal);
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
        return reported.IsEmpty ? null : FromReport(sample, reported);
    }

    private CalibratedRun Calibrate(Run run, ImmutableArray<Reading> readings)
    {
        var standards = Role(readings, SampleRole.Standard)
            .Select(r => (Known: samples[r.Sample].Number(SpectrometryProperties.StandardConcentration), Reading: r))
            .Where(s => s.Known is not null)
            .Select(s => new StandardReading(s.Known!.Value, s.Reading.Value!.Value, s.Reading.Id))
            .ToImmutableArray();
        var blanks = Role(readings, SampleRole.Blank).GroupBy(r => r.Sample, StringComparer.Ordinal).Select(g => g.Average(r => r.Value!.Value)).ToImmutableArray();
        var outcome = standards.IsEmpty
            ? Outcome<CalibrationCurve>.None()
            : CalibrationCurve.Of(standards, blanks, new CalibrationOptions
            {
                Run = run.Id,
                Top = run.Number("", UsedUpTo),
                Flame = run.Detail("Element") is { } element ? FlameLine.Of(element) : null,
            });
        return new CalibratedRun(run, [.. standards.Select(s => (s.Level, s.Signal))], blanks, [.. outcome.Findings])
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

    private static Concentration FromReport(Sample sample, ImmutableArray<Reading> readings)
    {
        // A reading of a diluted liquid counts times its factor; where the report held the dilution already, the factor was kept as 1.
        var mean = readings.Average(InTheVessel);
        var n = readings.Length;
        if (n < 2 && readings[0].U is { } stated)
        {
            var own = new Source("reported:" + sample.Code, $"scatter that came with the concentration of {sample.Code}", stated * readings[0].Dilution, double.PositiveInfinity, Evaluation.Repetition, Unit: "mg/L", Trail: readings[0].Origin.ToString());
            return new Concentration(Measured.From(mean, own), null, null, readings, []);
        }

        if (n < 2)
        {
            return new Concentration(mean, null, null, readings, [Finding.Of("HF-466", Weight.Caution,
                $"{sample.Code}: the concentration came without its readings, so it has no uncertainty of its own. Take in the instrument's file.", sample.Code)]);
        }

        var sd = Math.Sqrt(readings.Sum(r => Math.Pow(InTheVessel(r) - mean, 2)) / (n - 1));
        var source = new Source(
            "reported:" + sample.Code, $"scatter of {n.ToString(CultureInfo.InvariantCulture)} reported values of {sample.Code}", sd / Math.Sqrt(n), n - 1,
            Evaluation.Repetition, Unit: "mg/L", Trail: readings[0].Origin.ToString());
        return new Concentration(Measured.From(mean, source), null, null, readings, [Finding.Of("HF-466", Weight.Caution,
            $"{sample.Code}: the concentration came without its calibration; only the scatter of the reported values is known.", sample.Code)]);
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
