using System.Globalization;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Statistics;

public class SeededStreamTests
{
    private static readonly IReadOnlyList<ReferenceRow> Check =
        [.. ReferenceTable.Read("design", "demo-seed-1589-values.csv").Where(r => r["series"] == "CHECK")];

    // reference/design/demo-seed-1589-values.csv, rows CHECK: the same recipe in Python (numpy 1.24.2) and in a second language.
    [Fact]
    public void Hash_OfPurposeName_EqualsIndependentProgram()
        => Assert.Equal(ulong.Parse(Check.Single(r => r["quantity"] == "hash")["value"], CultureInfo.InvariantCulture), SeededStream.Hash("CHECK"));

    // FNV-1a-64 of "" is its offset basis and of "a" is af63dc4c8601ec8c (test vectors of the algorithm's authors; from memory).
    [Fact]
    public void Hash_OfShortTexts_EqualsTheAuthorsVectors()
    {
        Assert.Equal(0xcbf29ce484222325UL, SeededStream.Hash(""));
        Assert.Equal(0xaf63dc4c8601ec8cUL, SeededStream.Hash("a"));
    }

    [Theory, InlineData("u64"), InlineData("uniform"), InlineData("normal")]
    public void Draws_FromSeed1589_EqualIndependentProgram(string kind)
    {
        var stream = new SeededStream(1589, "CHECK");
        var rows = Check.Where(r => r["quantity"] == kind).ToList();
        Assert.Equal(3, rows.Count);
        foreach (var row in rows)
        {
            if (kind == "u64")
                Assert.Equal(ulong.Parse(row["value"], CultureInfo.InvariantCulture), stream.NextBits());
            else
                Agree.Relative(1e-9, row.Number("value"), kind == "uniform" ? stream.Uniform() : stream.Normal(), kind);
        }
    }

    // The whole invented calibration follows from the recipe: A = 0.0010 + 0.0615 c − 0.0010 c², sd √(0.0006² + (0.008 A)²).
    [Fact]
    public void Normal_ForTheInventedCalibration_GivesEveryReading()
    {
        var stream = new SeededStream(1589, "AAS-CAL");
        var rows = ReferenceTable.Read("design", "demo-seed-1589-values.csv").Where(r => r["series"] == "AAS-CAL").ToList();
        Assert.Equal(21, rows.Count);
        foreach (var row in rows)
        {
            var c = double.Parse(row["level"].Split(' ')[0], CultureInfo.InvariantCulture);
            var a = 0.0010 + 0.0615 * c - 0.0010 * c * c;
            Agree.Relative(1e-9, row.Number("value"), a + Math.Sqrt(0.0006 * 0.0006 + 0.008 * a * (0.008 * a)) * stream.Normal());
        }
    }

    [Fact]
    public void Below_ManyDraws_StaysInRangeAndMeetsEveryNumber()
    {
        var stream = new SeededStream(1, "below");
        var counts = new int[7];
        for (var i = 0; i < 7000; i++)
            counts[stream.Below(7)]++;
        Assert.All(counts, c => Assert.InRange(c, 850, 1150));
    }

    [Fact]
    public void Shuffle_KeepsEveryItem_AndDependsOnPurposeOnly()
    {
        int[] first = [.. Enumerable.Range(0, 30)], again = [.. first], other = [.. first];
        new SeededStream(5, "order").Shuffle<int>(first);
        new SeededStream(5, "order").Shuffle<int>(again);
        new SeededStream(5, "another order").Shuffle<int>(other);
        Assert.Equal(first, again);
        Assert.NotEqual(first, other);
        Assert.Equal(Enumerable.Range(0, 30), first.Order());
    }

    [Fact]
    public void Below_NothingToChooseFrom_Throws()
        => Assert.Throws<ArgumentOutOfRangeException>(() => new SeededStream(1, "x").Below(0));
}
