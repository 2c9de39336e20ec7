namespace Holdfast.Cli.Tests;

/// <summary>Claims, margins and the Plan from the command line: the same entries as from the browser.</summary>
public class PlanTests
{
    [Fact]
    public void Plan_OfAClaim_IsListedDoneAndUndone()
    {
        using var line = new Typed();
        line.Type("demo");
        line.Folder = Path.Combine(line.Folder, "holdfast-demo");
        Assert.Equal(Exit.NeedsDecision, line.Type("defend", "--plan"));
        Assert.Equal(Exit.Done, line.Type("defend", "monolayer", "--plan"));
        var id = line.Out.Split(' ')[0];
        Assert.StartsWith("P-", id, StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type("defend", "monolayer", "--plan"));
        Assert.Contains("HF-425", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("plan"));
        Assert.Contains("to do", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("plan", "--done", id));
        Assert.Contains("done 2 Mar 2026", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("undo"));
        Assert.Equal(Exit.Done, line.Type("plan", "--withdraw", id, "--because", "no vessels left"));
        Assert.Contains("Nothing is planned", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.NoSuchThing, line.Type("plan", "--done", "P-999"));
    }

    [Fact]
    public void Design_ShownKeptFrozenAndAmended_IsWhatTheHistorySays()
    {
        using var line = new Typed();
        line.Type("begin", "ni", "--analyte", "Ni");
        line.Folder = Path.Combine(line.Folder, "ni");
        Assert.Equal(Exit.NeedsDecision, line.Type("plan", "design"));
        Assert.Contains("Say what you want to show", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type("plan", "design", "--show", "capacity", "--suppose", "capacity"));
        Assert.Equal(Exit.NeedsDecision, line.Type("plan", "design", "--show", "capacity", "--salt", "Xx2"));
        Assert.Equal(Exit.NeedsDecision, line.Type("plan", "design", "--show", "capacity", "--seed", "x"));
        Assert.Equal(Exit.NeedsDecision, line.Type("plan", "design", "--show", "capacity", "--part", "nothing"));
        Assert.Contains("Choose among: shows", line.Error, StringComparison.Ordinal);

        // Nothing is kept without --keep, and the same seed gives the same rows with it.
        string[] design = ["plan", "design", "--show", "capacity", "--suppose", "highest=40 mg/L", "--seed", "1589", "--as", "csv"];
        Assert.Equal(Exit.Done, line.Type(design));
        var rows = line.Out;
        line.Type("plan");
        Assert.Contains("Nothing is planned", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type([.. design, "--keep"]));
        Assert.Equal(rows, line.Out);
        Assert.Equal(Exit.Done, line.Type("list"));
        Assert.Contains("26-ISO-0001-0", line.Out, StringComparison.Ordinal);
        line.Type("list", "daybook");
        Assert.Contains("vessels for capacity", line.Out, StringComparison.Ordinal);

        // Its warnings are answered before it is frozen; margins change only with a reason from then on.
        Assert.Equal(Exit.ChangedOrSealed, line.Type("plan", "freeze"));
        Assert.Contains("coverage-ISO", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("plan", "freeze", "--accept", "coverage-ISO=no more stock", "--accept", "power-capacity=a first look", "--accept", "ground-equilibrium=known of an earlier powder"));
        Assert.Contains("fingerprint", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.ChangedOrSealed, line.Type("margin", "capacity", "--from", "-20", "--to", "20"));
        Assert.Equal(Exit.ChangedOrSealed, line.Type([.. design, "--keep"]));
        Assert.Equal(Exit.Done, line.Type("margin", "capacity", "--from", "-20", "--to", "20", "--because", "asked by the examiner"));
        Assert.Equal(Exit.Done, line.Type("plan"));
        Assert.Contains("asked by the examiner", line.Out, StringComparison.Ordinal);
        Assert.Contains("to do", line.Out, StringComparison.Ordinal);

        // What is done stands beside what was planned, with the deviation; a reading arrives on its planned row.
        Assert.Equal(Exit.NeedsDecision, line.Type("correct", "26-ISO-0002-Y", "mass=70"));
        Assert.Contains("planned as 50 mg", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("correct", "26-ISO-0002-Y", "mass=70", "--sure"));
        Assert.Equal(Exit.Done, line.Type("plan"));
        Assert.Contains("70 mg weighed for 50 mg", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("inspect"));
    }

    [Fact]
    public void Claim_StatedWordedAnewAndWithdrawn_IsJudgedInBetween()
    {
        using var line = new Typed();
        line.Begin();
        Assert.Equal(Exit.Done, line.Type("claim"));
        Assert.Contains("equilibrium-reached", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type("claim", "equilibrium-reached", "time=soon"));
        Assert.Contains("Write it like 120 min", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NotUnderstood, line.Type("claim", "equilibrium-reached", "120 min"));
        Assert.Equal(Exit.Done, line.Type("claim", "equilibrium-reached", "time=2 h", "--words", "Two hours are enough."));
        Assert.Equal(Exit.NotShownYet, line.Type("defend", "equilibrium-reached-2-h", "--brief"));
        Assert.Contains("Two hours are enough.", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("claim", "equilibrium-reached", "time=3 h", "--id", "equilibrium-reached-2-h"));
        Assert.Equal(Exit.Done, line.Type("claim", "--withdraw", "equilibrium-reached-2-h", "--because", "not asked any more"));
        Assert.Equal(Exit.NoSuchThing, line.Type("defend", "equilibrium-reached-2-h"));
        Assert.Equal(Exit.NoSuchThing, line.Type("claim", "--withdraw", "equilibrium-reached-2-h"));
    }

    [Fact]
    public void Margin_Fixed_IsListedAsFixed()
    {
        using var line = new Typed();
        line.Begin();
        Assert.Equal(Exit.NeedsDecision, line.Type("margin", "plateau", "--from", "3", "--to", "-3"));
        Assert.Equal(Exit.Done, line.Type("margin", "plateau", "--from", "-3", "--to", "3"));
        Assert.Equal(Exit.Done, line.Type("margin"));
        Assert.Contains("plateau         -3 to 3 % (fixed, entry 2)", line.Out.Replace('\u2212', '-').Replace('\u00a0', ' '), StringComparison.Ordinal);
        Assert.Contains("removal", line.Out, StringComparison.Ordinal);
    }

    // 5.00 g at full yield take 11.27, 0.434 and 3.858 g (worked example, computed beforehand); five times the batch at 79 % takes 5/0.79 times as much.
    [Fact]
    public void Scale_OfABatch_TellsReagentsAndWhatDoesNotGrow()
    {
        using var line = new Typed();
        string[] reagents = ["--from", "Ca(NO3)2.4H2O=Ca", "--from", "Eu(NO3)3.6H2O=Eu", "--from", "(NH4)2HPO4=P"];
        Assert.Equal(Exit.Done, line.Type(["scale", "Ca9.8Eu0.2(PO4)6(OH)1.8O0.2", "--make", "5 g", .. reagents]));
        Assert.Contains("11.27", line.Out, StringComparison.Ordinal);
        Assert.Contains("3.858", line.Out, StringComparison.Ordinal);
        Assert.Contains("dry to constant mass", line.Out, StringComparison.Ordinal);
        Assert.Contains("supplier", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type(["scale", "Ca9.8Eu0.2(PO4)6(OH)1.8O0.2", "--make", "25g", "--was", "5g", "--yield", "79%", "--as", "csv", .. reagents]));
        Assert.Contains("71.3", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type("scale", "Ca10(PO4)6(OH)2", "--make", "5", "--from", "Ca(NO3)2=Ca"));
        Assert.Contains("for example 5 g", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type("scale", "Ca10(PO4)6(OH)2", "--make", "5 g", "--from", "NaCl=Ca"));
        Assert.Contains("not in both", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type("scale", "Ca10(PO4)6(OH)2", "--make", "5 g", "--from", "CaCO3=Ca", "--purity", "NaCl=99%"));
        Assert.Contains("no reagent of this recipe", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type("scale", "Ca10(PO4)6(OH)2", "--make", "5 g", "--from", "CaCO3"));
        Assert.Contains("write --from NAME=VALUE", line.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Design_TriedOut_SaysHowOftenAClaimHolds()
    {
        using var line = new Typed();
        line.Type("begin", "ni", "--analyte", "Ni");
        line.Folder = Path.Combine(line.Folder, "ni");
        string[] design = ["plan", "design", "--show", "not-precipitation", "--seed", "1589", "--part", "tried", "--as", "csv"];
        Assert.Equal(Exit.Done, line.Type([.. design, "--try", "40"]));
        var cells = line.Out.Split('\n').First(l => l.StartsWith("not-precipitation", StringComparison.Ordinal)).Split(',');
        Assert.InRange(double.Parse(cells[2], System.Globalization.CultureInfo.InvariantCulture), 70, 100);
        Assert.Equal(Exit.NeedsDecision, line.Type([.. design, "--try", "0"]));
        Assert.Contains("1 to 1000", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.NeedsDecision, line.Type(design));
    }
}
