using System.Globalization;
using Holdfast.Amounts;
using Holdfast.BatchSorption;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>Works vessels out: from what went in and what was read to dose, removal, uptake and distribution coefficient.</summary>
internal sealed class VesselWorkup
{
    private readonly Study study;
    private readonly RecordedAmounts recorded;
    private readonly Calibrating calibrating;
    private readonly Dictionary<string, Measured> startSolutions;
    private readonly Dictionary<string, Measured> named;
    private readonly Measured? onlyStart;

    /// <summary>Her own uptake or removal agrees with ours within this share: what rounding of a sheet's columns explains.</summary>
    internal const double AgreesWithin = 0.03;

    /// <summary>Works out the vessels of one study.</summary>
    /// <param name="study">The study.</param>
    /// <param name="recorded">Its recorded amounts.</param>
    /// <param name="calibrating">Its concentrations.</param>
    public VesselWorkup(Study study, RecordedAmounts recorded, Calibrating calibrating)
    {
        this.study = study;
        this.recorded = recorded;
        this.calibrating = calibrating;
        startSolutions = study.Samples
            .Where(s => s.Role == SampleRole.StartSolution && !study.IsStruck(s))
            .Select(s => (Key: SolutionOf(s), Read: calibrating.Of(s)?.Value))
            .Where(s => s.Key is not null && s.Read is not null)
            .GroupBy(s => s.Key!, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => Average([.. g.Select(s => s.Read!.Value)]), StringComparer.Ordinal);
        named = study.Samples.Where(s => s.Role == SampleRole.StartSolution && !study.IsStruck(s)).Select(s => (s.Code, calibrating.Of(s)?.Value)).Where(s => s.Value is not null)
            .ToDictionary(s => s.Code, s => s.Value!.Value, StringComparer.OrdinalIgnoreCase);
        var unnamed = study.Samples.Where(s => s.Role == SampleRole.StartSolution && !study.IsStruck(s) && SolutionOf(s) is null)
            .Select(s => calibrating.Of(s)?.Value).OfType<Measured>().ToList();
        // One start solution, made up to nobody knows what: it is that of every vessel that names none.
        if (unnamed.Count > 0 && startSolutions.Count == 0 && Tolerances.SameSolution(unnamed.Min(v => v.Value), unnamed.Max(v => v.Value)))
            onlyStart = Average(unnamed);
    }

    /// <summary>One sample worked out as far as its records allow.</summary>
    /// <param name="sample">A vessel, control, spike, digest or other sample that is not a standard or blank.</param>
    public Vessel Of(Sample sample)
    {
        var findings = new List<Finding>();
        var end = calibrating.Of(sample);
        if (end is not null)
            findings.AddRange(end.Findings);
        Closes(sample, BatchProperties.ReportedEnd, end?.Value, findings);
        var start = Start(sample, findings);
        // A removal that was noted is the removal; worked back from what is left it would lose its uncertainty.
        var share = end is null ? Noted(sample) : null;
        end ??= Reported(start, share, sample, findings);
        var volume = recorded.Of(sample, BatchProperties.Volume);
        var mass = recorded.Of(sample, BatchProperties.Mass);
        var isControl = sample.Role == SampleRole.Control;
        // A control holds no sorbent: a mass of 0 is its proper record.
        if (isControl && mass is { Value: <= 0 })
            mass = null;
        var bad = Impossible(sample, start, volume, mass, findings);
        var dose = !bad && mass is { } m && volume is { } v ? BatchQuantities.Dose(m, v) : (Measured?)null;
        mass ??= FromDose(sample, volume);
        dose ??= !bad && mass is { } made && volume is { } liquid ? BatchQuantities.Dose(made, liquid) : null;
        if (bad || end?.Value is not { } left || start is not { Value: > 0 } c0)
        {
            var taken = bad || isControl ? null : recorded.Of(sample, BatchProperties.ReportedUptake);
            if (taken is not null)
                findings.Add(Finding.Of("HF-671", Weight.Caution, $"{sample.Code}: the uptake is taken as it came. Without start concentration, volume and mass it cannot be checked.", sample.Code));
            else
                Missing(sample, start, end, volume, mass, findings);
            var alone = start is null && end?.Value is not null && !bad ? recorded.Of(sample, BatchProperties.ReportedRemoval) : null;
            return new Vessel(sample, study.IsStruck(sample), start, end, volume, mass, dose, alone, taken, null, [.. findings]);
        }

        // A dose says per litre what mass and volume say together.
        if (dose is null && mass is null && volume is null && !isControl && recorded.Of(sample, BatchProperties.Dose) is { Value: > 0 } planned)
        {
            var perLitre = BatchSorption.Vessel.Of(sample.Code, c0, left, 1, planned, end.DetectionLimit);
            findings.AddRange(perLitre.Findings);
            Closes(sample, BatchProperties.ReportedUptake, perLitre.Uptake, findings);
            Closes(sample, BatchProperties.ReportedRemoval, perLitre.Removal, findings);
            return new Vessel(sample, study.IsStruck(sample), start, end, null, null, planned, share ?? perLitre.Removal, perLitre.Uptake, perLitre.DistributionCoefficient, [.. findings]);
        }

        if (dose is null)
        {
            if (!isControl)
                Missing(sample, start, end, volume, mass, findings);
            return new Vessel(sample, study.IsStruck(sample), start, end, volume, mass, null, share ?? BatchQuantities.Removal(c0, left), isControl ? null : recorded.Of(sample, BatchProperties.ReportedUptake), null, [.. findings]);
        }

        var quantities = BatchSorption.Vessel.Of(sample.Code, c0, left, volume!.Value / 1000, mass!.Value / 1000, end.QuantificationLimit);
        findings.AddRange(quantities.Findings);
        Closes(sample, BatchProperties.ReportedUptake, quantities.Uptake, findings);
        Closes(sample, BatchProperties.ReportedRemoval, quantities.Removal, findings);
        return new Vessel(
            sample, study.IsStruck(sample), start, end, volume, mass, dose,
            share ?? quantities.Removal, quantities.Uptake, quantities.DistributionCoefficient, [.. findings]);
    }

    private Measured? Noted(Sample sample)
        => recorded.Of(sample, BatchProperties.ReportedRemoval) ?? (recorded.Of(sample, BatchProperties.ReportedRemaining) is { } remaining ? 100 - remaining : null);

    // Only a removal or a share left was noted: the end concentration follows from the start.
    private static Concentration? Reported(Measured? start, Measured? share, Sample sample, List<Finding> findings)
    {
        if (start is not { Value: > 0 } c0 || share is not { } removal)
            return null;
        findings.Add(Finding.Of("HF-670", Weight.Note, $"{sample.Code}: the end concentration was worked out from the share that was noted; it was not read itself.", sample.Code));
        return new Concentration(c0 * (1 - (removal / 100)), null, null, [], []);
    }

    // Where only the planned dose is known, the mass follows from it and the volume.
    private Measured? FromDose(Sample sample, Measured? volume)
        => sample.Role == SampleRole.Control || volume is not { } v || recorded.Of(sample, BatchProperties.Dose) is not { Value: > 0 } dose ? null : dose * v;

    // Her own end concentration, uptake and removal, where the sheet holds them, are held against what follows from the readings.
    private static void Closes(Sample sample, Property property, Measured? value, List<Finding> findings)
    {
        if (sample.Number(property) is not { } hers || value is not { } ours || Math.Abs(hers - ours.Value) <= AgreesWithin * Math.Max(Math.Abs(hers), 1))
            return;
        findings.Add(Finding.Of("HF-672", Weight.Caution, string.Create(CultureInfo.InvariantCulture,
            $"{sample.Code}: the sheet says {property.Title} {hers:0.####} {property.Unit}, but its readings give {ours.Value:0.####} {property.Unit}. Check dilution, unit and start concentration."), sample.Code));
    }

    // The start solution that was read wins over the concentration it was made up to.
    private Measured? Start(Sample sample, List<Finding> findings)
    {
        var madeUp = recorded.Of(sample, BatchProperties.InitialConcentration);
        if (sample.Fact(BatchProperties.StartSolution) is { Words: { } solution } && named.TryGetValue(solution, out var own))
            return madeUp is { } noted ? Against(sample, own, noted, findings) : own;
        if (SolutionOf(sample) is not { } key)
            return onlyStart;
        if (!startSolutions.TryGetValue(key, out var read) && !startSolutions.TryGetValue(AnySeries(key), out read))
            return onlyStart is { } measured && madeUp is { } made && Tolerances.SameSolution(measured.Value, made.Value) ? measured : madeUp;
        return madeUp is { } nominal ? Against(sample, read, nominal, findings) : read;
    }

    private static Measured Against(Sample sample, Measured read, Measured nominal, List<Finding> findings)
    {
        if (Attribution.StartIsOff(read.Value, nominal.Value))
        {
            findings.Add(Finding.Of("HF-467", Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                $"{sample.Code}: its start solution reads {read.Value:0.###} mg/L, made up to {nominal.Value:0.###}. The reading is used; check the dilution."), sample.Code));
        }

        return read;
    }

    private static string? SolutionOf(Sample sample)
        => sample.Number(BatchProperties.InitialConcentration) is { } c
            ? string.Create(CultureInfo.InvariantCulture, $"{sample.Series}|{c:R}")
            : null;

    private static string AnySeries(string key) => key[key.IndexOf('|', StringComparison.Ordinal)..];

    private static bool Impossible(Sample sample, Measured? start, Measured? volume, Measured? mass, List<Finding> findings)
    {
        var bad = false;
        foreach (var (what, value) in new[] { ("start concentration", start), ("volume", volume), ("sorbent mass", mass) })
        {
            if (value is not { Value: <= 0 } wrong)
                continue;
            bad = true;
            findings.Add(Finding.Of("HF-468", Weight.Stop, string.Create(CultureInfo.InvariantCulture,
                $"{sample.Code}: {what} is {wrong.Value:G6}. It must be above 0, so no uptake is worked out. Correct it or strike the vessel."), sample.Code));
        }

        return bad;
    }

    private static void Missing(Sample sample, Measured? start, Concentration? end, Measured? volume, Measured? mass, List<Finding> findings)
    {
        var lacking = new List<string>();
        if (start is null)
            lacking.Add("start concentration");
        // Why a reading gave no concentration is said by a finding of its own.
        if (end is null)
            lacking.Add("reading");
        if (volume is null)
            lacking.Add("volume");
        if (mass is null && sample.Role == SampleRole.Vessel)
            lacking.Add("sorbent mass");
        if (lacking.Count > 0 && sample.Role is SampleRole.Vessel or SampleRole.Control)
            findings.Add(Finding.Of("HF-469", Weight.Caution, $"{sample.Code} has no {string.Join(", no ", lacking)}, so {(sample.Role == SampleRole.Vessel ? "no uptake" : "no removal")} follows.", sample.Code));
    }

    private static Measured Average(List<Measured> values)
    {
        Measured sum = 0;
        foreach (var value in values)
            sum += value;
        return sum / values.Count;
    }
}
