using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Tests.Import;

/// <summary>Habits of the bench that the sets of cases taught, in other languages and layouts. All sheets are invented; common practice says what each means.</summary>
public class BenchHabitTests
{
    [Theory]
    [InlineData("half spilled before filtering, repeat")]
    [InlineData("leaked during shaking")]
    [InlineData("Deckel undicht, etwas ausgelaufen")]
    [InlineData("flacon renversé")]
    [InlineData("se derramó la mitad")]
    [InlineData("derramou um pouco, repetir")]
    [InlineData("rovesciato, da rifare")]
    [InlineData("rozlano, powtórzyć")]
    public void Remark_ThatAVesselCameToHarm_IsAskedAbout(string remark)
    {
        var sheet = $"vial;mass (mg);V (mL);C0 (mg/L);Ce (mg/L);remark\nA1;10.1;50;25;20.7;\nA2;20.4;50;25;16.2;{remark}\nA3;30.2;50;25;13.1;cloudy\n";
        var asked = Assert.Single(Read.Text(sheet).Questions, q => q.IsOpen);
        Assert.Equal("spoilt:A2", asked.Id);
        Assert.Contains(remark, asked.Text, StringComparison.Ordinal);
        Assert.Equal(["A1", "A3"], Read.Text(sheet, answers: Read.Answer("spoilt:A2", "leave-out")).Proposal!.Samples.Select(s => s.Code));
        Assert.Equal(3, Read.Text(sheet, answers: Read.Answer("spoilt:A2", "keep")).Proposal!.Samples.Length);
    }

    [Theory]
    [InlineData("no leak")]
    [InlineData("nichts verschüttet")]
    [InlineData("stopper loose, nothing lost")]
    [InlineData("filtered twice")]
    [InlineData("filtre changé")]
    [InlineData("rotated 2 h")]
    [InlineData("rifatta, vecchia provetta 4 rotta")]
    public void Remark_ThatDoesNoHarm_IsNotAskedAbout(string remark)
        => Assert.DoesNotContain(Read.Text($"vial;mass (mg);V (mL);C0 (mg/L);Ce (mg/L);remark\nA1;10.1;50;25;20.7;\nA2;20.4;50;25;16.2;{remark}\nA3;30.2;50;25;13.1;\n").Questions, q => q.IsOpen);

    [Fact]
    public void LinesOfAmounts_BecomeRows_AndTwoUnnamedConcentrationsDoNot()
    {
        var read = Read.Text("V = 25 mL, 24 h, pH 6 (invented)\n\nF1 : C0 = 10 mg/L, Ce = 2,1 mg/L\nF2 : C0 = 20 mg/L, Ce = 6,3 mg/L\nF3 : C0 = 40 mg/L, Ce = 18,8 mg/L\n", "cahier.txt");
        Assert.Equal(["F1", "F2", "F3"], read.Proposal!.Samples.Select(s => s.Code));
        Assert.Equal(20, read.Value("F2", BatchProperties.InitialConcentration.Name));
        Assert.Equal([2.1, 6.3, 18.8], read.Proposal.Readings.Select(r => r.Value!.Value));
        Assert.DoesNotContain(Read.Text("F1: 10 mg/L, 2.1 mg/L\nF2: 20 mg/L, 6.3 mg/L\nF3: 40 mg/L, 18.8 mg/L\n", "page.txt").Tables, t => t.Turned is not null);
    }

    [Fact]
    public void BlocksOfOneSampleEach_BecomeRows_WithTheResultThatHoldsItsDilution()
    {
        static string Block(string code, string mean, string dilution, string result) => $"Probe;{code}\nWiederholung;Ext.;c (mg/l)\n1;0,200;{mean}\n2;0,201;{mean}\nMittelwert;0,2005;{mean}\nVerdünnung;{dilution};\nErgebnis (mg/l);;{result}\n\n";
        var read = Read.Text("Messprotokoll (erfunden)\n\n" + Block("Blindwert", "0,01", "1", "0,01") + Block("P1", "1,05", "2", "2,10") + Block("P2", "1,75", "10", "17,5") + Block("P3", "1,61", "20", "32,2"));
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
        Assert.Equal(SampleRole.Blank, read.Proposal!.Samples.Single(s => s.Code == "Blindwert").Role);
        Assert.Equal([2.10, 17.5, 32.2], read.Proposal.Readings.Where(r => r.Sample.StartsWith('P')).Select(r => Math.Round(r.Value!.Value * r.Dilution, 6)));
    }

    [Fact]
    public void BalanceLog_GivesTheNetMass_AndItsCheckWeightIsNoVessel()
    {
        var read = Read.Text("Journal (inventé)\nDate;Échantillon;Brut;Tare;Net;Unité\n2026-05-12;poids étalon;100,0;0,0;100,0;mg\n2026-05-12;C1;1010,1;1000,0;10,1;mg\n2026-05-12;C2;1020,3;1000,1;20,2;mg\n", "balance.csv");
        Assert.Equal(["C1", "C2"], read.Proposal!.Samples.Select(s => s.Code));
        Assert.Equal(20.2, read.Value("C2", BatchProperties.Mass.Name));
    }

    [Fact]
    public void PagesOfOneReport_AreOneTable_AndNumberedSeriesAreNot()
    {
        static string Page(string title, string rows) => $"{title}\nSample,m (mg),V (mL),C0 (mg/L),Ce (mg/L)\n{rows}\n";
        var pages = Read.Text(Page("Page 1 of 2", "W1,20,50,10,5\nW2,20,50,20,9\n") + Page("Page 2 of 2", "W3,20,50,30,16\n"));
        Assert.Single(pages.Tables);
        Assert.Equal(3, pages.Proposal!.Samples.Length);
        Assert.Equal(2, Read.Text(Page("Series 1", "W1,20,50,10,5\nW2,20,50,20,9\n") + Page("Series 2", "X1,20,50,30,16\nX2,20,50,30,17\n")).Tables.Length);
    }

    [Theory]
    [InlineData("C0-Ce")]
    [InlineData("Ci - Cf (mg/L)")]
    [InlineData("ΔC")]
    public void Difference_OfTwoConcentrations_IsNoConcentration(string heading)
    {
        var read = Read.Text($"vial;m (mg);V (mL);C0 (mg/L);Ce (mg/L);{heading}\nA;20;50;10;2;8\nB;20;50;20;6;14\n");
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
        Assert.Equal([2.0, 6.0], read.Proposal!.Readings.Select(r => r.Value!.Value));
    }

    [Theory]
    [InlineData("A (510 nm)")]
    [InlineData("E 510 nm")]
    [InlineData("A510")]
    [InlineData("Abs 510 nm")]
    public void Symbol_AtAWavelength_IsAnAbsorbance(string heading)
        => Assert.All(Read.Text($"sample;{heading};m (mg)\nF1;0.135;20\nF2;0.310;21\n").Proposal!.Readings, r => Assert.Equal(SpectrometryProperties.Absorbance.Name, r.Signal));

    // 5 % below and above the limit of 10 % that a control may lose.
    [Theory]
    [InlineData("19.0", false)]
    [InlineData("17.9", true)]
    public void Control_ThatLostItsMetal_IsHeldAgainstTheVesselAtItsPh(string control, bool said)
    {
        var read = Read.Text($"Sample,mass (mg),V (mL),C0 (mg/L),pH,Ce (mg/L),note\nS4,50.1,25,20,4,11.2,\nC4,,25,20,4,19.9,without powder\nS9,49.9,25,20,9,0.3,\nC9,,25,20,9,{control},without powder\n");
        Assert.Equal(SampleRole.Control, read.Proposal!.Samples.Single(s => s.Code == "C9").Role);
        Assert.Equal(said, read.Findings.Any(f => f.Sentence.StartsWith("S9: the control C9 at pH 9 lost", StringComparison.Ordinal)));
        Assert.DoesNotContain(read.Findings, f => f.Sentence.StartsWith("S4: the control", StringComparison.Ordinal));
    }

    [Fact]
    public void Volume_ThatWasDrawn_IsNotTheVessels_UnlessNoOtherIsStated()
    {
        const string Rows = "\nt (min)\tC (mg/L)\n5\t25.2\n10\t21.7\n30\t16.0\n";
        var both = Read.Text("m = 0.200 g, V = 400 mL, C0 = 30 mg/L\n2 mL aliquots withdrawn each time\n" + Rows, "kinetics.txt");
        Assert.All(both.Proposal!.Samples, s => Assert.Equal(400, s.Number(BatchProperties.Volume)));
        var alone = Read.Text("m = 20 mg, C0 = 30 mg/L\n25 mL aliquots were shaken\n" + Rows, "kinetics.txt");
        Assert.All(alone.Proposal!.Samples, s => Assert.Equal(25, s.Number(BatchProperties.Volume)));
    }

    // Code pages 1250 and 1252 as their tables have them: the same bytes, other letters.
    [Theory]
    [InlineData("Środek kolby", 1250)]
    [InlineData("stężenie końcowe", 1250)]
    [InlineData("objętość", 1250)]
    [InlineData("całkowity", 1250)]
    [InlineData("¿repetir? señal débil", 1252)]
    [InlineData("cm³g-1 für Öl", 1252)]
    [InlineData("œuf, cœur, fœtus", 1252)]
    [InlineData("verschüttet", 1252)]
    public void Text_InACodePage_IsReadInItsOwnLetters(string words, int page)
    {
        var bytes = System.Text.CodePagesEncodingProvider.Instance.GetEncoding(page)!.GetBytes("vial;V (mL);C0 (mg/L);Ce (mg/L);remark\nA1;50;25;20.7;" + words + "\n");
        Assert.Equal(words, Read.Bytes(bytes).Proposal!.Samples[0].Words(SampleProperties.Remark));
    }

    [Fact]
    public void Readings_WithConcentrationsForStandardsAlone_AreASignal_ButNotWhereNobodyKnowsWhich()
    {
        const string one = "Name,Type,Conc (ug/L),Ip (nA)\nStd 0,standard,0,1.3\nStd 5,standard,5,20.5\nStd 10,standard,10,39.8\nV1,sample,,83.9\nV2,sample,,70.7\n";
        Assert.All(Read.Text(one).Proposal!.Readings, r => Assert.Equal(SpectrometryProperties.InstrumentSignal.Name, r.Signal));
        const string two = "Name,Type,Conc (ug/L),Ip (nA),Qp (nC)\nStd 0,standard,0,1.3,4.1\nStd 5,standard,5,20.5,61.2\nStd 10,standard,10,39.8,118\nV1,sample,,83.9,250\nV2,sample,,70.7,212\n";
        Assert.DoesNotContain(Read.Text(two).Proposal?.Readings ?? [], r => r.Signal == SpectrometryProperties.InstrumentSignal.Name);
    }

    [Theory]
    [InlineData("Ce powder A (mg/L)", "Ce powder B (mg/L)", "powder A", "powder B")]
    [InlineData("Ce HA-0 (mg/L)", "Ce EHA-2 (mg/L)", "HA-0", "EHA-2")]
    [InlineData("Cf poudre brute (mg/L)", "Cf poudre dopée (mg/L)", "poudre brute", "poudre dopée")]
    public void Results_OfTwoPowdersSideBySide_AreTwoSeries(string first, string second, string one, string other)
    {
        var read = Read.Text($"t (min),{first},{second}\n5,25.9,24.3\n10,23.3,22.0\n20,19.8,19.9\n");
        Assert.Equal([one, other], read.Proposal!.Samples.Select(s => s.Words(SampleProperties.Series)).Distinct());
        Assert.Equal(6, read.Proposal.Samples.Length);
        // Numbers are replicates.
        Assert.Equal(3, Read.Text("t (min),Ce 1 (mg/L),Ce 2 (mg/L)\n5,25.9,25.7\n10,23.3,23.1\n20,19.8,19.9\n").Proposal!.Samples.Length);
    }

    [Theory]
    [InlineData("1/Ce")]
    [InlineData("ln Ce")]
    [InlineData("log qe")]
    [InlineData("Ce/qe (g/L)")]
    [InlineData("t/qt")]
    public void Column_OfAStraightPlot_IsNoResult(string heading)
    {
        var read = Read.Text($"vial,C0 (mg/L),m (mg),V (mL),Ce (mg/L),{heading}\nA1,10,20,25,2.1,0.47\nA2,20,20,25,6.3,0.16\n");
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
        Assert.Equal([2.1, 6.3], read.Proposal!.Readings.Select(r => r.Value!.Value));
    }
}
