using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fluorescence;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>The spectra of a study and the intensity of each sample, read in one window that was fixed on the blank.</summary>
public sealed record EmissionStudy
{
    private const double SameIntensity = 0.05;
    private static readonly Analysis<EmissionStudy> Known = new(Work);

    /// <summary>The window, the same for all; null where none could be fixed.</summary>
    public SpectralWindow? Window { get; init; }

    /// <summary>Who fixed the window, and on what, in words.</summary>
    public string WindowFrom { get; init; } = "";

    /// <summary>Wavelength of the exciting light, nm; null when no file says it.</summary>
    public double? Excitation { get; init; }

    /// <summary>Samples with spectra, in the order of their first one; those of the liquid alone included.</summary>
    public ImmutableArray<SampleSpectra> Samples { get; init; } = [];

    /// <summary>What the spectra say about themselves.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>What is found in a study; the same object for the same evidence.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static EmissionStudy Of(Evidence evidence) => Known.Of(evidence);

    /// <summary>The spectra of a sample, or null.</summary>
    /// <param name="code">Its code.</param>
    public SampleSpectra? SampleNamed(string code) => Samples.FirstOrDefault(s => string.Equals(s.Sample.Code, code, StringComparison.Ordinal));

    private static EmissionStudy Work(Evidence evidence)
    {
        var study = evidence.Study;
        var samples = study.Samples.ToDictionary(s => s.Code, StringComparer.Ordinal);
        ImmutableArray<SampleSpectra> all =
        [
            .. study.Readings.Where(r => r.Spectrum is not null && samples.ContainsKey(r.Sample) && !study.IsStruck(r)).GroupBy(r => r.Sample, StringComparer.Ordinal)
                .Select(g => new SampleSpectra(samples[g.Key], [.. g], [.. g.Select(r => new EmissionSpectrum(r.Spectrum!.Wavelengths, r.Spectrum.Intensities))])),
        ];
        if (all.IsEmpty)
            return new();
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var runs = all.SelectMany(s => s.Readings).Select(r => r.Run).Distinct(StringComparer.Ordinal).Select(id => study.Runs.First(r => r.Id == id)).ToDictionary(r => r.Id, StringComparer.Ordinal);
        var excitation = ExcitationOf(runs.Values, findings);
        var (window, from, blank) = Fix(evidence, all, excitation, findings);
        if (window is null)
            return new() { Samples = all, Excitation = excitation, Findings = findings.ToImmutable() };
        all = [.. all.Select(s => Read(s, window, blank, runs, findings))];
        var solvent = SolventOf(all, window, excitation, findings);
        all = [.. all.Select(s => s.Sample.Role == SampleRole.Solvent ? s : s with { Solvent = solvent })];
        SayWhatIsLeftOut(all, findings);
        SayWhichCounts(study, all, findings);
        return new() { Window = window, WindowFrom = from, Excitation = excitation, Samples = all, Findings = findings.ToImmutable() };
    }

    private static double? ExcitationOf(IEnumerable<Run> runs, ImmutableArray<Finding>.Builder findings)
    {
        double[] all = [.. runs.Select(r => r.Number("nm", "Excitation", "Excitation wavelength", "Ex")).OfType<double>().Where(v => v is > 0 and < 2900).Distinct().Order()];
        if (all.Length > 1)
            findings.Add(Said("HF-598", Weight.Caution, $"Spectra were excited at {all[0]:G6} and at {all[^1]:G6} nm: their intensities do not compare. Read all at one wavelength, or strike the others."));
        return all.Length == 0 ? null : all[0];
    }

    // What was fixed later counts where both windows were; the place on the wavelengths is the blank's in either case.
    private static (SpectralWindow? Window, string From, EmissionSpectrum Blank) Fix(
        Evidence evidence, ImmutableArray<SampleSpectra> all, double? excitation, ImmutableArray<Finding>.Builder findings)
    {
        var (blanks, named) = BlanksOf(all);
        var stated = evidence.Study.Margins.Where(m => m.Name == MarginKind.PeakWindow.Name || m.Name == MarginKind.AreaWindow.Name).OrderBy(m => m.Entry).LastOrDefault();
        if (stated is not null && (stated.Unit != MarginKind.PeakWindow.Unit || !(stated.Low < stated.High)))
        {
            findings.Add(Said("HF-598", Weight.Caution, $"The {stated.Name} that was fixed ({stated.Low:G6} to {stated.High:G6} {stated.Unit}) is no stretch of wavelengths in nm: it is not used. Fix it anew."));
            stated = null;
        }

        var isArea = stated?.Name == MarginKind.AreaWindow.Name;
        if (blanks.IsEmpty && !isArea)
        {
            findings.Add(Said("HF-593", Weight.Stop, $"No spectrum of a blank, or of a vessel without quencher, was read: no window can be fixed and no intensity follows. Read one, or fix an area-window."));
            return (null, "", all[0].Spectra[0]);
        }

        var blank = blanks.IsEmpty ? all[0].Spectra[0] : EmissionSpectrum.Mean(blanks);
        if (isArea)
            return (SpectralWindow.Area(stated!.Low, stated.High), Fixed(stated), blank);
        var liquid = all.Where(s => s.Sample.Role == SampleRole.Solvent).SelectMany(s => s.Spectra).Where(s => s.IsOnWavelengthsOf(blank)).ToArray();
        var clean = liquid.Length == 0 ? blank : blank.Less(EmissionSpectrum.Mean(liquid));
        var outcome = stated is null
            ? SpectralWindow.OnBlank(clean, blank.Wavelengths[0], blank.Wavelengths[^1], excitation)
            : SpectralWindow.OnBlank(clean, stated.Low, stated.High);
        findings.AddRange(outcome.Findings);
        if (stated is not null && outcome.Value is { } found && excitation is { } light && (ScatteredLight.Reaches(found.From, light) || ScatteredLight.Reaches(found.To, light)))
            findings.Add(Said("HF-598", Weight.Caution, $"The window, {found.From:G6} to {found.To:G6} nm, lies in the exciting light or its second order: it holds scatter. Fix it elsewhere."));
        return (outcome.Value, stated is null ? $"nobody fixed it: the maximum of {named}" : $"{Fixed(stated)}; the maximum there of {named}", blank);
    }

    private static string Fixed(Margin stated) => FormattableString.Invariant($"{stated.Name} {stated.Low:G6} to {stated.High:G6} nm, entry {stated.Entry}");

    // Blanks stand on one set of wavelengths; of several sets the most frequent is taken.
    private static (ImmutableArray<EmissionSpectrum> Spectra, string Named) BlanksOf(ImmutableArray<SampleSpectra> all)
    {
        var without = all.Where(s => s.Sample.Role != SampleRole.Solvent && s.Sample.Words(FluorescenceProperties.Interferent) is null or "" && s.Sample.Number(FluorescenceProperties.Quencher) is null or 0).ToArray();
        SampleSpectra[] blanks = [.. without.Where(s => s.Sample.Role == SampleRole.Blank)];
        var isBlank = blanks.Length > 0;
        var chosen = isBlank ? blanks : Array.FindAll(without, s => s.Sample.Number(FluorescenceProperties.Quencher) == 0);
        if (chosen.Length == 0)
            return ([], "");
        var most = chosen.GroupBy(s => string.Join(' ', s.Spectra[0].Wavelengths.Select(w => w.ToString("R", CultureInfo.InvariantCulture))), StringComparer.Ordinal).MaxBy(g => g.Count())!.ToArray();
        return ([.. most.SelectMany(s => s.Spectra).Where(s => s.IsOnWavelengthsOf(most[0].Spectra[0]))], isBlank ? Phrase.Count(most.Length, "blank") : Phrase.Count(most.Length, "vessel") + " without quencher");
    }

    private static SampleSpectra Read(SampleSpectra sample, SpectralWindow window, EmissionSpectrum blank, Dictionary<string, Run> runs, ImmutableArray<Finding>.Builder findings)
    {
        var values = new List<double>();
        var used = ImmutableArray.CreateBuilder<Reading>();
        foreach (var (reading, spectrum) in sample.Readings.Zip(sample.Spectra))
        {
            if (!window.IsAlike(spectrum, blank) || window.Of(spectrum) is not { } value)
                continue;
            var range = runs[reading.Run].Number("", "Detector range", "Range", "Full scale");
            if (range is > 0 && SignalCorrection.Saturation($"{reading.Id} of {sample.Sample.Code}", window.Largest(spectrum) ?? 0, range.Value) is { } saturated)
            {
                findings.Add(saturated);
                sample = sample with { IsSaturated = true };
                continue;
            }

            values.Add(value);
            used.Add(reading);
        }

        return values.Count == 0 ? sample : sample with { Used = used.ToImmutable(), Raw = Mean(values, $"spectra/{sample.Sample.Code}", $"spectra of {sample.Sample.Code}, read again") };
    }

    private static Measured Mean(List<double> values, string id, string name)
        => Summary.Of(values) is { Sd: { } sd } summary
            ? Measured.From(summary.Mean, new Source(id, name, sd / Math.Sqrt(values.Count), values.Count - 1, Evaluation.Repetition))
            : values[0];

    private static Measured? SolventOf(ImmutableArray<SampleSpectra> all, SpectralWindow window, double? excitation, ImmutableArray<Finding>.Builder findings)
    {
        List<double> values = [.. all.Where(s => s.Sample.Role == SampleRole.Solvent).Select(s => s.Raw?.Value).OfType<double>()];
        if (values.Count > 0)
            return Mean(values, "spectra/solvent", "spectra of the liquid alone");
        var raman = excitation is { } light && ScatteredLight.RamanOfWater(light) is var line && line >= window.From && line <= window.To
            ? FormattableString.Invariant($" The Raman line of water, {line:0} nm, lies in the window.") : "";
        findings.Add(Said("HF-595", Weight.Caution, $"No spectrum of the liquid alone was read at these wavelengths: scatter is not taken off{(window.IsArea ? ", and an area holds all of it" : "")}.{raman} Read it with the same slits, role solvent."));
        return null;
    }

    private static void SayWhatIsLeftOut(ImmutableArray<SampleSpectra> all, ImmutableArray<Finding>.Builder findings)
    {
        string[] others = [.. all.Where(s => s.Raw is null && !s.IsSaturated).Select(s => s.Sample.Code)];
        if (others.Length > 0)
        {
            findings.Add(Finding.Of("HF-594", Weight.Caution, $"{Phrase.Listed(others)}: read at other wavelengths than the blank, or with gaps in the window, so no intensity follows from "
                + $"{(others.Length == 1 ? "its spectrum" : "their spectra")}. Read all with one range and step.", others));
        }
    }

    private static void SayWhichCounts(Study study, ImmutableArray<SampleSpectra> all, ImmutableArray<Finding>.Builder findings)
    {
        var typed = study.Readings.Where(r => r.Signal == FluorescenceProperties.Intensity.Name && r.Value is not null && !study.IsStruck(r)).GroupBy(r => r.Sample, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Average(r => r.Value!.Value), StringComparer.Ordinal);
        var both = all.Where(s => s.Signal is not null && typed.ContainsKey(s.Sample.Code)).ToArray();
        if (both.Length == 0)
            return;
        var apart = both.Select(s => (s.Sample.Code, By: Math.Abs(typed[s.Sample.Code] / s.Signal!.Value.Value - 1))).MaxBy(s => s.By);
        findings.Add(Finding.Of("HF-596", apart.By > SameIntensity ? Weight.Caution : Weight.Note, string.Create(CultureInfo.InvariantCulture,
            $"{Phrase.Count(both.Length, "sample")} {(both.Length == 1 ? "has" : "have")} an intensity that was typed and a spectrum: the spectrum counts, read in one window. They differ by at most {100 * apart.By:0.0} % ({apart.Code}). ")
            + "Strike a spectrum and what was typed counts.", [.. both.Select(s => s.Sample.Code)]));
    }

    private static Finding Said(string code, Weight weight, FormattableString sentence) => Finding.Of(code, weight, sentence.ToString(CultureInfo.InvariantCulture));
}

/// <summary>The spectra of one sample and its intensity.</summary>
/// <param name="Sample">The sample.</param>
/// <param name="Readings">Its readings that are spectra and are not struck.</param>
/// <param name="Spectra">The same as spectra.</param>
public sealed record SampleSpectra(Sample Sample, ImmutableArray<Reading> Readings, ImmutableArray<EmissionSpectrum> Spectra)
{
    /// <summary>Readings whose window could be read.</summary>
    public ImmutableArray<Reading> Used { get; init; } = [];

    /// <summary>True when a spectrum comes near the end of the detector's range in the window.</summary>
    public bool IsSaturated { get; init; }

    /// <summary>
    /// Intensity in the window as read, mean over its spectra; null where none could be read. It has an uncertainty where the sample was read
    /// twice or more: the points of one band do not show their own noise, so that of a single spectrum is in the scatter between vessels only.
    /// </summary>
    public Measured? Raw { get; init; }

    /// <summary>Intensity of the liquid alone in the same window, shared by all; null where it was not read.</summary>
    public Measured? Solvent { get; init; }

    /// <summary>Intensity less that of the liquid alone; null where none could be read.</summary>
    public Measured? Signal => Raw is { } raw ? (Solvent is { } solvent ? raw - solvent : raw) : null;
}
