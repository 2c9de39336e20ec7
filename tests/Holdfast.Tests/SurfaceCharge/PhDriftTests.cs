using System.Globalization;
using Holdfast.SurfaceCharge;
using Holdfast.Testing;
using Holdfast.Tests.Isotherms;

namespace Holdfast.Tests.SurfaceCharge;

public class PhDriftTests
{
    // reference/sorption/pzc-expected.csv: every crossing with place, uncertainty and direction, and the verdict.
    [Theory, InlineData("clear"), InlineData("no crossing"), InlineData("several crossings")]
    public void Crossings_OfTheMadeSeries_AgreeInEveryColumn(string of)
    {
        var rows = ReferenceTable.Read("sorption", "pzc-data.csv").Where(r => r["case"] == of).ToArray();
        var expected = ReferenceTable.Read("sorption", "pzc-expected.csv").Single(r => r["case"] == of);
        var found = PhDrift.Crossings([.. rows.Select(r => r.Number("pH_initial"))], [.. rows.Select(r => r.Number("pH_final"))], rows[0].Number("u_pH"));
        Assert.Equal((int)expected.Number("crossings"), found.Count);
        Assert.Equal(Words("pH_at_crossing"), found.Select(c => c.Ph.ToString("G6", CultureInfo.InvariantCulture)));
        Assert.Equal(Words("u"), found.Select(c => c.U.ToString("G4", CultureInfo.InvariantCulture)));
        Assert.Equal(Words("direction_of_difference"), found.Select(c => c.IsFalling ? "falling" : "rising"));
        var judged = PhDrift.Judge(found, saltLevels: 2, loadIsStated: true);
        Assert.Equal(expected["verdict"] == "holds", judged.HasValue);
        Assert.Equal(judged.HasValue ? 0 : 1, judged.Findings.Count);

        string[] Words(string column) => expected[column].Split(' ', StringSplitOptions.RemoveEmptyEntries);
    }

    [Fact]
    public void Judge_ByCrossings_FollowsTheCases() => FlagCase.Check("P1", c =>
    {
        var crossings = Enumerable.Range(0, (int)c["crossings"]).Select(i => new ZeroCrossing(4 + 2 * i, 0.1, i % 2 == 0)).ToList();
        return PhDrift.Judge(crossings, (int)c["ionic_strengths"], c.Inputs["solids_stated"] == "yes").HasValue ? Ruling.Holds : Ruling.NotShownYet;
    });

    [Fact]
    public void Judge_OneSaltLevelAndNoLoad_WarnsOfBoth()
        => Assert.Equal(["HF-631", "HF-632"], PhDrift.Judge([new(6.5, 0.1, true)], 1, loadIsStated: false).Findings.Select(f => f.Code));

    // A point exactly on the axis is one crossing, not two.
    [Fact]
    public void Crossings_ThroughAMeasuredPoint_AreCountedOnce()
    {
        var crossing = Assert.Single(PhDrift.Crossings([4, 6, 8], [4.5, 6, 7.4], 0.05));
        Assert.Equal(6, crossing.Ph);
        Assert.True(crossing.IsFalling);
        Assert.Empty(PhDrift.Crossings([4, 6, 8], [4.5, 6, 8.4], 0.05));
    }

    [Fact]
    public void Agree_OfTwoSaltLevels_ComparesWithTwiceTheUncertainty()
    {
        Assert.Equal(Ruling.NotShownYet, PhDrift.Agree(new(6.48, 0.08, true), new(6.3, 0.08, true)));
        Assert.Equal(Ruling.Contradicted, PhDrift.Agree(new(6.48, 0.08, true), new(6.0, 0.08, true)));
    }

    // Ionic strength by its definition (G. N. Lewis and M. Randall 1921, from memory): 0.01 mol/L Ca(NO3)2 has 0.03 mol/L.
    [Fact]
    public void IonicStrength_OfCalciumNitrate_IsThreeTimesItsConcentration()
        => Assert.Equal(0.03, IonicStrengthSeries.IonicStrength([(0.01, 2), (0.02, -1)]), 12);

    [Fact]
    public void Series_ThatFalls_SpeaksAgainstABondOnly()
    {
        double[] ionic = [0.001, 0.01, 0.1, 0.5];
        var falls = IonicStrengthSeries.Of(ionic, [12.1, 9.9, 8.2, 6.6]).Value!;
        Assert.Equal(Ruling.Holds, falls.Falls);
        var level = IonicStrengthSeries.Of(ionic, [12.1, 12.0, 12.2, 12.1]).Value!;
        Assert.Equal(Ruling.NotShownYet, level.Falls);
    }
}
