using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Studies.History;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import.Sense;

/// <summary>Says at once, when files are taken in, what their vessels still need before an uptake follows.</summary>
internal static class WhatIsMissing
{
    /// <summary>Adds what is missing to the file that brings the results, or else the vessels.</summary>
    /// <param name="before">The study before this drop.</param>
    /// <param name="after">The study as it would be.</param>
    /// <param name="understood">What each file was understood to be; changed in place.</param>
    public static void Say(Study before, Study after, IncomingUnderstood[] understood)
    {
        var fresh = understood.Where(u => u.Understanding.Proposal is not null).SelectMany(u => u.Understanding.Proposal!.Samples.Select(s => s.Code).Concat(u.Understanding.Proposal.Readings.Select(r => r.Sample))).ToHashSet(StringComparer.Ordinal);
        var vessels = after.Samples.Where(s => s.Role == SampleRole.Vessel && fresh.Contains(s.Code)).ToList();
        if (vessels.Count == 0 || vessels.TrueForAll(IsOfAnotherTest) || understood.Any(u => u.Understanding.NeedsDecision))
            return;
        var read = after.Readings.Where(r => r.Value is not null || r.Below is not null).ToLookup(r => r.Sample, StringComparer.Ordinal);
        var place = Array.FindLastIndex(understood, u => u.Understanding.Proposal is { Samples.IsEmpty: false } or { Readings.IsEmpty: false });
        var absorbing = vessels.Where(v => read[v.Code].Any(r => SpectrometryProperties.IsCalibrated(r.Signal)) && !read[v.Code].Any(r => r.Signal == SpectrometryProperties.ReportedConcentration.Name)).ToList();
        if (absorbing.Count > 0 && after.Samples.All(s => s.Role != SampleRole.Standard))
            Note(understood, place, absorbing, $"readings{Under(absorbing, read)} without standards give no concentration: the calibration is missing. Take it in, a table of known concentrations and their readings");
        var runs = absorbing.SelectMany(v => read[v.Code]).Select(r => r.Run).ToHashSet(StringComparer.Ordinal);
        var standards = after.Samples.Where(s => s.Role == SampleRole.Standard).Select(s => s.Code).ToHashSet(StringComparer.Ordinal);
        var calibrated = after.Readings.Where(r => standards.Contains(r.Sample) && SpectrometryProperties.IsCalibrated(r.Signal)).Select(r => r.Run).Distinct(StringComparer.Ordinal).ToList();
        if (absorbing.Count > 0 && calibrated.Count > 1 && !calibrated.Exists(runs.Contains) && !runs.Any(after.Calibrations.ContainsKey))
            Note(understood, place, absorbing, $"which calibration holds for these readings is not said: {string.Join(" or ", calibrated)}. Choose one before any concentration is worked out");
        var measured = vessels.Where(v => read[v.Code].Any(r => r.Signal is var s && (SpectrometryProperties.IsCalibrated(s) || s == SpectrometryProperties.ReportedConcentration.Name)) || Has(v, BatchProperties.ReportedRemoval) || Has(v, BatchProperties.ReportedRemaining)).ToList();
        if (measured.Count == 0 && vessels.All(v => !Has(v, BatchProperties.ReportedUptake)) && vessels.Exists(v => Has(v, BatchProperties.Mass) || Has(v, BatchProperties.InitialConcentration)))
        {
            var signals = vessels.SelectMany(v => read[v.Code].Select(r => r.Signal)).Distinct(StringComparer.Ordinal).Select(n => Property.Named(n)?.Title ?? n).ToList();
            Note(understood, place, vessels, signals.Count > 0 ? $"only {string.Join(" and ", signals)} was read, from which no concentration is worked out here. End concentrations, absorbances with standards, or removals are missing"
                : "no result yet: neither an end concentration, nor an absorbance, nor a removal stands in these files. Nothing can be worked out until it comes");
        }

        if (measured.Count > 0 && measured.All(v => !Has(v, BatchProperties.InitialConcentration) && !Has(v, BatchProperties.ReportedUptake)) && after.Samples.All(s => s.Role != SampleRole.StartSolution))
            Note(understood, place, measured, "the start concentration (C0) is missing, so removal and uptake cannot be worked out. Add a column or a line \"C0 = … mg/L\", or set it");
        var solutions = StartSolutions.Of(after);
        var startless = measured.Where(v => solutions.Of(v) is null && !Has(v, BatchProperties.ReportedUptake)).ToList();
        if (startless.Count > 0 && solutions.Each.Length > 1)
        {
            var each = string.Join(", ", solutions.Each.Take(4).Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Sample.Code} {s.Read:0.###} mg/L")));
            Note(understood, place, startless, $"{Ordinal.Text(solutions.Each.Length)} start solutions differ ({each}), and which vessel was filled from which is not said, so no C0 is known. Add a column \"start solution\" that names it, or C0");
        }

        var unweighed = measured.Where(v => Has(v, BatchProperties.InitialConcentration) && !Has(v, BatchProperties.ReportedUptake) && !(Has(v, BatchProperties.Dose) || (Has(v, BatchProperties.Mass) && Has(v, BatchProperties.Volume)))).ToList();
        if (unweighed.Count > 0 && unweighed.Count == measured.Count)
        {
            var lacks = unweighed.All(v => Has(v, BatchProperties.Mass)) ? "the volume is" : unweighed.All(v => Has(v, BatchProperties.Volume)) ? "the sorbent mass is" : "sorbent mass and volume are";
            Note(understood, place, unweighed, $"{lacks} missing, so the uptake cannot be worked out. Removal follows without. Add a column, or set it");
        }
    }

    // Sensing, beds, competition and the like ask for other things.
    private static bool IsOfAnotherTest(Sample sample) => sample.Facts.Keys.Any(k => Property.Named(k) is { } p && (p == FluorescenceProperties.Quencher || p == ColumnProperties.TimeOnStream || p == CompetitionProperties.Rival || p == RegenerationProperties.Cycle
        || p == FluorescenceProperties.Added || p == FluorescenceProperties.Exposure || p == FluorescenceProperties.Interferent || p == ColumnProperties.BedDepth));

    // " under Abs 510 nm": where the readings stand.
    private static string Under(List<Sample> vessels, ILookup<string, Reading> read)
        => vessels.SelectMany(v => read[v.Code]).Select(r => r.Origin.Column).FirstOrDefault(c => c is { Length: > 0 }) is { } heading ? $" under {heading}" : "";

    private static bool Has(Sample sample, Property property) => sample.Fact(property) is { Value: not null } or { Below: not null };

    private static void Note(IncomingUnderstood[] understood, int place, List<Sample> vessels, string what)
    {
        if (place < 0)
            return;
        var codes = vessels.Select(v => v.Code).ToImmutableArray();
        var shown = string.Join(", ", codes.Take(3)) + (codes.Length > 3 ? $" and {Ordinal.Text(codes.Length - 3)} more" : "");
        understood[place] = understood[place] with
        {
            Understanding = understood[place].Understanding with { Findings = understood[place].Understanding.Findings.Add(Finding.Of(Codes.NothingFollows, Weight.Caution, $"{shown}: {what}.", [.. codes])) },
        };
    }
}
