namespace Holdfast.Cli.Tests;

/// <summary>Every documented exit code is produced by a scripted case, and what a tired student types ends in a plain message.</summary>
public class ExitTests
{
    private const string Vessels = "sample,m (mg),V (mL),C0 (mg/L),t (min)\nV-1,20,25,40,60\nV-2,20,25,40,60\n";

    [Fact]
    public void NoWords_ShowsExamples()
    {
        using var line = new Typed();
        Assert.Equal(Exit.Done, line.Type());
        Assert.Contains("holdfast demo", line.Out, StringComparison.Ordinal);
    }

    // A bare system has no list of its users, a container may run under a number that no list holds.
    [Fact]
    public void Author_WhereTheSystemNamesNobody_IsSaidToBeUnnamed()
    {
        Assert.Equal("M. Example", Door.Author("M. Example", () => "login"));
        Assert.Equal("login", Door.Author("", () => "login"));
        Assert.Equal("author not named", Door.Author(null, () => ""));
        Assert.Equal("author not named", Door.Author(null, () => throw new IOException("no list")));
    }

    [Fact]
    public void Overview_NamesEveryVerb()
    {
        using var line = new Typed();
        line.Type("--help");
        foreach (var verb in new[] { "demo", "begin", "take", "list", "strike", "restore", "undo", "redo", "reduce", "fit", "trail", "defend", "write", "inspect" })
            Assert.Contains("  " + verb, line.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void VerbHelp_FitsAScreenAndShowsExitCodes()
    {
        using var line = new Typed();
        foreach (var verb in CommandLine.Verbs)
        {
            var name = verb.Command(new Door(TextWriter.Null, TextWriter.Null, TimeProvider.System, "", "", false)).Name;
            Assert.Equal(Exit.Done, line.Type(name, "-h"));
            Assert.InRange(line.Out.Split('\n').Length, 4, 24);
            Assert.Contains("exit 0 done", line.Out, StringComparison.Ordinal);
            Assert.Equal(2, verb.Examples.Count);
        }
    }

    [Theory, InlineData("defen", "Did you mean defend?"), InlineData("tak", "Did you mean take?"), InlineData("xyzzyq", "Verbs:")]
    public void UnknownVerb_IsNotUnderstood(string word, string says)
    {
        using var line = new Typed();
        Assert.Equal(Exit.NotUnderstood, line.Type(word));
        Assert.Contains(says, line.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void UnknownOption_IsNotUnderstood()
    {
        using var line = new Typed();
        line.Begin();
        Assert.Equal(Exit.NotUnderstood, line.Type("list", "--nonsense"));
        Assert.Contains("--nonsense", line.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Demo_Defended_ExitsContradicted()
    {
        using var line = new Typed();
        line.Type("demo");
        line.Folder = Path.Combine(line.Folder, "holdfast-demo");
        Assert.Equal(Exit.Contradicted, line.Type("defend"));
        Assert.Equal(Exit.NotShownYet, line.Type("defend", "monolayer"));
        Assert.Equal(Exit.Done, line.Type("defend", "linear-calibration-aas-run1-2-mg-l"));
        Assert.Equal(Exit.NoSuchThing, line.Type("defend", "no-such-claim"));
    }

    [Fact]
    public void NotAStudy_IsNamed()
    {
        using var line = new Typed();
        Assert.Equal(Exit.NoSuchThing, line.Type("defend"));
        Assert.Contains("HF-434", line.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Strike_WithoutReason_KeepsNothing()
    {
        using var line = new Typed();
        line.Begin();
        line.Type("take", line.File("vessels.csv", Vessels));
        Assert.Equal(Exit.NeedsDecision, line.Type("strike", "V-1"));
        Assert.Contains("Say why V-1 is struck", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NoSuchThing, line.Type("strike", "V-99", "--because", "no such vial"));
    }

    [Fact]
    public void FlippedByte_IsFoundAndNothingIsComputed()
    {
        using var line = new Typed();
        line.Begin();
        line.Type("take", line.File("vessels.csv", Vessels));
        var database = Path.Combine(line.Folder, "study.db");
        var bytes = File.ReadAllBytes(database);
        var at = bytes.AsSpan().IndexOf("V-1"u8);
        Assert.True(at > 0);
        bytes[at + 2] = (byte)'7';
        File.WriteAllBytes(database, bytes);
        Assert.Equal(Exit.Storage, line.Type("inspect"));
        Assert.Equal(Exit.Storage, line.Type("defend"));
        Assert.Contains("HF-432", line.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void OpenElsewhere_IsNamed()
    {
        using var line = new Typed();
        line.Begin();
        line.Type("take", line.File("vessels.csv", Vessels));
        using (Studies.Store.StudyFolder.Open(line.Folder, TimeProvider.System))
            Assert.Equal(Exit.ChangedOrSealed, line.Type("strike", "V-1", "--because", "two at once"));
        Assert.Equal(Exit.Done, line.Type("strike", "V-1", "--because", "now alone"));
    }

    [Theory]
    [InlineData("", "HF-406")]
    [InlineData("sample,m (mg),V (mL),C0 (mg/L)\nV-1,-20,25,40\n", "HF-408")]
    [InlineData("\u0000\u0001\u0002\u0003", "HF-406")]
    public void BadFile_IsRefusedByNameAndNothingIsKept(string text, string code)
    {
        using var line = new Typed();
        line.Begin();
        Assert.Equal(Exit.NeedsDecision, line.Type("take", line.File("bad.csv", text)));
        Assert.Contains(code, line.Error, StringComparison.Ordinal);
        line.Type("list", "daybook");
        Assert.DoesNotContain("take", line.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void LargeFile_IsRefusedByItsSize()
    {
        using var line = new Typed();
        line.Begin();
        var path = Path.Combine(line.Folder, "big.csv");
        using (var file = File.Create(path))
            file.SetLength(100L << 20);
        Assert.Equal(Exit.NeedsDecision, line.Type("take", path));
        Assert.Contains("HF-407", line.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void SameFileTwice_IsNamedAsTakenAlready()
    {
        using var line = new Typed();
        line.Begin();
        var path = line.File("vessels.csv", Vessels);
        Assert.Equal(Exit.Done, line.Type("take", path));
        Assert.Equal(Exit.NeedsDecision, line.Type("take", path));
        Assert.Contains("HF-405", line.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Rehearsal_KeepsNothing()
    {
        using var line = new Typed();
        line.Begin();
        Assert.Equal(Exit.Done, line.Type("take", line.File("vessels.csv", Vessels), "--rehearse"));
        Assert.Contains("nothing was kept", line.Out, StringComparison.Ordinal);
        line.Type("list");
        Assert.DoesNotContain("V-1", line.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("t (min),q (mg/g)\n5,1\n10,2\n")]
    [InlineData("t (min),q (mg/g)\n5,3\n10,3\n20,3\n40,3\n")]
    [InlineData("nothing here\n")]
    public void Fit_OfHopelessPoints_SaysSoInsteadOfANumber(string text)
    {
        using var line = new Typed();
        Assert.Equal(Exit.NeedsDecision, line.Type("fit", "kinetics", line.File("points.csv", text)));
        Assert.NotEmpty(line.Error);
    }

    // Puromycin, treated (Bates and Watts 1988, published 212.7 and 0.0641): the Langmuir curve with qm = Vm and K = 1/Km = 15.6.
    [Fact]
    public void Fit_OfPublishedPoints_GivesThePublishedParameters()
    {
        using var line = new Typed();
        var path = line.File("puromycin.csv", "Ce (mg/L),q (mg/g)\n0.02,76\n0.02,47\n0.06,97\n0.06,107\n0.11,123\n0.11,139\n0.22,159\n0.22,152\n0.56,191\n0.56,201\n1.1,207\n1.1,200\n");
        Assert.Equal(Exit.Done, line.Type("fit", "isotherm", path));
        Assert.Contains("Langmuir", line.Out, StringComparison.Ordinal);
        Assert.Contains("212.7 ± 6.9", line.Out, StringComparison.Ordinal);
        Assert.Contains("15.6", line.Out, StringComparison.Ordinal);
    }

    // reference/measurement/fluorescence-expected.csv, accessible-noisy: fa 0.7009 (0.0097), Ka 0.03012 (scipy 1.10.1, R 4.2.2).
    [Fact]
    public void Fit_OfQuenchingPoints_GivesTheComputedParameters()
    {
        using var line = new Typed();
        var path = line.File("signals.csv", "Q (µmol/L),F (a.u.)\n0,1004\n2,954.62\n5,915.06\n10,836.78\n15,786.67\n20,732.34\n30,669.76\n40,615.71\n60,553.3\n80,503.35\n");
        Assert.Equal(Exit.Done, line.Type("fit", "quenching", path));
        Assert.Contains("0.7009 ± 0.0097", line.Out, StringComparison.Ordinal);
        Assert.Contains("Accessible fraction has the lowest AICc", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type("fit", "quenching", line.File("dark.csv", "Q (µmol/L),F (a.u.)\n0,10\n2,-1\n5,-2\n10,-3\n")));
        Assert.Contains("HF-571", line.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void CeAboveC0_IsAskedAboutKeptAsMeasuredAndFlagged()
    {
        using var line = new Typed();
        line.Begin();
        var file = line.File("v.csv", "sample,m (mg),V (mL),C0 (mg/L),Ce (mg/L)\nV-1,20,25,40,50\n");
        Assert.Equal(Exit.NeedsDecision, line.Type("take", file));
        Assert.Contains("above-start", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("take", file, "--answer", "above-start=keep"));
        line.Type("reduce");
        Assert.Contains("−12.5", line.Out, StringComparison.Ordinal);
        Assert.Contains("more solute at the end", line.Error, StringComparison.Ordinal);
    }
}
