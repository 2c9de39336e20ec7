using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Composition;
using Holdfast.Fitting;
using Holdfast.Fluorescence;
using Holdfast.Solutions;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>Gathers the signals of a study and works out what they show.</summary>
internal sealed class SensingWorkup
{
    private const string Unnamed = "sensor";
    private readonly Evidence evidence;
    private readonly List<Finding> findings = [];
    private readonly HashSet<string> struck;

    private SensingWorkup(Evidence evidence)
    {
        this.evidence = evidence;
        struck = evidence.Study.Strikes.Select(s => s.Target).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>What a study shows.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static Sensing Of(Evidence evidence) => new SensingWorkup(evidence).Work();

    private Sensing Work()
    {
        var intensities = Gather(FluorescenceProperties.Intensity, corrected: true);
        var lifetimes = Gather(FluorescenceProperties.Lifetime, corrected: false);
        if (intensities.IsEmpty && lifetimes.IsEmpty && evidence.Study.Samples.All(s => s.Number(FluorescenceProperties.Added) is null))
            return new Sensing { Findings = EmissionStudy.Of(evidence).Findings };
        var counting = intensities.Where(s => !struck.Contains(s.Code)).ToImmutableArray();
        var blanks = counting.Where(s => s.Sample.Role == SampleRole.Blank && Ion(s) is null && s.Quencher == 0).ToImmutableArray();
        var series = Quenched(intensities).GroupBy(NameOf, StringComparer.OrdinalIgnoreCase).Select(g => Series(g.Key, [.. g], blanks, lifetimes)).Where(s => s.Samples.Length > 0).ToImmutableArray();
        return new Sensing
        {
            Signals = counting,
            Series = series,
            Lifetimes = [.. lifetimes.Where(s => !struck.Contains(s.Code)).GroupBy(NameOf, StringComparer.OrdinalIgnoreCase).Select(g => new LifetimeSeries(g.Key, [.. g.OrderBy(s => s.Quencher)]))],
            Drifts = [.. counting.Where(s => s.Sample.Number(FluorescenceProperties.Exposure) is not null && s.Quencher == 0).GroupBy(NameOf, StringComparer.OrdinalIgnoreCase).Select(g => Drift(g.Key, [.. g])).OfType<DriftRun>()],
            Interferences = [.. counting.Where(s => Ion(s) is not null).GroupBy(NameOf, StringComparer.OrdinalIgnoreCase).Select(g => Interferences(g.Key, [.. g], counting, blanks)).Where(i => i.Ions.Length > 0)],
            Waters = [.. Waters(counting, series)],
            Findings = [.. EmissionStudy.Of(evidence).Findings, .. findings],
        };
    }

    private ImmutableArray<SensorSample> Gather(Property signal, bool corrected)
    {
        var samples = evidence.Study.Samples.ToDictionary(s => s.Code, StringComparer.Ordinal);
        var found = ImmutableArray.CreateBuilder<SensorSample>();
        var emission = signal == FluorescenceProperties.Intensity ? EmissionStudy.Of(evidence) : null;
        foreach (var readings in evidence.Study.Readings
            .Where(r => ((r.Signal == signal.Name && r.Value is not null) || (emission is not null && r.Spectrum is not null)) && !struck.Contains(r.Id) && samples.ContainsKey(r.Sample))
            .GroupBy(r => r.Sample, StringComparer.Ordinal))
        {
            var sample = samples[readings.Key];
            if (sample.Role == SampleRole.Solvent)
                continue;
            if (sample.Number(FluorescenceProperties.Quencher) is { } q and < 0)
            {
                findings.Add(Finding.Of("HF-590", Weight.Stop, string.Create(CultureInfo.InvariantCulture,
                    $"{sample.Code} is recorded with {q:G4} µmol/L of quencher, below zero: it is left out. Mend the sheet or strike it."), sample.Code));
                continue;
            }

            var spectra = emission?.SampleNamed(sample.Code) is { Signal: not null } read ? read : null;
            Reading[] used = [.. spectra?.Used ?? readings.Where(r => r.Value is not null)];
            if (used.Length == 0)
                continue;
            Measured raw = spectra?.Signal ?? used.Average(r => r.Value!.Value);

            // A lifetime is not dimmed by absorption; its absorbances say how much the signals at that level are.
            var (value, factor) = Unfiltered(sample, raw);
            if (!corrected)
                value = raw;
            if (value is { } kept)
                found.Add(new(sample, raw.Value, kept, factor, used.Min(r => r.Order), used[0].Run) { Spectra = spectra });
        }

        return found.ToImmutable();
    }

    private (Measured? Value, double? Factor) Unfiltered(Sample sample, Measured raw)
    {
        if (sample.Fact(FluorescenceProperties.AbsorbanceExcitation) is not { Value: { } excitation } atExcitation)
            return (raw, null);
        var atEmission = sample.Fact(FluorescenceProperties.AbsorbanceEmission);
        var outcome = InnerFilter.Correct(
            sample.Code, raw, With(sample, atExcitation, excitation), atEmission is { Value: { } emission } ? With(sample, atEmission, emission) : 0);
        findings.AddRange(outcome.Findings);
        return (outcome.Value?.Signal, outcome.Value?.Factor.Value);
    }

    private static Measured With(Sample sample, Fact fact, double value)
        => fact.U is { } u ? Measured.From(value, new Source($"{fact.Property}:{sample.Code}", $"{Property.Named(fact.Property)?.Title} of {sample.Code}", u, Trail: fact.Origin.ToString())) : value;

    // Vessels without another ion in a series of other ions are what those are compared with, and no curve of their own.
    private static IEnumerable<SensorSample> Quenched(ImmutableArray<SensorSample> intensities)
    {
        var ofIons = intensities.Where(s => Ion(s) is not null).Select(NameOf).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return intensities.Where(s => s.Sample.Fact(FluorescenceProperties.Quencher) is not null && !ofIons.Contains(NameOf(s))
            && s.Sample.Number(FluorescenceProperties.Exposure) is null && s.Sample.Number(FluorescenceProperties.Added) is null
            && s.Sample.Number(FluorescenceProperties.TimeAfterAddition) is null);
    }

    private SensorSeries Series(string name, ImmutableArray<SensorSample> all, ImmutableArray<SensorSample> blanks, ImmutableArray<SensorSample> lifetimes)
    {
        ImmutableArray<SensorSample> own = [.. blanks.Where(b => all.Any(s => s.Run == b.Run))];
        ImmutableArray<SensorSample> samples = [.. all.Where(s => !struck.Contains(s.Code)).OrderBy(s => s.Quencher).ThenBy(s => s.Order)];
        var taken = TakenUp(samples);
        ImmutableArray<Finding> said =
        [
            .. Mixed(name, [.. samples, .. own.Length > 1 ? own : blanks]),
            .. evidence.Study.Analyte is { } metal && ColouredQuenchers.WithoutAbsorbance(metal, samples.Concat(lifetimes).Any(s => s.Quencher > 0 && s.Factor is not null)) is { } coloured ? [coloured] : Array.Empty<Finding>(),
            .. taken is null ? Array.Empty<Finding>() : [taken],
        ];
        return SensorFitting.Work(new(name, samples, [.. all.Where(s => struck.Contains(s.Code))], own.Length > 1 ? own : blanks) { TakenUp = taken, Findings = said }, "");
    }

    // A typed intensity and one read from a spectrum are two measures unless they were read in one window, which nobody can see from a number.
    private static IEnumerable<Finding> Mixed(string name, IReadOnlyCollection<SensorSample> samples)
    {
        var typed = samples.Where(s => s.Spectra is null).Select(s => s.Code).ToArray();
        if (typed.Length > 0 && typed.Length < samples.Count)
        {
            yield return Finding.Of("HF-597", Weight.Caution, $"{name}: {Phrase.Count(typed.Length, "vessel")} of {Phrase.Count(samples.Count, "vessel")} and blanks {(typed.Length == 1 ? "has" : "have")} a typed intensity and no spectrum that counts. "
                + "The two compare only when read in one window: bring the other spectra, or strike these.", typed);
        }
    }

    // The powder that senses also takes up: its own isotherm says how much of what was added is still free.
    private Finding? TakenUp(ImmutableArray<SensorSample> samples)
    {
        if (evidence.Study.Analyte is not { } metal || Formula.Read(metal).Value?.MolarMass is not { } molarMass
            || evidence.Isotherms.SelectMany(i => CurveComparison.Of([.. i.Fits]).Ranked.Take(1)).Select(r => r.Fit).ToArray() is not [{ Model: { } isotherm } fit, ..])
            return null;
        Span<double> slopes = stackalloc double[4];
        (double Share, double Quencher) most = (0, 0);
        foreach (var sample in samples.Where(s => s.Quencher > 0 && s.Sample.Number(FluorescenceProperties.Dispersion) > 0))
        {
            var added = MolarUnits.ToMilligramsPerLitre<Number>(sample.Quencher / 1000, molarMass).Value;
            var share = 1 - isotherm.ConcentrationLeft(added, sample.Sample.Number(FluorescenceProperties.Dispersion)!.Value, [.. fit.Values], slopes[..fit.P]) / added;
            if (share > most.Share)
                most = (share, sample.Quencher);
        }

        return QuencherDepletion.Says(most.Quencher, most.Share, "µmol/L");
    }

    private DriftRun? Drift(string name, ImmutableArray<SensorSample> samples)
    {
        ImmutableArray<SensorSample> byTime = [.. samples.OrderBy(s => s.Sample.Number(FluorescenceProperties.Exposure))];
        if (byTime.Any(s => !(s.Signal.Value > 0)))
        {
            findings.Add(Finding.Of("HF-591", Weight.Caution, $"{name}: a signal of the drift vessel is not above zero, so no drift is worked out. Check blank and dark readings.", name));
            return null;
        }

        var outcome = DriftControl.Of([.. byTime.Select(s => s.Sample.Number(FluorescenceProperties.Exposure)!.Value)], [.. byTime.Select(s => s.Signal.Value)]);
        findings.AddRange(outcome.Findings);
        return outcome.Value is { } control ? new(name, byTime, control) : null;
    }

    private InterferenceSeries Interferences(string name, ImmutableArray<SensorSample> samples, ImmutableArray<SensorSample> counting, ImmutableArray<SensorSample> blanks)
    {
        var margin = FixedMargin.Of(evidence, MarginKind.Interference);
        var half = Math.Min(Math.Abs(margin.Low), Math.Abs(margin.High)) / 100;
        var ions = ImmutableArray.CreateBuilder<IonEffect>();
        var compared = 0;
        foreach (var beside in samples.GroupBy(s => s.Quencher).OrderBy(g => g.Key))
        {
            var without = Without(beside.Key, [.. beside], counting, blanks);
            if (without.Length < 2)
            {
                findings.Add(Finding.Of("HF-592", Weight.Stop, string.Create(CultureInfo.InvariantCulture,
                    $"{name}: fewer than two vessels with {beside.Key:G4} µmol/L and no other ion were read, so nothing can be compared. Read six."), name));
                continue;
            }

            compared += without.Length;
            var groups = beside.GroupBy(s => (Ion: Ion(s)!, Concentration: s.Sample.Number(FluorescenceProperties.InterferentConcentration))).ToArray();
            var (found, said) = Interference.Of([.. without.Select(s => s.Signal.Value)],
                [.. groups.Select(g => (g.Key.Ion, Excess(g.Key.Concentration, beside.Key), (IReadOnlyList<double>)[.. g.Select(s => s.Signal.Value)]))], half);
            findings.AddRange(said);
            foreach (var result in found)
            {
                var group = groups.First(g => g.Key.Ion == result.Ion && Excess(g.Key.Concentration, beside.Key).Equals(result.Excess));
                ions.Add(new(result.Ion, group.Key.Concentration, beside.Key, result, group.Select(s => s.Factor).Max(), [.. group.Select(s => s.Code)]));
            }
        }

        return new(name, ions.ToImmutable(), compared, half);
    }

    // Alone, an ion is compared with blanks; beside the analyte, with the same analyte and no ion. The same run comes first.
    private static SensorSample[] Without(double quencher, SensorSample[] beside, ImmutableArray<SensorSample> counting, ImmutableArray<SensorSample> blanks)
    {
        SensorSample[] all = [.. quencher == 0 ? blanks : counting.Where(s => Ion(s) is null && s.Sample.Number(FluorescenceProperties.TimeAfterAddition) is null && s.Quencher.Equals(quencher) && s.Sample.Fact(FluorescenceProperties.Quencher) is not null)];
        SensorSample[] same = [.. all.Where(s => beside.Any(b => b.Run == s.Run))];
        return same.Length > 1 ? same : all;
    }

    private static double Excess(double? concentration, double quencher) => concentration is not { } c ? 0 : quencher > 0 ? c / quencher : c;

    private IEnumerable<SpikedSeries> Waters(ImmutableArray<SensorSample> counting, ImmutableArray<SensorSeries> series)
    {
        var read = counting.ToDictionary(s => s.Code, StringComparer.Ordinal);
        var sensor = series.Length == 1 ? series[0] : null;
        var line = sensor?.LineTo()?.Line;
        foreach (var water in evidence.Study.Samples.Where(s => s.Number(FluorescenceProperties.Added) is not null && !struck.Contains(s.Code)).GroupBy(s => s.Series ?? s.Words(SampleProperties.Matrix) ?? Unnamed, StringComparer.OrdinalIgnoreCase))
        {
            Sample[] all = [.. water];
            var readBack = all.Any(s => s.Number(FluorescenceProperties.Found) is null);
            var used = all.Select(s => (Sample: s, Found: s.Number(FluorescenceProperties.Found) ?? ReadBack(read.GetValueOrDefault(s.Code), sensor, line))).Where(s => s.Found is not null).ToArray();
            ImmutableArray<(double Added, double Found)> amounts = [.. used.Select(s => (s.Sample.Number(FluorescenceProperties.Added)!.Value, s.Found!.Value))];
            var outcome = amounts.IsEmpty ? Outcome<SpikedWater>.None() : SpikedWater.Of([.. amounts.Select(a => a.Added)], [.. amounts.Select(a => a.Found)]);
            findings.AddRange(outcome.Findings);
            if (outcome.Value is { } found)
                yield return new(water.Key, [.. used.Select(s => s.Sample)], amounts, found, readBack);
        }
    }

    private static double? ReadBack(SensorSample? sample, SensorSeries? sensor, PolynomialFit? line)
        => sample is { Signal.Value: > 0 and var f } && sensor?.F0 is { } f0 && line is not null && line.SlopeAt(0) > 0 ? (f0 / f - line.At(0)) / line.SlopeAt(0) : null;

    private static string NameOf(SensorSample sample) => sample.Sample.Series ?? Unnamed;

    private static string? Ion(SensorSample sample) => sample.Sample.Words(FluorescenceProperties.Interferent) is { Length: > 0 } ion ? ion : null;
}
