namespace Holdfast.Cli.Tests;

/// <summary>Constants for many, roles and the study's own settings from the command line: each one entry that undo takes back.</summary>
public class SetTests
{
    private const string Vessels = "sample,series,m (mg),C0 (mg/L),t (min)\nV-1,KIN,20,20,10\nV-2,KIN,20,20,30\nV-3,ISO,20,20,60\nW-1,ISO,20,40,60\n";

    [Fact]
    public void Constant_ForASeries_FillsWhatIsMissingInItsOwnUnit()
    {
        using var line = Begun();
        Assert.Equal(Exit.Done, line.Type("set", "volume=0.01 L", "temperature=25 °C", "--series", "KIN"));
        Assert.Contains("volume: 0.01 L for 2 samples (V-1 and V-2)", line.Out, StringComparison.Ordinal);
        Assert.Equal("10", Cell(line, "V-1", "volume_ml"));
        Assert.Equal("298.15", Cell(line, "V-2", "temperature_k"));
        Assert.Equal("", Cell(line, "V-3", "volume_ml"));
        Assert.Contains("V-1,volume,10,mL,,,,0.01 L,,typed at the bench", Plain(line, "facts"), StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("undo"));
        Assert.DoesNotContain("volume", Plain(line, "facts"), StringComparison.Ordinal);
    }

    [Fact]
    public void Constant_WhereOthersAreRecorded_LeavesThemUnlessToldWhy()
    {
        using var line = Begun();
        line.Type("set", "volume=25 mL", "--samples", "V-*");
        Assert.Equal(Exit.Done, line.Type("set", "V=10"));
        Assert.Contains("3 samples recorded otherwise and left as it is", line.Out, StringComparison.Ordinal);
        Assert.Contains("V-1 25 mL", line.Out, StringComparison.Ordinal);
        Assert.Equal("10", Cell(line, "W-1", "volume_ml"));
        Assert.Equal("25", Cell(line, "V-1", "volume_ml"));
        Assert.Equal(Exit.NeedsDecision, line.Type("set", "volume=10"));
        Assert.Equal(Exit.NeedsDecision, line.Type("set", "volume=10", "--replace"));
        Assert.Contains("Say why", line.Error, StringComparison.Ordinal);
        Assert.Equal("25", Cell(line, "V-1", "volume_ml"));
        Assert.Equal(Exit.Done, line.Type("set", "volume=10", "--replace", "--because", "the flask was the small one"));
        Assert.Equal("10", Cell(line, "V-1", "volume_ml"));
        line.Type("undo");
        Assert.Equal("25", Cell(line, "V-1", "volume_ml"));
    }

    [Fact]
    public void Constant_Rehearsed_KeepsNothing()
    {
        using var line = Begun();
        Assert.Equal(Exit.Done, line.Type("set", "pH=6", "water=tap water", "author=Ada", "shaking=150 rpm", "--file", "vessels.csv", "--rehearse"));
        Assert.Contains("start pH: 6 for 4 samples", line.Out, StringComparison.Ordinal);
        Assert.Contains("matrix: tap water for 4 samples", line.Out, StringComparison.Ordinal);
        Assert.Contains("stirring speed: 150 rpm", line.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("tap water", Plain(line, "facts"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("volume=10 kg", Exit.NeedsDecision, "cannot be turned into mL")]
    [InlineData("volume=-5 mL", Exit.NeedsDecision, "below zero")]
    [InlineData("volume=ten", Exit.NeedsDecision, "is no single number")]
    [InlineData("colour=blue", Exit.NotUnderstood, "nothing called colour")]
    [InlineData("volume", Exit.NotUnderstood, "is not name=value")]
    [InlineData("temperature=25", Exit.NeedsDecision, "unlikely small")]
    [InlineData("pH=6 mL", Exit.NeedsDecision, "has no unit")]
    public void Constant_ThatCannotBe_IsRefusedAndKeepsNothing(string pair, int exit, string says)
    {
        using var line = Begun();
        var before = Plain(line, "facts");
        Assert.Equal(exit, line.Type("set", pair));
        Assert.Contains(says, line.Error, StringComparison.Ordinal);
        Assert.Equal(before, Plain(line, "facts"));
    }

    // 2000 mg where dose and volume plan 2 g/L · 10 mL = 20 mg: a hundred times, by hand.
    [Fact]
    public void Value_FarFromThePlan_IsAskedAboutAndKeptOnceItIsSure()
    {
        using var line = Begun();
        line.Type("set", "dose=2", "volume=10");
        Assert.Equal(Exit.NeedsDecision, line.Type("correct", "V-1", "mass=2 g", "--because", "weighed again"));
        Assert.Contains("100 times the planned 20 mg", line.Error, StringComparison.Ordinal);
        Assert.Equal("20", Cell(line, "V-1", "mass_mg"));
        Assert.Equal(Exit.Done, line.Type("correct", "V-1", "mass=2 g", "--because", "weighed again", "--sure"));
        Assert.Equal("2000", Cell(line, "V-1", "mass_mg"));
        Assert.Equal(Exit.NeedsDecision, line.Type("set", "mass=20 g", "--replace", "--because", "in grams"));
        Assert.Contains("1E+03 times the planned 20 mg for 4 samples", line.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--series", "NONE", "no series NONE. Series: KIN, ISO.")]
    [InlineData("--samples", "V-1,V-9", "no sample V-9")]
    [InlineData("--file", "other.csv", "Files: vessels.csv")]
    public void Selection_OfWhatIsNotThere_IsNamed(string option, string value, string says)
    {
        using var line = Begun();
        Assert.Equal(Exit.NoSuchThing, line.Type("set", "volume=10", option, value));
        Assert.Contains(says, line.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Instrument_OfARun_IsSaidOfTheRunAndInTheMethods()
    {
        using var line = Begun();
        line.Type("take", line.File("run1.csv", "sample,role,standard (mg/L),Abs\nS0,standard,0,0.0\nS1,standard,5,0.25\nS2,standard,10,0.5\nS3,standard,20,1.0\nV-1,vessel,,0.4\n"));
        Assert.Equal(Exit.NoSuchThing, line.Type("set", "instrument=AAS", "--run", "nowhere"));
        Assert.Equal(Exit.Done, line.Type("set", "instrument=flame AAS (invented)", "--series", "KIN"));
        Assert.Contains("for 1 run (run1)", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type("set", "instrument=another", "--run", "run1"));
        Assert.Contains("run1 flame AAS (invented)", line.Out, StringComparison.Ordinal);
        line.Type("write", "--html", "report.html");
        Assert.Contains("Run run1: flame AAS (invented),", File.ReadAllText(Path.Combine(line.Folder, "report.html")), StringComparison.Ordinal);
        line.Type("undo");
        line.Type("describe");
        Assert.Contains("instrument of run1: holdfast set \"instrument=…\" --run run1", line.Error, StringComparison.Ordinal);
    }

    // 0.05 absorbance for each mg/L: 0.5 is 10 mg/L, so that q = (20 − 10)·25/20 = 12.5 mg/g, by hand.
    [Fact]
    public void Roles_GivenAfterwards_CalibrateTheRun()
    {
        using var line = Begun();
        line.Type("set", "volume=25");
        line.Type("take", line.File("more.csv", "sample,C0 (mg/L)\nS1,4\nS2,8\nS3,16\nS4,20\n"));
        line.Type("take", line.File("run1.csv", "sample,Abs\nS1,0.2\nS2,0.4\nS3,0.8\nS4,1.0\nV-1,0.5\n"));
        Assert.Equal(Exit.NotUnderstood, line.Type("role", "S1", "--is", "sandwich"));
        Assert.Equal(Exit.NoSuchThing, line.Type("role", "S9", "--is", "standard"));
        Assert.Equal(Exit.NeedsDecision, line.Type("role", "S1", "S2", "--is", "standard", "--known", "4", "8", "16"));
        Assert.Equal(Exit.Done, line.Type("role", "S*", "--is", "standard", "--rehearse"));
        Assert.Contains("S1: vessel -> standard, known 4 mg/L", line.Out, StringComparison.Ordinal);
        line.Type("reduce");
        Assert.Contains("run1 has no calibration. Take in its standards, or say which of its samples are standards.", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("role", "S*", "--is", "standard"));
        line.Type("reduce", "--as", "csv", "--quiet");
        Assert.Contains("12.5", line.Out.Split('\n').Single(r => r.StartsWith("V-1", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type("role", "S*", "--is", "standard"));
        Assert.Equal(Exit.NeedsDecision, line.Type("role", "S1", "--is", "standard", "--known", "5"));
        Assert.Contains("Say why", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("role", "S1", "--is", "standard", "--known", "5 mg/L", "--because", "misread the flask"));
        Assert.Equal("5", Cell(line, "S1", "standard_concentration_mg_per_L"));
        line.Type("undo");
        line.Type("undo");
        Assert.Equal("vessel", Cell(line, "S1", "role"));
    }

    [Fact]
    public void Study_Described_IsOneEntryAndListsItsGaps()
    {
        using var line = Begun();
        Assert.Equal(Exit.Done, line.Type("describe"));
        Assert.Contains("[not recorded] Material", line.Out, StringComparison.Ordinal);
        Assert.Contains("metal              Pb", line.Out, StringComparison.Ordinal);
        Assert.Contains("volume: holdfast set \"volume=… mL\"", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type("describe", "metal=unobtainium"));
        Assert.Equal(Exit.NotUnderstood, line.Type("describe", "shade=green"));
        Assert.Equal(Exit.Done, line.Type("describe", "metal=Kupfer", "material=beads (invented)", "title=copper on beads"));
        line.Type("describe");
        Assert.Contains("metal              Cu", line.Out, StringComparison.Ordinal);
        Assert.Contains("title              copper on beads", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type("describe", "metal=copper"));
        Assert.Equal(Exit.Done, line.Type("undo"));
        line.Type("describe");
        Assert.Contains("metal              Pb", line.Out, StringComparison.Ordinal);
        Assert.Contains("[not recorded] Material", line.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Begin_WithTheMetalByName_KeepsItsSymbol()
    {
        using var line = new Typed();
        Assert.Equal(Exit.NotUnderstood, line.Type("begin", "odd", "--analyte", "unobtainium"));
        Assert.Equal(Exit.Done, line.Type("begin", "study", "--analyte", "plomb"));
        line.Folder = Path.Combine(line.Folder, "study");
        line.Type("describe");
        Assert.Contains("metal              Pb", line.Out, StringComparison.Ordinal);
    }

    private static Typed Begun()
    {
        var line = new Typed();
        line.Begin();
        Assert.Equal(Exit.Done, line.Type("take", line.File("vessels.csv", Vessels)));
        return line;
    }

    private static string Plain(Typed line, string table) => File.ReadAllText(Path.Combine(line.Folder, "plain", table + ".csv"));

    private static string Cell(Typed line, string code, string column)
    {
        var rows = Plain(line, "samples").TrimEnd().Split('\n').Select(r => r.Split(',')).ToArray();
        var at = Array.FindIndex(rows[0], h => string.Equals(h.Trim(), column, StringComparison.OrdinalIgnoreCase));
        return at < 0 ? "" : rows.Single(r => r[0] == code)[at].Trim();
    }
}
