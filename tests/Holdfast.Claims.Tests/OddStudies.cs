using System.Collections.Immutable;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using static System.FormattableString;

namespace Holdfast.Claims.Tests;

/// <summary>
/// Small studies of one area each, and each of them damaged in every way that records are damaged: a property missing, in all samples or in one, zero, with the wrong sign, three times as large, with an
/// uncertainty; a sample struck or in another role; a reading missing, below a limit, diluted, struck; no analyte, no margins. Made from the invented studies beside; nothing here says what is right.
/// </summary>
internal static class OddStudies
{
    private static readonly Origin File = new("02", "odd.csv", null, 1, null);

    /// <summary>Every small study, whole, by its name.</summary>
    public static IReadOnlyDictionary<string, Func<Study>> Whole { get; } = new Dictionary<string, Func<Study>>(StringComparer.Ordinal)
    {
        ["beds"] = Beds,
        ["mixtures"] = () => Reuse(s => s.Code.StartsWith("MIX", StringComparison.Ordinal)),
        ["cycles"] = () => Reuse(s => s.Series == "REUSE"),
        ["exchange"] = () => AsSeries("EX", BatchProperties.EndPh, Reuse(s => s.Code.StartsWith("ALONE", StringComparison.Ordinal) || (s.Series == "TEMP-298" && s.Number(BatchProperties.InitialConcentration) is 5 or 20 or 60))),
        ["sensor"] = () => Strong(s => !s.Code.EndsWith("-3", StringComparison.Ordinal) && !s.Code.EndsWith("-4", StringComparison.Ordinal), false),
        ["run"] = () => Strong(s => s.Role is SampleRole.Standard or SampleRole.Blank or SampleRole.CheckStandard || s.Series == "BATCH", true),
        ["doses"] = () => Strong(s => s.Role is SampleRole.Standard or SampleRole.Blank || s.Series == "DOSE", true),
        ["water"] = () => Strong(s => s.Role is SampleRole.Standard or SampleRole.Blank or SampleRole.Digest or SampleRole.SorbentBlank || s.Series == "WATER", true),
        ["zero-charge"] = ZeroCharge,
        ["spectra"] = Spectra,
        ["ph"] = Ph,
    };

    /// <summary>Every damage of a study.</summary>
    public static IEnumerable<(string Name, Study Study)> Damaged(Study study)
    {
        foreach (var property in study.Samples.SelectMany(s => s.Facts.Keys).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            var owners = study.Samples.Where(s => s.Facts.ContainsKey(property)).Select(s => s.Code).ToArray();
            string[] first = [owners[0]], middle = [owners[owners.Length / 2]];
            yield return ($"{property} missing", Changed(study, property, owners, _ => null));
            yield return ($"{property} missing once", Changed(study, property, middle, _ => null));
            if (study.Sample(owners[0])!.Facts[property].Value is null)
            {
                yield return ($"{property} another", Changed(study, property, middle, f => f with { Words = "Zn" }));
                continue;
            }

            // A vessel apart in time or start concentration begins a curve of its own, whose fits take long and are pinned with the whole studies.
            if (property == BatchProperties.ContactTime.Name || property == BatchProperties.InitialConcentration.Name)
                continue;
            yield return ($"{property} zero, first", Changed(study, property, first, f => f with { Value = 0 }));
            yield return ($"{property} threefold, middle", Changed(study, property, middle, f => f with { Value = 3 * f.Value }));
            yield return ($"{property} negative, middle", Changed(study, property, middle, f => f with { Value = -f.Value }));
            yield return ($"{property} with u", Changed(study, property, owners, f => f with { U = Math.Abs(0.03 * f.Value!.Value) }));
        }

        foreach (var group in study.Samples.GroupBy(s => (s.Role, s.Series)))
        {
            var code = group.ElementAt(group.Count() / 2).Code;
            yield return ($"{code} struck", study with { Strikes = [new(code, "spilt", 20, default, "the author")] });
            yield return ($"{group.Key.Role} {group.Key.Series} gone", study with { Samples = [.. study.Samples.Except(group)] });
            yield return ($"{group.Key.Role} {group.Key.Series} but two", study with { Samples = [.. study.Samples.Where(s => s.Role != group.Key.Role || s.Series != group.Key.Series || group.Take(2).Contains(s))] });
            yield return ($"{code} a control", study with { Samples = [.. study.Samples.Select(s => s.Code == code ? s with { Role = SampleRole.Control } : s)] });
            yield return ($"{code} a start solution", study with { Samples = [.. study.Samples.Select(s => s.Code == code ? s with { Role = SampleRole.StartSolution } : s)] });
        }

        foreach (var run in study.Runs.Where(r => study.Readings.Any(o => o.Run == r.Id)))
        {
            var at = study.Readings.Where(r => r.Run == run.Id).ElementAt(study.Readings.Count(r => r.Run == run.Id) / 2).Id;
            Study With(Func<Reading, Reading> change, bool all = false) => study with { Readings = [.. study.Readings.Select(r => r.Run == run.Id && (all || r.Id == at) ? change(r) : r)] };
            yield return ($"{at} missing", With(r => r with { Value = null }));
            yield return ($"{at} only below", With(r => r with { Value = null, Below = r.Value }));
            yield return ($"{at} diluted", With(r => r with { Dilution = 2 }));
            yield return ($"{at} another portion", With(r => r with { Portion = 2 }));
            yield return ($"{at} twice", study with { Readings = [.. study.Readings, study.Readings.Single(r => r.Id == at) with { Id = "R-twice", Value = 1.02 * study.Readings.Single(r => r.Id == at).Value }] });
            yield return ($"{at} zero", With(r => r with { Value = 0 }));
            yield return ($"{at} tenfold", With(r => r with { Value = 10 * r.Value }));
            yield return ($"{at} struck", study with { Strikes = [new(at, "an air bubble", 20, default, "the author")] });
            yield return ($"{run.Id} with u", With(r => r with { U = 0.02 * r.Value }, all: true));
            yield return ($"{run.Id} zero", With(r => r with { Value = 0 }, all: true));
        }

        yield return ("no analyte", study with { Analyte = null });
        yield return ("another analyte", study with { Analyte = "Pb" });
        yield return ("no margins", study with { Margins = [] });
        yield return ("nothing claimed", study with { Claims = [] });
        yield return ("apparatus", study with { Apparatus = [.. new[] { BatchProperties.Volume, BatchProperties.Mass, BatchProperties.EndPh, SpectrometryProperties.ReportedConcentration }.Select(p => new Instrument(p.Name + " device", p.Name, 0.05, 0.01, true, "certificate", null))] });
    }

    private static Study Changed(Study study, string property, string[] codes, Func<Fact, Fact?> change) => study with
    {
        Samples = [.. study.Samples.Select(s => !codes.Contains(s.Code) || !s.Facts.TryGetValue(property, out var fact) ? s
            : s with { Facts = change(fact) is { } other ? s.Facts.SetItem(property, other) : s.Facts.Remove(property) })],
    };

    private static Study Part(Study study, Func<Sample, bool> kept) => study with
    {
        Samples = [.. study.Samples.Where(kept)],
        Readings = [.. study.Readings.Where(r => study.Sample(r.Sample) is { } s && kept(s))],
    };

    private static Study Reuse(Func<Sample, bool> kept) => Part(StrongReuseStudy.Build(), kept);

    private static Study Strong(Func<Sample, bool> kept, bool isPowder)
    {
        var study = StrongStudy.Build();
        var sensor = StrongSensor.Samples.Select(s => s.Code).ToHashSet(StringComparer.Ordinal);
        return Part(study, s => sensor.Contains(s.Code) != isPowder && kept(s));
    }

    // Vessels told apart by another property than the start concentration need no isotherm, whose fits take long.
    private static Study AsSeries(string name, Property varied, Study study) => study with
    {
        Samples = [.. study.Samples.Select((s, i) => s.Facts.TryGetValue(varied.Name, out var fact)
            ? s with { Facts = s.Facts.SetItems(Made.Facts([], (SampleProperties.Series, Invariant($"{name}-{i}")))).SetItem(varied.Name, fact) } : s)],
    };

    // Two beds alike, and two of other depths whose break comes in proportion.
    private static Study Beds()
    {
        var study = Reuse(s => s.Series is "BED-1" or "BED-2");
        var first = study.Samples.Where(s => s.Series == "BED-1").ToArray();
        return study with { Samples = [.. study.Samples, .. Deeper(first, "BED-3", 2, -30), .. Deeper(first, "BED-4", 3, 20)] };

        static IEnumerable<Sample> Deeper(Sample[] bed, string name, int times, double late) => bed.Select(s => s with
        {
            Code = name + s.Code[5..],
            Facts = s.Facts.SetItems(Made.Facts(
                [
                    (ColumnProperties.BedDepth, times * s.Number(ColumnProperties.BedDepth)!.Value), (ColumnProperties.BedMass, times * s.Number(ColumnProperties.BedMass)!.Value),
                    (ColumnProperties.TimeOnStream, times * s.Number(ColumnProperties.TimeOnStream)!.Value + (s.Number(ColumnProperties.TimeOnStream) > 0 ? late : 0)), (ColumnProperties.HeldLiquid, 3.0),
                ],
                (SampleProperties.Series, name))),
        });
    }

    // A powder's drift at three levels of salt, zero at pH 7.2, and uptakes at them.
    private static Study ZeroCharge()
    {
        var samples = new List<Sample>();
        foreach (var salt in new[] { 0.01, 0.03, 0.1 })
        {
            foreach (var ph in new[] { 3.0, 4, 5, 6, 7, 8, 9, 10 })
            {
                samples.Add(new(Invariant($"Z-{salt}-{ph}"), SampleRole.SorbentBlank, Made.Facts(
                    [(BatchProperties.StartPh, ph), (BatchProperties.EndPh, ph + 0.4 * (7.2 - ph)), (BatchProperties.Mass, 50), (BatchProperties.Volume, 25), (SurfaceChargeProperties.IonicStrength, salt)], (SampleProperties.Series, "PZC"))));
            }

            for (var i = 1; i <= 3; i++)
            {
                samples.Add(new(Invariant($"U-{salt}-{i}"), SampleRole.Vessel, Made.Facts(
                    [
                        (BatchProperties.InitialConcentration, 20), (BatchProperties.Mass, 50), (BatchProperties.Volume, 25), (BatchProperties.ContactTime, 1440), (BatchProperties.StartPh, 6), (BatchProperties.EndPh, 6.5),
                        (SurfaceChargeProperties.IonicStrength, salt), (BatchProperties.ReportedRemoval, 80 - 30 * salt + 0.3 * i),
                    ], (SampleProperties.Series, "SALT"))));
            }
        }

        return new() { Title = "zero charge", Invented = true, Analyte = "Ni", Samples = [.. samples] };
    }

    // Parabolas about 616 nm that fall as quencher is added; the liquid alone, vessels in days of their own, one that is followed after the addition.
    private static Study Spectra()
    {
        var samples = new List<Sample>();
        var readings = new List<Reading>();
        for (var i = 1; i <= 3; i++)
            Add(Invariant($"E-blank-{i}"), SampleRole.Blank, 1000 + 2 * i, (FluorescenceProperties.Quencher, 0));
        Add("E-liquid", SampleRole.Solvent, 10);
        foreach (var (level, i) in new[] { 5.0, 10, 20, 40 }.SelectMany(l => new[] { (l, 1), (l, 2) }))
            Add(Invariant($"E-{level}-{i}"), SampleRole.Vessel, 1000 / (1 + 0.02 * level) + 3 * i, (FluorescenceProperties.Quencher, level), (FluorescenceProperties.Dispersion, 0.1));
        foreach (var minutes in new[] { 0.0, 1, 2, 3, 5, 8, 12 })
            Add(Invariant($"E-after-{minutes}"), SampleRole.Vessel, 700 + 300 * Math.Exp(-minutes), (FluorescenceProperties.TimeAfterAddition, minutes), (FluorescenceProperties.Quencher, 20));
        foreach (var (day, i) in new[] { 1, 2, 3 }.SelectMany(d => Enumerable.Range(1, 6).Select(i => (d, i))))
        {
            Add(Invariant($"E-day{day}-{i}"), SampleRole.Vessel, 714 + 2 * day + (i % 3), (FluorescenceProperties.Quencher, 20));
            samples[^1] = samples[^1] with { Facts = samples[^1].Facts.SetItems(Made.Facts([], (SampleProperties.Series, "DAYS"), (SampleProperties.Day, Invariant($"2031-03-0{day}")))) };
        }

        return new()
        {
            Title = "spectra",
            Invented = true,
            Analyte = "Cu",
            Samples = [.. samples],
            Readings = [.. readings],
            Runs = [new Run("scan", FluorescenceProperties.Emission.Name, ImmutableSortedDictionary<string, string>.Empty.Add("Excitation", "394 nm").Add("Detector range", "5000"), File)],
        };

        void Add(string code, SampleRole role, double height, params (Property, double)[] numbers)
        {
            samples.Add(new(code, role, Made.Facts(numbers, (SampleProperties.Series, code.StartsWith("E-after", StringComparison.Ordinal) ? "AFTER" : "TITRATION"))));
            ImmutableArray<double> w = [.. Enumerable.Range(0, 41).Select(i => 596.0 + i)];
            readings.Add(new(Invariant($"R-{readings.Count}"), code, "scan", readings.Count + 1, FluorescenceProperties.Emission.Name, null, null, 1, 1, "", File)
            {
                Spectrum = new(w, [.. w.Select(l => role == SampleRole.Solvent ? height : Math.Max(5, height - (height / 1000 * 10 * (l - 616) * (l - 616))) + 10)]),
            });
        }
    }

    // From pH 4, where nothing can form, to pH 10, where hydroxide does; controls at three of them.
    private static Study Ph()
    {
        var samples = new List<Sample>();
        foreach (var ph in new[] { 4.0, 5, 6, 7, 8, 9, 10 })
        {
            for (var i = 1; i <= 3; i++)
                Add(Invariant($"P-{ph}-{i}"), SampleRole.Vessel, ph, ph < 8 ? 20 * ph - 40 + 0.5 * i : 97 + 0.2 * i);
            if (ph is 4 or 7 or 10)
            {
                for (var i = 1; i <= 2; i++)
                    Add(Invariant($"P-{ph}-C{i}"), SampleRole.Control, ph, ph > 9 ? 80 + i : 0.3 * i);
            }
        }

        return new()
        {
            Title = "ph",
            Invented = true,
            Analyte = "Ni",
            Samples = [.. samples],
            Claims = [.. new[] { "optimum-ph", "not-precipitation", "controls-clean", "ph-recorded" }.Select(r => new StatedClaim(r, r, ImmutableSortedDictionary<string, string>.Empty.Add("series", "PH").Add("ph", "8"), null, 10, default))],
        };

        void Add(string code, SampleRole role, double ph, double removed)
            => samples.Add(new(code, role, Made.Facts(
                [
                    (BatchProperties.InitialConcentration, 20), (BatchProperties.Volume, 25), (BatchProperties.Mass, role == SampleRole.Control ? 0 : 50), (BatchProperties.ContactTime, 1440), (BatchProperties.StartPh, ph),
                    (BatchProperties.EndPh, ph + 0.2), (BatchProperties.Temperature, 298.15), (BatchProperties.ReportedRemoval, removed),
                ], (SampleProperties.Series, "PH"), (SampleProperties.Matrix, "0.01 mol/L NaNO3"), (CarbonateProperties.Air, "open"))));
    }
}
