using Holdfast.Claims.Analyses;
using Holdfast.Claims.Plans;
using Holdfast.Planning;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Testing;

namespace Holdfast.Claims.Tests.Plans;

/// <summary>Plans as a whole.</summary>
public class PlanDesignTests
{
    // With one later time, a plateau at once and nothing but the scatter of one vessel, power is that of the table (reference/design/replicates-by-power.csv): margin/sigma 1.5, 2 and 3 ask for 9, 6 and 3.
    // The larger draws of the last mean, which the step is a share of, leave half a point.
    [Theory, InlineData(1.5, 9), InlineData(2, 6), InlineData(2.5, 4), InlineData(3, 3)]
    public void Equilibrium_OfTwoTimes_HasThePowerOfTheTable(double margin, int n)
    {
        var plan = PlanWarningsTests.Plan(["equilibrium-reached"], ("half-time", "1"));
        var series = plan.Series[0] with { Levels = [.. plan.Series[0].Levels.Where(l => l.Time is 120 or 240)], Replicates = n };
        var supposed = new Supposed(plan.Basis);
        var u = 100 * supposed.U(20, supposed.Left(20, 2)) / (20 - supposed.Left(20, 2));
        var power = new PlanDraws(supposed, PlanQuestion.Equilibrium, margin * u).Equilibrium(series).Power(margin * u);
        Assert.Equal(Statistics.Power.EquivalenceOfTwoMeans(margin, n), power, 0.005 + 3 * Math.Sqrt(0.25 / 2000));
        Assert.True(power > 0.75);
    }

    // More is asked of a study than the table asks of two means: two later times, readings with an error of their own, ground. Replicates never fall below the table's.
    [Theory, InlineData("2.5", 6), InlineData("2", 4)]
    public void Of_Equilibrium_HasAtLeastTheReplicatesOfTheTable(string scatter, int n)
    {
        var plan = PlanWarningsTests.Plan(["equilibrium-reached"], ("scatter", scatter));
        var series = Assert.Single(plan.Series);
        Assert.InRange(series.Replicates, n, PlanDesign.MostReplicates);
        Assert.True(plan.Claims[0].Power.Power >= PlanPower.Wanted);
        Assert.All(series.Levels.Where(l => l.Time >= 120), l => Assert.Equal(series.Replicates, series.VesselsAt(l)));
        Assert.All(series.Levels.Where(l => l.Time < 120), l => Assert.Equal(3, series.VesselsAt(l)));
    }

    // Where vessels do not help none are planned: equilibrium by 120 min is not true of a half-time of 60 min.
    [Fact]
    public void Of_ClaimThatIsNotTrue_IsNotPlannedFor()
    {
        var plan = PlanWarningsTests.Plan(["equilibrium-reached"], ("half-time", "60"));
        Assert.Equal(3, plan.Series[0].Replicates);
        Assert.True(plan.Claims[0].Power.Power < 0.05);
        Assert.Contains(plan.Warnings, w => w.Name == "power-equilibrium-reached");
    }

    // Scatter from 4 pilot vessels is planned with at its upper 80 % bound: s·√(3/χ²(0.20, 3)), χ² from scipy 1.10.1: 1.00517.
    [Fact]
    public void Scatter_FromAPilot_IsTakenAtItsUpperBound()
        => Agree.Relative(1e-4, 0.03 * Math.Sqrt(3 / 1.005174), PlanWarningsTests.Plan(["capacity"], ("scatter", "3"), ("pilot", "4")).Basis.Scatter);

    // planning.md 4: half of the vessels at the optimal points, at least p + 2 levels, efficiency printed.
    [Theory, InlineData("1"), InlineData("3")]
    public void Of_Capacity_IsAPracticalLayout(string factor)
    {
        var plan = PlanWarningsTests.Plan(["capacity", "equilibrium-reached"], ("within-factor", factor));
        var series = plan.Series.Single(s => s.Name == "ISO");
        Assert.True(series.LackOfFit >= 2);
        Assert.InRange(series.Efficiency!.Value, 0.7, 1);
        Assert.All(series.Levels, l => Assert.Equal(1, l.Blanks));
        Assert.Empty(plan.Warnings);
        Assert.True(series.Levels.Where(l => l.Share == 2).Sum(series.VesselsAt) * 2 >= series.Vessels - series.Replicates);
    }

    // "With the vessels I have, what can I show?"
    [Fact]
    public void Of_FewVessels_StaysWithinThemAndSaysWhatIsLeft()
    {
        var whole = PlanWarningsTests.Plan(["capacity", "equilibrium-reached"]);
        var few = PlanWarningsTests.Plan(["capacity", "equilibrium-reached"], ("vessels", "60"));
        Assert.True(whole.Vessels.Length > 60);
        Assert.InRange(few.Vessels.Length, 40, 60);
        Assert.True(few.Claims[1].Power.Power < whole.Claims[1].Power.Power);
        Assert.Contains("±", few.Claims[1].Power.Shows, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_SameSeed_IsTheSamePlanAndEveryCodeIsValidAndNew()
    {
        var plan = PlanWarningsTests.Plan(["capacity", "optimum-ph", "smallest-sufficient-dose"]);
        Assert.Equal(plan.Vessels, PlanWarningsTests.Plan(["capacity", "optimum-ph", "smallest-sufficient-dose"]).Vessels);
        Assert.All(plan.Vessels, v => Assert.True(RunCode.IsValid(v.Code)));
        Assert.Equal(plan.Vessels.Length, plan.Vessels.Select(v => v.Code).Distinct().Count());

        // Adding a series must not change the order of another (planning.md 14).
        Assert.Equal(plan.Vessels.Where(v => v.Series == "ISO").Select(v => v.StartOrder), PlanWarningsTests.Plan(["capacity"]).Vessels.Select(v => v.StartOrder));

        // Controls that another series has already are not run twice.
        Assert.Contains(plan.Sharing, s => s.StartsWith("PH uses", StringComparison.Ordinal));
        Assert.Equal(plan.Budget.All, plan.Vessels.Length);
        Assert.Equal(plan.Budget.MetalWithOverage, plan.Waste.Sum(w => w.Metal), 9);
    }

    // The interval of the capacity is as narrow as promised: the curve is fitted to drawn vessels, its 95 % interval by t, over 1500 draws (simulation, seed 1589).
    [Theory, InlineData("3", "10"), InlineData("6", "24")]
    public void Capacity_PowerPromised_IsObtainedBySimulation(string scatter, string vessels)
    {
        var plan = PlanWarningsTests.Plan(["capacity"], ("scatter", scatter), ("vessels", vessels));
        var supposed = new Supposed(plan.Basis);
        var series = plan.Series[0];
        double[] starts = [.. series.Levels.SelectMany(l => Enumerable.Repeat(l.Start, series.VesselsAt(l)))];
        var stream = new SeededStream(1589, "power of a capacity");
        var (hits, draws) = (0, 1500);
        for (var d = 0; d < draws; d++)
        {
            double[] y = [.. starts.Select(c => supposed.Left(c, 2) + stream.Normal() * supposed.U(c, supposed.Left(c, 2)))];
            if (HalfWidth(starts, y, supposed) is { } half && half <= 0.10)
                hits++;
        }

        Assert.Equal(plan.Claims[0].Power.Power!.Value / PlanPower.Limits.CapacitySpeaks, hits / (double)draws, 0.03 + 2 * Math.Sqrt(0.25 / draws));
    }

    // Gauss-Newton on what is left as a function of the start concentration, both known from the plan's own curve; relative half-width of the capacity.
    private static double? HalfWidth(double[] starts, double[] y, Supposed supposed)
    {
        double[] p = [supposed.Capacity, supposed.Affinity];
        var slopes = new double[2];
        double[] u = [.. starts.Select(c => supposed.U(c, supposed.Left(c, 2)))];
        var sum = 0.0;
        Information information = new(2);
        for (var step = 0; step < 30; step++)
        {
            information = new(2);
            double a = 0, b = 0;
            sum = 0;
            for (var i = 0; i < y.Length; i++)
            {
                var r = (y[i] - Supposed.Langmuir.ConcentrationLeft(starts[i], 2, p, slopes)) / u[i];
                double[] row = [slopes[0] / u[i], slopes[1] / u[i]];
                information.Add(row);
                (a, b, sum) = (a + row[0] * r, b + row[1] * r, sum + r * r);
            }

            if (information.Covariance() is not { } c)
                return null;
            p = [Math.Max(p[0] / 2, p[0] + c[0, 0] * a + c[0, 1] * b), Math.Max(p[1] / 2, p[1] + c[1, 0] * a + c[1, 1] * b)];
        }

        var s = Math.Sqrt(sum / (y.Length - 2));
        return StudentDistribution.Quantile(0.975, y.Length - 2) * s * Math.Sqrt(information.Covariance()![0, 0]) / p[0];
    }

    // A planned vessel is no evidence: nothing that is judged may change by planning.
    [Fact]
    public void Entry_PutOnThePlan_ChangesNoVerdict()
    {
        var begun = new Daybook([]).With(DateTimeOffset.UnixEpoch, "Ada", new StudyBegun("invented", "Ni", true));
        Origin typed = new(null, "typed", null, 0, null);
        Fact Number(string name, double value) => new(name, value, null, null, null, "", typed);
        var samples = Enumerable.Range(0, 12).Select(i => new Sample($"V{i}", SampleRole.Vessel, new[] { Number("initial-concentration", 20), Number("volume", 25), Number("mass", 50), Number("contact-time", 10 * (i / 3 + 1)), Number("reported-uptake", 7 + i / 3 * 0.3) }
            .ToDictionary(f => f.Property).Aggregate(System.Collections.Immutable.ImmutableSortedDictionary.Create<string, Fact>(StringComparer.Ordinal), (all, f) => all.Add(f.Key, f.Value))));
        var before = begun.With(DateTimeOffset.UnixEpoch, "Ada", new TakenIn { Samples = [.. samples] });
        var plan = PlanWarningsTests.Plan(["capacity", "equilibrium-reached"]);
        var after = before.With(DateTimeOffset.UnixEpoch, "Ada", plan.Entry(new Dictionary<string, string>()));
        Assert.Equal(12 + plan.Vessels.Length, after.Study.Samples.Length);
        Assert.NotEmpty(Dossier.Of(before.Study).Verdicts);
        Assert.Equal(
            Dossier.Of(before.Study).Verdicts.Select(v => (v.Claim.Id, v.Ruling, v.Sentence)), Dossier.Of(after.Study).Verdicts.Select(v => (v.Claim.Id, v.Ruling, v.Sentence)));
        Assert.Equal(Evidence.Of(before.Study).Vessels.Length, Evidence.Of(after.Study).Vessels.Length);
    }

    [Theory, InlineData("capacity", "abc"), InlineData("capacity", "0"), InlineData("capacity", "6000"), InlineData("volume", "3 K"), InlineData("nonsense", "1"), InlineData("stock", "10")]
    public void Basis_WhatCannotBe_IsRefusedInWords(string setting, string value)
    {
        var (basis, refusal) = PlanBasis.Of(Evidence.Of(new Study { Title = "invented" }), new Dictionary<string, string> { [setting] = value });
        Assert.Null(basis);
        Assert.False(string.IsNullOrWhiteSpace(refusal!.Sentence));
    }

    [Fact]
    public void Questions_EveryOne_NamesARuleThatThereIs()
        => Assert.All(PlanQuestion.All, q => Assert.NotNull(Defence.RuleNamed(q.Rule)));

    [Fact]
    public void Basis_WithAUnit_IsConverted()
        => Assert.Equal(25, PlanWarningsTests.Plan(["capacity"], ("volume", "0.025 L")).Basis[PlanSetting.Volume], 9);
}
