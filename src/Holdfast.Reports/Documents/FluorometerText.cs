using Holdfast.Claims.Analyses;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Documents;

/// <summary>Methods text of the sensing part: fluorometer, wavelengths, slits, dispersion, window, each as recorded or as a gap.</summary>
internal static class FluorometerText
{
    /// <summary>Its sentences; none in a study without signals or lifetimes.</summary>
    /// <param name="evidence">The study worked out.</param>
    public static IEnumerable<string> Of(Evidence evidence)
    {
        var study = evidence.Study;
        string[] signals = [FluorescenceProperties.Intensity.Name, FluorescenceProperties.Emission.Name, FluorescenceProperties.Lifetime.Name];
        Run[] runs = [.. study.Runs.Where(r => signals.Contains(r.Signal))];
        if (runs.Length == 0)
            yield break;
        foreach (var alike in runs.GroupBy(r => (Instrument: r.Detail("Instrument", "Spectrometer/data system"), Excitation: r.Detail("Excitation", "Excitation wavelength"), Emission: r.Detail("Emission", "Emission wavelength"), Slits: r.Detail("Slits", "Slit", "Slit width"))))
            yield return Instrument(alike.Key.Instrument, alike.Key.Excitation, alike.Key.Emission, alike.Key.Slits, [.. alike], study);
        yield return Dispersion(study, runs);
    }

    private static string Instrument(string? instrument, string? excitation, string? emission, string? slits, Run[] runs, Study study)
    {
        var spectra = runs.Where(r => r.Signal == FluorescenceProperties.Emission.Name).Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        double[] wavelengths = [.. study.Readings.Where(r => r.Spectrum is not null && spectra.Contains(r.Run)).SelectMany(r => r.Spectrum!.Wavelengths)];
        var where = emission is not null ? $"at {emission}" : wavelengths.Length > 0 ? $"from {InWords.Span(wavelengths, "nm")}" : $"at {Prose.Gap(runs[0].Id, "Emission")}";
        return $"{(runs.Length == 1 ? "Run" : "Runs")} {InWords.Listed(runs.Select(r => r.Id))}: {Prose.Clause((instrument ?? Prose.Gap(runs[0].Id, "Instrument")) + ", ")}{Prose.Clause($"excited at {excitation ?? Prose.Gap(runs[0].Id, "Excitation")}, ")}"
            + $"{Prose.Clause($"emission read {where}, ")}{Prose.Clause($"slits {slits ?? Prose.Gap(runs[0].Id, "Slits")}, ")}{Prose.Clause($"read on {InWords.Listed(runs.Select(r => r.Detail("Date", "Longdate") ?? Prose.Gap(r.Id, "Date")))}")}.";
    }

    private static string Dispersion(Study study, Run[] runs)
    {
        var ids = runs.Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        var codes = study.Readings.Where(r => ids.Contains(r.Run)).Select(r => r.Sample).ToHashSet(StringComparer.Ordinal);
        Sample[] samples = [.. study.Samples.Where(s => codes.Contains(s.Code) && s.Role != SampleRole.Solvent)];
        double[] doses = [.. samples.Select(s => s.Number(FluorescenceProperties.Dispersion)).OfType<double>()];
        string[] waters = [.. samples.Select(s => s.Words(SampleProperties.Matrix)).OfType<string>().Where(w => w.Length > 0).Distinct(StringComparer.Ordinal)];
        var absorbed = samples.Count(s => s.Number(FluorescenceProperties.AbsorbanceExcitation) is not null);
        return $"Dispersions held {(doses.Length == 0 ? Prose.Gap("vessels:" + FluorescenceProperties.Dispersion.Name) : InWords.Span(doses, "g/L"))} of powder{Prose.Clause($" in {(waters.Length == 0 ? Prose.Gap("vessels:" + SampleProperties.Matrix.Name) : InWords.Listed(waters))}")}{(doses.Length > 0 && doses.Length < samples.Length ? $" (recorded for {InWords.Plain(doses.Length)} of {InWords.Plain(samples.Length)})" : "")}"
            + $"{Prose.Clause($"; stirring and delay before reading: {study.Details.GetValueOrDefault("sensing-stirring") ?? Prose.Gap("sensing-stirring")}")}. Absorbances for the inner filter were recorded for {InWords.Count(absorbed, "vessel")} of {InWords.Plain(samples.Length)}.";
    }
}
