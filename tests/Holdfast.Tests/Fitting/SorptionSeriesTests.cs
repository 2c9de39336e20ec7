using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Kinetics;
using Holdfast.Testing;

namespace Holdfast.Tests.Fitting;

/// <summary>
/// Every sorption curve fitted without a start to the series of reference/sorption (truth for the exact ones, scipy 1.10.1 for the noisy ones and the
/// edge cases).
/// </summary>
public class SorptionSeriesTests
{
    private static readonly Dictionary<string, Model> Models = new(StringComparer.Ordinal)
    {
        ["henry"] = Model.Of<Henry>(),
        ["langmuir"] = Model.Of<Langmuir>(),
        ["freundlich"] = Model.Of<Freundlich>(),
        ["sips"] = Model.Of<Sips>(),
        ["redlich_peterson"] = Model.Of<RedlichPeterson>(),
        ["toth"] = Model.Of<Toth>(),
        ["temkin"] = Model.Of<Temkin>(),
        ["dubinin_radushkevich"] = Model.Of<DubininRadushkevich>(),
        ["khan"] = Model.Of<Khan>(),
        ["bet_liquid"] = Model.Of<LiquidBet>(),
        ["dual_langmuir"] = Model.Of<DualSiteLangmuir>(),
        ["langmuir_partition"] = Model.Of<LangmuirPartition>(),
        ["pseudo_first"] = Model.Of<PseudoFirstOrder>(),
        ["pseudo_second"] = Model.Of<PseudoSecondOrder>(),
        ["elovich"] = Model.Of<Elovich>(),
        ["avrami"] = Model.Of<Avrami>(),
        ["general_order"] = Model.Of<GeneralOrder>(),
        ["mixed_order"] = Model.Of<MixedOrder>(),
        ["double_exponential"] = Model.Of<DoubleExponential>(),
        ["weber_morris"] = Model.Of<WeberMorris>(),
    };

    public static TheoryData<string, string, string> Series()
    {
        var series = new TheoryData<string, string, string>();
        foreach (var file in new[] { "isotherm", "kinetics" })
        {
            foreach (var (@case, curve) in ReferenceTable.Read("sorption", file + "-expected.csv")
                .Where(r => Models.TryGetValue(r["curve"], out var model) && model.Card.Abscissa is null).Select(r => (r["case"], r["curve"])).Distinct())
            {
                series.Add(file, @case, curve);
            }
        }

        return series;
    }

    [Theory, MemberData(nameof(Series))]
    public void Fit_WithoutAStart_AgreesWithTheReference(string file, string @case, string curve)
    {
        var (x, y) = file == "isotherm" ? ("x", "y") : ("t_min", "q_mg_g");
        var rows = ReferenceTable.Read("sorption", file + "-data.csv").Where(r => r["case"] == @case).ToArray();
        var fit = Models[curve].Fit(new([.. rows.Select(r => r.Number(x))], [.. rows.Select(r => r.Number(y))]));
        Assert.True(fit.IsFit, $"{@case} {curve}: {fit.Stop} {string.Join(' ', fit.Findings.Select(f => f.Sentence))}");
        var j = 0;
        foreach (var row in Expected(file, @case, curve))
        {
            var quantity = row["quantity"];
            var what = $"{@case} {curve} {quantity}";
            var actual = quantity switch { "rss" => fit.SumOfSquares, "aicc" => fit.Aicc, _ => fit.Parameters[j].Value };
            if (!row.Has("value"))
                Assert.Null(actual);
            else if (row.Number("value") == 0)
                Assert.True(actual < 1e-20, what);
            else
                Agree.Relative(1e-7, row.Number("value"), actual!.Value, what);
            if (quantity is "rss" or "aicc")
                continue;
            if (row.Has("se") && row.Number("se") > 0)
                Agree.Relative(1e-5, row.Number("se"), fit.Parameters[j].StandardError!.Value, "standard error, " + what);
            j++;
        }
    }

    // At low coverage qm has no upper limit, above saturation K has none: the profile says so instead of printing a number.
    [Theory, InlineData("edge-low-coverage", "qm"), InlineData("edge-saturated-only", "K")]
    public void Profile_OfAnEdgeCase_IsClosedBelowAndOpenAbove(string @case, string symbol)
    {
        var rows = ReferenceTable.Read("sorption", "isotherm-data.csv").Where(r => r["case"] == @case).ToArray();
        var fit = Fit.Of<Langmuir>(new([.. rows.Select(r => r.Number("x"))], [.. rows.Select(r => r.Number("y"))]));
        var expected = ReferenceTable.Read("sorption", "isotherm-expected.csv").Where(r => r["case"] == @case).ToArray();
        Assert.Equal("open", expected.Single(r => r["quantity"] == symbol + "_profile95_high")["value"]);
        Agree.Relative(1e-7, expected.Single(r => r["quantity"] == symbol + "_profile95_low").Number("value"), fit[symbol].Profile!.Lower.Value!.Value);
        Assert.Equal(LimitKind.Open, fit[symbol].Profile!.Upper.Kind);
        Assert.Contains(fit.Findings, f => f.Code == "HF-417" && f.Sentence.Contains("no upper limit for " + symbol, StringComparison.Ordinal));
    }

    // Rows that repeat a case in other letters or units, and profile limits (checked elsewhere), are left out.
    private static IEnumerable<ReferenceRow> Expected(string file, string @case, string curve)
        => ReferenceTable.Read("sorption", file + "-expected.csv").Where(r => r["case"] == @case && r["curve"] == curve
            && !r["note"].StartsWith("same ", StringComparison.Ordinal) && !r["quantity"].Contains("profile", StringComparison.Ordinal));
}
