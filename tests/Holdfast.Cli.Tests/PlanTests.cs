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
}
