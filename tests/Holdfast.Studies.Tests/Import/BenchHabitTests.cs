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

    [Theory]
    [InlineData("name of a tube = start concentration in mg/L, shaking time in min, replicate")]
    [InlineData("code: Anfangskonzentration in mg/L - Kontaktzeit in min - Wiederholung")]
    [InlineData("Codes: begingehalte (mg/L) / contacttijd (min) / duplo")]
    public void LineThatExplainsTheCodes_GivesTheirSettings(string line)
    {
        var text = $"# {line}\n# 20 mg powder in 25 mL each\nTube;Ni found (mg/L)\n10-15-a;7.1\n10-45-a;5.3\n30-15-b;21.7\n30-45-b;18.9\n";
        var read = Read.Text(text);
        Assert.Equal(30, read.Value("30-45-b", BatchProperties.InitialConcentration.Name));
        Assert.Equal(45, read.Value("30-45-b", BatchProperties.ContactTime.Name));
        Assert.Equal(25, read.Value("10-15-a", BatchProperties.Volume.Name));
        // Parts that the line does not count are no parts of it.
        Assert.DoesNotContain(BatchProperties.InitialConcentration.Name, Read.Text(text.Replace("-a;", ";", StringComparison.Ordinal).Replace("-b;", ";", StringComparison.Ordinal)).Proposal!.Samples[0].Facts.Keys);
    }

    [Fact]
    public void Remarks_ThatAllSayHowAReadingWasDiluted_MultiplyIt()
    {
        static string Sheet(string third) => $"Probe;Ext.;c Std (mg/L);Bemerkung\nK1;0,100;1;\nK2;0,200;2;\nK3;0,400;4;\nP1;0,300;;1 mL auf 50 mL aufgefüllt\nP2;0,250;;1 mL auf 10 mL aufgefüllt\nP3;0,150;;{third}\n";
        Assert.Equal([50, 10, 1], Read.Text(Sheet("nicht verdünnt")).Proposal!.Readings.Where(r => r.Sample.StartsWith('P')).Select(r => r.Dilution));
        // One remark about something else: they stay remarks.
        Assert.All(Read.Text(Sheet("trüb")).Proposal!.Readings, r => Assert.Equal(1, r.Dilution));
    }

    [Fact]
    public void SettingOnOneLine_AndItsValuesOnTheNext_AreOneRowAResult()
    {
        var read = Read.Text("Average of Ct (mg/L),Time (min),,,\nMaterial,5,10,20,Grand Total\nzeolite,18.0,14.7,11.5,14.7\nclay,20.4,18.3,–,19.3\nGrand Total,19.2,16.5,11.5,17.0\n");
        Assert.Equal(["zeolite Time 5", "zeolite Time 10", "zeolite Time 20", "clay Time 5", "clay Time 10"], read.Proposal!.Samples.Select(s => s.Code));
        Assert.Equal(20, read.Value("zeolite Time 20", BatchProperties.ContactTime.Name));
        Assert.Equal([18.0, 14.7, 11.5, 20.4, 18.3], read.Proposal.Readings.Select(r => r.Value!.Value));
    }

    [Fact]
    public void UnitInFront_NamesWhatWasMeasured()
    {
        var read = Read.Text("bottle no.,g of iron sand,mL water,h shaken\nAs 1,0.492,250,24\nAs 2,0.510,250,24\n");
        Assert.Equal(492, read.Value("As 1", BatchProperties.Mass.Name)!.Value, 9);
        Assert.Equal(1440, read.Value("As 2", BatchProperties.ContactTime.Name)!.Value, 9);
    }

    [Fact]
    public void ResultsBelowALimitUnderAHeading_AreNoReasonToTakeALaterRowForIt()
    {
        var read = Read.Text("Monster;Parameter;Eenheid;Resultaat\nstart;pH;-;5,2\nstart;Nikkel (Ni);µg/L;496,0\nstart;IJzer (Fe);µg/L;<10\nblanco;IJzer (Fe);µg/L;<10\nfles 1;pH;-;5,6\nfles 1;Nikkel (Ni);µg/L;165,8\nfles 1;IJzer (Fe);µg/L;55\n");
        Assert.Equal([0.496, 0.1658], read.Proposal!.Readings.Where(r => r.Value is not null).Select(r => Math.Round(r.Value!.Value, 6)));
    }

    [Fact]
    public void TimesOfAWorkbook_AreWholeSeconds()
    {
        // 09:04 of a day as workbooks keep it: no binary fraction holds it, and cut off it is 09:03:59.
        var read = Read.Bytes(Workbooks.Of(("kinetics", false, [["Beaker", "powder in", "filtered", "Ni (mg/L)"], .. Enumerable.Range(0, 6).Select(i => new object?[] { $"B{i + 1}", new DateTime(2024, 2, 20, 9, 4 + (4 * i), 0), new DateTime(2024, 2, 20, 9, 9 + (9 * i), 0), 20.5 - i })])), "times.xlsx");
        Assert.Equal([5.0, 10, 15, 20, 25, 30], read.Proposal!.Samples.Select(s => s.Facts[BatchProperties.ContactTime.Name].Value!.Value));
    }

    [Theory]
    [InlineData("g", 2.30048, 2.32041, true)]
    [InlineData("mg", 2.30048, 2.32041, false)]
    [InlineData("g", 0.0201, 0.0502, false)]
    public void TwoColumnsOfGrams_OneALittleAboveTheOther_AreTwoWeighings(string unit, double light, double heavy, bool difference)
    {
        var rows = string.Concat(Enumerable.Range(0, 4).Select(i => FormattableString.Invariant($"H{i + 1},{light + (0.01 * i):F5},{heavy + (0.0101 * i):F5},50\n")));
        var read = Read.Text($"flask,pot ({unit}),pot and stuff ({unit}),V (mL)\n" + rows);
        Assert.Equal(difference, read.Questions.Any(q => q.Id == "two-weighings"));
        if (difference)
            Assert.Equal(1000 * (heavy - light), read.Value("H1", BatchProperties.Mass.Name)!.Value, 6);
    }

    [Fact]
    public void WordsBetweenFullRows_AreNoVessels_AndBothMarksAreReadWhereEachCanBeReadInOneWay()
    {
        var read = Read.Text("tube;m (mg);V (mL);C start mgL-1;C left mgL-1;mins\nA1;19,8;30;18;15,66;5\nrinsed electrode;;;;;\nA2;19,7;30;18;13.61;10\n-- new rack --;;;;;\nA3;19,6;30;18;9.45;20\nroom 21 deg today; pH about 5;;;;\n");
        Assert.Equal(["A1", "A2", "A3"], read.Proposal!.Samples.Select(s => s.Code));
        Assert.Equal([15.66, 13.61, 9.45], read.Proposal.Readings.Select(r => r.Value!.Value));
        Assert.Equal(10, read.Value("A2", BatchProperties.ContactTime.Name));
        Assert.Equal("both", Assert.Single(read.Questions, q => q.Id == "decimal").Answer ?? read.Questions.Single(q => q.Id == "decimal").Choices[0]);
        // One cell that could be grouped: which mark it is has to be asked.
        Assert.Contains(Read.Text("tube;m (mg);Ce (mg/L)\nA1;19,8;1.234\nA2;19,7;13.61\n").Questions, q => q is { Id: "decimal", IsOpen: true });
    }

    [Fact]
    public void ConcentrationTakenOut_OverItsStart_IsTheRemoval()
        => Assert.Equal(40, Read.Text("vial,powder (mg),V (mL),C0 (mg/L),removed (mg/L)\nL1,31,50,35,14\nL2,50,50,35,20\n").Value("L1", BatchProperties.ReportedRemoval.Name)!.Value, 9);

    [Theory]
    [InlineData("t (h)", 240, true)]
    [InlineData("t (h)", 48, false)]
    [InlineData("t (min)", 240, false)]
    public void TimesBeyondAWeek_AreAskedAbout(string heading, int last, bool asked)
        => Assert.Equal(asked, Read.Text($"vial,m (mg),V (mL),C0 (mg/L),Ce (mg/L),{heading}\nA1,20,50,20,16,5\nA2,20,50,20,14,10\nA3,20,50,20,12,20\nA4,20,50,20,11,{last}\n").Questions.Any(q => q.IsOpen));

    [Fact]
    public void UnitInAColumnBesideOneResult_CountsRowByRow()
        => Assert.Equal([0.076, 1.59], Read.Text("Sample,Ni,Unit\nA1,76,µg/L\nA2,1.59,mg/L\n").Proposal!.Readings.Select(r => Math.Round(r.Value!.Value, 9)));

    [Fact]
    public void LineThatShowsHowAFormIsFilledIn_IsNoVessel()
        => Assert.Equal(["Flask 1", "Flask 2"], Read.Text("Flask,carbon (mg),V (mL),Ce (mg/L)\nexample,100,50,4\nFlask 1,19.5,50,6.8\nFlask 2,40.6,50,4.1\n").Proposal!.Samples.Select(s => s.Code));

    [Theory]
    [InlineData("the flasks of the second day got only half the volume", true)]
    [InlineData("half an hour late with the last flasks", false)]
    public void RemarkThatTakesTheVolumeBackForSome_IsAskedAbout(string remark, bool asked)
        => Assert.Equal(asked, Read.Text($"V = 50 mL in every flask\nFlask,m (mg),C0 (mg/L),Ce (mg/L)\nA1,20,20,16\nA2,30,20,14\nA3,40,20,12\n\nRemarks: {remark}.\n").Questions.Any(q => q is { Id: "half-for-some", IsOpen: true }));

    [Theory]
    [InlineData("ohne")]
    [InlineData("nicht verdünnt")]
    [InlineData("sin diluir")]
    [InlineData("not diluted")]
    [InlineData("pure")]
    public void CellsThatDenyADilution_SayOnce(string cell) => Assert.True(Holdfast.Studies.Import.CellParts.IsUndiluted(cell));

    [Theory]
    [InlineData("not filtered")]
    [InlineData("10x")]
    [InlineData("diluted")]
    public void OtherWordsUnderADilution_DoNot(string cell) => Assert.False(Holdfast.Studies.Import.CellParts.IsUndiluted(cell));

    [Theory]
    [InlineData("\tresin\tbeginning\tafter\ton the wheel\n")]
    [InlineData("tube\tresin\tat the start\tremaining\tturned for\n")]
    public void CellsWithTheirOwnUnits_UnderAHeadingOfWords_AreATable(string heading)
    {
        var read = Read.Text(heading + "R1\t20.1 mg\t5 mg/L\t310 µg/L\t90 min\nR2\t0.0204 g\t20 mg/L\t2.1 mg/L\t2 h\nR3\t19.8 mg\t40 mg/L\t9.7 mg/L\t1.5 h\nR4\t20.0 mg\t0.06 g/L\t24.2 mg/L\t2 h\n", "wheel.txt");
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
        Assert.Equal([0.31, 2.1, 9.7, 24.2], read.Proposal!.Readings.Select(r => Math.Round(r.Value!.Value, 9)));
        Assert.Equal((20.4, 60, 90), (Math.Round(read.Value("R2", BatchProperties.Mass.Name)!.Value, 9), Math.Round(read.Value("R4", BatchProperties.InitialConcentration.Name)!.Value, 9), read.Value("R3", BatchProperties.ContactTime.Name)));
    }

    [Fact]
    public void LinesOfAmounts_WithTwoUnnamedConcentrationsInOtherUnits_DoNotBecomeRows()
        => Assert.DoesNotContain(Read.Text("F1: 10 mg/L, 310 µg/L\nF2: 20 mg/L, 6.3 mg/L\nF3: 40 mg/L, 940 µg/L\n", "page.txt").Tables, t => t.Turned is not null);

    [Theory]
    [InlineData("line: A = 0.2216 C + 0.0015")]
    [InlineData("Gerade E = 0,19 g + 0,003")]
    [InlineData("pH 5.1 h later")]
    public void LineWhoseNumberStandsBetweenTwoAmounts_DoesNotFell(string line)
        => Assert.Equal(2, Read.Text($"{line}\n\ntube\tm (mg)\tC0 (mg/L)\tCe (mg/L)\nA1\t20\t10\t4.1\nA2\t21\t20\t9.2\n", "notes.txt").Proposal!.Readings.Length);

    [Theory]
    [InlineData("c(Gl.)", "mg/l", 2.5)]
    [InlineData("Ce (gl)", "µg/l", 0.0025)]
    [InlineData("Ce (µg/L)", "", 0.0025)]
    public void LineOfUnits_OutweighsAWordInBracketsThatMayBeOne(string heading, string unit, double first)
    {
        var read = Read.Text($"Probe;Einwaage;V;c0;{heading}\n;mg;ml;mg/l;{unit}\nA1;20,1;50;10;2,5\nA2;20,3;50;20;6,1\nA3;20,2;50;40;15,2\n");
        Assert.Equal(first, Math.Round(read.Proposal!.Readings[0].Value!.Value, 9));
    }

    [Theory]
    [InlineData("A (1st)", "A (2nd)")]
    [InlineData("E I", "E II")]
    [InlineData("A (primera)", "A (segunda)")]
    [InlineData("Ass. 1", "Ass. 2")]
    public void AbsorbancesThatAreCountedInWords_AreReadings(string first, string second)
        => Assert.Equal(8, Read.Text($"label;kind;Ni std (mg/L);{first};{second}\nK1;standard;1,0;0,101;0,102\nK2;standard;2,0;0,201;0,203\nP1;sample;;0,151;0,152\nP2;sample;;0,121;0,120\n")
            .Proposal!.Readings.Count(r => r.Signal == SpectrometryProperties.Absorbance.Name));

    [Theory]
    [InlineData("schuitje leeg (g)", "schuitje + klei (g)")]
    [InlineData("łódeczka pusta (g)", "łódeczka + glina (g)")]
    [InlineData("pannetje (g)", "pannetje + klei (g)")]
    [InlineData("empty boat / g", "boat + clay / g")]
    public void BoatAndBoatWithPowder_GiveTheMassByDifference(string empty, string full)
    {
        var read = Read.Text($"potje\t{empty}\t{full}\tmL\nA1\t1,2521\t1,4508\t100\nA2\t1,2779\t1,4824\t100\nA3\t1,2567\t1,4526\t100\n", "inweeg.txt");
        Assert.Equal(198.7, Math.Round(read.Value("A1", BatchProperties.Mass.Name)!.Value, 6));
        Assert.DoesNotContain(read.Findings, f => f.Code == "HF-408");
    }

    [Fact]
    public void PowderBesideBoatWithPowder_IsTheMassItself()
        => Assert.Equal(198.7, Math.Round(Read.Text("potje\tklei (g)\tpannetje + klei (g)\tmL\nA1\t0,1987\t1,4508\t100\nA2\t0,2045\t1,4824\t100\nA3\t0,1959\t1,4526\t100\n", "inweeg.txt").Value("A1", BatchProperties.Mass.Name)!.Value, 6));

    [Theory]
    [InlineData("eau (témoin)", "0.02", SampleRole.Blank)]
    [InlineData("Wasser Kontrolle", "0.02", SampleRole.Blank)]
    [InlineData("agua destilada control", "0.02", SampleRole.Blank)]
    [InlineData("eau (témoin)", "9.8", null)]
    [InlineData("eau de rivière (témoin)", "0.02", null)]
    [InlineData("témoin", "0.02", null)]
    public void WaterThatWasReadAsAControl_IsABlankWhereItReadsNextToNothing(string label, string value, SampleRole? role)
    {
        var read = Read.Text($"Nom;Ni (mg/L)\n{label};{value}\nN 1;7.92\nN 2;5.80\nN 3;3.84\n", study: Read.With("N1", "N2", "N3"));
        Assert.Equal(role is null, read.NeedsDecision);
        Assert.Equal(role, read.Proposal!.Samples.FirstOrDefault(s => s.Code == label)?.Role);
    }
}
