using Holdfast.Amounts;
using Holdfast.Studies.Import;

namespace Holdfast.Studies.Tests.Import;

/// <summary>What is asked instead of guessed.</summary>
public class DecisionTests
{
    [Fact]
    public void OnlyEvidence_OfOneCommaBeforeThreeDigits_IsAskedAboutAndRemembered()
    {
        // X14.
        const string Text = "sample\tC0 (mg/L)\nV-01\t1,234\n";
        var asked = Read.Text(Text);
        var question = Assert.Single(asked.Questions);
        Assert.Equal(("decimal", "HF-402"), (question.Id, question.Code));
        Assert.Contains("1,234 could be 1.234 or 1234", question.Text, StringComparison.Ordinal);
        Assert.True(asked.NeedsDecision);

        var comma = Read.Text(Text, answers: Read.Answer("decimal", "comma"));
        Assert.Equal(1.234, comma.Value("V-01", "initial-concentration"));
        var study = Read.After(Read.Nothing, comma);
        var next = Read.Text("sample\tC0 (mg/L)\nV-02\t5,678\n", "next.csv", study);
        Assert.False(next.NeedsDecision);
        Assert.Equal(5.678, next.Value("V-02", "initial-concentration"));
        Assert.True(Assert.Single(next.Questions).IsRemembered);
        Assert.Equal(Assert.Single(study.Layouts).Key, next.RememberedLayout);
    }

    [Theory]
    [InlineData("sample;C0 (mg/L)\nV-01;1,234\n", DecimalMark.Comma)]
    [InlineData("sample\tC0 (mg/L)\nV-01\t0,123\n", DecimalMark.Comma)]
    [InlineData("sample\tC0 (mg/L)\nV-01\t1,5\n", DecimalMark.Comma)]
    [InlineData("sample\tC0 (mg/L)\nV-01\t1,2345\n", DecimalMark.Comma)]
    [InlineData("sample\tC0 (mg/L)\nV-01\t1.234,5\n", DecimalMark.Comma)]
    [InlineData("sample\tC0 (mg/L)\nV-01\t1,234.5\n", DecimalMark.Point)]
    [InlineData("sample\tC0 (mg/L)\nV-01\t1.234\n", DecimalMark.Point)]
    [InlineData("Decimal mark: ,\nsample\tC0 (mg/L)\nV-01\t1,234\n", DecimalMark.Comma)]
    [InlineData("Software\t2.1\nsample\tC0 (mg/L)\nV-01\t1,5\n", DecimalMark.Comma)]
    [InlineData("sample\tC0 (mg/L)\nV-1.5\t1,5\n", DecimalMark.Comma)]
    public void DecimalMark_WithEvidence_IsSettledForTheFile(string text, DecimalMark mark)
    {
        var understood = Read.Text(text);
        Assert.Equal(mark, understood.Tables[0].Decimal);
        Assert.False(understood.NeedsDecision);
    }

    [Fact]
    public void BothMarks_InOneFile_AreAskedAboutAndNeverReadCellByCell()
    {
        const string Text = "sample\tC0 (mg/L)\nV-01\t0,7\nV-02\t0.7\n";
        Assert.Equal("decimal", Assert.Single(Read.Text(Text).Questions).Id);
        var point = Read.Text(Text, answers: Read.Answer("decimal", "point"));
        Assert.Null(point.Value("V-01", "initial-concentration"));
        Assert.Equal(0.7, point.Value("V-02", "initial-concentration"));
        Assert.Equal("0,7", Assert.Single(point.Tables[0].Columns[1].Odd).Text);
    }

    [Fact]
    public void Heading_WithoutUnit_IsAskedAboutAndFeedsNothing()
    {
        // X15.
        var understood = Read.Text("sample,C0,V (mL)\nV-01,20,25\n");
        Assert.True(understood.NeedsDecision);
        var asked = Assert.Single(understood.Questions);
        Assert.Equal(("unit:C0", "HF-401", "mg/L"), (asked.Id, asked.Code, asked.Choices[0]));
        Assert.Equal(ColumnUse.WithoutUnit, understood.Tables[0].Columns[1].Use);
        var fact = understood.Proposal!.Samples[0].Facts["initial-concentration"];
        Assert.Null(fact.Value);
        Assert.StartsWith("20", fact.Written, StringComparison.Ordinal);
        Assert.Equal(20_000, Read.Text("sample,C0,V (mL)\nV-01,20,25\n", answers: Read.Answer("unit:C0", "g/L")).Value("V-01", "initial-concentration"));

        // The same sheet with its unit fills the gap without a question.
        var study = Read.After(Read.Nothing, understood);
        var again = Read.Text("sample,C0 (mg/L)\nV-01,20\n", "mended.csv", study);
        Assert.False(again.NeedsDecision);
        Assert.Equal(20, again.Value("V-01", "initial-concentration"));
    }

    [Fact]
    public void PartsPerMillion_AreAskedAbout()
    {
        const string Text = "sample,C0 (ppm)\nV-01,20\n";
        var question = Assert.Single(Read.Text(Text).Questions);
        Assert.Equal("unit:C0", question.Id);
        Assert.Contains("mg/L", question.Choices);
        Assert.Equal(20, Read.Text(Text, answers: Read.Answer("unit:C0", "mg/L")).Value("V-01", "initial-concentration"));
        Assert.Null(Read.Text(Text, answers: Read.Answer("unit:C0", "mg/kg")).Value("V-01", "initial-concentration"));
    }

    [Fact]
    public void Amounts_BecomeMassesOfTheElementTheStudyIsAbout()
    {
        // Abridged standard atomic weights, IUPAC 2021 (Pure Appl. Chem. 94, 573): nickel 58.693, chlorine 35.45; NiCl2 holds 58.693/129.593 of nickel.
        Testing.Agree.Digits(6, 58.693, Read.Text("sample,C0 (mmol/L)\nV-01,1\n").Value("V-01", "initial-concentration")!.Value);
        Testing.Agree.Digits(4, 10 * 58.693 / 129.593, Read.Text("sample,C0 (mg NiCl2/L)\nV-01,10\n").Value("V-01", "initial-concentration")!.Value);
        Assert.Equal(10, Read.Text("sample,C0 (mg Ni/L)\nV-01,10\n").Value("V-01", "initial-concentration"));
        var unsaid = Read.Text("sample,C0 (mmol/L)\nV-01,1\n", study: Read.Nothing with { Analyte = null });
        Assert.Contains("does not say which element", Assert.Single(unsaid.Questions).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Symbols_ThatDifferInCaseOnly_AreToldApartByUnit()
    {
        var understood = Read.Text("sample,t (h),T (K)\nV-01,24,298.15\n");
        Assert.Equal(1440, understood.Value("V-01", "contact-time"));
        Assert.Equal(298.15, understood.Value("V-01", "temperature"));
    }

    [Fact]
    public void CensoredAndOddCells_NeverBecomeNumbers()
    {
        // X16.
        var understood = Read.Text("sample,type,Abs 1,Abs 2,Abs 3,Abs 4,Abs 5,Abs 6,Abs 7,Abs 8\nblank 1,blank,<LOD,n.d.,NaN,#DIV/0!,1e999,<0.05,****,-\n");
        Assert.False(understood.NeedsDecision);
        var readings = understood.Proposal!.Readings;
        Assert.Equal(["<LOD", "n.d.", "NaN", "#DIV/0!", "1e999", "<0.05", "****"], readings.Select(r => r.Written));
        Assert.All(readings, r => Assert.Null(r.Value));
        Assert.Equal(0.05, readings[5].Below);
        Assert.Equal(["NaN", "#DIV/0!", "1e999"], understood.Tables[0].Columns.SelectMany(c => c.Odd).Select(o => o.Text));
    }

    [Fact]
    public void UnknownSamples_OfAReadingsFile_AreListedAndNotMadeUp()
    {
        var study = Read.With("V-01", "V-02");
        const string Text = "sample,Abs\nV-01,0.1\nB7,0.2\nB8,0.3\nStd 1,0.4\nQC-1,0.5\nblank,0.6\n";
        var asked = Read.Text(Text, study: study);
        var question = Assert.Single(asked.Questions);
        Assert.Equal(("unknown", "HF-404"), (question.Id, question.Code));
        Assert.Contains("2 rows name samples not in this study under sample: B7, B8. Its vessels are called V-01, V-02", question.Text, StringComparison.Ordinal);
        Assert.Equal("6 rows: 4 ready, 2 need a decision", asked.Sentence);

        var added = Read.Text(Text, study: study, answers: Read.Answer("unknown", "add"));
        Assert.Equal(["V-01", "B7", "B8", "Std 1", "QC-1", "blank"], added.Proposal!.Readings.Select(r => r.Sample));
        Assert.Equal([SampleRole.Vessel, SampleRole.Vessel, SampleRole.Standard, SampleRole.CheckStandard, SampleRole.Blank], added.Proposal.Samples.Select(s => s.Role));
        Assert.Contains(added.Findings, f => f.Sentence.Contains("QC-1 as check standard", StringComparison.Ordinal));
        var matched = Read.Text(Text, study: study, answers: Read.Answer("match:B7", "V-02").With("unknown", "leave-out"));
        Assert.Equal(["V-01", "V-02", "Std 1", "QC-1", "blank"], matched.Proposal!.Readings.Select(r => r.Sample));
    }

    [Theory]
    [InlineData("v 1", "V-01")]
    [InlineData("V01", "V-01")]
    [InlineData("PH3-1", "PH3-1")]
    [InlineData("ph 3-01", "PH3-1")]
    public void Code_WrittenDifferently_MatchesTheOneCandidate(string written, string expected)
    {
        var understood = Read.Text($"sample,Abs\n{written},0.1\n", study: Read.With("V-01", "PH3-1", "PH-31"));
        Assert.False(understood.NeedsDecision);
        Assert.Equal(expected, Assert.Single(understood.Proposal!.Readings).Sample);
    }

    [Fact]
    public void Code_ThatCouldBeTwo_IsAskedAbout()
        => Assert.Equal(["V-01", "V-1"], Assert.Single(Read.Text("sample,Abs\nv1,0.1\n", study: Read.With("V-01", "V-1")).Questions).Choices);

    [Theory]
    [InlineData("3-Mar", "MAR3")]
    [InlineData("45719", "3-3")]
    public void Code_ThatASpreadsheetMangled_IsAskedAboutWithTheLikelyOriginal(string written, string original)
    {
        // Serial 45719 is 3 March 2025 in the day count from 1899-12-30 that spreadsheet programs use.
        var understood = Read.Text($"sample,Abs\n{written},0.1\nV-01,0.1\nV-02,0.1\n", study: Read.With("V-01", "V-02", original));
        var question = Assert.Single(understood.Questions);
        Assert.Equal("match:" + written, question.Id);
        Assert.Equal(original, question.Choices[0]);
    }

    [Fact]
    public void Mass_FarFromThePlan_IsAskedAboutOnce()
    {
        const string Text = "sample,dose (g/L),V (mL),m (mg)\nV-16,0.8,25,2000\nV-17,0.8,25,20.1\nV-18,0.8,25,25.5\n";
        var asked = Read.Text(Text);
        var question = Assert.Single(asked.Questions);
        Assert.Contains("V-16: sorbent mass 2000 mg is 100 times the planned 20 mg", question.Text, StringComparison.Ordinal);
        Assert.Contains(asked.Findings, f => f.Sentence.Contains("V-18 weighs 25.5 mg, planned were 20 mg", StringComparison.Ordinal));
        Assert.Equal(2000, Read.Text(Text, answers: Read.Answer("values:mass", "keep")).Value("V-16", "mass"));
        Assert.Null(Read.Text(Text, answers: Read.Answer("values:mass", "leave-out")).Value("V-16", "mass"));
    }

    [Fact]
    public void Mass_BelowZero_CannotBeKept()
    {
        const string Text = "sample,m (mg)\nV-16,-20\nV-17,20\n";
        Assert.Equal(["leave-out"], Assert.Single(Read.Text(Text).Questions).Choices);
        var left = Read.Text(Text, answers: Read.Answer("values:mass", "leave-out"));
        Assert.Null(left.Value("V-16", "mass"));
        Assert.Equal("-20 mg", left.Proposal!.Samples[0].Facts["mass"].Written);
    }

    [Fact]
    public void Date_ThatCouldBeSwapped_IsAskedAboutOncePerFile()
    {
        const string Text = "sample,date,m (mg)\nV-01,03/04/2026,20\nV-02,05/04/2026,20\nV-03,2026-04-03,20\n";
        Assert.Equal("date", Assert.Single(Read.Text(Text).Questions).Id);
        var day = Read.Text(Text, answers: Read.Answer("date", "day-first"));
        Assert.Equal(["2026-04-03", "2026-04-05", "2026-04-03"], day.Proposal!.Samples.Select(s => s.Facts["day"].Words));
        Assert.Empty(Read.Text("sample,date,m (mg)\nV-01,25/04/2026,20\nV-02,5 Apr 2026,20\nV-03,5.4.2026,20\n").Questions);
    }

    [Fact]
    public void Fact_KnownWithAnotherValue_IsAskedAbout()
    {
        var study = Read.After(Read.Nothing, Read.Text("sample,m (mg)\nV-01,50\nV-02,51\n"));
        var asked = Read.Text("sample,m (mg)\nV-01,50\nV-02,52\n", "later.csv", study);
        Assert.Contains("V-02 has sorbent mass 51 mg already", Assert.Single(asked.Questions).Text, StringComparison.Ordinal);
        Assert.Equal("2 rows: 1 ready, 1 needs a decision", asked.Sentence);
        var taken = Read.Text("sample,m (mg)\nV-01,50\nV-02,52\n", "later.csv", study, Read.Answer("differing", "take"));
        Assert.Equal(52, Read.After(study, taken).Sample("V-02")!.Facts["mass"].Value);
    }

    [Fact]
    public void Readings_OfAnExportMadeAgain_AreAskedAbout()
    {
        var study = Read.With("V-01", "V-02", "V-03", "V-04");
        study = Read.After(study, Read.Text("sample,Abs 1,Abs 2\nV-01,0.11,0.12\nV-02,0.21,0.22\nV-03,0.31,0.32\n", study: study));
        const string Longer = "sample,Abs 1,Abs 2\nV-01,0.11,0.12\nV-02,0.21,0.22\nV-03,0.31,0.32\nV-04,0.41,0.42\n";
        Assert.Equal("overlap", Assert.Single(Read.Text(Longer, "run-again.csv", study).Questions).Id);
        var rest = Read.Text(Longer, "run-again.csv", study, Read.Answer("overlap", "leave-out"));
        Assert.Equal(["R-0007", "R-0008"], rest.Proposal!.Readings.Select(r => r.Id));
    }

    [Fact]
    public void Standard_OfAnotherConcentrationInALaterRun_IsAnotherSample()
    {
        var study = Read.After(Read.Nothing, Read.Text("label,type,standard (mg/L),Abs\nStd 1,standard,1,0.1\n"));
        var later = Read.Text("label,type,standard (mg/L),Abs\nStd 1,standard,2,0.2\n", "run2.csv", study);
        Assert.False(later.NeedsDecision);
        Assert.Equal("Std 1 of run2", Assert.Single(later.Proposal!.Samples).Code);
    }

    [Fact]
    public void Portions_AreToldByDilutionOrSaidOutright()
    {
        var study = Read.With("V-01");
        Assert.Equal([1, 1, 2, 1], Read.Text("sample,dilution,Abs\nV-01,1,0.1\nV-01,1,0.1\nV-01,10,0.2\nV-01,1,0.3\n", study: study).Proposal!.Readings.Select(r => r.Portion));
        Assert.Equal([1, 2], Read.Text("sample,portion,Abs\nV-01,1,0.1\nV-01,2,0.1\n", study: study).Proposal!.Readings.Select(r => r.Portion));
    }

    [Fact]
    public void Mean_BesideTheReadingsItIsOf_IsLeftOut()
    {
        var understood = Read.Text("sample,Abs 1,Abs 2,Mean Abs,u(m) (mg),m (mg)\nV-01,0.1,0.3,0.2,0.05,50\n", study: Read.With("V-01"));
        Assert.Equal([0.1, 0.3], understood.Proposal!.Readings.Select(r => r.Value!.Value));
        Assert.Equal(0.05, understood.Proposal.Samples[0].Facts["mass"].U);
    }

    [Fact]
    public void Points_WithoutSamples_AreReadForAFit()
    {
        var points = Assert.Single(Read.Text("Ce (mg/L);qe (mg/g)\n1,5;3,25\n2,5;n.d.\n").Points);
        Assert.Equal(["Ce", "qe"], points.Columns.Select(c => c.Heading));
        Assert.Equal(["mg/L", "mg/g"], points.Columns.Select(c => c.Unit!.Plain));
        Assert.Equal([1.5, 2.5], points.Columns[0].Values.Select(v => v!.Value));
        Assert.Equal([3.25, null], points.Columns[1].Values);
    }

    [Fact]
    public void ClaimsMarginsAndApparatus_AreToldByTheirHeadings()
    {
        var claims = Read.Text("claim,series,time,wording\nequilibrium-reached,KIN-20,120 min,Equilibrium by 120 min.\nequilibrium-reached,KIN-20,120 min,\n").Proposal!.Claims;
        Assert.Equal(["equilibrium-reached-kin-20-120-min", "equilibrium-reached-kin-20-120-min-2"], claims.Select(c => c.Id));
        Assert.Equal("120 min", claims[0].Parameters["time"]);
        Assert.Equal("Equilibrium by 120 min.", claims[0].Wording);

        var margins = Read.Text("margin,low,high,unit\nplateau,-5,5,%\nremoval,,2,percentage points\nbad,5,1,%\n");
        Assert.Equal([(-5.0, 5.0), (-2.0, 2.0)], margins.Proposal!.Margins.Select(m => (m.Low, m.High)));
        Assert.Equal("row:4", Assert.Single(margins.Questions).Id);

        var apparatus = Read.Text("apparatus,serves,u,unit,relative u (%),shared,basis\nB-1,mass,0.0001,g,,no,certificate\nP-1,dilution,,,0.6,yes,weighed\n").Proposal!.Apparatus;
        Assert.Equal(0.1, apparatus[0].U!.Value, 12);
        Assert.Equal(0.006, apparatus[1].RelativeU!.Value, 12);
        Assert.True(apparatus[1].Shared);
    }
}
