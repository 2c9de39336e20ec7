using System.Text;
using Holdfast.Studies.Import;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Tests.Import;

/// <summary>Sheets and files that speak of the same vessels: weights, readings, notes, her own results, start solutions. All are invented; common practice says what each means.</summary>
public class SheetsTogetherTests
{
    [Fact]
    public void QuantityValueUnit_IsAListOfSettings_ForTheTableInAnotherSheet()
    {
        var read = Read.Bytes(Workbooks.Of(
            ("data", false, [["Tube", "t (min)", "Ce (mg/L)"], ["A1", 5, 18.2], ["A2", 10, 14.1], ["A3", 20, 11.9]]),
            ("conditions", false, [["quantity", "value", "unit"], ["initial concentration C0", 25, "mg/L"], ["volume", 100, "mL"], ["mass of powder", 0.2, "g"]])), "run.xlsx");
        Assert.Equal(["A1", "A2", "A3"], read.Proposal!.Samples.Select(s => s.Code));
        Assert.Equal(200, read.Value("A2", BatchProperties.Mass.Name));
        Assert.Equal(25, read.Value("A3", BatchProperties.InitialConcentration.Name));
    }

    [Fact]
    public void StartSolutions_NamedInARemark_AreTaken_AndTheOthersAreNot()
    {
        var sheet = Read.Text("Matraz;Polvo (g);V (L);Observaciones\nM-1;0,025;0,100;disolución inicial de todos: S0-a y S0-b\nM-2;0,051;0,100;\nM-3;0,074;0,100;\n");
        var study = Read.After(Read.Nothing, sheet);
        var read = Read.Text("Muestra;Ni (mg/L)\nS0-a;30,2\nS0-b;30,6\nM-1;16,0\nM-2;4,8\nM-3;1,8\n", "icp.csv", study);
        Assert.Equal(["S0-a", "S0-b"], read.Proposal!.Samples.Where(s => s.Role == SampleRole.StartSolution).Select(s => s.Code));
        Assert.Equal("start-row", Assert.Single(read.Questions, q => q.Id == "start-row").Id);
    }

    [Fact]
    public void OwnEvaluation_OfVesselsThatWereReadElsewhere_IsNotReadASecondTime()
    {
        object?[][] Summary(double second) => [["Tube", "C0 (mg/L)", "Ce (mg/L)", "R (%)", "q (mg/g)"], ["A1", 40.6, 30.6, 24.6, 49.0], ["A2", 40.6, second, 36.2, 48.7], ["A3", 40.6, 21.4, 47.3, 47.1]];
        var weighed = ("Weighing", false, new object?[][] { ["Tube", "Powder (mg)", "V (mL)"], ["A1", 10.2, 50.0], ["A2", 15.1, 50.0], ["A3", 20.4, 50.0] });
        var read = ("Export", false, new object?[][] { ["Sample", "Ni (mg/L)"], ["Start 1", 40.62], ["A1", 30.6], ["A2", 25.92], ["A3", 21.42] });
        foreach (var second in new[] { 25.9, 12.0 })
        {
            var understood = Read.Bytes(Workbooks.Of(weighed, read, ("Summary", false, Summary(second))), "dose.xlsx");
            Assert.Equal("own-evaluation", Assert.Single(understood.Questions, q => q.Id == "own-evaluation").Id);
            Assert.Equal(["Start 1", "A1", "A2", "A3"], understood.Proposal!.Readings.Select(r => r.Sample));
            Assert.Equal(36.2, understood.Proposal.Samples.Select(s => s.Code == "A2" ? s.Number(BatchProperties.ReportedRemoval) : null).OfType<double>().Single());
        }

        // Without what was read, the table is all there is; other vessels of the same codes stay others.
        Assert.Equal(3, Read.Bytes(Workbooks.Of(weighed, ("Summary", false, Summary(25.9))), "dose.xlsx").Proposal!.Readings.Length);
        var taken = Read.Bytes(Workbooks.Of(weighed, read, ("Summary", false, Summary(25.9))), "dose.xlsx", answers: Read.Answer("own-evaluation", "take"));
        Assert.True(taken.Proposal!.Readings.Length > 4);
    }

    [Theory]
    [InlineData(50.0, true)]
    [InlineData(32.0, false)]
    public void StartSolution_ThatReadsFarFromWhatTheSheetSays_IsAskedAbout(double said, bool asked)
    {
        var sheet = FormattableString.Invariant($"Tube,m (mg),V (mL),C0 (mg/L)\nA1,20.1,50,{said}\nA2,30.2,50,{said}\nA3,40.3,50,{said}\n");
        const string run = "Sample,Ni (mg/L)\nStart solution,31.2\nA1,25.0\nA2,22.0\nA3,19.0\n";
        var files = new[] { new IncomingFile("a.csv", Encoding.UTF8.GetBytes(sheet)), new IncomingFile("b.csv", Encoding.UTF8.GetBytes(run)) };
        Understanding[] Taken(Answers answers) => [.. Take.Understand(Read.Nothing, files, answers, TestContext.Current.CancellationToken).Select(u => u.Understanding)];
        Assert.Equal(asked, Taken(Answers.None).SelectMany(u => u.Questions).Any(q => q is { Id: "which-start", IsOpen: true }));
        if (!asked)
            return;
        Assert.All(Taken(Read.Answer("which-start", "measured")).SelectMany(u => u.Proposal!.Samples), s => Assert.DoesNotContain(BatchProperties.InitialConcentration.Name, s.Facts.Keys));
        Assert.Equal(3, Taken(Read.Answer("which-start", "as-stated")).SelectMany(u => u.Proposal!.Samples).Count(s => s.Facts.ContainsKey(BatchProperties.InitialConcentration.Name)));
    }

    [Fact]
    public void SheetThatIsNotToBeUsed_AndMeansAlone_AreLeftOut()
    {
        var read = Read.Bytes(Workbooks.Of(
            ("tubes", false, [["Tube", "m (mg)", "Ce (mg/L)"], ["A1", 20.1, 18.2], ["A2", 30.2, 14.1]]),
            ("OLD - do not use", false, [["Tube", "m (mg)", "Ce (mg/L)"], ["A1", 19.1, 10.2], ["A2", 29.2, 8.1]]),
            ("means", false, [["dose", "mean Ce (mg/L)"], ["D5 mean", 9.1], ["D10 mean", 4.9]])), "run.xlsx");
        Assert.Equal(["A1", "A2"], read.Proposal!.Samples.Select(s => s.Code));
        Assert.Equal([18.2, 14.1], read.Proposal.Readings.Select(r => r.Value!.Value));
        Assert.DoesNotContain(read.Questions, q => q.IsOpen);
    }

    [Fact]
    public void SameCodesOnTwoSheets_AreOtherVesselsWhereMostDiffer_AndASlipWhereOneDoes()
    {
        static (string, bool, object?[][]) Sheet(string name, double third, double others) => (name, false, [["Tube", "m (mg)"], ["A1", 20.1 + others], ["A2", 30.2 + others], ["A3", third + others]]);
        var slip = Read.Bytes(Workbooks.Of(Sheet("list", 40.3, 0), Sheet("again", 43.0, 0)), "two.xlsx");
        Assert.Contains("A3", Assert.Single(slip.Questions, q => q is { Id: "differing", IsOpen: true }).Text, StringComparison.Ordinal);
        Assert.Equal(["A1", "A2", "A3"], slip.Proposal!.Samples.Select(s => s.Code).Distinct());
        Assert.Equal(6, Read.Bytes(Workbooks.Of(Sheet("series A", 40.3, 0), Sheet("series B", 43.0, 1.1)), "two.xlsx").Proposal!.Samples.Length);
    }

    [Fact]
    public void ResultsWorkedOutTwice_AreAskedAbout()
    {
        static (string, bool, object?[][]) Results(string name, double by) => (name, false, [["Tube", "C0 (mg/L)", "Ce (mg/L)", "Removal (%)"], ["R1", 30.0, 19.4 * by, 35.0 / by], ["R2", 30.0, 15.6 * by, 48.0 / by], ["R3", 30.0, 11.7 * by, 61.0 / by]]);
        var both = Workbooks.Of(Results("Results", 1), Results("Results (2)", 0.9));
        Assert.Equal("worked-out-twice:Results (2)", Assert.Single(Read.Bytes(both, "r.xlsx").Questions, q => q.IsOpen).Id);
        Assert.Equal(3, Read.Bytes(both, "r.xlsx", answers: Read.Answer("worked-out-twice:Results (2)", "leave-out")).Proposal!.Readings.Length);
        Assert.Equal(6, Read.Bytes(both, "r.xlsx", answers: Read.Answer("worked-out-twice:Results (2)", "other-vessels")).Proposal!.Readings.Length);
    }

    [Fact]
    public void OneListOfWeights_ForTwoSheetsOfTheSameCodes_IsAskedAbout()
    {
        static (string, bool, object?[][]) Series(string name, double c0, double ce) => (name, false, [["Tube", "C0 (mg/L)", "Ce (mg/L)"], ["M1", c0, ce], ["M2", c0, ce - 3], ["M3", c0, ce - 5]]);
        var study = Read.After(Read.Nothing, Read.Text("Tube,m (mg),V (mL)\nM1,20,50\nM2,29.8,50\nM3,41.1,50\n", "weights.csv"));
        Assert.Equal("whose-masses", Assert.Single(Read.Bytes(Workbooks.Of(Series("A", 20, 12.3), Series("B", 35, 27.3)), "runs.xlsx", study).Questions, q => q.IsOpen).Id);
        Assert.DoesNotContain(Read.Bytes(Workbooks.Of(Series("A", 20, 12.3)), "runs.xlsx", study).Questions, q => q.IsOpen);
    }

    [Fact]
    public void WordThatEndsInTo_IsNoRange_AndALabelOutweighsTheKindSample()
    {
        var sheet = Read.Text("V = 25 mL; tempo di contatto 4 h\nProvetta,Massa (mg)\nG1,18.7\nG2,20.1\nG3,25.3\n");
        Assert.Equal(240, sheet.Value("G1", BatchProperties.ContactTime.Name));
        var run = Read.Text("Name,Kind,Ni (mg/L)\nStart solution A,sample,30.2\nG1,sample,16\nG2,sample,12\nG3,sample,9\n", "run.csv", Read.After(Read.Nothing, sheet));
        Assert.DoesNotContain(run.Questions, q => q.IsOpen);
        Assert.Equal(SampleRole.StartSolution, run.Proposal!.Samples.Single(s => s.Code == "Start solution A").Role);
    }

    [Fact]
    public void StartSolutionThatAVesselNames_IsWhatItBeganWith_AndSeveralWithoutANameAreSaid()
    {
        const string run = "Sample,Ni (mg/L)\nStart 20,19.7\nStart 40,40.6\nL1,3.4\nL2,13.7\nL3,1.3\n";
        Understanding[] Taken(string sheet) => [.. Take.Understand(Read.Nothing,
            [new("a.csv", Encoding.UTF8.GetBytes(sheet)), new("b.csv", Encoding.UTF8.GetBytes(run))], Answers.None, TestContext.Current.CancellationToken).Select(u => u.Understanding)];
        var named = Taken("Tube,m (mg),V (mL),start solution\nL1,29.7,40,Start 20\nL2,30.5,40,Start 40\nL3,60.8,40,Start 20\n");
        Assert.Equal("Start 40", named[0].Proposal!.Samples.Single(s => s.Code == "L2").Words(BatchProperties.StartSolution));
        Assert.DoesNotContain(named.SelectMany(u => u.Findings), f => f.Sentence.Contains("start solutions differ", StringComparison.Ordinal));
        var unnamed = Taken("Tube,m (mg),V (mL)\nL1,29.7,40\nL2,30.5,40\nL3,60.8,40\n");
        Assert.Contains(unnamed.SelectMany(u => u.Findings), f => f.Sentence.Contains("2 start solutions differ (Start 20 19.7 mg/L, Start 40 40.6 mg/L)", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("m (g)", "0.1476", "m (mg)", "147.6", "mass", 147.6, false)]
    [InlineData("m (g)", "0.15", "m (mg)", "148.2", "mass", 148.2, false)]
    [InlineData("m (g)", "0.16", "m (mg)", "148.2", "mass", 160.0, true)]
    [InlineData("m (mg)", "148", "m (mg)", "148.2", "mass", 148.0, true)]
    [InlineData("t (min)", "5", "t (h)", "0.083", "contact-time", 5.0, false)]
    [InlineData("t (h)", "0.083", "t (min)", "5", "contact-time", 5.0, false)]
    [InlineData("t (h)", "2", "t (min)", "118.5", "contact-time", 118.5, false)]
    [InlineData("t (h)", "2", "t (min)", "90", "contact-time", 120.0, true)]
    public void OneValueInTwoUnits_IsNoContradiction_AndTheOtherIsRoundedFromIt(string first, string a, string second, string b, string property, double kept, bool asked)
    {
        var study = Read.After(Read.Nothing, Read.Text($"Tube,{first},V (mL)\nA1,{a},50\nA2,{a},50\n", "one.csv"));
        var read = Read.Text($"Tube,{second},T (°C)\nA1,{b},25\nA2,{b},25\n", "two.csv", study);
        Assert.Equal(asked, read.Questions.Any(q => q is { Id: "differing", IsOpen: true }));
        Assert.Equal(kept, Math.Round(Read.After(study, read).Samples.Single(s => s.Code == "A1").Number(Property.Named(property)!)!.Value, 6));
    }

    [Theory]
    [InlineData("level,n,mean Ce (mg/L),SD,mean q (mg/g)\nP-05,2,0.65,0.03,4.4\nP-10,2,1.52,0.01,8.4\n", true)]
    [InlineData("Sample,Ce (mg/L),q (mg/g)\nP-05,0.65,4.4\nP-10,1.52,8.4\n", true)]
    [InlineData("start (mg/L),n,mean Ce (mg/L),mean q (mg/g)\n5,2,0.65,4.4\n10,2,1.52,8.4\n", true)]
    [InlineData("Sample,n,mean Ce (mg/L),mean q (mg/g)\nZ-1,3,0.65,4.4\nZ-2,3,1.52,8.4\n", false)]
    [InlineData("Sample,m (mg),mL,mean Ce (mg/L)\nP-05,48.1,50,0.65\nP-10,51.0,50,1.52\n", false)]
    public void SummaryOfMeansByLevel_IsLeftOut_WhereItsVesselsWereReadElsewhere(string summary, bool isLeftOut)
    {
        var files = new[] { ("weights.csv", "Sample,m (mg),mL,C0 (mg/L)\nP-05a,48.1,50,5\nP-05b,50.2,50,5\nP-10a,50.9,50,10\nP-10b,51.1,50,10\n"), ("run.csv", "Sample,Ni (ug/L)\nP-05a,668\nP-05b,624\nP-10a,1530\nP-10b,1519\n"), ("meeting.csv", summary) }
            .Select(f => new IncomingFile(f.Item1, Encoding.UTF8.GetBytes(f.Item2))).ToArray();
        Understanding[] Taken(Answers answers) => [.. Take.Understand(Read.Nothing, files, answers, TestContext.Current.CancellationToken).Select(u => u.Understanding)];
        var read = Taken(Answers.None);
        Assert.Equal(isLeftOut, read[2].Questions.Any(q => q.Id == "means:meeting.csv"));
        Assert.Equal(isLeftOut, read[2].Proposal!.Samples.IsEmpty && read[2].Proposal!.Readings.IsEmpty);
        if (isLeftOut)
            Assert.False(Taken(Read.Answer("means:meeting.csv", "take"))[2].Proposal!.Samples.IsEmpty);
    }

    [Fact]
    public void OwnEvaluation_KeepsItsEndConcentrations_BesideWhatWasRead()
    {
        var files = new[] { ("weights.csv", "Tube;m (mg);V (mL);C0 (mg/L)\nA1;20;50;10\nA2;20;50;20\n"), ("run.csv", "Tube;Ni (mg/L)\nA1;4,1\nA2;9,2\n"), ("mine.csv", "Tube;Ce (µg/L);q (mg/g)\nA1;9200;2,0\nA2;4100;39,8\n") }
            .Select(f => new IncomingFile(f.Item1, Encoding.UTF8.GetBytes(f.Item2))).ToArray();
        var mine = Take.Understand(Read.Nothing, files, Answers.None, TestContext.Current.CancellationToken)[2].Understanding;
        Assert.Empty(mine.Proposal!.Readings);
        Assert.Equal([9.2, 4.1], mine.Proposal.Samples.Select(s => Math.Round(s.Number(BatchProperties.ReportedEnd)!.Value, 9)));
    }
}
