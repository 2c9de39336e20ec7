using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Fluorescence;
using Holdfast.Statistics;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>How well a sensor's signal repeats within a day and between days, and how fast it answers.</summary>
/// <param name="Levels">One for each level, dispersion and water of which several vessels were read on days that are recorded.</param>
/// <param name="Responses">One for each series in which a vessel was read over time after the quencher was added.</param>
/// <param name="Findings">What is missing.</param>
public sealed record SensorPrecisionStudy(ImmutableArray<SensorPrecision> Levels, ImmutableArray<ResponseRun> Responses, ImmutableArray<Finding> Findings)
{
    private static readonly Analysis<SensorPrecisionStudy> Known = new(Work);

    /// <summary>What is found in a study; the same object for the same evidence.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static SensorPrecisionStudy Of(Evidence evidence) => Known.Of(evidence);

    private static SensorPrecisionStudy Work(Evidence evidence)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var signals = Sensing.Of(evidence).Signals;
        var runs = evidence.Study.Runs.ToDictionary(r => r.Id, StringComparer.Ordinal);
        var levels = signals.Where(IsReplicate)
            .Select(s => (Sample: s, Day: s.Sample.Words(SampleProperties.Day) ?? runs.GetValueOrDefault(s.Run)?.Detail("Date", "Day")))
            .Where(s => s.Day is not null)
            .GroupBy(s => (s.Sample.Quencher, Dispersion: s.Sample.Sample.Number(FluorescenceProperties.Dispersion), Water: s.Sample.Sample.Words(SampleProperties.Matrix)))
            .OrderBy(g => g.Key.Quencher)
            .Select(g => Precision(g.Key.Quencher, [.. g.GroupBy(s => s.Day!, StringComparer.Ordinal).OrderBy(d => d.Key, StringComparer.Ordinal)
                .Select(d => new Group(d.Key, [.. d.Select(s => s.Sample.Signal.Value)]))], findings))
            .OfType<SensorPrecision>().ToImmutableArray();
        var responses = signals.Where(s => s.Sample.Number(FluorescenceProperties.TimeAfterAddition) is not null)
            .GroupBy(s => s.Sample.Series ?? "response", StringComparer.OrdinalIgnoreCase)
            .Select(g => Response(g.Key, [.. g.OrderBy(s => s.Sample.Number(FluorescenceProperties.TimeAfterAddition))], findings))
            .OfType<ResponseRun>().ToImmutableArray();
        return new(levels, responses, findings.ToImmutable());
    }

    // Vessels with another ion, in an unknown water, or read over time repeat nothing.
    private static bool IsReplicate(SensorSample sample)
        => sample.Sample.Words(FluorescenceProperties.Interferent) is null or ""
            && sample.Sample.Number(FluorescenceProperties.Exposure) is null
            && sample.Sample.Number(FluorescenceProperties.TimeAfterAddition) is null
            && sample.Sample.Number(FluorescenceProperties.Added) is null;

    private static SensorPrecision? Precision(double level, Group[] days, ImmutableArray<Finding>.Builder findings)
    {
        if (Array.TrueForAll(days, d => d.Values.Count < 2))
            return null;
        var found = days.Length == 1 ? OneDay(level, days[0]) : RandomEffects.Of(days).Value is { } effects ? OfDays(level, days, effects) : null;
        if (found is { IsEnough: false })
        {
            findings.Add(Finding.Of("HF-600", Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                $"At {level:G4} µmol/L {Phrase.Count(days.Length, "day")} with at most {Phrase.Count(days.Max(d => d.Values.Count), "vessel")} were read: precision is not shown. Read {SensorPrecision.EnoughVessels} vessels a day on {SensorPrecision.EnoughDays} days.")));
        }

        return found;
    }

    private static SensorPrecision? OneDay(double level, Group day)
        => day.Summary is { Sd: > 0 and { } sd } summary
            ? new(level, [day], summary.Mean, sd, sd * StandardDeviationFactor.At(Confidence.Level, summary.N - 1), null, null, null) : null;

    private static SensorPrecision OfDays(double level, Group[] days, RandomEffects effects)
        => new(level, [.. days], effects.BatchMeans.Mean, effects.WithinSd, effects.WithinSd * StandardDeviationFactor.At(Confidence.Level, effects.Analysis.WithinFreedom),
            effects.BetweenSd, effects.BatchSdUpperBound(), effects.Analysis.P);

    private static ResponseRun? Response(string name, SensorSample[] samples, ImmutableArray<Finding>.Builder findings)
    {
        double[] times = Array.ConvertAll(samples, s => s.Sample.Number(FluorescenceProperties.TimeAfterAddition)!.Value);
        if (times.Distinct().Count() < times.Length)
        {
            findings.Add(Finding.Of("HF-600", Weight.Caution, $"{name}: two readings at one time after the addition: which vessel is which? No response time. Give each vessel a series of its own.", name));
            return null;
        }

        var outcome = ResponseTime.Of(times, Array.ConvertAll(samples, s => s.Signal.Value), FluorescenceProperties.TimeAfterAddition.Unit);
        findings.AddRange(outcome.Findings);
        return outcome.Value is { } found ? new(name, [.. samples], found, outcome.Findings.Count == 0) : null;
    }
}

/// <summary>How a signal repeats at one level, between vessels and between days; all in the unit of the signal.</summary>
/// <param name="Quencher">Level, µmol/L.</param>
/// <param name="Days">Signals of the vessels of each day.</param>
/// <param name="Mean">Mean of the days' means.</param>
/// <param name="WithinSd">Standard deviation between vessels of one day.</param>
/// <param name="WithinUpper">What it may reach (one-sided 95 %).</param>
/// <param name="BetweenSd">Standard deviation between days, 0 where the vessels' scatter explains it; null with one day.</param>
/// <param name="DaysUpper">What the standard deviation of the days' means may reach (one-sided 95 %); null with one day.</param>
/// <param name="P">p of no difference between the days, no unit; null with one day.</param>
public sealed record SensorPrecision(
    double Quencher, ImmutableArray<Group> Days, double Mean, double WithinSd, double WithinUpper, double? BetweenSd, double? DaysUpper, double? P)
{
    /// <summary>Vessels of one day that show its scatter (common practice).</summary>
    public const int EnoughVessels = 6;

    /// <summary>Days that show theirs (common practice).</summary>
    public const int EnoughDays = 3;

    /// <summary>True with six vessels on a day and three days.</summary>
    public bool IsEnough => Days.Length >= EnoughDays && Days.Any(d => d.Values.Count >= EnoughVessels);

    /// <summary>Standard deviation of one vessel on any day; null with one day.</summary>
    public double? OnAnyDay => BetweenSd is { } between ? Math.Sqrt(between * between + WithinSd * WithinSd) : null;
}

/// <summary>A vessel read over time after the quencher was added.</summary>
/// <param name="Name">Name of the series.</param>
/// <param name="Samples">Its readings by time.</param>
/// <param name="Time">How long it took.</param>
/// <param name="IsResolved">True with three readings or more before that time; else it is the slowest it can be.</param>
public sealed record ResponseRun(string Name, ImmutableArray<SensorSample> Samples, ResponseTime Time, bool IsResolved);
