using System.Globalization;
using Holdfast.Fitting;
using Holdfast.Kinetics;
using Holdfast.Testing;

namespace Holdfast.Tests.Kinetics;

public class WeberMorrisSegmentsTests
{
    // reference/sorption/weber-morris-expected.csv: the search done independently (numpy).
    [Theory, InlineData("two-lines"), InlineData("one-line"), InlineData("smooth-first-order")]
    public void Search_OverEverySplit_AgreesWithTheTable(string name)
    {
        var data = ReferenceTable.Read("sorption", "weber-morris-data.csv").Where(r => r["case"] == name).ToArray();
        var found = WeberMorrisSegments.Search([.. data.Select(r => r.Number("t_min"))], [.. data.Select(r => r.Number("q_mg_g"))]);
        Assert.Equal(3, found.Count);
        foreach (var row in ReferenceTable.Read("sorption", "weber-morris-expected.csv").Where(r => r["case"] == name && r["model"].EndsWith("segments", StringComparison.Ordinal)))
        {
            var candidate = found[row["model"][0] - '1'];
            switch (row["quantity"])
            {
                case "rss":
                    Agree.Relative(1e-8, row.Number("value"), candidate.ResidualSquares, row["model"]);
                    Assert.Equal(row["note"]["rows per segment ".Length..], string.Join(' ', candidate.Lines.Select(l => l.Count.ToString(CultureInfo.InvariantCulture))));
                    break;
                case "aicc":
                    Agree.Relative(1e-8, row.Number("value"), candidate.Aicc!.Value, row["model"]);
                    break;
                default:
                    Agree.Relative(1e-8, row.Number("value"), candidate.Lines[0].Slope, row["model"]);
                    var notes = row["note"].Split(", ");
                    Agree.Relative(1e-5, Last(notes[0]), candidate.Lines[0].SlopeError!.Value, "se of the slope");
                    Agree.Relative(1e-5, Last(notes[1]), candidate.Lines[0].Intercept, "intercept");
                    Agree.Relative(1e-5, Last(notes[2]), candidate.Lines[0].InterceptError!.Value, "se of the intercept");
                    break;
            }
        }
    }

    // The same table's row "pseudo_first": one smooth curve through the same readings, which wins over every split of its own data by 32 units.
    [Theory, InlineData("two-lines"), InlineData("one-line"), InlineData("smooth-first-order")]
    public void SmoothCurve_BesideTheSegments_AgreesWithTheTable(string name)
    {
        var data = ReferenceTable.Read("sorption", "weber-morris-data.csv").Where(r => r["case"] == name).ToArray();
        var fit = Fit.Of<PseudoFirstOrder>(new([.. data.Select(r => r.Number("t_min"))], [.. data.Select(r => r.Number("q_mg_g"))], "min", "mg/g"));
        var row = ReferenceTable.Read("sorption", "weber-morris-expected.csv").First(r => r["case"] == name && r["model"] == "pseudo_first");
        Assert.Equal(row.Number("value"), fit.Aicc!.Value, 7);
    }

    [Fact]
    public void Search_WithReplicates_NeverCutsATimeInTwo()
    {
        double[] time = [1, 1, 1, 4, 4, 4, 9, 9, 9];
        var found = WeberMorrisSegments.Search(time, [1, 1.1, 0.9, 2, 2.1, 1.9, 3, 3.1, 2.9]);
        Assert.Single(found);
    }

    [Fact]
    public void Search_WithTwoPoints_FindsNothing() => Assert.Empty(WeberMorrisSegments.Search([1, 2], [1, 2]));

    private static double Last(string words) => double.Parse(words.Split(' ')[^1], CultureInfo.InvariantCulture);
}
