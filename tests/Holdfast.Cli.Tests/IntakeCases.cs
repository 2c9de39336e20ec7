using Holdfast.Claims.Analyses;
using Holdfast.Studies.Properties;
using Holdfast.Studies.Store;
using Holdfast.Testing;

namespace Holdfast.Cli.Tests;

/// <summary>Files as people really have them (the folder "intake" of HOLDFAST_REFERENCE), held against their true quantities.</summary>
public class IntakeCases
{
    /// <summary>Names of the cases.</summary>
    public static TheoryData<string> Cases => [.. TrueCase.Names];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Case_Unanswered_IsRightOrAsks_AndNeverSilentlyWrong(string name)
    {
        var given = TrueCase.Of(name);
        using var line = Begin(given);
        var exit = line.Type(["take", .. given.Files]);
        Assert.Equal(given.IsUnderstood ? Exit.Done : Exit.NeedsDecision, exit);
        var wrong = given.Wrong(Rows(line), answered: false);
        if (exit == Exit.Done)
            Assert.True(wrong.Count == 0, string.Join("\n", wrong));
        else
            Assert.Contains("answer with --answer", line.Error, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Case_AskedAndAnswered_GivesTheTrueQuantities(string name)
    {
        var given = TrueCase.Of(name);
        using var line = Begin(given);
        // The likeliest answer stands first; in the traps of these cases it is the true one.
        line.Answers = string.Concat(Enumerable.Repeat("1\n", 20));
        Assert.Equal(Exit.Done, line.Type(["take", "--ask", .. given.Files]));
        var wrong = given.Wrong(Rows(line), answered: true);
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    private static Typed Begin(TrueCase given)
    {
        var line = new Typed();
        Assert.Equal(Exit.Done, line.Type("begin", "study", "--analyte", given.Analyte));
        line.Folder = Path.Combine(line.Folder, "study");
        return line;
    }

    private static IReadOnlyList<TrueRow> Rows(Typed line)
    {
        using var study = StudyFolder.OpenToRead(line.Folder);
        return [.. Evidence.Of(study.Study).Vessels.Where(v => !v.IsStruck).Select(v => new TrueRow(
            v.Code, v.Sample.Series ?? "", v.End is { IsBelowDetection: false, Value: { } left } ? left.Value : null, v.Removal?.Value, v.Uptake?.Value, v.Sample.Number(BatchProperties.ContactTime)))];
    }
}
