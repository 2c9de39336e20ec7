using Holdfast.Techniques.NitrogenSorption;
using static Holdfast.Techniques.Tests.NitrogenSorption.InventedIsotherm;

namespace Holdfast.Techniques.Tests.NitrogenSorption;

/// <summary>One isotherm in the layouts, languages and units that people have; each gives the same area. All invented.</summary>
public class ReadingTests
{
    private const double Stp = 22.41397;

    /// <summary>Name, file, powder.</summary>
    public static TheoryData<string, string, string> Layouts => new()
    {
        { "stacked.csv", "Sample,ZX-1\nSample mass,0.1034 g\nGas,N2\nP/P0,Quantity adsorbed (cm3/g STP)\n" + Lines(Stacked, nScale: Stp), "ZX-1" },
        { "german.csv", "Probe;ZX-1\nEinwaage / g;0,1034\nAdsorptiv;Stickstoff\n;\nAdsorption;;Desorption;\np/p0;n (mmol/g);p/p0;n (mmol/g)\n" + SideBySide(), "ZX-1" },
        { "branch-lines.csv", "Probe;ZX-1\nGas;N2\nRelativdruck p/p°;Adsorbierte Menge [mmol g⁻¹]\nAdsorption\n" + Lines(Adsorption, ";", comma: true) + "Desorption\n" + Lines(Desorption, ";", comma: true), "ZX-1" },
        { "french.txt", "Échantillon : ZX-1\nMasse (mg) : 103,4\nGaz : azote\nPression de saturation : 101,1 kPa\n\nPression (kPa)\tVolume adsorbé (cm3 STP/g)\n" + Lines(Stacked, "\t", 101.1, Stp, comma: true), "ZX-1" },
        { "spanish.csv", "Muestra: ZX-1\nGas: nitrógeno\nRama de adsorción\nPresión relativa;Volumen adsorbido (cm3/g STP)\n" + Lines(Adsorption, ";", 1, Stp, comma: true) + "\nRama de desorción\nPresión relativa;Volumen adsorbido (cm3/g STP)\n" + Lines(Desorption, ";", 1, Stp, comma: true), "ZX-1" },
        { "russian.csv", "Образец;ZX-1\nНавеска, г;0,1034\nАдсорбат;азот\n\nОтносительное давление;Объём адсорбированного газа, см3/г (н.у.)\n" + Lines(Stacked, ";", 1, Stp, comma: true), "ZX-1" },
        { "chinese.csv", "样品,ZX-1\n气体,氮气\n相对压力 P/P0,吸附量 (cm3/g STP)\n" + Lines(Stacked, nScale: Stp), "ZX-1" },
        { "turkish.csv", "Numune,ZX-1\nGaz,azot\nBağıl basınç (p/p0),Adsorplanan hacim (cm3/g STP)\n" + Lines(Stacked, nScale: Stp), "ZX-1" },
        { "percent.csv", "Sample,ZX-1\nGas,N2\np/p0 (%),V (cm3(STP)/g)\n" + Lines(Stacked, xScale: 100, nScale: Stp), "ZX-1" },
        { "units-line.csv", "Sample,ZX-1\nGas,N2\np/p0,Vads\n,cm3/g STP\n" + Lines(Stacked, nScale: Stp), "ZX-1" },
        { "micromoles.csv", "Sample,ZX-1\nGas,N2\nP (Torr),P0 (Torr),n (umol/g)\n" + Lines(Stacked, ",758.5,", 758.5, 1000), "ZX-1" },
        { "old-names.aif", "data_x\n_sample_id ZX-1\n_exptl_sample_mass 0.1034\n_exptl_adsorptive nitrogen\n_exptl_p0 101.3\n_units_pressure kPa\n_units_loading 'cm3(STP)/g'\n_units_mass g\nloop_\n_adsorp_pressure\n_adsorp_amount_excess\n"
            + Lines(Adsorption, " ", 101.3, Stp) + "loop_\n_desorp_pressure\n_desorp_amount_excess\n" + Lines(Desorption, " ", 101.3, Stp), "ZX-1" },
        { "with-reports.csv", "Sample: ZX-1\nAnalysis gas: N2\n\nRelative Pressure (P/Po),Quantity Adsorbed (cm3/g STP)\n" + Lines(Stacked, nScale: Stp)
            + "\nBET surface area: 146.3 m2/g\nRelative Pressure (P/Po),Quantity Adsorbed (cm3/g STP),1/[Q(Po/P - 1)]\n0.05,27.4,0.0019\n0.1,31.2,0.0036\n0.15,34.0,0.0052\n", "ZX-1" },
    };

    [Theory, MemberData(nameof(Layouts))]
    public void File_InALayoutOfTheBench_GivesTheSameArea(string name, string text, string powder)
    {
        var taken = Taken.Text(name, text);
        Assert.Empty(taken.Open);
        var one = Assert.Single(SorptionStudy.Of(taken.Evidence).Isotherms);
        Assert.Equal(powder, one.Measurement.Sample);
        Assert.Equal(Area, one.Bet!.Chosen!.Area, 0.003 * Area);
        Assert.Equal(Adsorption.Count, one.Branches.Adsorption.Length);
        Assert.Equal(Desorption.Count, one.Branches.Desorption.Length);
    }

    // Per gram or of the whole sample: many write one heading for both, so it is asked, with what follows from each.
    [Fact]
    public void Amounts_WithoutPerGram_AreAskedAboutAndFollowTheAnswer()
    {
        var text = "Sample,ZX-1\nWeight (g),0.0512\nGas,N2\np/p0,Volume (cm3 STP)\n" + Lines(Stacked, nScale: Stp * 0.0512);
        var asked = Taken.Text("whole.csv", text);
        var question = Assert.Single(asked.Open);
        Assert.Equal(("amount", "Is “Volume (cm3 STP)” per gram of powder, or for the whole sample of 0.0512 g?"), (question.Id, question.Text));
        Assert.Equal(["BET area about 7.493 m2/g", "BET area about 146.3 m2/g"], question.Consequences);
        Assert.Empty(asked.Study.Measurements);
        Assert.Equal(Area, AreaOf(Taken.Text("whole.csv", text, ("amount", "whole-sample"))), 0.003 * Area);
        // Read per gram the cell would hold less than 1 m², of which nothing is said.
        var perGram = Assert.Single(SorptionStudy.Of(Taken.Text("whole.csv", text, ("amount", "per-gram")).Evidence).Isotherms);
        Assert.Null(perGram.Area);
        Assert.Equal(Area * 0.0512, perGram.Bet!.Closest!.Area, 0.003 * Area);
    }

    // Nothing in nature holds so much: only one reading is left, and it is said.
    [Fact]
    public void Amounts_ThatOnlyOneReadingAllows_AreAssumedAloud()
    {
        var taken = Taken.Text("cc.csv", "Sample,ZX-1\nWeight (g),0.005\nGas,N2\np/p0,Volume (cc)\n" + Lines(Stacked, nScale: Stp));
        Assert.Empty(taken.Open);
        Assert.Contains(taken.Files[0].Questions, q => q is { Id: "amount", Assumed: "per-gram" } && q.Text.Contains("more nitrogen than any known solid", StringComparison.Ordinal));
    }

    [Fact]
    public void Amounts_WithoutAUnit_AreAskedAbout()
    {
        var text = "Sample,ZX-1\nGas,N2\np/p0,V ads\n" + Lines(Stacked, nScale: Stp);
        Assert.Equal("amount-unit", Assert.Single(Taken.Text("a.csv", text).Open).Id);
        Assert.Equal(Area, AreaOf(Taken.Text("a.csv", text, ("amount-unit", "cm3(STP)/g"))), 0.003 * Area);
    }

    // 300 "mmol/g" are 6700 cm³/g: the heading is wrong.
    [Fact]
    public void Amounts_AboveWhatAnySolidHolds_AreAskedAbout()
    {
        var question = Assert.Single(Taken.Text("a.csv", "Sample,ZX-1\nGas,N2\np/p0,n (mmol/g)\n" + Lines(Stacked, nScale: Stp)).Open);
        Assert.Equal("amount-unit", question.Id);
        Assert.DoesNotContain("mmol/g", question.Choices);
    }

    [Fact]
    public void Pressures_UnderAHeadingOfRelativeOnes_AreAskedAbout()
    {
        var text = "Sample,ZX-1\nGas,N2\np/p0,n (mmol/g)\n" + Lines(Stacked, xScale: 100);
        Assert.Equal("pressure", Assert.Single(Taken.Text("a.csv", text).Open).Id);
        Assert.Equal(Area, AreaOf(Taken.Text("a.csv", text, ("pressure", "percent"))), 0.003 * Area);
        Assert.Equal(["value:p0"], Taken.Text("a.csv", text, ("pressure", "kPa")).Open.Select(q => q.Id));
        Assert.Equal(Area, AreaOf(Taken.Text("a.csv", text, ("pressure", "kPa"), ("value:p0", "100"))), 0.003 * Area);
    }

    // A pressure alone may be many things; a powder's isotherm only if somebody says so, and then p0 is missing.
    [Fact]
    public void Pressures_Alone_AreAskedAbout()
    {
        var text = "P (mmHg),Quantity adsorbed (mmol/g)\n" + Lines(Stacked, xScale: 760);
        Assert.Equal("technique", Assert.Single(Taken.Text("a.csv", text).Open).Id);
        Assert.Equal(["value:p0"], Taken.Text("a.csv", text, ("technique", "nitrogen-sorption")).Open.Select(q => q.Id));
        Assert.Equal(Area, AreaOf(Taken.Text("a.csv", text, ("technique", "nitrogen-sorption"), ("value:p0", "760"))), 0.003 * Area);
        Assert.Empty(Taken.Text("a.csv", text, ("technique", "table")).Study.Measurements);
    }

    [Fact]
    public void Columns_WithoutAHeading_AreAskedAbout()
    {
        var text = Lines(Stacked, " ", 1, Stp);
        Assert.Equal("technique", Assert.Single(Taken.Text("zx-1.txt", text).Open).Id);
        var taken = Taken.Text("zx-1.txt", text, ("technique", "nitrogen-sorption"), ("amount-unit", "cm3(STP)/g"));
        Assert.Equal(Area, AreaOf(taken), 0.003 * Area);
        Assert.Equal("zx-1", taken.Study.Measurements[0].Sample);
    }

    [Fact]
    public void Powders_SideBySideUnderTheirNames_AreTwoMeasurements()
    {
        var rows = string.Concat(Stacked.Select(p => FormattableString.Invariant($"{p.X:0.####},{p.N:0.#####},{p.X:0.####},{p.N * 0.9:0.#####}\n")));
        var taken = Taken.Text("two.csv", "N2 isotherms,,,\nparent,,doped 5 %,\np/p0,n (mmol/g),p/p0,n (mmol/g)\n" + rows);
        Assert.Equal(["parent", "doped 5 %"], taken.Study.Measurements.Select(m => m.Sample));
        Assert.Equal(0.9, SorptionStudy.Of(taken.Evidence).Isotherms[1].Bet!.Chosen!.Area / SorptionStudy.Of(taken.Evidence).Isotherms[0].Bet!.Chosen!.Area, 3);
    }

    // Words beside the unit settle what the unit leaves open; they are said and can be changed.
    [Theory, InlineData("all volumes per gram of degassed powder", "V (cm3 STP)", 1, "per-gram"), InlineData("made on Monday", "V of the whole sample (cm3 STP)", 0.1034, "whole-sample")]
    public void Amounts_WhoseWordsSayPerWhat_AreAssumedAloud(string note, string heading, double scale, string assumed)
    {
        var taken = Taken.Text("a.csv", $"Sample,ZX-1\nMass,0.1034 g\nGas,N2\n{note}\np/p0,{heading}\n" + Lines(Stacked, nScale: Stp * scale));
        Assert.Empty(taken.Open);
        Assert.Equal(assumed, taken.Files[0].Questions.Single(q => q.Id == "amount").Assumed);
        Assert.Equal(Area, AreaOf(taken), 0.003 * Area);
    }

    // Numbers under each other's headings: asked, and swapped on the answer.
    [Fact]
    public void Columns_UnderEachOthersHeadings_AreAskedAbout()
    {
        var text = "Sample,ZX-1\nGas,N2\np/p0,V (cm3/g STP)\n" + string.Concat(Stacked.Select(p => FormattableString.Invariant($"{p.N * Stp:0.####},{p.X:0.####}\n")));
        var question = Assert.Single(Taken.Text("a.csv", text).Open);
        Assert.Equal(("pressure", "swap"), (question.Id, question.Choices[0]));
        Assert.Equal(Area, AreaOf(Taken.Text("a.csv", text, ("pressure", "swap"))), 0.003 * Area);
    }

    [Fact]
    public void Branch_InAColumnOfAnotherName_IsToldByItsWords()
    {
        var text = "p/p0,n (mmol/g),kind\n" + string.Concat(Desorption.Select(p => FormattableString.Invariant($"{p.X:0.####},{p.N:0.#####},desorption\n"))) + string.Concat(Adsorption.Select(p => FormattableString.Invariant($"{p.X:0.####},{p.N:0.#####},adsorption\n")));
        var one = Assert.Single(SorptionStudy.Of(Taken.Text("a.csv", text).Evidence).Isotherms);
        Assert.Equal((Adsorption.Count, Desorption.Count), (one.Branches.Adsorption.Length, one.Branches.Desorption.Length));
    }

    // A reference of the same shape: its own area comes back by the ratio of the amounts, without micropores.
    [Fact]
    public void Reference_WhoseFileStatesItsArea_ServesTheOthers()
    {
        var text = "Sample,ZX-1\nGas,N2\np/p0,n (mmol/g)\n" + Lines(Stacked);
        var reference = "Sample,silica S (invented)\nReference area,29.27 m2/g\nGas,N2\np/p0,n (mmol/g)\n" + Lines(Stacked, nScale: 0.2);
        var folder = Directory.CreateTempSubdirectory("holdfast-test-").FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "a.csv"), text);
            File.WriteAllText(Path.Combine(folder, "b.csv"), reference);
            var study = SorptionStudy.Of(Taken.Paths([Path.Combine(folder, "a.csv"), Path.Combine(folder, "b.csv")]).Evidence);
            Assert.Equal("silica S (invented)", study.Reference?.Measurement.Sample);
            var plot = study.Powder("ZX-1")!.Isotherms[0].AlphaPlot!;
            Assert.Equal(29.27 / 0.2, plot.ExternalArea, 0.01);
            Assert.Equal(0, plot.MicroporeVolume, 1e-5);
            Assert.Null(study.Reference!.AlphaPlot);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Gas_OtherThanNitrogen_IsKeptAndGivesNoArea()
    {
        var taken = Taken.Text("ar.csv", "Sample,ZX-1\nAdsorptive,argon\np/p0,n (mmol/g)\n" + Lines(Stacked));
        var one = Assert.Single(SorptionStudy.Of(taken.Evidence).Isotherms);
        Assert.Equal("HF-719", one.Refused?.Code);
        Assert.Null(one.Area);
    }

    // The unit of one column is not that of the other: a word, and p/p0 is used.
    [Fact]
    public void Columns_InOtherUnitsThanTheySay_AreNamed()
    {
        var rows = string.Concat(Stacked.Select(p => FormattableString.Invariant($"{p.X:0.####},{p.X * 101:0.###},758,{p.N:0.#####}\n")));
        Assert.Contains(Taken.Text("a.csv", "Sample,ZX-1\nGas,N2\np/p0,p (mmHg),p0 (mmHg),n (mmol/g)\n" + rows).Files[0].Findings, f => f.Sentence.Contains("times the p/p0 beside it", StringComparison.Ordinal));
    }

    [Fact]
    public void Table_ByAnswer_IsNoMeasurement()
    {
        var taken = Taken.Text("a.csv", "Sample,ZX-1\nGas,N2\np/p0,n (mmol/g)\n" + Lines(Stacked), ("technique", "table"));
        Assert.Empty(taken.Study.Measurements);
        Assert.DoesNotContain(taken.Files[0].Tables, t => t.Kind == Studies.Import.TableKind.Measurement);
    }

    private static double AreaOf(Taken taken) => Assert.Single(SorptionStudy.Of(taken.Evidence).Isotherms).Bet!.Chosen!.Area;

    private static string SideBySide()
        => string.Concat(Enumerable.Range(0, Math.Max(Adsorption.Count, Desorption.Count)).Select(i => (Cells(Adsorption, i) + ";" + Cells(Desorption, i) + "\n").Replace('.', ',')));

    private static string Cells(IReadOnlyList<(double X, double N)> points, int i) => i < points.Count ? FormattableString.Invariant($"{points[i].X:0.####};{points[i].N:0.#####}") : ";";
}
