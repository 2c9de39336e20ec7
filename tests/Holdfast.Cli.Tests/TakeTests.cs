using System.Text.Json;
using Holdfast.Testing;

namespace Holdfast.Cli.Tests;

/// <summary>The conversation about a file in the terminal: what is said, asked, answered, kept and left out. Invented files.</summary>
public class TakeTests
{
    private const string WithoutUnit = "sample,mass,V (mL),C0 (mg/L),Ce (mg/L),lamp,spare\nV-1,20.1,25,40,10,1,x\nV-2,20.2,25,40,12,1,y\nAverage,20.2,25,40,11,,\n";

    [Fact]
    public void Json_OfAFileThatAsks_HoldsTheWholeUnderstanding_AndFitsItsSchema()
    {
        using var line = new Typed();
        line.Begin();
        line.File("own.csv", WithoutUnit);
        Assert.Equal(Exit.NeedsDecision, line.Type("take", "own.csv", "--as", "json"));
        using var schema = JsonDocument.Parse(File.ReadAllText(Repository.Path("docs", "take.schema.json")));
        using var told = JsonDocument.Parse(line.Out);
        Assert.Empty(JsonSchema.Faults(schema.RootElement, told.RootElement));
        var file = told.RootElement.GetProperty("files")[0];
        Assert.Equal(JsonValueKind.Null, told.RootElement.GetProperty("entry").ValueKind);
        var question = Assert.Single(file.GetProperty("questions").EnumerateArray(), q => q.GetProperty("open").GetBoolean());
        Assert.Equal("unit:mass", question.GetProperty("id").GetString());
        var arguments = question.GetProperty("choices")[0].GetProperty("arguments").EnumerateArray().Select(a => a.GetString()!).ToArray();

        // The arguments that stand ready are the answer.
        Assert.Equal(Exit.Done, line.Type(["take", "own.csv", "--as", "json", .. arguments]));
        using var kept = JsonDocument.Parse(line.Out);
        Assert.Empty(JsonSchema.Faults(schema.RootElement, kept.RootElement));
        Assert.Equal(2, kept.RootElement.GetProperty("entry").GetInt32());
        // q = (40 - 10) mg/L · 0.025 L / 0.0201 g, by hand.
        Assert.Equal(37.31, kept.RootElement.GetProperty("quantities")[0].GetProperty("q").GetProperty("value").GetDouble(), 2);
        Assert.Contains(kept.RootElement.GetProperty("files")[0].GetProperty("not_used").EnumerateArray(), n => n.GetString()!.Contains("spare", StringComparison.Ordinal));
    }

    [Fact]
    public void Json_WithAMemberThatIsNotForeseen_IsFoundByTheSchema()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(Repository.Path("docs", "take.schema.json")));
        using var other = JsonDocument.Parse("""{"schema":"holdfast/1","rehearsal":"no","entry":null,"files":[],"quantities":[{"sample":"V-1"}],"fits":[],"surprise":1}""");
        var faults = JsonSchema.Faults(schema.RootElement, other.RootElement);
        Assert.Contains(faults, f => f.Contains("surprise", StringComparison.Ordinal));
        Assert.Contains(faults, f => f.Contains("$.rehearsal", StringComparison.Ordinal));
        Assert.Contains(faults, f => f.Contains("$.quantities[0] has no q", StringComparison.Ordinal));
    }

    [Fact]
    public void OpenQuestion_InTheTerminal_ComesWithLinesThatAreReadyToType()
    {
        using var line = new Typed();
        line.Begin();
        line.File("own.csv", WithoutUnit);
        Assert.Equal(Exit.NeedsDecision, line.Type("take", "own.csv"));
        Assert.Contains("answer with --answer \"unit:mass=mg\"", line.Error, StringComparison.Ordinal);
        Assert.Contains("or --answer \"unit:mass=g\"", line.Error, StringComparison.Ordinal);
        Assert.Contains("holdfast take own.csv --answer \"unit:mass=mg\"", line.Error, StringComparison.Ordinal);
        Assert.Contains("--answer \"column:", line.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1\n", Exit.Done)]
    [InlineData("mg\n", Exit.Done)]
    [InlineData("", Exit.NeedsDecision)]
    [InlineData("furlong\n", Exit.NeedsDecision)]
    public void Ask_WithAnswersLineByLine_KeepsOnceEverythingIsAnswered(string answers, int exit)
    {
        using var line = new Typed();
        line.Begin();
        line.File("own.csv", WithoutUnit);
        line.Answers = answers;
        Assert.Equal(exit, line.Type("take", "own.csv", "--ask"));
        Assert.Contains("Which unit is it?", line.Error, StringComparison.Ordinal);
        if (exit != Exit.Done)
            return;
        Assert.Contains("column", line.Out, StringComparison.Ordinal);
        Assert.Contains("1 row left out", line.Out, StringComparison.Ordinal);
        Assert.Contains("V-1: C0 40", line.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Taken_WithManyVessels_PrintsSixLinesOfQuantitiesAtMost()
    {
        using var line = new Typed();
        line.Begin();
        line.File("many.csv", "sample,m (mg),V (mL),C0 (mg/L),Ce (mg/L)\n" + string.Concat(Enumerable.Range(1, 40).Select(i => FormattableString.Invariant($"V-{i},20,25,{i * 5},{i}\n"))));
        Assert.Equal(Exit.Done, line.Type("take", "many.csv"));
        var lines = line.Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(6, lines.Length - Array.FindIndex(lines, l => l.StartsWith("Kept", StringComparison.Ordinal)) - 1);
        Assert.Contains("40 vessels in all", line.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("empty.csv", "")]
    [InlineData("letter.txt", "Dear all\nthe stopper leaked\n")]
    [InlineData("odd.csv", "Run,colour\nA,red\nB,blue\n")]
    public void NothingKept_AlwaysSaysWhy(string name, string text)
    {
        using var line = new Typed();
        line.Begin();
        line.File(name, text);
        Assert.Equal(Exit.NeedsDecision, line.Type("take", name));
        var last = line.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries)[^1];
        Assert.StartsWith("Nothing was kept: ", last, StringComparison.Ordinal);
        Assert.DoesNotContain("see above", last, StringComparison.Ordinal);
        Assert.True(last.Length > 40, last);
    }

    [Fact]
    public void Layout_AnsweredOnce_IsListedAndCanBeForgotten()
    {
        using var line = new Typed();
        line.Begin();
        line.File("one.csv", WithoutUnit);
        line.File("two.csv", WithoutUnit.Replace("V-", "W-", StringComparison.Ordinal));
        line.File("three.csv", WithoutUnit.Replace("V-", "X-", StringComparison.Ordinal));
        Assert.Equal(Exit.Done, line.Type("take", "one.csv", "--answer", "unit:mass=mg"));
        Assert.Equal(Exit.Done, line.Type("take", "two.csv"));
        Assert.Contains("as answered for an earlier file of this layout", line.Error, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("layouts"));
        Assert.Contains("unit of mass", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.NoSuchThing, line.Type("layouts", "--forget", "2"));
        Assert.Equal(Exit.Done, line.Type("layouts", "--forget", "1"));
        Assert.Equal(Exit.NeedsDecision, line.Type("take", "three.csv"));
        Assert.Equal(Exit.Done, line.Type("undo"));
        Assert.Equal(Exit.Done, line.Type("take", "three.csv"));
    }

    [Fact]
    public void Meanings_AreListedWithoutAStudy_AndOneOfThemIsAnAnswer()
    {
        using var line = new Typed();
        Assert.Equal(Exit.Done, line.Type("list", "meanings", "--as", "csv"));
        Assert.Contains("\nmass,", line.Out, StringComparison.Ordinal);
        line.Begin();
        line.File("own.csv", "sample,heap (mg),V (mL),C0 (mg/L),Ce (mg/L)\nV-1,20.1,25,40,10\n");
        Assert.Equal(Exit.Done, line.Type("take", "own.csv", "--answer", "column:heap=mass"));
        Assert.Contains("q 37.3", line.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Role_OfANewSample_CanBeAnswered()
    {
        using var line = new Typed();
        line.Begin();
        line.File("own.csv", "sample,m (mg),V (mL),C0 (mg/L),Ce (mg/L)\nV-1,20,25,40,10\nV-2,20,25,40,11\n");
        Assert.Equal(Exit.Done, line.Type("take", "own.csv", "--answer", "role-of:V-2=leave-out"));
        Assert.DoesNotContain("V-2:", line.Out, StringComparison.Ordinal);
        Assert.Contains("1 row left out", line.Out, StringComparison.Ordinal);
        Assert.Equal(Exit.Done, line.Type("undo"));
        Assert.Equal(Exit.Done, line.Type("take", "own.csv", "--answer", "role-of:V-2=control"));
        Assert.Equal(Exit.Done, line.Type("list", "samples", "--as", "csv"));
        Assert.Contains("V-2", line.Out.Split('\n').Single(l => l.Contains("control", StringComparison.Ordinal)), StringComparison.Ordinal);
    }
}
