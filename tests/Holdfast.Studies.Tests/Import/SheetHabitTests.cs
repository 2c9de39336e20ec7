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
}
