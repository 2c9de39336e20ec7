using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using Holdfast.Testing;

namespace Holdfast.Claims.Tests;

/// <summary>Intensities of a titration that was read as spectra: which window, what is taken off, what cannot count. Bands are parabolas and straight lines, worked by hand.</summary>
public class EmissionStudyTests
{
    private static readonly Origin File = new("01", "scan.csv", null, 0, "a column");

    // The scenario's intensities (reference/design/demo-seed-1589-values.csv, an independent program) follow from the demo's spectra, vessel by vessel.
    [Fact]
    public void Demo_ReadAsSpectra_GivesTheIntensitiesOfTheScenario()
    {
        var series = Assert.Single(Sensing.Of(DemoStudy.Dossier.Evidence).Series);
        var rows = ReferenceTable.Read("design", "demo-seed-1589-values.csv").Where(r => r["series"] == "FLUOR" && r["replicate"] != "0").ToList();
        Assert.Equal(rows.Count, series.Samples.Length);
        Assert.All(series.Samples, s => Assert.NotNull(s.Spectra));
        foreach (var row in rows)
        {
            var level = double.Parse(row["level"].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
            var code = FormattableString.Invariant($"FL{level:00}-{(int)row.Number("replicate")}");
            Agree.Relative(1e-9, row.Number("value"), series.Samples.Single(s => s.Code == code).Signal.Value, code);
        }
    }

    [Fact]
    public void Window_NobodyFixed_StandsOnTheMeanOfTheBlanks_AndServesAll()
    {
        var found = Work(Blank("B-1", Band(1000, 616)), Blank("B-2", Band(1000, 616)), Vessel("V-1", 20, Band(700, 619)));
        Assert.Equal((614.0, 618.0), (found.Window!.From, found.Window.To));
        Assert.Contains("2 blanks", found.WindowFrom, StringComparison.Ordinal);
        Assert.Equal(980, found.SampleNamed("B-1")!.Signal!.Value.Value, 9);

        // Distances 5, 4, 3, 2, 1 from its own maximum: 700 − 10·(25 + 16 + 9 + 4 + 1)/5.
        Assert.Equal(590, found.SampleNamed("V-1")!.Signal!.Value.Value, 9);
    }

    [Fact]
    public void Window_ThatWasFixed_IsSearchedForAPeak_OrIntegrated()
    {
        Scanned[] all = [Blank("B-1", w => 500 - Math.Abs(w - 606) * 10 + Math.Max(0, 900 - 100 * Math.Abs(w - 630))), Vessel("V-1", 20, w => w)];
        Assert.Equal(630, Work(all).Window!.Maximum);
        Assert.Equal(606, Work(Fixed("peak-window", 601, 615), all).Window!.Maximum);

        // The area below the line I = λ from 610 to 620 nm is 615·10.
        var area = Work(Fixed("area-window", 610, 620), all);
        Assert.True(area.Window!.IsArea);
        Assert.Equal(6150, area.SampleNamed("V-1")!.Signal!.Value.Value, 9);
        Assert.Contains("entry 7", area.WindowFrom, StringComparison.Ordinal);
    }

    [Fact]
    public void Window_InAnotherKindOfUnit_IsNotUsed_AndSaidSo()
    {
        var found = Work([new("peak-window", 0, 5, "%", 3)], Blank("B-1", Band(1000, 616)));
        Assert.Equal(616, found.Window!.Maximum);
        Assert.Contains(found.Findings, f => f.Code == "HF-598");
    }

    [Fact]
    public void Liquid_ReadAlone_IsTakenOffEverySpectrum_WithItsOwnScatterShared()
    {
        var found = Work(Blank("B-1", w => Band(1000, 616)(w) + 11), Vessel("V-1", 20, w => Band(700, 616)(w) + 11), Solvent("S-1", _ => 10), Solvent("S-2", _ => 12));
        Assert.Equal(680, found.SampleNamed("V-1")!.Signal!.Value.Value, 9);

        // sd of 10 and 12 is √2, of their mean 1; both signals share it, so their difference does not hold it.
        Assert.Equal(1, found.SampleNamed("V-1")!.Signal!.Value.U, 9);
        Assert.Equal(0, (found.SampleNamed("B-1")!.Signal!.Value - found.SampleNamed("V-1")!.Signal!.Value).U, 9);
        Assert.DoesNotContain(found.Findings, f => f.Code == "HF-595");
    }

    // Excited at 394 nm, water's Raman line stands at 455 nm (see SpectralWindowTests): said where it lies in the window.
    [Fact]
    public void Liquid_NotRead_IsACaution_ThatNamesTheRamanLine()
    {
        var found = Work([], "394 nm", Blank("B-1", w => Band(1000, 455)(w), 440));
        var said = Assert.Single(found.Findings, f => f.Code == "HF-595");
        Assert.Contains("Raman line of water, 455 nm", said.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("Raman", Assert.Single(Work(Blank("B-1", Band(1000, 616))).Findings, f => f.Code == "HF-595").Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Spectrum_ReadTwice_HasTheScatterOfItsReads()
    {
        var found = Work(Blank("B-1", Band(1000, 616)), Vessel("V-1", 20, Band(700, 616)), Vessel("V-1", 20, Band(704, 616)));

        // 680 and 684: mean 682, sd 2√2, of the mean 2.
        Assert.Equal((682.0, 2.0), (found.SampleNamed("V-1")!.Signal!.Value.Value, Math.Round(found.SampleNamed("V-1")!.Signal!.Value.U, 9)));
        Assert.Equal(0, found.SampleNamed("B-1")!.Signal!.Value.U);
    }

    // Common practice: above 80 % of the range the detector no longer follows the light.
    [Theory]
    [InlineData("1200", true)]
    [InlineData("1300", false)]
    public void Spectrum_NearTheEndOfTheDetectorsRange_DoesNotCount(string range, bool refused)
    {
        var found = Work([], "394 nm", range, Blank("B-1", Band(1000, 616)), Vessel("V-1", 20, Band(700, 616)));
        Assert.Equal(refused, found.SampleNamed("B-1")!.Signal is null);
        Assert.Equal(refused, found.Findings.Any(f => f.Code == "HF-572" && f.Sentence.Contains("B-1", StringComparison.Ordinal)));
        Assert.NotNull(found.SampleNamed("V-1")!.Signal);
        Assert.DoesNotContain(found.Findings, f => f.Code == "HF-594");
    }

    [Fact]
    public void Spectrum_OnOtherWavelengths_DoesNotCount_AndIsNamed()
    {
        var found = Work(Blank("B-1", Band(1000, 616)), Vessel("V-1", 20, Band(700, 616), step: 2), Vessel("V-2", 40, Band(500, 616)));
        Assert.Null(found.SampleNamed("V-1")!.Signal);
        Assert.NotNull(found.SampleNamed("V-2")!.Signal);
        Assert.Contains("V-1", Assert.Single(found.Findings, f => f.Code == "HF-594").Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Blank_Missing_LeavesNoIntensity_UnlessAVesselIsWithoutQuencherOrAnAreaWasFixed()
    {
        var alone = Work(Vessel("V-1", 20, Band(700, 616)));
        Assert.Null(alone.Window);
        Assert.Equal(Weight.Stop, Assert.Single(alone.Findings, f => f.Code == "HF-593").Weight);
        Assert.Contains("1 vessel without quencher", Work(Vessel("V-0", 0, Band(1000, 616)), Vessel("V-1", 20, Band(700, 616))).WindowFrom, StringComparison.Ordinal);
        Assert.NotNull(Work(Fixed("area-window", 610, 620), Vessel("V-1", 20, Band(700, 616))).SampleNamed("V-1")!.Signal);
    }

    [Fact]
    public void ScannedWithATypedIntensityToo_CountsBySpectrum_AndStruckByWhatWasTyped()
    {
        var study = Study([], "394 nm", null, Blank("B-1", Band(1000, 616)), Vessel("V-1", 20, Band(700, 616)));
        study = study with { Readings = study.Readings.Add(Typed("V-1", 612)) };
        var both = Evidence.Of(study);

        // 612 of 680 is 10 % apart: worth a caution.
        Assert.Equal(Weight.Caution, Assert.Single(EmissionStudy.Of(both).Findings, f => f.Code == "HF-596").Weight);
        Assert.Equal(680, SignalOf(both, "V-1"), 9);
        var struck = Evidence.Of(study with { Strikes = [new("R-2", "the cell was dirty", 9, default, "Ada")] });
        Assert.Equal(612, SignalOf(struck, "V-1"), 9);
        Assert.Contains(Sensing.Of(struck).Series.Single().Findings, f => f.Code == "HF-597");
    }

    // Vessels in files of their own, one run each, come in no order that anybody knows: level and time are not said to go together.
    [Fact]
    public void Vessels_InFilesOfTheirOwn_HaveNoOrder()
    {
        var study = Study([], "394 nm", null, [.. new[] { 0.0, 10, 20, 40 }.Select(q => Vessel(FormattableString.Invariant($"V-{q}"), q, Band(1000 - 10 * q, 616)))]);
        var together = Sensing.Of(Evidence.Of(study)).Series.Single();
        Assert.True(together is { IsInRisingOrder: true, IsOrderKnown: true });
        var apart = study with
        {
            Readings = [.. study.Readings.Select((r, i) => r with { Run = FormattableString.Invariant($"run{i}"), Order = 1 })],
            Runs = [.. study.Readings.Select((_, i) => study.Runs[0] with { Id = FormattableString.Invariant($"run{i}") })],
        };
        Assert.True(Sensing.Of(Evidence.Of(apart)).Series.Single() is { IsInRisingOrder: false, IsOrderKnown: false });
    }

    private static double SignalOf(Evidence evidence, string code) => Sensing.Of(evidence).Series.Single().Samples.Single(s => s.Code == code).Signal.Value;

    private static Func<double, double> Band(double height, double at) => w => height - 10 * (w - at) * (w - at);

    private static ImmutableArray<Margin> Fixed(string name, double low, double high) => [new(name, low, high, "nm", 7)];

    private static EmissionStudy Work(params Scanned[] all) => Work([], all);

    private static EmissionStudy Work(ImmutableArray<Margin> margins, params Scanned[] all) => EmissionStudy.Of(Evidence.Of(Study(margins, null, null, all)));

    private static EmissionStudy Work(ImmutableArray<Margin> margins, string? excitation, params Scanned[] all) => EmissionStudy.Of(Evidence.Of(Study(margins, excitation, null, all)));

    private static EmissionStudy Work(ImmutableArray<Margin> margins, string? excitation, string? range, params Scanned[] all) => EmissionStudy.Of(Evidence.Of(Study(margins, excitation, range, all)));

    private static Study Study(ImmutableArray<Margin> margins, string? excitation, string? range, params Scanned[] all)
    {
        var details = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);
        if (excitation is not null)
            details = details.Add("Excitation", excitation);
        if (range is not null)
            details = details.Add("Detector range", range);
        return new()
        {
            Title = "made by hand",
            Margins = margins,
            Samples = [.. all.DistinctBy(s => s.Code).Select(s => new Sample(s.Code, s.Role, s.Quencher is { } q ? Made.Facts([(FluorescenceProperties.Quencher, q)], (SampleProperties.Series, "T")) : Made.Facts([])))],
            Runs = [new Run("scan", FluorescenceProperties.Emission.Name, details, File), new Run("typed", FluorescenceProperties.Intensity.Name, details, File)],
            Readings = [.. all.Select((s, i) => new Reading(FormattableString.Invariant($"R-{i + 1}"), s.Code, "scan", i + 1, FluorescenceProperties.Emission.Name, null, null, 1, 1, "", File) { Spectrum = s.Spectrum })],
        };
    }

    private static Reading Typed(string code, double value) => new("R-typed", code, "typed", 1, FluorescenceProperties.Intensity.Name, value, null, 1, 1, "", File);

    private static Scanned Blank(string code, Func<double, double> light, double from = 600) => new(code, SampleRole.Blank, null, Scan(light, from, 1));

    private static Scanned Vessel(string code, double quencher, Func<double, double> light, double step = 1) => new(code, SampleRole.Vessel, quencher, Scan(light, 600, step));

    private static Scanned Solvent(string code, Func<double, double> light) => new(code, SampleRole.Solvent, null, Scan(light, 600, 1));

    private static Spectrum Scan(Func<double, double> light, double from, double step)
    {
        ImmutableArray<double> w = [.. Enumerable.Range(0, (int)(40 / step) + 1).Select(i => from + i * step)];
        return new(w, [.. w.Select(light)]);
    }

    private sealed record Scanned(string Code, SampleRole Role, double? Quencher, Spectrum Spectrum);
}
