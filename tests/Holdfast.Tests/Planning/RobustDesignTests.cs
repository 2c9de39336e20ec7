using System.Globalization;
using Holdfast.Planning;
using Holdfast.Testing;
using Holdfast.Tests.Isotherms;

namespace Holdfast.Tests.Planning;

public class RobustDesignTests
{
    public static TheoryData<int> Rows() => [0, 1, 2, 3, 4, 5];

    // reference/design/langmuir-robust.csv: Langmuir on Ce 0.2 to 50, geometric mean of K 0.1, 15 nodes of Gauss and Hermite; 3 figures, weights 3 decimals.
    [Theory, MemberData(nameof(Rows))]
    public void Search_UncertainAffinity_AgreesWithTheTable(int index)
    {
        var row = ReferenceTable.Read("design", "langmuir-robust.csv")[index];
        var curve = CurveCase.Named("langmuir");
        Func<double, double[]> Row(double k) => x => [.. Enumerable.Range(0, 2).Select(i => curve.Slopes(x, [1, k])[i] * (i == 1 ? k : 1))];
        var cases = RobustDesign.WithinFactor(0.1, row.Number("geometric_sd_of_K"), Row);
        Assert.Equal(1, cases.Sum(c => c.Weight), 12);
        var design = RobustDesign.Search(cases, 0.2, 50);
        var support = Numbers(row["support_Ce"]);
        var weights = Numbers(row["weights"]);
        Assert.Equal(support.Length, design.Levels.Count);
        for (var i = 0; i < support.Length; i++)
        {
            Agree.Relative(weights[i] < 0.01 ? 2e-2 : 1e-3, support[i], design.Levels[i], row["geometric_sd_of_K"]);
            Assert.Equal(weights[i], design.Weights[i], 0.0006);
        }

        Assert.InRange(design.Excess, -1e-6, 1e-5);
        Assert.Equal(row.Number("efficiency_local_pair"), design.EfficiencyOf(cases, [50 / 7.0, 50]), 0.0001);
        Assert.Equal(row.Number("efficiency_6_geometric_1_to_50"), design.EfficiencyOf(cases, [.. Enumerable.Range(0, 6).Select(i => Math.Pow(50, i / 5.0))]), 0.0001);
        Assert.Equal(row.Number("efficiency_6_equally_spaced"), design.EfficiencyOf(cases, [.. Enumerable.Range(1, 6).Select(i => 50 * i / 6.0)]), 0.0001);
    }

    private static double[] Numbers(string list) => [.. list.Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture))];
}
