using System.Text;
using Holdfast.Studies;
using Holdfast.Studies.Import;

namespace Holdfast.Claims.Tests.Comparisons;

/// <summary>Published uptakes from a table: units converted, the balance closed, and every row that is not used said.</summary>
public class PublishedTableTests
{
    private const string Head = "sorbent,metal,Ce (mg/L),q (mg/g),u (mg/g),C0 (mg/L),dose (g/L),pH,T (°C),water,source,read\n";

    [Fact]
    public void Row_WithEverything_IsReadInTheUnitsOfTheHouse()
    {
        var read = Read(Head.Replace("Ce (mg/L)", "Ce (µg/L)", StringComparison.Ordinal) + "clay X,nickel,5000,8,0.2,21,2,6,25,tap water,handbook Y 2020,table 2\n");
        Assert.Equal(new PublishedUptake("clay X", "Ni", 5, 8, 0.2, 21, 2, 6, 298.15, "tap water", "handbook Y 2020", "table 2"), Assert.Single(read.Value!));
        Assert.Empty(read.Findings);
    }

    // C0 − D·q = 21 − 2·8 (by hand).
    [Fact]
    public void Row_WithoutCe_GetsItFromTheMassBalance()
        => Assert.Equal(5, Assert.Single(Read(Head + "clay X,Ni,,8,,21,2,,,,handbook Y 2020,\n").Value!).Left, 12);

    // Ce + D·q = 21 against C0: 5 % of C0 is the limit, so that 22.1 passes and 22.2 does not.
    [Theory, InlineData("22.1", false), InlineData("22.2", true)]
    public void Row_ThatContradictsItself_IsSaid(string start, bool said)
        => Assert.Equal(said, Read(Head + $"clay X,Ni,5,8,,{start},2,,,,handbook Y 2020,\n").Findings.Any(f => f.Code == PublishedTable.OpenBalance));

    [Theory]
    [InlineData("clay X,Ni,5,8,,,,,,,,\n", "names no source")]
    [InlineData("clay X,Ni,5,,,,,,,,Y,\n", "no q above 0")]
    [InlineData("clay X,Ni,,8,,21,,,,,Y,\n", "neither Ce nor both")]
    [InlineData("clay X,Ni,\"5,2\",8,,,,,,,Y,\n", "no number with a decimal point")]
    [InlineData(",Ni,5,8,,,,,,,Y,\n", "no sorbent")]
    [InlineData("clay X,Ni,5,8,0,,,,,,Y,\n", "above 0, or empty")]
    public void Row_ThatCannotBeUsed_IsLeftOutAndSaid(string row, string says)
    {
        var read = Read(Head + row);
        Assert.Empty(read.Value!);
        Assert.Contains(says, Assert.Single(read.Findings).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Column_ThatNobodyKnowsOrHasNoUnit_IsSaid()
    {
        var read = Read("sorbent,metal,Ce,q (mg/g),source,qm (mg/g)\nclay X,Ni,5,8,Y,20\n");
        Assert.Equal(3, read.Findings.Count);
        Assert.Empty(read.Value!);
        Assert.Contains(read.Findings, f => f.Sentence.Contains("qm", StringComparison.Ordinal));
    }

    private static Outcome<IReadOnlyList<PublishedUptake>> Read(string text) => PublishedTable.Read(new("published.csv", Encoding.UTF8.GetBytes(text)));
}
