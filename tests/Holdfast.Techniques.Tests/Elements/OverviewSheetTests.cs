using System.Collections.Immutable;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;
using Holdfast.Techniques.Elements;

namespace Holdfast.Techniques.Tests.Elements;

/// <summary>Invented workbooks with a sheet for each place and one that sums them up.</summary>
public class OverviewSheetTests
{
    private static readonly string[] Elements = ["O", "Nb", "Zr"];
    private static readonly double[][] Spots = [[66.1, 1.52, 32.38], [65.8, 1.61, 32.59], [66.4, 1.43, 32.17]];

    [Theory]
    [InlineData("Tabelle1", "", "66.1 1.52 32.38")]
    [InlineData("Summary", "", "66.1 1.5 32.4")]
    [InlineData("Tutto", "Medie dei tre punti", "66.10 1.52 32.38")]
    public void MeanOfTheSheets_IsNoPlace(string sheet, string title, string amounts)
    {
        var (draft, talk) = Read(sheet, title, amounts, Answers.None);
        Assert.Empty(draft.Measurements);
        Assert.DoesNotContain(talk.Questions, q => q.IsOpen);
        Assert.Contains(talk.Findings, f => f.Sentence.Contains(sheet, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Zestawienie", "80.1 1.1 18.8")]
    [InlineData("Tabelle1", "62.0 4.1 33.9")]
    public void OtherAmounts_AreAskedAbout(string sheet, string amounts)
    {
        var (draft, talk) = Read(sheet, "", amounts, Answers.None);
        Assert.Empty(draft.Measurements);
        var question = Assert.Single(talk.Questions, q => q.IsOpen);
        Assert.Contains(sheet, question.Text, StringComparison.Ordinal);
        Assert.Empty(Read(sheet, "", amounts, Answers.None.With(question.Id, question.Choices[0])).Draft.Measurements);
        Assert.Single(Read(sheet, "", amounts, Answers.None.With(question.Id, question.Choices[1])).Draft.Measurements);
    }

    [Fact]
    public void Places_AreKept()
    {
        var file = File("Summary", "", "66.1 1.52 32.38");
        var draft = new ElementFiles().Read(new(file[1], file, Reading.Empty, new("NZ-2.xlsx", Answers.None), "0"));
        Assert.Equal("Spot 1", Assert.Single(draft.Measurements).Column("spot")!.Words!.Value[0]);
    }

    private static (MeasurementDraft Draft, Dialogue Talk) Read(string sheet, string title, string amounts, Answers answers)
    {
        var file = File(sheet, title, amounts);
        var talk = new Dialogue("NZ-2.xlsx", answers);
        return (new ElementFiles().Read(new(file[0], file, Reading.Empty, talk, "0")), talk);
    }

    private static ImmutableArray<Grid> File(string sheet, string title, string amounts)
        => [Sheet(sheet, title, amounts.Split(' ')), .. Spots.Select((s, k) => Sheet($"Spot {k + 1}", $"NZ-2, spot {k + 1}", [.. s.Select(v => Made.Number(v, 2))]))];

    private static Grid Sheet(string name, string title, string[] amounts)
        => new(name, [new(1, [new(title)]), new(3, [new("Element"), new("atomic %")]), .. Elements.Select((e, i) => new GridRow(4 + i, [new(e), new(amounts[i], CellKind.Number)]))]);
}
