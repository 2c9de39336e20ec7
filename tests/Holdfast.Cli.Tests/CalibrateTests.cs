namespace Holdfast.Cli.Tests;

/// <summary>A run that is read on another's calibration, and what is said where an uptake is missing.</summary>
public class CalibrateTests
{
    private const string Vessels = "sample,series,m (mg),V (mL),C0 (mg/L),t (min)\nV-1,KIN,20,25,20,10\nV-2,KIN,20,25,20,30\nV-3,KIN,20,25,20,60\nV-4,KIN,20,25,20,120\n";

    // Invented: absorbance 0.05 for each mg/L, so that 0.5 is 10 mg/L and q = (20 − 10)·25/20 = 12.5 mg/g, by hand.
    private const string Standards = "sample,role,standard (mg/L),Abs\nS0,standard,0,0.000\nS1,standard,4,0.200\nS2,standard,8,0.400\nS3,standard,16,0.800\nS4,standard,20,1.000\n";
    private const string Steeper = "sample,role,standard (mg/L),Abs\nT0,standard,0,0.000\nT1,standard,4,0.400\nT2,standard,8,0.800\nT3,standard,12,1.200\n";
    private const string Read = "sample,Abs\nV-1,0.700\nV-2,0.600\nV-3,0.500\nV-4,0.500\n";

    [Fact]
    public void Uptake_OfARunWithoutCalibration_IsMissingWithTheActThatGivesIt()
    {
        using var line = Begun();
        Assert.Equal(Exit.Done, line.Type("take", line.File("first.csv", Standards), line.File("steep.csv", Steeper), line.File("later.csv", Read)));
        line.Type("reduce");
        Assert.Contains("No uptake of V-1, V-2, V-3 and V-4: run later has no calibration. Use the one of first or steep.", line.Error, StringComparison.Ordinal);
        Assert.Contains("holdfast calibrate later --by first", line.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("HF-469", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NoSuchThing, line.Type("trail", "q:V-3"));
        Assert.Contains("run later has no calibration", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type("fit", "kinetics"));
        Assert.Contains("run later has no calibration", line.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("cannot determine", line.Out + line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("write", "--html", "report.html"));
        Assert.Contains("run later has no calibration. Use the one of first or steep. (page Readings, run later, or holdfast calibrate later --by first)",
            File.ReadAllText(Path.Combine(line.Folder, "report.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void Calibration_OfAnotherRun_IsChosenRehearsedAndUndone()
    {
        using var line = Begun();
        line.Type("take", line.File("first.csv", Standards), line.File("steep.csv", Steeper), line.File("later.csv", Read));
        Assert.Equal(Exit.Done, line.Type("calibrate", "later", "--by", "first", "--rehearse"));
        Assert.Contains("12.5 mg/g", line.Out.Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("calibrate"));
        Assert.Contains("later: none", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("calibrate", "LATER", "--by", "first"));
        Assert.Equal(12.5, Uptake(line), 6);
        Assert.Equal(Exit.NeedsDecision, line.Type("calibrate", "later", "--by", "first"));
        // The steeper line halves the concentration: q = (20 − 5)·25/20.
        Assert.Equal(Exit.Done, line.Type("calibrate", "later", "--by", "steep"));
        Assert.Equal(18.75, Uptake(line), 6);
        line.Type("calibrate");
        Assert.Contains("later: the calibration of steep, chosen", line.Out, StringComparison.Ordinal);
        line.Type("undo");
        Assert.Equal(12.5, Uptake(line), 6);
        Assert.Equal(Exit.Done, line.Type("calibrate", "later", "--own"));
        line.Type("calibrate");
        Assert.Contains("later: none", line.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Calibration_OfARunThatHasOne_MayBeReplaced()
    {
        using var line = Begun();
        line.Type("take", line.File("first.csv", Standards + "V-3,vessel,,0.500\n"), line.File("steep.csv", Steeper));
        Assert.Equal(12.5, Uptake(line), 6);
        Assert.Equal(Exit.Done, line.Type("calibrate", "first", "--by", "steep", "--because", "its lamp drifted"));
        Assert.Equal(18.75, Uptake(line), 6);
    }

    [Theory]
    [InlineData("nowhere", "first", Exit.NoSuchThing, "HF-404")]
    [InlineData("first", "later", Exit.NeedsDecision, "later has no calibration of its own. Runs that have one: steep.")]
    [InlineData("later", "later", Exit.NeedsDecision, "that run itself")]
    public void Calibration_ThatCannotBeUsed_IsRefusedAndNamed(string run, string by, int exit, string says)
    {
        using var line = Begun();
        line.Type("take", line.File("first.csv", Standards), line.File("steep.csv", Steeper), line.File("later.csv", Read));
        Assert.Equal(exit, line.Type("calibrate", run, "--by", by));
        Assert.Contains(says, line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NotUnderstood, line.Type("calibrate", "later"));
    }

    [Fact]
    public void Amounts_NotRecorded_AreNamedWithTheirVessels()
    {
        using var line = new Typed();
        line.Begin();
        line.Type("take", line.File("vessels.csv", "sample,m (mg),C0 (mg/L),t (min)\nV-1,20,20,10\nV-2,20,20,30\n"), line.File("first.csv", Standards + "V-1,vessel,,0.700\n"));
        line.Type("reduce");
        Assert.Contains("No uptake of V-1 and V-2: the volume is not recorded.", line.Error, StringComparison.Ordinal);
        Assert.Contains("holdfast set \"volume=… mL\" --samples V-1,V-2", line.Error, StringComparison.Ordinal);
        Assert.Contains("No uptake of V-2: no reading names it.", line.Error, StringComparison.Ordinal);
    }

    private static Typed Begun()
    {
        var line = new Typed();
        line.Begin();
        Assert.Equal(Exit.Done, line.Type("take", line.File("vessels.csv", Vessels)));
        return line;
    }

    private static double Uptake(Typed line)
    {
        line.Type("reduce", "--as", "json", "--quiet");
        using var json = System.Text.Json.JsonDocument.Parse(line.Out);
        return json.RootElement.GetProperty("rows").EnumerateArray().Single(r => r.GetProperty("sample").GetString() == "V-3").GetProperty("q").GetProperty("value").GetDouble();
    }
}
