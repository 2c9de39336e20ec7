using Holdfast.Claims.Plans;
using Holdfast.Planning;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using Holdfast.Testing;
using static System.FormattableString;

namespace Holdfast.Claims.Tests.Plans;

/// <summary>Plans exactly at their limits, and their arithmetic against what is worked out by hand.</summary>
public sealed class PlanEdgeTests
{
    private static readonly PlanDesign Usual = PlanWarningsTests.Plan(["capacity", "equilibrium-reached", "best-kinetic-model"]);

    // "Least", "fewest" and "largest" take the limit itself; a last bit beyond it warns.
    [Fact]
    public void Warnings_AtTheLimitItself_AreNotRaised()
    {
        PlanDesign Power(double power, double effect) => Usual with { Claims = [(PlanQuestion.Capacity, new(power, "shows", effect), ["ISO"])] };
        Warned("power-", false, Power(PlanPower.Wanted, PlanWarnings.Limits.Effect));
        Warned("power-", true, Power(Math.BitDecrement(PlanPower.Wanted), PlanWarnings.Limits.Effect));
        Warned("power-", true, Power(PlanPower.Wanted, Math.BitDecrement(PlanWarnings.Limits.Effect)));

        PlanDesign Read(double dilution, double read) => Usual with { Vessels = [.. Usual.Vessels.Select(v => v with { Dilution = dilution, Expected = read * dilution })] };
        var top = Usual.Basis[PlanSetting.TopStandard];
        Sides("reading-ISO", r => Read(1, r), PlanDesign.HighestReading * top, above: true);
        Sides("reading-ISO", r => Read(1, r), Usual.Basis[PlanSetting.Quantification], above: false);
        Sides("reading-ISO", r => Read(2, r), PlanWarnings.Limits.LowestReading * top, above: false);
        Warned("reading-ISO", false, Read(1, Math.BitDecrement(PlanWarnings.Limits.LowestReading * top)));

        var kinetic = Usual.Series.Single(s => s.Kind == SeriesKind.Kinetic);
        PlanDesign Times(IEnumerable<double> times) => Usual with { Series = [kinetic with { Levels = [.. times.Select(t => kinetic.Levels[0] with { X = t, Time = t })] }] };
        Sides("later-KIN", t => Times([1, 2, 3, 4, t]), Usual.Basis[PlanSetting.Time] * PlanWarnings.Limits.LaterBy * 0.999, above: false);
        Warned("early-KIN", false, Times([.. Enumerable.Range(1, PlanWarnings.Limits.EarlyTimes).Select(i => (double)i), 240]));
        Warned("early-KIN", true, Times([.. Enumerable.Range(1, PlanWarnings.Limits.EarlyTimes - 1).Select(i => (double)i), 240]));
        Warned("levels-KIN", false, Times([1, 2, 3, 240]));
        Warned("levels-KIN", true, Times([1, 2, 240]));

        PlanDesign Order(double correlation) => Usual with { Clocks = [Usual.Clocks[0] with { StartCorrelation = correlation, ReadCorrelation = null }] };
        Warned("order-", true, Order(RunOrder.LargestCorrelation));
        Warned("order-", false, Order(Math.BitDecrement(RunOrder.LargestCorrelation)));

        // One action ends as the next begins: hands suffice. A minute earlier they do not.
        PlannedVessel first = Usual.Vessels.First(v => v.Series == "ISO" && v.Block == 1);
        PlanDesign Two(double second) => Usual with { Vessels = [first with { StartsAt = 0, ContactTime = 600 }, first with { StartsAt = second, ContactTime = 700 }], Clocks = [Usual.Clocks.First(c => c.Series == "ISO" && c.Block == 1)] };
        Warned("hands-", false, Two(Usual.Basis[PlanSetting.Starting]));
        Warned("hands-", true, Two(Usual.Basis[PlanSetting.Starting] - 1));

        // The day is from 7 to 20 o'clock, both ends taken; begun at 9, that is 0 and 660 min after the beginning.
        PlanDesign Day(double starts, double contact) => Usual with { Vessels = [first with { StartsAt = starts, ContactTime = contact }] };
        Warned("night-", false, Day(0, 660));
        Warned("night-", true, Day(0, 661));
        Warned("night-", false, Day(1, 22 * 60 - 1));
        Warned("night-", true, Day(1, 22 * 60 - 2));
    }

    [Fact]
    public void Warnings_OfStores_AtWhatIsAtHand_AreNotRaised()
    {
        var plain = PlanWarningsTests.Plan(["capacity"]);
        var needed = plain.Budget.SorbentWithOverage / 1000;
        Warned("sorbent", false, PlanWarningsTests.Plan(["capacity"], ("sorbent", Invariant($"{needed:R}"))));
        Warned("sorbent", true, PlanWarningsTests.Plan(["capacity"], ("sorbent", Invariant($"{Math.BitDecrement(needed):R}"))));
        var few = PlanWarningsTests.Plan(["capacity"], ("vessels", "10"));
        Warned("vessels", true, few);
        Warned("vessels", false, few with { Vessels = few.Vessels[..10] });
        Warned("vessels", true, few with { Vessels = few.Vessels[..11] });
    }

    [Theory, InlineData("capacity", "5000", true), InlineData("capacity", "5000.1", false), InlineData("capacity", "0.01", true), InlineData("capacity", "0.0099", false), InlineData("stock", "150", true), InlineData("stock", "149.9", false)]
    public void Basis_AtTheEndsOfAnAnswer_IsTaken(string setting, string value, bool taken)
        => Assert.Equal(taken, PlanBasis.Of(Analyses.Evidence.Of(new Study { Title = "invented" }), new Dictionary<string, string> { [setting] = value, ["highest"] = "150", ["concentration"] = "150" }).Basis is not null);

    // Scatter from two vessels is the fewest that has a bound; of one it is taken as it is. s·√(1/χ²(0.20, 1)): χ² = 0.06418 (chi-squared table).
    [Fact]
    public void Scatter_FromTwoPilotVessels_HasABound_FromOneNone()
    {
        Agree.Relative(1e-3, 0.03 * Math.Sqrt(1 / 0.06418), PlanWarningsTests.Plan(["capacity"], ("scatter", "3"), ("pilot", "2")).Basis.Scatter);
        Assert.Equal(0.03, PlanWarningsTests.Plan(["capacity"], ("scatter", "3"), ("pilot", "1")).Basis.Scatter, 12);
    }

    // Amounts times prices; the salt by its formula: Ni(NO3)2·6H2O, 290.79 g/mol of which 58.693 are nickel (atomic weights, CIAAW).
    [Fact]
    public void Costs_AreAmountsTimesPrices()
    {
        var plan = PlanWarningsTests.Plan(["capacity"], ("price-sorbent", "2"), ("price-salt", "3"), ("price-instrument", "5"), ("price-vessel", "7"), ("price-waste", "11"));
        var metal = plan.Vessels.Sum(v => v.InitialConcentration * v.Volume / 1000) * 1.1;
        var cost = plan.Costs.ToDictionary(c => c.Item, c => c.Cost);
        Agree.Relative(1e-4, metal / 1000 / 58.693 * 290.79, plan.SaltMass!.Value);
        Agree.Relative(1e-9, 2 * plan.Vessels.Sum(v => v.Mass) * 1.1 / 1000, cost["sorbent"]);
        Agree.Relative(1e-9, 3 * plan.SaltMass.Value, cost["salt"]);

        // Three readings each, seven standards twice, two check standards for ten vessels; 12 s each.
        var readings = 3 * plan.Vessels.Length + 2 * 7 * 3 + 2 * 3 * (plan.Vessels.Length / 10);
        Agree.Relative(1e-9, 5 * readings * 12.0 / 3600, cost["instrument"]);
        Agree.Relative(1e-9, 7 * plan.Vessels.Length, cost["vessels"]);
        Agree.Relative(1e-9, 11 * plan.Waste.Sum(w => w.Volume) / 1000, cost["waste"]);

        // One claim bears all; of two the vessels of each are its own, and a series that serves both is shared evenly.
        Agree.Relative(1e-9, cost.Values.Sum(), Assert.Single(plan.CostsByClaim).Cost);
        var two = PlanWarningsTests.Plan(["capacity", "best-isotherm", "reproducible"], ("price-vessel", "7")).CostsByClaim;
        Assert.Equal(two[0].Cost, two[1].Cost, 9);
        Agree.Relative(1e-9, 7 * PlanWarningsTests.Plan(["reproducible"]).Vessels.Length, two[2].Cost);
        Assert.Equal(["salt"], PlanWarningsTests.Plan(["capacity"], ("price-salt", "3")).Costs.Select(c => c.Item));
    }

    // What is made up: the volume of the vessels of one concentration in a block and a tenth more; what it is made by gives the concentration again.
    [Fact]
    public void Solutions_AreEnoughForTheirVessels_AndOfTheirConcentration()
    {
        var solutions = Usual.Solutions;
        Assert.NotEmpty(solutions);
        foreach (var s in solutions)
        {
            Agree.Relative(1e-9, 1.1 * Usual.Vessels.Where(v => v.Series == s.Series && v.Block == s.Block && v.InitialConcentration.Equals(s.Concentration)).Sum(v => v.Volume), s.Volume);
            if (s.Made is { } made)
                Agree.Relative(0.02, s.Concentration, made.Value);
        }

        Assert.Equal(Usual.Vessels.Where(v => v.InitialConcentration > 0).Select(v => (v.Series, v.Block, v.InitialConcentration)).Distinct().Count(), solutions.Length);
        var large = PlanWarningsTests.Plan(["capacity"], ("volume", "2000"));
        Assert.Contains(large.Solutions, s => s.How.StartsWith("no flask holds", StringComparison.Ordinal));
    }

    // A fifth of mass and volume and a twentieth of the time may be off (PlannedVessel, PlanDeviation); the limit itself may.
    [Theory, InlineData(1), InlineData(-1)]
    public void Deviation_AtWhatMayBeOff_IsNone(int sign)
    {
        PlannedVessel planned = new("V", "ISO", SampleRole.Vessel, 1, 1, 1, 1) { InitialConcentration = 20, Volume = 25, Mass = 50, Ph = 6, ContactTime = 100, StartsAt = 0, Expected = 4, Dilution = 1 };
        string[] Of(double mass, double volume, double time, double ph) => [.. PlanDeviation.Of(planned, new("V", SampleRole.Vessel, Made.Facts([(BatchProperties.Mass, mass), (BatchProperties.Volume, volume), (BatchProperties.ContactTime, time), (BatchProperties.StartPh, ph)])))];
        Assert.Empty(Of(50 + sign * 10, 25 + sign * 5, 100 + sign * 5, 6 + 0.1 * sign));
        Assert.Equal([sign > 0 ? "60.1 mg weighed for 50 mg" : "39.9 mg weighed for 50 mg"], Of(50 + sign * 10.1, 25, 100, 6));
        Assert.Equal([sign > 0 ? "30.1 mL filled for 25 mL" : "19.9 mL filled for 25 mL"], Of(50, 25 + sign * 5.1, 100, 6));
        Assert.Equal([sign > 0 ? "105.1 min in contact for 100 min" : "94.9 min in contact for 100 min"], Of(50, 25, 100 + sign * 5.1, 6));
        Assert.Single(Of(50, 25, 100, 6 + sign));
    }

    // Langmuir by hand at q 20 mg/g and K 0.1 L/mg: half the sites at 10 mg/L left, so 10 mg/g; at 2 g/L that was 30 mg/L. Half-time 15 min: half of it after 15 min.
    [Fact]
    public void Supposed_IsLangmuirAndFirstOrder()
    {
        Supposed supposed = new(Usual.Basis);
        Assert.Equal((0.5, 10.0, 30.0), (supposed.Coverage(10), supposed.Uptake(10), supposed.StartFor(10, 2)));
        Assert.Equal(10, supposed.Left(30, 2), 9);
        Assert.Equal(20, supposed.Left(30, 2, 15), 9);
        Assert.Equal(100 * 20 / 30.0, supposed.Removal(30, 2), 9);
        Assert.Equal(30, supposed.Left(30, 0));
        Assert.Equal(0, supposed.Left(0, 2));

        // u: 0.05 mg/L, 2 % of what is left, 1 % of the start, and the scatter of the amount taken up.
        var u = Math.Sqrt(0.05 * 0.05 + 0.2 * 0.2 + 0.3 * 0.3 + Math.Pow(Usual.Basis.Scatter * 20, 2));
        Assert.Equal(u, supposed.U(30, 10), 12);
        Assert.Equal(u / 2, supposed.UptakeU(10, 2), 12);
    }

    private static void Sides(string name, Func<double, PlanDesign> plan, double limit, bool above)
    {
        Warned(name, false, plan(limit));
        Warned(name, true, plan(above ? limit * (1 + 1e-9) : limit * (1 - 1e-9)));
    }

    private static void Warned(string name, bool expected, PlanDesign plan)
        => Assert.True(expected == plan.Warnings.Any(w => w.Name.StartsWith(name, StringComparison.Ordinal)), $"{name}: {(expected ? "no warning" : "a warning")}. {string.Join(" ", plan.Warnings.Select(w => w.Sentence))}");
}
