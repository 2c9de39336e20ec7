using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Planning;
using Holdfast.Testing;
using Holdfast.Tests.Isotherms;

namespace Holdfast.Tests.Planning;

public class OptimalDesignTests
{
    private delegate Slopes Response(Slopes x, Slopes[] p);

    // The curves of reference/design/d-optimal-locally.csv that are not curves of ours, written from the table's own "response" column.
    private static readonly Dictionary<string, Response> Others = new(StringComparer.Ordinal)
    {
        ["michaelis-menten"] = (x, p) => p[0] * x / (p[1] + x),
        ["langmuir form"] = (x, p) => p[0] * x / (1 + p[1] * x),
        ["emax"] = (x, p) => p[0] + p[1] * x / (x + p[2]),
        ["log-linear"] = (x, p) => p[0] + p[1] * Slopes.Log(x + p[2]),
        ["exp dose"] = (x, p) => p[0] + p[1] * Slopes.Exp(x / p[2]),
        ["weibull"] = (x, p) => p[0] - p[1] * Slopes.Exp(-p[2] * Slopes.Pow(x, p[3])),
        ["inverse quadratic"] = (x, p) => p[0] * x / (p[1] + x + p[2] * x * x),
        ["consecutive reactions"] = (x, p) => p[0] / (p[0] - p[1]) * (Slopes.Exp(-p[1] * x) - Slopes.Exp(-p[0] * x)),
        ["stern-volmer raw"] = (x, p) => p[0] / (1 + p[1] * x),
    };

    private static readonly Dictionary<string, string> Ours = new(StringComparer.Ordinal)
    {
        ["pfo"] = "pseudo_first",
        ["pso"] = "pseudo_second",
        ["langmuir"] = "langmuir",
        ["freundlich"] = "freundlich",
        ["elovich"] = "elovich",
        ["sips"] = "sips",
        ["langmuir, constant CV"] = "langmuir",
        ["pfo, constant CV"] = "pseudo_first",
    };

    public static TheoryData<int> Rows() => [.. Enumerable.Range(0, 26)];

    // Support and det M of all 26 designs; seven with values printed elsewhere (LDOD manual; Box and Lucas 1959).
    [Theory, MemberData(nameof(Rows))]
    public void Search_OfEveryCurve_AgreesWithTheTable(int index)
    {
        var row = ReferenceTable.Read("design", "d-optimal-locally.csv")[index];
        var p = Parameters(row);
        var constantCv = row["model"].EndsWith("constant CV", StringComparison.Ordinal);
        double[] Slope(double x)
        {
            Slopes value;
            if (Others.TryGetValue(row["model"], out var response))
                value = response(x, [.. p.Select(Slopes.Parameter)]);
            else
            {
                var curve = CurveCase.Named(Ours[row["model"]]);
                value = new(curve.Value(x, p), curve.Slopes(x, p));
            }

            return [.. Enumerable.Range(0, p.Length).Select(i => value[i] / (constantCv ? value.Value : 1))];
        }

        var design = OptimalDesign.Search(Slope, row.Number("x_low"), row.Number("x_high"));
        double[] expected = [.. row["support_numeric"].Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture))];
        Assert.Equal(expected.Length, design.Levels.Count);
        for (var i = 0; i < expected.Length; i++)
            Assert.True(Math.Abs(expected[i] - design.Levels[i]) <= 1e-5 * Math.Max(expected[i], 1e-3), $"{row["model"]}: {string.Join(' ', design.Levels.Select(l => l.ToString("R", CultureInfo.InvariantCulture)))}");
        Agree.Relative(1e-5, row.Number("det_M_normalised"), design.Information.Determinant, "det M");
        Assert.InRange(design.Excess, -1e-9, 1e-6);
    }

    // The closed forms against the same table.
    [Fact]
    public void OptimalLevels_InClosedForm_AgreeWithTheTable()
    {
        var held = 0;
        foreach (var row in ReferenceTable.Read("design", "d-optimal-locally.csv").Where(r => r.Has("support_closed_form")))
        {
            var p = Parameters(row);
            var (low, high) = (row.Number("x_low"), row.Number("x_high"));
            (double First, double Second)? levels = row["model"] switch
            {
                "michaelis-menten" => OptimalLevels.Langmuir(1 / p[1], low, high),
                "langmuir form" or "langmuir" => OptimalLevels.Langmuir(p[1], low, high),
                "pfo" => OptimalLevels.PseudoFirstOrder(p[1], low, high),
                "pso" => OptimalLevels.PseudoSecondOrder(p[0], p[1], low, high),
                "freundlich" => OptimalLevels.Freundlich(p[1], low, high),
                "elovich" => OptimalLevels.Elovich(p[0] * p[1], low, high),
                "stern-volmer raw" => OptimalLevels.SternVolmer(p[1], high),
                "langmuir, constant CV" or "pfo, constant CV" => OptimalLevels.BothEnds(low, high),
                _ => null,
            };
            if (levels is not { } found)
                continue;
            held++;
            var expected = row["support_closed_form"].Split(' ');
            Assert.True(Math.Abs(double.Parse(expected[0], CultureInfo.InvariantCulture) - found.First) <= 1e-8 * found.Second, row["model"]);
            Agree.Relative(1e-9, double.Parse(expected[1], CultureInfo.InvariantCulture), found.Second, row["model"]);
        }

        Assert.Equal(19, held);
    }

    // Where the closed forms switch to a series they meet it: a nearly straight curve has its first point in the middle.
    [Fact]
    public void OptimalLevels_OfNearlyStraightCurves_TendToTheMiddle()
    {
        foreach (var u in new[] { 1e-8, 1e-5, 9.9e-5, 1.1e-4, 9e-4, 1.1e-3 })
        {
            Assert.Equal(0.5 - u / 12, OptimalLevels.PseudoFirstOrder(u, 0, 1).First, 8);
            Assert.Equal(0.5 - u / 6, OptimalLevels.Elovich(u, 0, 1).First, 6);
        }
    }

    [Fact]
    public void OptimalLevels_BelowWhatCanBeRead_StopAtTheLowerEnd()
    {
        Assert.Equal((9, 50), OptimalLevels.Langmuir(0.1, 9, 50));
        Assert.Equal(40, OptimalLevels.ForCoverage(0.1, 0.8), 12);
        Assert.Throws<ArgumentOutOfRangeException>(() => OptimalLevels.Langmuir(0.1, 5, 5));
        Assert.Throws<ArgumentOutOfRangeException>(() => OptimalLevels.ForCoverage(0.1, 1));
    }

    // Rows that are long in three directions 60° apart: two of them leave the third with d = 4 (M = ½·S·Sᵀ, third = b − a), so three levels do better.
    [Fact]
    public void Excess_OfADesignThatMoreLevelsWouldBeat_IsPositive()
    {
        static double[] Row(double angle)
        {
            var length = Math.Exp(20 * (Math.Cos(6 * angle) - 1));
            return [length * Math.Cos(angle), length * Math.Sin(angle)];
        }

        Assert.InRange(OptimalDesign.Search(Row, 0, 2 * Math.PI / 3).Excess, 1.95, 2.05);
    }

    // A range cut to a fifth costs most of the information.
    [Fact]
    public void Efficiency_OfANarrowRange_IsPoor()
    {
        double[] Slope(double x) => [.. Enumerable.Range(0, 2).Select(i => CurveCase.Named("langmuir").Slopes(x, [20, 0.1])[i])];
        var wide = OptimalDesign.Search(Slope, 0, 50).Information;
        Assert.InRange(OptimalDesign.Search(Slope, 0, 10).Information.EfficiencyAgainst(wide), 0.01, 0.3);
        Assert.Equal(1, wide.EfficiencyAgainst(wide), 12);
    }

    private static double[] Parameters(ReferenceRow row) => CurveCase.Parameters(row["parameters"].Replace(';', ' '));
}
