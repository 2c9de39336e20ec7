using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Calibration;
using Holdfast.Claims.NextExperiments;
using Holdfast.Claims.Rules;
using Holdfast.Isotherms;
using Holdfast.Testing;
using static System.FormattableString;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>
/// The rules against reference/design/decision-check.csv (K01..K34: small data sets, statistic and verdict; numpy 1.24.2, scipy 1.10.1; five figures).
/// The data are the row's own.
/// </summary>
public sealed partial class DecisionCheckTests
{
    private const double FiveFigures = 5e-5;

    private static readonly Dictionary<string, ReferenceRow> Rows =
        ReferenceTable.Read("design", "decision-check.csv").ToDictionary(r => r["id"], StringComparer.Ordinal);

    [GeneratedRegex(@"-?\d*\.?\d+(e-?\d+)?", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Numeral();

    private static double[] Numbers(string text) => [.. Numeral().Matches(text).Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture))];

    /// <summary>The number after "name=" in the result of a row.</summary>
    private static double Result(string id, string name)
        => Numbers(Rows[id]["result"][(Rows[id]["result"].IndexOf(name + "=", StringComparison.Ordinal) + name.Length + 1)..])[0];

    private static Setting[] Levels(string id) => [.. Rows[id]["data"].Split(';').Select(part =>
    {
        var sides = part.Split(':');
        return new Setting(Numbers(sides[0])[0], [.. Numbers(sides[1])]);
    })];

    private static ImmutableArray<double> After(string id, string name)
    {
        var data = Rows[id]["data"];
        var from = data.IndexOf(name, StringComparison.Ordinal) + name.Length;
        var end = data.IndexOf(';', from);
        return [.. Numbers(end < 0 ? data[from..] : data[from..end])];
    }

    private static double Number(Decision decision, string name)
        => decision.Numbers.First(n => n.Name.Contains(name, StringComparison.Ordinal)).Value;

    [Fact]
    public void OptimumDose_K05_IsNotShown()
    {
        var decision = OptimumDose.Decide(2, Levels("K05"), 2);
        Assert.Equal(Ruling.NotShownYet, decision.Gated);
        Agree.Relative(FiveFigures, Result("K05", "s_pooled"), Number(decision, "pooled sd"));
        Agree.Relative(FiveFigures, Result("K05", "p"), Number(decision, "Tukey p against 3 g/L"));
        Agree.Relative(FiveFigures, 1.30344e-06, Number(decision, "Tukey p against 1 g/L"));
    }

    [Fact]
    public void SmallestSufficientDose_K06_Holds()
    {
        var decision = SmallestSufficientDose.Decide(2, Levels("K05"), 2);
        Assert.Equal(Ruling.Holds, decision.Gated);
        var gain = decision.Numbers.First(n => n.Name.StartsWith("gain", StringComparison.Ordinal));
        Agree.Relative(FiveFigures, -0.266667, gain.Value);
        Agree.Relative(FiveFigures, -1.52154, gain.Low!.Value);
        Agree.Relative(FiveFigures, 0.988208, gain.High!.Value);
    }

    [Theory]
    [InlineData("K07", Ruling.Holds, 0.00664084, -0.0136567, 0.0269384)]
    [InlineData("K08", Ruling.Contradicted, 0.0813503, 0.0602459, 0.102455)]
    public void EquilibriumReached_K07AndK08_AsPrinted(string id, Ruling ruling, double step, double low, double high)
    {
        Setting[] levels = [new(120, After(id, "q(120)=")), new(180, After(id, "q(180)="))];
        var decision = EquilibriumReached.Decide("series", 120, levels, -0.05, 0.05);
        Assert.Equal(ruling, decision.Gated);
        var found = decision.Numbers[0];
        Agree.Relative(FiveFigures, step, found.Value);
        Agree.Relative(FiveFigures, low, found.Low!.Value);
        Agree.Relative(FiveFigures, high, found.High!.Value);
    }

    [Fact]
    public void RemovalFalls_K09_Holds()
    {
        var decision = RemovalFallsWithConcentration.Decide(Levels("K09"), []);
        Assert.Equal(Ruling.Holds, decision.Gated);

        // The table counts pairs that fall; Jonckheere–Terpstra's J counts those that rise. Together they are all 54.
        Assert.Equal(54, Result("K09", "J") + Number(decision, "Jonckheere–Terpstra J"));
        Agree.Relative(FiveFigures, Result("K09", "z"), Number(decision, "z for a fall"));
        Agree.Relative(FiveFigures, Result("K09", "p"), Number(decision, "p for a fall"));
    }

    [Fact]
    public void BestKineticModel_K10_IsNotShown()
    {
        ImmutableArray<Candidate> candidates = [Candidate.FromSquares("PFO", 0.42, 9, 2), Candidate.FromSquares("PSO", 0.31, 9, 2)];
        var decision = BestKineticModel.Decide("PSO", [], [("series", candidates, [], [])]);
        Assert.Equal(Ruling.NotShownYet, decision.Ruling);
        Agree.Relative(FiveFigures, Result("K10", "dAICc"), Number(decision, "AICc(PFO)"));
    }

    [Fact]
    public void BestIsotherm_K11_HoldsOverFreundlichOnly()
    {
        ImmutableArray<Candidate> candidates =
            [Candidate.FromSquares("Langmuir", 1.20, 8, 2), Candidate.FromSquares("Freundlich", 9.80, 8, 2), Candidate.FromSquares("Sips", 0.95, 8, 3)];
        var against = BestIsotherm.Decide("Langmuir", ["Freundlich"], "series", candidates, 8);
        Assert.Equal(Ruling.Holds, against.Gated);
        Agree.Relative(FiveFigures, 16.8005, Number(against, "AICc(Freundlich)"));
        Agree.Relative(FiveFigures, 7.46441, Number(BestIsotherm.Decide("Langmuir", [], "series", candidates, 8), "AICc(Sips)"));
        Agree.Relative(FiveFigures, -3.17696, candidates[0].Aicc!.Value);
        Agree.Relative(FiveFigures, 13.6235, candidates[1].Aicc!.Value);
        Agree.Relative(FiveFigures, 4.28745, candidates[2].Aicc!.Value);
    }

    [Fact]
    public void Capacity_K12_IsNotShownAndAsksForMore()
    {
        var coverage = Langmuir.Coverage<Amounts.Number>(0.12, 9).Value;
        Agree.Relative(FiveFigures, Result("K12", "coverage"), coverage);
        var design = new LangmuirDesign(20, 0.12, 2);
        Agree.Relative(FiveFigures, 33.3333, design.ConcentrationAt(0.8));
        var decision = Capacity.Decide(new("Langmuir", 20, 1, 18.5, 21.5, coverage, 10.4, 9, 0.4, -0.97, 8, 8), null, 0.10, design);
        Assert.Equal(Ruling.NotShownYet, decision.Gated);
        Assert.Contains("Q21", decision.Questions.Select(q => q.Code));
        Agree.Relative(1e-12, 33.333333333333333 + 2 * 16, design.StartFor(design.ConcentrationAt(0.8)));
    }

    [Theory]
    [InlineData("K15", 6.7, 80, Ruling.Holds)]
    [InlineData("K16", 8, 91, Ruling.NotShownYet)]
    [InlineData("K17", 9, 98.6, Ruling.Contradicted)]
    public void NotPrecipitation_K15ToK17_AsPrinted(string id, double ph, double removal, Ruling ruling)
    {
        var loss = Numbers(Rows[id]["data"])[^1];
        var solid = new Hydroxide("Ni(OH)2", 20e-3 / 58.693, 2, 5.48e-16);

        // The table gives one loss; two controls a little around it stand for the blanks behind it.
        var decision = NotPrecipitation.Decide(ph, ph, solid, new(0, [removal, removal]), new(0, [loss - 0.1, loss + 0.1]));
        Assert.Equal(ruling, decision.Gated);
        Agree.Relative(FiveFigures, Result(id, "SI"), Number(decision, "saturation index"));
    }

    [Fact]
    public void MassBalance_K18_Holds()
    {
        var decision = MassBalance.Decide(new(0, After("K18", "difference")), new(0, After("K18", "digestion")), 0.90, 1.10);
        Assert.Equal(Ruling.Holds, decision.Gated);
        Agree.Relative(FiveFigures, Result("K18", "ratio"), decision.Numbers[0].Value);
        Agree.Relative(FiveFigures, 0.928393, decision.Numbers[0].Low!.Value);
        Agree.Relative(FiveFigures, 0.955062, decision.Numbers[0].High!.Value);
    }

    [Theory]
    [InlineData(1, Ruling.Contradicted)]
    [InlineData(2, Ruling.NotShownYet)]
    [InlineData(5, Ruling.Holds)]
    public void DetectionLimit_K20_AsPrinted(double stated, Ruling ruling)
    {
        // Ten blanks whose standard deviation is 0.012 exactly: five on either side by 0.012 √0.9.
        double[] blanks = [.. Enumerable.Range(0, 10).Select(i => (i % 2 == 0 ? 1 : -1) * 0.012 * Math.Sqrt(0.9))];
        var decision = Holdfast.Claims.Rules.DetectionLimit.Decide(Holdfast.Claims.Rules.DetectionLimit.Found(blanks, 0.0162)!, stated, null);
        Assert.Equal(ruling, decision.Gated);
        Agree.Relative(FiveFigures, Result("K20", "LOD"), decision.Numbers[0].Value);
        Agree.Relative(FiveFigures, 1.68137, decision.Numbers[0].Low!.Value);
        Agree.Relative(FiveFigures, 4.4626, decision.Numbers[0].High!.Value);
    }

    [Fact]
    public void LinearCalibration_K22_IsContradicted()
    {
        StandardReading[] standards = [.. After("K22", "x=").Zip(After("K22", "y="), (x, y) => new StandardReading(x, y))];
        var decision = LinearCalibration.Decide(standards, "run");
        Assert.Equal(Ruling.Contradicted, decision.Gated);
        Agree.Relative(FiveFigures, Result("K22", "F"), Number(decision, "Mandel F"));
        Agree.Relative(FiveFigures, 34.1162, Number(decision, "critical F"));
    }

    [Theory]
    [InlineData("K23", 2.38, Ruling.Holds)]
    [InlineData("K24", 0.02, Ruling.Contradicted)]
    [InlineData("K25", 0.02, Ruling.NotShownYet)]
    public void MeetsLimit_K23ToK25_AsPrinted(string id, double limit, Ruling ruling)
    {
        var decision = MeetsLimit.Decide(new(0, After(id, "treated")), limit, 0.109, null);
        Assert.Equal(ruling, decision.Gated);
        Agree.Relative(FiveFigures, Result(id, "mean"), Number(decision, "mean of treated water"));
        Agree.Relative(FiveFigures, Result(id, "lower"), Number(decision, "lower bound"));
        Agree.Relative(FiveFigures, Result(id, "upper"), Number(decision, "upper bound"));
    }

    [Fact]
    public void Reproducible_K30_IsNotShown()
    {
        Statistics.Group[] batches = [.. Rows["K30"]["data"].Split('|').Select((part, i) => new Statistics.Group(Invariant($"B{i + 1}"), Numbers(part)))];
        var decision = Reproducible.Decide(batches, 0.10);
        Assert.Equal(Ruling.NotShownYet, decision.Gated);
        Agree.Relative(FiveFigures, Result("K30", "F"), Number(decision, "F between batches"));
        Agree.Relative(FiveFigures, Result("K30", "s_between"), Number(decision, "standard deviation between batches"));
        Agree.Relative(FiveFigures, 4.31017, Number(decision, "standard deviation between batches, share"));
        Agree.Relative(FiveFigures, 19.4024, Number(decision, "upper bound"));
    }

    [Fact]
    public void Monolayer_K31_LeavesRoomForOneLayer()
    {
        // Area for 0.230 mmol/g at 0.513 nm² an ion (radius 0.404 nm) over 73.4 m²/g.
        var coverage = MonolayerArea.Needed(0.230, 0.404) / 73.4;
        Agree.Relative(0.002, Result("K31", "coverage"), coverage);
        Assert.Equal(Ruling.Holds, Monolayer.Decide(new("exponent", 1, 0.02, 20, 24), 2, 0.6, coverage, null).Gated);
    }
}
