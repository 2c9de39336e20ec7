using System.Globalization;
using Holdfast.Amounts;
using Holdfast.BatchSorption;
using Holdfast.Testing;

namespace Holdfast.Tests.BatchSorption;

public class BatchRulesTests
{
    // reference/sorption/flag-cases.csv: an input and the verdict it must get. The rules of this folder alone; others stand beside their own code.
    [Theory]
    [InlineData("B1", 3)]
    [InlineData("B3", 3)]
    [InlineData("B7", 2)]
    [InlineData("K1", 4)]
    [InlineData("K10", 2)]
    [InlineData("D4", 2)]
    public void Rule_OnItsCases_GivesTheVerdict(string rule, int cases)
    {
        var rows = ReferenceTable.Read("sorption", "flag-cases.csv").Where(r => r["rule"] == rule).ToArray();
        Assert.Equal(cases, rows.Length);
        foreach (var row in rows)
            Assert.Equal(row["verdict"], Verdict(rule, Inputs(row["inputs"])));
    }

    // reference/sorption/plateau-data.csv and plateau-expected.csv (own computation).
    [Fact]
    public void Plateau_TheReferenceSeries_AgreeInNumbersAndVerdict()
    {
        foreach (var expected in ReferenceTable.Read("sorption", "plateau-expected.csv"))
        {
            var rows = ReferenceTable.Read("sorption", "plateau-data.csv").Where(r => r["case"] == expected["case"]).ToArray();
            var plateau = Plateau.Test([.. rows.Select(r => r.Number("t_min"))], [.. rows.Select(r => r.Number("q_mg_g"))]).Value!;
            Agree.Digits(8, expected.Number("slope_mg_g_per_doubling"), plateau.Rise, expected["case"]);
            Agree.Digits(8, expected.Number("se"), plateau.RiseError, expected["case"]);
            Agree.Digits(8, expected.Number("lower95_one_sided_over_mean"), plateau.Lower, expected["case"]);
            Agree.Digits(8, expected.Number("upper95_one_sided_over_mean"), plateau.Upper, expected["case"]);
            var verdict = expected["verdict_at_5_percent"];
            Assert.Equal(verdict.Split(" (")[0], Words(plateau.Reached));
            Assert.Equal(verdict.Contains("rising", StringComparison.Ordinal), plateau.Reason.Contains("rises", StringComparison.Ordinal));
            Assert.Equal(verdict.Contains("falling", StringComparison.Ordinal), plateau.Reason.Contains("falls", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Plateau_OfTooFewReadings_SaysWhatIsMissing()
    {
        Assert.Equal("HF-480", Plateau.Test([60, 120], [38, 39]).Findings[0].Code);
        Assert.Equal("HF-480", Plateau.Test([60, 60, 60], [38, 39, 38]).Findings[0].Code);
        Assert.Equal("HF-481", Plateau.Test([60, 90, 120], [-1, -1, -1]).Findings[0].Code);
        Assert.Throws<ArgumentOutOfRangeException>(() => Plateau.Test([0, 90, 120], [38, 39, 38]));
    }

    // Law: the unit of time and of uptake change neither limits nor verdict, and neither does the order of the readings.
    [Fact]
    public void Plateau_InOtherUnitsAndOrder_IsTheSame()
    {
        var a = Plateau.Test([60, 90, 120, 180, 240], [38.1, 38.9, 38.6, 39, 38.8]).Value!;
        var b = Plateau.Test([4, 3, 2, 1.5, 1], [388, 390, 386, 389, 381]).Value!;
        Agree.Digits(10, a.Lower, b.Lower);
        Agree.Digits(10, a.Upper, b.Upper);
        Assert.Equal(a.Reached, b.Reached);
    }

    [Fact]
    public void OtherRules_FollowTheirThresholds()
    {
        Assert.True(Attribution.StartIsOff(18.9, 20));
        Assert.False(Attribution.StartIsOff(19.1, 20));
        Assert.True(WorkingWindow.UptakeIsWeak(19, 10));
        Assert.True(WorkingWindow.UptakeIsWeak(50, BatchQuantitiesTests.M(10, 1.1, "q")));
        Assert.False(WorkingWindow.UptakeIsWeak(50, BatchQuantitiesTests.M(10, 0.9, "q")));
    }

    private static string Verdict(string rule, Dictionary<string, string> given)
    {
        double N(string name) => double.Parse(given[name], CultureInfo.InvariantCulture);
        Measured M(string name, string u) => BatchQuantitiesTests.M(N(name), N(u), name);
        return rule switch
        {
            "B1" => Words(Significance.Of(M("C0", "u_C0"), M("Ce", "u_Ce"), 1, 1).Removed),
            "B3" => ControlCorrection.Of(M("C0", "u_each"), M("C_control", "u_each"), 0, 1, 1).MustCorrect ? "correct first" : "holds",
            "B7" => Aliquots.MustCorrect(Aliquots.Share(Enumerable.Repeat(N("aliquot_mL"), (int)N("samples")).ToArray(), N("V_mL"))) ? "correct first" : "holds",
            "K1" => Words(Plateau.Judge(N("lower95"), N("upper95")).Reached),
            "K10" => Difference.Of(M("q_last", "u_each"), M("q_max", "u_each")).IsShown ? "contradicted" : "holds",
            "D4" => Words(DosePoint.Explains(N("chi2_p"))),
            _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "No such rule."),
        };
    }

    private static Dictionary<string, string> Inputs(string text)
        => text.Split("; ").Select(p => p.Split('=', 2)).ToDictionary(p => p[0], p => p[1], StringComparer.Ordinal);

    private static string Words(Ruling standing) => standing switch
    {
        Ruling.Holds => "holds",
        Ruling.Contradicted => "contradicted",
        Ruling.NotShownYet => "not shown yet",
        _ => standing.ToString(),
    };
}
