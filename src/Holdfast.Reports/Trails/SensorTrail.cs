using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Fluorescence;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Trails;

/// <summary>Trails of a sensor's numbers: the signal of a vessel ("F:") and its quenching efficiency ("E:").</summary>
internal static class SensorTrail
{
    /// <summary>The trail, or null when there is no such number.</summary>
    /// <param name="evidence">The study worked out.</param>
    /// <param name="kind">"F" or "E".</param>
    /// <param name="code">Code of the vessel.</param>
    public static NumberTrail? Of(Evidence evidence, string kind, string code)
    {
        foreach (var series in Sensing.Of(evidence).Series)
        {
            if (series.Samples.Concat(series.Blanks).FirstOrDefault(s => string.Equals(s.Code, code, StringComparison.Ordinal)) is not { } sample)
                continue;
            if (kind == "F" && sample is { Spectra: { } spectra, Factor: null } && EmissionStudy.Of(evidence) is { Window: not null } emission)
                return OfSpectra(sample, spectra, emission);
            var readings = sample.Spectra?.Used ?? evidence.Study.Readings.Where(r => r.Sample == code && r.Signal == FluorescenceProperties.Intensity.Name && !evidence.Study.IsStruck(r)).ToImmutableArray();
            var signal = new TrailInput("F", sample.Signal, "", $"{StudyTables.InWords.Count(readings.Length, "reading")} in {sample.Run}{(sample.Factor is null ? "" : ", without the inner filter")}");
            return kind switch
            {
                "F" => new("F:" + code, $"signal of {code}", sample.Signal, "", sample.Factor is null ? "F = mean of the readings" : "F = mean of the readings · 10^((Aex + Aem)/2)", [.. Absorbances(sample)], readings),
                "E" when Without(series) is { } f0 => new(
                    "E:" + code, $"quenching efficiency of {code}", 100 * QuenchingEfficiency.Of(sample.Signal, f0), "%", "E = 100·(1 − F/F0)", [signal, new("F0", f0, "", series.F0From)], readings),
                _ => null,
            };
        }

        return null;
    }

    private static NumberTrail OfSpectra(SensorSample sample, SampleSpectra spectra, EmissionStudy emission)
    {
        var window = emission.Window!;
        var how = window.IsArea ? "area" : "mean of the five points";
        var only = spectra.Used.Length == 1 ? ", whose own noise does not show: the scatter between vessels holds it" : "";
        return new(
            "F:" + sample.Code, $"signal of {sample.Code}", sample.Signal, "",
            $"F = {how} from {StudyTables.InWords.Setting(window.From, "nm")} to {StudyTables.InWords.Setting(window.To, "nm")}{(spectra.Solvent is null ? "" : " − the same of the liquid alone")}",
            [
                new("Fr", spectra.Raw!.Value, "", $"{StudyTables.InWords.Count(spectra.Used.Length, "spectrum", "spectra")} in {sample.Run}{only}"),
                .. spectra.Solvent is { } liquid ? [new TrailInput("Fs", liquid, "", "liquid alone, same window")] : Array.Empty<TrailInput>(),
            ],
            [.. spectra.Used, .. emission.Samples.Where(s => s.Sample.Role == SampleRole.Solvent).SelectMany(s => s.Used)]);
    }

    private static IEnumerable<TrailInput> Absorbances(SensorSample sample)
    {
        foreach (var (symbol, property) in new[] { ("Aex", FluorescenceProperties.AbsorbanceExcitation), ("Aem", FluorescenceProperties.AbsorbanceEmission) })
        {
            if (sample.Sample.Fact(property) is { Value: { } value } fact)
                yield return new(symbol, value, "", fact.Origin.ToString());
        }
    }

    private static Measured? Without(SensorSeries series)
    {
        double[] values = [.. (series.Blanks.Length > 1 ? series.Blanks : series.Samples.Where(s => s.Quencher == 0)).Select(s => s.Signal.Value)];
        return values.Length == 0 ? null : Summary.Of(values) is { Sd: { } sd } summary
            ? Measured.From(summary.Mean, new Source($"{series.Name}/F0", series.F0From, sd / Math.Sqrt(values.Length), values.Length - 1, Evaluation.Repetition))
            : values[0];
    }
}
