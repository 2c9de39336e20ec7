using System.Globalization;
using Holdfast.Studies.Import;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Tests.Import;

/// <summary>How tables stand on a sheet and beside each other, as the twenty-fifth and twenty-sixth sets of cases taught it; in other words and numbers. All sheets are invented; common practice says what each means.</summary>
public class SheetHabitTests
{
    [Theory]
    [InlineData(10.3, false)]
    [InlineData(10.9, false)]
    [InlineData(11.4, true)]
    [InlineData(6.1, true)]
    public void Vessel_ReadInTwoSheets_IsAskedAbout_WhereNoRepeatExplainsIt(double again, bool isAsked)
    {
        var book = Workbooks.Of(
            ("tubes", false, [["tube", "powder (mg)", "solution (mL)", "Ni before (mg/L)"], ["G1", 22.3, 40, 10], ["G2", 22.4, 40, 25], ["G3", 22.3, 40, 40]]),
            ("run 1", false, [["tube", "Ni after (mg/L)"], ["G1", 1.1], ["G2", 4.12], ["G3", 10.1]]),
            ("run 2", false, [["tube", "Ni after (mg/L)"], ["G3", again]]));
        var read = Read.Bytes(book, "runs.xlsx");
        Assert.Equal(isAsked ? ["read-again"] : [], read.Questions.Where(q => q.IsOpen).Select(q => q.Id));
        if (!isAsked)
            return;
        Assert.Equal(3, Read.Bytes(book, "runs.xlsx", answers: Read.Answer("read-again", "earlier")).Proposal!.Readings.Length);
        Assert.Equal(4, Read.Bytes(book, "runs.xlsx", answers: Read.Answer("read-again", "both")).Proposal!.Readings.Length);
    }

    [Fact]
    public void StandardsSideBySide_AreTwoCalibrations_AndNoneIsTakenForTheSamples()
    {
        object?[][] standards = [["old bottle", null, null, "new bottle", null], ["std (mg/L)", "A510", null, "std (mg/L)", "A510"], .. new[] { 0, 0.5, 1, 2, 4 }.Select(c => new object?[] { c, 0.002 + (0.2 * c), null, c, 0.002 + (0.15 * c) })];
        var read = Read.Bytes(Workbooks.Of(("standards", false, standards), ("samples", false, [["Sample", "powder (mg)", "volume (mL)", "C0 (mg/L)", "A510"], ["F1", 15.1, 50, 2, 0.0896], ["F2", 15.3, 50, 3, 0.1472]])), "colour.xlsx");
        var runs = read.Proposal!.Readings.Where(r => r.Sample.StartsWith("Std", StringComparison.Ordinal)).GroupBy(r => r.Run).Select(g => g.Count());
        Assert.Equal([5, 5], runs);
        Assert.Contains(read.Findings, f => f.Sentence.Contains("which calibration holds", StringComparison.Ordinal));
    }

    [Fact]
    public void ListOfNames_TellsWhichReportBelongsToWhichVessel()
    {
        var study = Read.After(Read.Nothing, Read.Text("bottle,powder (mg),V (mL),C0 (mg/L)\nN-a,20.1,50,10\nN-b,20.3,50,20\nN-c,19.9,50,30\n", "bottles.csv"));
        study = Read.After(study, Read.Text("lab no,bottle\n407,N-b\n411,N-a\n405,N-c\n", "key.csv", study));
        var read = Read.Text("lab no;Ni (mg/L);RSD (%)\n405;12.1;0.8\n407;6.2;0.9\n411;1.3;0.6\n", "report.csv", study);
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
        Assert.Equal(["N-c", "N-b", "N-a"], read.Proposal!.Readings.Select(r => r.Sample));
    }

    [Fact]
    public void RunningNumbers_AreNoNamesOfSamples()
        => Assert.DoesNotContain(Read.Text("no,bottle\n1,N-a\n2,N-b\n3,N-c\n", "list.csv").Proposal?.Samples ?? [], s => s.Facts.ContainsKey(SampleProperties.Alias.Name));

    [Fact]
    public void LegendOfWords_BesideATable_IsNoColumn_AndHoldsForAll()
    {
        var read = Read.Text("Sample,m (mg),V (mL),c0 (mg/L),ce (mg/L),,Legend\nS1,100.6,50,25,7.1,,c0 before; ce after 6 h on the roller\nS2,100.8,50,50,17.2,,powder: clay C1\nS3,99.9,50,75,30.8,,\n");
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
        Assert.Equal([7.1, 17.2, 30.8], read.Proposal!.Readings.Select(r => r.Value!.Value));
        Assert.Equal(360, read.Value("S1", BatchProperties.ContactTime.Name));
    }

    [Theory]
    [InlineData(",start 5 mg/L,start 10 mg/L,start 20 mg/L")]
    [InlineData("min,raw,washed,fired")]
    public void Grid_OfTimesDownAndSomethingAlong_IsOneVesselACell(string heading)
    {
        var unit = heading[0] == ',' ? " min" : "";
        var read = Read.Text($"Ni left in solution (mg/L); every tube 30 mL and 15 mg of powder{(unit.Length == 0 ? ", 40 mg/L at the start" : "")}\n{heading}\n10{unit},3.52,7.14,15.50\n30{unit},2.42,5.26,12.36\n90{unit},1.63,3.78,10.17\n");
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
        Assert.Equal(9, read.Proposal!.Samples.Length);
        Assert.Equal([10, 10, 10, 30, 30, 30, 90, 90, 90], read.Proposal.Samples.Select(s => s.Facts[BatchProperties.ContactTime.Name].Value!.Value));
        Assert.Equal(3.78, read.Proposal.Readings.Single(r => r.Value is 3.78).Value);
        Assert.All(read.Proposal.Samples, s => Assert.Equal(15, s.Facts[BatchProperties.Mass.Name].Value));
    }

    [Theory]
    [InlineData("gone")]
    [InlineData("removed")]
    public void WhatIsGoneOfALitre_IsNoPerCent(string heading)
    {
        double[] starts = [12, 24, 36], left = [2.03, 5.13, 10.54];
        var rows = starts.Select((c, i) => string.Create(CultureInfo.InvariantCulture, $"G{i + 1},30.{i},40,{c},{left[i]},{c - left[i]:0.00}"));
        var read = Read.Text($"everything in mg/L\nbottle,powder (mg),liquid (mL),start (mg/L),end (mg/L),{heading}\n{string.Join('\n', rows)}\n");
        Assert.All(read.Proposal!.Samples, s => Assert.False(s.Facts.ContainsKey(BatchProperties.ReportedRemoval.Name)));
        Assert.Equal(left, read.Proposal.Readings.Select(r => r.Value!.Value));
    }

    [Fact]
    public void Liquid_WeighedInItsOwnBottle_IsTheVolume()
    {
        var read = Read.Text("bottle,vial with powder before (g),vial after tipping out (g),bottle empty (g),bottle with solution (g),Ni start (mg/L),Ni end (mg/L)\nA,7.4287,7.3979,18.25,57.64,15,2.98\nB,7.4471,7.4170,19.34,59.85,30,7.99\n");
        Assert.Equal(30.8, read.Value("A", BatchProperties.Mass.Name)!.Value, 6);
        Assert.Equal(39.39, read.Value("A", BatchProperties.Volume.Name)!.Value, 6);
    }

    [Theory]
    [InlineData("gem.")]
    [InlineData("prom.")]
    [InlineData("śr.")]
    public void Mean_ByItsAbbreviation_IsNoVessel(string label)
        => Assert.Equal(["1a", "1b"], Read.Text($"vessel;m (mg);V (mL);C0 (mg/L);Ce (mg/L)\n1a;24.6;50;12;5.99\n1b;25.4;50;12;5.89\n{label};;;;5.94\n").Proposal!.Samples.Select(s => s.Code));

    [Fact]
    public void Start_MeasuredInAMail_IsTheOneOfTheMetal()
    {
        var read = Read.Text("Hello,\nevery flask got 0.50 g/L of the powder in 100 mL.\nThe start solution was meant to be 20 and measured 19.84 mg/L of Ni.\n\nflask | min | Ni left (mg/L)\nM1 | 10 | 16.13\nM2 | 20 | 14.66\nM3 | 45 | 12.39\n", "mail.txt");
        Assert.Equal(19.84, read.Value("M1", BatchProperties.InitialConcentration.Name));
    }

    [Fact]
    public void ListOfItems_BecomesOneRowASample_EachInItsOwnUnit()
    {
        static string Jar(int n, string mass, string massUnit, string end, string endUnit) => $"jar {n},mass,{mass},{massUnit}\njar {n},liquid,50,mL\njar {n},start conc.,12.0,mg/L\njar {n},time,{n},h\njar {n},end conc.,{end},{endUnit}\n";
        var read = Read.Text("jar,item,value,unit\n" + Jar(1, "15.0", "mg", "5.839", "mg/L") + Jar(2, "0.0242", "g", "745", "µg/L") + Jar(3, "40.1", "mg", "2.012", "mg/L"));
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
        Assert.Equal([15.0, 24.2, 40.1], read.Proposal!.Samples.Select(s => Math.Round(s.Facts[BatchProperties.Mass.Name].Value!.Value, 6)));
        Assert.Equal([5.839, 0.745, 2.012], read.Proposal.Readings.Select(r => Math.Round(r.Value!.Value, 6)));
        Assert.Equal(120, read.Value("jar 2", BatchProperties.ContactTime.Name));
    }

    [Theory]
    [InlineData("7:39 next day")]
    [InlineData("7:39 +1")]
    [InlineData("7:39 (Folgetag)")]
    public void Time_OfTheNextDay_IsADayLater(string end)
        => Assert.Equal([10, 22 * 60], Read.Text($"bottle,m (mg),V (mL),into shaker,out of shaker,C0 (mg/L),Ce (mg/L)\nC1,20.1,50,9:03,9:13,28,25\nC2,20.2,50,9:39,{end},28,11\n").Proposal!.Samples.Select(s => s.Facts[BatchProperties.ContactTime.Name].Value!.Value));

    [Fact]
    public void Result_ThatHoldsItsDilution_LeavesThatOfTheAbsorbance()
    {
        var read = Read.Text("50 mL, start 20 mg/L\nflask,powder mg,Abs 540,dil.,mg/L left\nK1,25.5,0.4335,25,17.57\nK2,25.1,0.3645,25,14.75\nK3,24.9,0.3063,25,12.37\n");
        Assert.All(read.Proposal!.Readings.Where(r => r.Signal == SpectrometryProperties.Absorbance.Name), r => Assert.Equal(25, r.Dilution));
        Assert.All(read.Proposal.Readings.Where(r => r.Signal == SpectrometryProperties.ReportedConcentration.Name), r => Assert.Equal(1, r.Dilution));
    }

    [Theory]
    [InlineData("n.b. ran out of the 50 mg/L bottle, the last few flasks got the 40 mg/L one", true)]
    [InlineData("die letzten Kolben mit 40 mg/L", true)]
    [InlineData("the last flasks were shaken by hand", false)]
    [InlineData("all from the same bottle, 50 mg/L", false)]
    public void AnotherStart_ForSome_IsAskedAbout(string line, bool isAsked)
        => Assert.Equal(isAsked ? ["start-for-some"] : [], Read.Text($"dose series, start solution 50 mg/L\nflask\tpowder (mg)\tV (mL)\tNi left (mg/L)\nF1\t10.1\t50\t39.31\nF2\t14.6\t50\t33.98\nF3\t20.2\t50\t28.98\n\n{line}\n").Questions.Where(q => q.IsOpen).Select(q => q.Id));

    [Fact]
    public void Names_InLinesOfText_TellWhoseTheReportIs()
    {
        var files = new[] { ("bottles.csv", "bottle,powder_g,liquid_mL,start_mg_L\nS1,0.0460,30,3\nS2,0.0444,30,6\nS3,0.0434,30,12\n"), ("key.txt", "lab numbers of the plasma room = my bottles\n701 = S2\n702 = S1\n703 = S3\n"), ("plasma.csv", "Lab no,result,unit,RSD %\n701,950,µg/L,0.6\n702,411,µg/L,1.2\n703,2352,µg/L,0.4\n") };
        var understood = Take.Understand(Read.Nothing, [.. files.Select(f => new IncomingFile(f.Item1, System.Text.Encoding.UTF8.GetBytes(f.Item2)))], Answers.None, TestContext.Current.CancellationToken);
        Assert.DoesNotContain(understood.SelectMany(u => u.Understanding.Questions), q => q.IsOpen);
        Assert.Equal([("S2", 0.95), ("S1", 0.411), ("S3", 2.352)], understood.SelectMany(u => u.Understanding.Proposal?.Readings ?? []).Select(r => (r.Sample, Math.Round(r.Value!.Value, 6))));
    }

    [Fact]
    public void Boat_NamedUnderTheWordPowder_IsTheEmptyOne()
        => Assert.Equal(21.8, Read.Bytes(Workbooks.Of(("silver", false, [["bottle", "Powder", null, "Before", null, "After", "on the wheel"], [null, "boat (mg)", "boat + powder (mg)", "Ni (mg/L)", "volume (mL)", "Ni (µg/L)", "h"], ["A1", 315.6, 337.4, 5, 35, 324, 5], ["A2", 315.9, 337.7, 10, 35, 744, 5]])), "wheel.xlsx").Value("A1", BatchProperties.Mass.Name)!.Value, 6);

    [Fact]
    public void Vessel_OfAnEarlierSheet_ReadAgainAmongNewOnes_IsTheSameVessel()
    {
        var read = Read.Bytes(Workbooks.Of(("Tue", false, [["flask", "powder (mg)", "V (mL)", "C0 (mg/L)", "Ce (mg/L)"], ["L1", 20.5, 50, 10, 1.8], ["L2", 19.3, 50, 15, 3.33], ["L4", 19.6, 50, 40, 23.89]]),
            ("Thu", false, [["flask", "powder (mg)", "V (mL)", "C0 (mg/L)", "Ce (mg/L)"], ["L4", 19.6, 50, 40, 15.41], ["L6", 19.6, 50, 70, 40.57]])), "lead.xlsx");
        Assert.Equal("read-again", Assert.Single(read.Questions, q => q.IsOpen).Id);
    }

    [Theory]
    [InlineData("Tube,Powder,Liquid,C0,Left\nno.,mg,mL,mg/L,mg/L\n")]
    [InlineData("Tube,Powder,Liquid,C0,Left\n#,mg,mL,mg/L,mg/L\n")]
    [InlineData("Röhrchen,Pulver,Volumen,C0,Ce\n(Nr.),(mg),(mL),(mg/L),(mg/L)\n")]
    public void LineOfUnits_WithAWordOverTheCodes_IsOne(string heading)
    {
        var read = Read.Text(heading + "T1,10.1,25,29.6,19.35\nT2,14.8,25,29.6,15.61\nT3,19.8,25,29.6,11.66\n");
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
        Assert.Equal(3, read.Proposal!.Samples.Length);
        Assert.Equal(14.8, read.Value("T2", BatchProperties.Mass.Name));
    }

    [Fact]
    public void LineOfUnits_SetWithBlanks_StandsUnderItsColumns()
    {
        var read = Read.Text("bottle   powder    powder in   filtered at         Ni left\n         (mg)      (clock)     (clock)             (mg/L)\n"
            + string.Concat(Enumerable.Range(1, 6).Select(i => $"M{i}       {38 + i}.3      09:{i}0       1{i}:15               1{i}.42\n")) + "\n80 mL each, measured before: 24.82 mg/L Ni\n", "page.txt");
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
        Assert.Equal(39.3, read.Value("M1", BatchProperties.Mass.Name));
        Assert.Equal(125, read.Value("M1", BatchProperties.ContactTime.Name));
    }

    [Theory]
    [InlineData("Element\tNi\tUnit\tmg/L", true)]
    [InlineData("Element\tNi\tMethod\tflame", false)]
    public void NumberedReadings_UnderAStatedUnit_AreReadings(string line, bool areRead)
    {
        var read = Read.Text(line + "\n\nPos\tLabel\tRep 1\tRep 2\tMean\tSD\n1\tstart A\t17.440\t17.376\t17.408\t0.03\n2\tcd1\t11.515\t11.455\t11.485\t0.03\n3\tcd2\t9.849\t9.886\t9.868\t0.02\n");
        Assert.Equal(areRead ? [11.515, 11.455] : [], read.Proposal?.Readings.Where(r => r.Sample == "cd1").Select(r => r.Value!.Value) ?? []);
    }

    [Theory]
    [InlineData("bottles done,,,,,,3", 3)]
    [InlineData("first,,,,,,3.5", null)]
    public void Tally_WithoutACode_IsNoVessel(string last, int? vessels)
    {
        var read = Read.Text($"Who,Bottle,Powder mg,Vol mL,Start mg/L,End mg/L,Done\nfirst,B1,29.9,40,10,3.57,x\nfirst,B2,29.8,40,20,8.48,x\nsecond,B3,30.4,40,30,14.7,x\n{last}\n");
        Assert.Equal(vessels is null ? 3 : vessels, read.Proposal!.Samples.Length);
        Assert.Contains("no sample and left out", Assert.Single(read.Findings, f => f.Sentence.Contains("left out", StringComparison.Ordinal)).Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Hours on the shaker", 300.0)]
    [InlineData("Stunden geschüttelt", 300.0)]
    [InlineData("minutes in contact", 5.0)]
    [InlineData("Hour of filtering", null)]
    public void SpanOfTime_CountedInTheHeading_IsItsUnit(string heading, double? minutes)
        => Assert.Equal(minutes, Read.Text($"Bottle,Powder (mg),Solution (mL),{heading},C0 (mg/L),Ce (mg/L)\nF1,15,50,5,30,20\nF2,24.9,50,5,30,16\nF3,34.9,50,5,30,12\n").Value("F1", BatchProperties.ContactTime.Name));

    [Fact]
    public void Nought_WithoutPowder_IsTheStart_WhereNothingElseSaysWhatThatWas()
    {
        var read = Read.Text("Bottle,Powder (mg),V (mL),Ni found (mg/L)\nS0 (no powder),,50,27.5\nF1,15.0,50,21.3\nF2,24.9,50,17.5\nF3,34.9,50,14.4\n");
        Assert.Equal(SampleRole.StartSolution, Assert.Single(read.Proposal!.Samples, s => s.Code.StartsWith("S0", StringComparison.Ordinal)).Role);
        var stated = Read.Text("Bottle,Powder (mg),V (mL),C0 (mg/L),Ni found (mg/L)\nS0 (no powder),,50,28,27.5\nF1,15.0,50,28,21.3\nF2,24.9,50,28,17.5\nF3,34.9,50,28,14.4\n");
        Assert.Equal(SampleRole.Control, Assert.Single(stated.Proposal!.Samples, s => s.Code.StartsWith("S0", StringComparison.Ordinal)).Role);
    }

    [Fact]
    public void Absorbance_ReadAgain_IsReadWithTheFirst_AndTheirMeanIsNot()
    {
        var read = Read.Text("Bottle,A,A again,Mean A\nF1,0.3412,0.3409,0.34105\nF2,0.2806,0.2809,0.28075\nF3,0.2320,0.2316,0.2318\n");
        Assert.Equal([0.3412, 0.3409], read.Proposal!.Readings.Where(r => r.Sample == "F1").Select(r => r.Value!.Value));
    }

    [Theory]
    [InlineData("19.8,19.7,20.6,20.3", true)]
    [InlineData("20,20,20,20", false)]
    [InlineData("20,40,60,80", false)]
    public void Amounts_LikeWeighingsUnderTheVolume_AreAskedAbout(string volumes, bool isAsked)
        => Assert.Equal(isAsked, Take.Understand(Read.Nothing, [new IncomingFile("time.csv", System.Text.Encoding.UTF8.GetBytes("Code,Powder (mg),Liquid (mL),Shaken (min),before (mg/L),after (mg/L)\n" + string.Concat(volumes.Split(',').Select((v, i) => $"L{i + 1},50,{v},{15 << i},22.5,{17.5 - (2 * i)}\n"))))], Answers.None, TestContext.Current.CancellationToken)
            .SelectMany(u => u.Understanding.Questions).Any(q => q.IsOpen && q.Id == "amounts"));

    [Theory]
    [InlineData("all flasks: 50 mL, Ni before 41.2 mg/L, 4 h", 41.2)]
    [InlineData("this block: 50 mL, Ni before 41.2 mg/L, 4 h", null)]
    public void Line_UnderTheLastTable_ThatIsOfAll_HoldsForEach(string line, double? start)
        => Assert.Equal(start, Read.Text($"pH 3.0\nflask,powder (mg),Ni after (mg/L)\na,9.9,37.76\nb,19.8,35.04\n\npH 6.0\nflask,powder (mg),Ni after (mg/L)\na,9.9,28.72\nb,20.2,17.65\n\n\"{line}\"\n").Proposal!.Samples.First(s => s.Code == "a").Facts.GetValueOrDefault(BatchProperties.InitialConcentration.Name)?.Value);

    [Theory]
    [InlineData("weighing log, powder into bottles, mg", 3)]
    [InlineData("what the balance said", 0)]
    public void List_UnderATitle_IsWhatTheTitleSays(string title, int masses)
        => Assert.Equal(masses, Read.Text(title + "\n\nR1    19.7\nR2    20.5\nR3    19.4\n", "log.txt").Proposal?.Samples.Count(s => s.Facts.ContainsKey(BatchProperties.Mass.Name)) ?? 0);

    private static IEnumerable<string> OpenQuestions(string text)
        => Take.Understand(Read.Nothing, [new IncomingFile("sheet.csv", System.Text.Encoding.UTF8.GetBytes(text))], Answers.None, TestContext.Current.CancellationToken).SelectMany(u => u.Understanding.Questions).Where(q => q.IsOpen).Select(q => q.Id);

    [Theory]
    [InlineData("4.963,10,4.963", "multiplied")]
    [InlineData("4.963,10,49.63", null)]
    public void Factor_AppliedInSomeRowsOnly_IsAskedAbout(string last, string? asked)
        => Assert.Equal(asked is null ? [] : [asked], OpenQuestions($"run,mass (mg),volume (mL),before (mg/L),read (mg/L),factor,corrected (mg/L)\nS1,52.9,40,4,0.966,1,0.966\nS2,54.6,40,40,1.757,10,17.57\nS3,56.9,40,60,3.204,10,32.04\nS4,56.1,40,80,{last}\n"));

    [Theory]
    [InlineData("multiply", 49.63)]
    [InlineData("undiluted", 4.963)]
    public void Factor_AppliedInSomeRowsOnly_IsAppliedAsAnswered(string answer, double result)
    {
        var read = Read.Text("run,mass (mg),volume (mL),before (mg/L),read (mg/L),factor,corrected (mg/L)\nS1,52.9,40,4,0.966,1,0.966\nS2,54.6,40,40,1.757,10,17.57\nS3,56.9,40,60,3.204,10,32.04\nS4,56.1,40,80,4.963,10,4.963\n", answers: Answers.None.With("multiplied", answer));
        Assert.Equal([17.57, result], read.Proposal!.Readings.Where(r => r.Sample is "S2" or "S4").Select(r => Math.Round(r.Value!.Value * r.Dilution, 6)));
    }

    [Fact]
    public void Factor_NotNamedAsOne_IsNotPassedOver()
        => Assert.Equal(["same:" + SpectrometryProperties.ReportedConcentration.Name], OpenQuestions("run,mass (mg),volume (mL),before (mg/L),read (mg/L),zz,corrected (mg/L)\nS1,52.9,40,4,0.966,1,0.966\nS2,54.6,40,40,1.757,10,17.57\nS3,56.9,40,60,3.204,10,32.04\n"));

    [Theory]
    [InlineData("40,25.1", "amounts")]
    [InlineData("40,35", null)]
    [InlineData("25.3,40", null)]
    public void Amounts_ExchangedInOneRow_AreAskedAbout(string row, string? asked)
        => Assert.Equal(asked is null ? [] : [asked], OpenQuestions($"vessel,powder (mg),liquid (mL),before (mg/L),after (mg/L)\nX1,24.7,40,10,2.6\nX2,24.9,40,20,6.55\nX3,25.2,40,30,12.1\nX4,25.4,40,45,23.0\nX5,{row},60,36.3\n"));

    [Theory]
    [InlineData(0.5, "own-uptake")]
    [InlineData(1.0, null)]
    public void OwnUptake_ByOneFactorThroughout_IsAskedAbout(double factor, string? asked)
        => Assert.Equal(asked is null ? [] : [asked], OpenQuestions("50 mL each\n\nflask,powder (mg),before (mg/L),after (mg/L),q (mg/g)\n" + string.Concat(new[] { (103.4, 10, 1.51), (96, 20, 4.05), (96.2, 40, 12.63), (100.3, 60, 25.21) }.Select((r, i) => FormattableString.Invariant($"B{i + 1},{r.Item1},{r.Item2},{r.Item3},{factor * (r.Item2 - r.Item3) * 50 / r.Item1:0.###}\n")))));

    [Fact]
    public void Standards_OfTwoReagentsBesideEachOther_AreTwoLines()
        => Assert.Equal("standards", Assert.Single(Read.Text("reagent 1,,,reagent 2,\nstandard (mg/L),Abs,,standard (mg/L),Abs\n0,0.003,,0,0.006\n0.5,0.309,,0.5,0.256\n1,0.618,,1,0.503\n1.5,0.922,,1.5,0.752\n\ntube,Abs,powder (mg),water (mL),start (mg/L)\nR1,0.68,4.8,100,1.5\nR2,0.596,10,100,1.5\nR3,0.543,14.4,100,1.5\n").Questions, q => q.IsOpen).Id);

    [Fact]
    public void DittoMarks_StandForTheCellAbove()
    {
        var read = Read.Text("bottle   shell    water   left\n         g        ml      mg/l\nE1       0.0198   100     5.522\nE2       0.0410    \"      3.655\nE3       0.0589    \"      2.619\nE4       0.0885    \"      1.641\nE5       0.1293    \"      1.019\n", "page.txt");
        Assert.Equal([100, 100, 100, 100, 100], read.Proposal!.Samples.Select(s => s.Facts[BatchProperties.Volume.Name].Value!.Value));
        Assert.Null(Holdfast.Studies.Import.Shapes.Ditto.Fill(new Grid(null, [new GridRow(1, [new Cell("\"")]), new GridRow(2, [new Cell("\"")])])));
    }

    [Fact]
    public void Vessels_OfOneSettingBesideEachOther_AreVesselsOfTheirOwn()
    {
        var read = Read.Text("pair\tsolid I / mg\tsolid II / mg\tliquid / mL\tbegin / mg/L\tend I / mg/L\tend II / mg/L\nS1\t35.9\t33.6\t30\t5\t1.53\t1.57\nS2\t36.7\t33.0\t30\t10\t3.10\t3.30\nS3\t33.3\t33.9\t30\t25\t9.43\t9.00\n");
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
        Assert.Equal(33.6, read.Value("S1 II", BatchProperties.Mass.Name));
        Assert.Equal([1.53, 1.57], read.Proposal!.Readings.Where(r => r.Sample.StartsWith("S1", StringComparison.Ordinal)).Select(r => Math.Round(r.Value!.Value, 6)));
    }

    [Theory]
    [InlineData("Beads in g (dried). Water in mL.\nStart and left: mg/L Ni.", 49.2)]
    [InlineData("Beads in mg. Water in mL.\nStart and left: mg/L Ni.", 0.0492)]
    public void Units_SaidUnderTheTableByName_AreThoseOfTheHeadings(string lines, double milligrams)
        => Assert.Equal(milligrams, Math.Round(Read.Text($"Jar,Beads,Water,Ni at start,Ni left\nJ1,0.0492,75,14,11.97\nJ2,0.1014,75,14,10.01\nJ3,0.2079,75,14,6.797\n\n{lines}\n").Value("J1", BatchProperties.Mass.Name)!.Value, 6));

    [Theory]
    [InlineData("1 h 30", 90.0)]
    [InlineData("1 u 30", 90.0)]
    [InlineData("2 h 05 min", 125.0)]
    public void Time_InHoursAndMinutes_IsRead(string cell, double minutes)
        => Assert.Equal(minutes, Read.Text($"Flask,Powder (mg),Water (mL),before (mg/L),after (mg/L),contact\nk1,14.5,250,8,6.2,10 min\nk2,14.9,250,8,4.7,25 min\nk3,15.5,250,8,2.3,{cell}\n").Value("k3", BatchProperties.ContactTime.Name));

    [Theory]
    [InlineData("250 mL in every jar, one hour on the shaker", 60.0)]
    [InlineData("250 mL in every jar, zwei Stunden geschüttelt", 120.0)]
    [InlineData("250 mL in every jar, shaken 24 h in the warm room", 1440.0)]
    [InlineData("250 mL in every jar, dried 24 h in the warm room", null)]
    public void TimeOfAll_InWords_IsRead(string line, double? minutes)
        => Assert.Equal(minutes, Read.Text($"{line}\n\njar,powder (mg),before (mg/L),after (mg/L)\nJ1,14.5,8,6.2\nJ2,14.9,8,4.7\nJ3,15.5,8,2.3\n", "jars.csv").Value("J1", BatchProperties.ContactTime.Name));

    [Fact]
    public void Volumes_OfWhichOneIsTheSum_AreItsParts()
    {
        var read = Read.Text("vial,stock (mL),water (mL),total (mL),start (mg/L),gel (mg),found (mg/L),taken out (mg)\nV1,0.5,39.5,40,6.25,29.1,1.54,0.1884\nV2,1,39,40,12.5,29.1,3.52,0.3592\nV3,2,38,40,25,27,9.07,0.6372\n");
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
        Assert.Equal(40, read.Value("V1", BatchProperties.Volume.Name));
        Assert.Equal(29.1, read.Value("V1", BatchProperties.Mass.Name));
    }

    [Fact]
    public void Water_ThatReadsNextToNothing_IsABlank()
    {
        var read = Read.Text("tube,Abs\nwater,0.006\nP1,0.77\nP2,0.62\nP3,0.50\n");
        Assert.Equal(SampleRole.Blank, Assert.Single(read.Proposal!.Samples, s => s.Code == "water").Role);
        Assert.NotEqual(SampleRole.Blank, Assert.Single(Read.Text("tube,Abs\nwater,0.21\nP1,0.77\nP2,0.62\nP3,0.50\n").Proposal!.Samples, s => s.Code == "water").Role);
    }

    [Theory]
    [InlineData("89.7,78.0,54.5,32.6", "removed-or-left")]
    [InlineData("32.6,54.5,78.0,89.7", null)]
    [InlineData("55.0,53.0,51.0,49.0", null)]
    [InlineData("89.7,78.0,79.5,32.6", null)]
    public void Removal_ThatFallsWithMorePowder_IsAskedAbout(string removals, string? asked)
        => Assert.Equal(asked is null ? [] : [asked], OpenQuestions("flask,powder (mg),volume (mL),C0 (mg/L),removal (%)\n" + string.Concat(removals.Split(',').Zip([5.9, 11.8, 25.2, 44.6], (r, m) => FormattableString.Invariant($"Y{m:0},{m},50,25,{r}\n")))));

    [Theory]
    [InlineData("D5,15,29.4\nD6,45,30.2\nD7,120,29.1", "mass-and-time")]
    [InlineData("D5,29.4,75\nD6,30.2,95\nD7,29.1,120", null)]
    [InlineData("D5,15,44\nD6,45,44\nD7,120,44", null)]
    public void Times_UnderTheMass_AreAskedAbout(string rows, string? asked)
        => Assert.Equal(asked is null ? [] : [asked], OpenQuestions("20 mL each\n\nbottle,powder (mg),time (min),start (mg/L),end (mg/L)\n" + string.Join('\n', $"D1,29.7,5\nD2,29.3,10\nD3,30.4,30\nD4,30.8,60\n{rows}".Split('\n').Select((r, i) => FormattableString.Invariant($"{r},42,{31 - (2 * i)}"))) + "\n").Where(q => !q.StartsWith("mass-unit", StringComparison.Ordinal) && !q.StartsWith("start-or", StringComparison.Ordinal)));

    [Theory]
    [InlineData("24.53", "24.96", "start-of-controls")]
    [InlineData("48.9", "49.6", null)]
    [InlineData("24.53", "38.0", null)]
    public void FlasksWithoutPowder_FarBelowTheStartOfALine_AreAskedAbout(string first, string second, string? asked)
        => Assert.Equal(asked is null ? [] : [asked], OpenQuestions($"chloride, start 50 mg/L, 25 mL, 2 h in the dark\n\nflask,powder (mg),Ni (mg/L)\nno powder 1,,{first}\nno powder 2,,{second}\nU-1,4.08,18.48\nU-2,7.06,14.34\nU-3,10.97,9.83\n"));

    [Fact]
    public void Dilution_ThatIsPerhapsInAlready_IsAskedAbout()
        => Assert.Contains("dilution", string.Join(' ', OpenQuestions("flask,powder (mg),liquid (mL),Ni start (mg/L),Ni measured (mg/L),diluted\nM1,150,50,65,5.4,no\nM2,108,50,65,9.2,no\nM3,54.4,50,65,2.633,10x\nM4,34.4,50,65,3.922,10x\n\nM3-M4 were diluted 10x. Perhaps the factor is in the program already, perhaps not - ask her on Monday!\n")), StringComparison.Ordinal);

    [Fact]
    public void Masses_DownAndTimes_Along_AreOneVesselACell()
    {
        var read = Read.Text("Ni left in mg/L;;;\nstart concentration 60 mg/L, 50 mL in each;;;\n;;;\npowder (mg);10 min;30 min;90 min\n20;47.9;42.3;40.3\n40;40.0;31.0;25.9\n80;38.0;24.2;15.2\n");
        Assert.Equal(9, read.Proposal!.Samples.Length);
        Assert.Equal((80.0, 30.0, 24.2), read.Proposal.Samples.Where(s => s.Facts[BatchProperties.Mass.Name].Value is 80 && s.Facts[BatchProperties.ContactTime.Name].Value is 30)
            .Select(s => (80.0, 30.0, Math.Round(read.Proposal.Readings.Single(r => r.Sample == s.Code).Value!.Value, 6))).Single());
    }

    [Fact]
    public void Report_OfManyParameters_UnderLaboratoryNumbers_IsOneRowASample()
    {
        var read = Read.Text("Lab no.,Parameter,Result,Unit,Limit\n" + string.Concat(new[] { ("01", "151"), ("02", "1578"), ("03", "826") }.Select(s => $"0631/{s.Item1},Nickel,{s.Item2},µg/L,0.50\n0631/{s.Item1},Potassium,1.10,mg/L,0.10\n0631/{s.Item1},Conductivity,123,µS/cm,-\n")));
        Assert.Equal([0.151, 1.578, 0.826], read.Proposal!.Readings.Where(r => r.Signal == SpectrometryProperties.ReportedConcentration.Name).Select(r => Math.Round(r.Value!.Value, 6)));
    }
}
