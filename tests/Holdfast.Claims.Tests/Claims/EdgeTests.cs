using System.Collections.Immutable;
using System.Reflection;
using Holdfast.Amounts;
using Holdfast.Calibration;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.Rules;
using Holdfast.Fluorescence;
using Holdfast.Kinetics;
using Holdfast.Statistics;
using Holdfast.Thermodynamics;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>
/// Both sides of every limit, generated from the limit itself: at it the condition is met, a step beyond it is not. A limit that is added without samples fails here.
/// The limits are common practice or simulated (docs/verdicts.md); what is checked is that the rule keeps to the one it prints.
/// </summary>
public sealed class EdgeTests
{
    private const double Step = 1e-6;

    // What they do is no condition of a verdict: where a sentence is printed or an experiment is sized.
    private static readonly string[] NoCondition = ["Endothermic.Further", "StableInWater.Planned", "OptimumPh.OnePh", "StableInWater.Acidic"];

    // Asked of evidence or of whole studies, in the tests named.
    private static readonly string[] Elsewhere =
    [
        "Capacity.FarAbove", // UnsupportedVerdictTests
        "Chemisorption.Held", "Chemisorption.Loose", // DefenceTests and ReuseVerdictTests by evidence
        "OutletMeetsLimit.SameRun", "OutletMeetsLimit.Beds", "RegeneratedBetter.Pairs", "RateStep.Margin", "BetterThanPublished.PhWindow", "BetterThanPublished.TemperatureWindow",
    ];

    private static readonly ImmutableArray<(string Limit, Func<bool> AtIt, Func<bool> Beyond)> Samples =
    [
        Counted("BestIsotherm.Levels", BestIsotherm.Limits.Levels, n => Passed(BestIsotherm.Decide("first", [], "ISO", Curves, n), "concentrations")),
        Counted("BestKineticModel.EarlyTimes", BestKineticModel.Limits.EarlyTimes, n => Passed(Kinetic([.. Enumerable.Range(1, n).Select(i => 0.5)]), "early times in KIN")),
        Below("BestKineticModel.EarlyShare", BestKineticModel.Limits.EarlyShare, share => Passed(Kinetic([0.5, 0.5, 0.5, share]), "early times in KIN")),
        Counted("BestKineticModel.RisingTimes", BestKineticModel.Limits.RisingTimes, n => Passed(Kinetic([0.05, .. Enumerable.Range(1, n).Select(i => 0.5), 0.9]), "times on the rise in KIN")),
        Above("RisingPoints.From", RisingPoints.From, share => Passed(Kinetic([0.5, 0.5, share]), "times on the rise in KIN")),
        Below("RisingPoints.To", RisingPoints.To, share => Passed(Kinetic([0.5, 0.5, share]), "times on the rise in KIN")),
        Above("BestKineticModel.Measured", BestKineticModel.Limits.Measured, share => Passed(Kinetic([0.5, 0.5, 0.5, 0.5], 4, share), "plateau measured in KIN")),
        Below("BestKineticModel.Equivalent", BestKineticModel.Limits.Equivalent, apart => !Passed(Kinetic([0.5, 0.5, 0.5, 0.5], apart), "plateau measured in KIN")),
        Counted("CalibrationFit.Levels", CalibrationFit.Limits.Levels, n => Passed(CalibrationFit.Decide(new(n, [100], [], null, null), 90, 110), "levels")),
        Below("CalibrationFit.Drift", CalibrationFit.Limits.Drift, d => Passed(CalibrationFit.Decide(new(6, [100, 100 + d], [], null, null), 90, 110), "drift")),
        Below("CalibrationFit.Drift", CalibrationFit.Limits.Drift, d => Passed(CalibrationFit.Decide(new(6, [100, 100 - d], [], null, null), 90, 110), "drift")),
        Below("CalibrationFit window", 110, r => CalibrationFit.Decide(new(6, [r], [], null, null), 90, 110).Gated == Ruling.Holds),
        Above("CalibrationFit window", 90, r => CalibrationFit.Decide(new(6, [r], [], null, null), 90, 110).Gated == Ruling.Holds),
        Below("CalibrationFit blanks", 0.03, b => CalibrationFit.Decide(new(6, [100], [], b, 0.03), 90, 110).Gated == Ruling.Holds),
        Counted("Capacity.Levels", Capacity.Limits.Levels, n => Passed(Capacity.Decide(Fitted with { Levels = n }, null, 0.1, null), "concentrations")),
        Above("Capacity.Coverage", Capacity.Limits.Coverage, c => Passed(Capacity.Decide(Fitted with { Coverage = c }, null, 0.1, null), "coverage")),
        Above("Capacity.Coverage", Capacity.Limits.Coverage, c => Capacity.Decide(Fitted with { Coverage = c }, null, 0.1, null).Gated == Ruling.Holds),
        Below("Capacity lead of another curve", AiccDistance.ForFew - 2 * Step, t => Passed(Capacity.Decide(Fitted with { Trails = t + Step }, null, 0.1, null), "curve")),
        Below("Capacity ends of other curves", 1.1, e => Passed(Capacity.Decide(Fitted with { OtherEnds = [new("Toth", e)] }, null, 0.1, null), "other curves")),
        Above("Capacity ends of other curves", 0.9, e => Passed(Capacity.Decide(Fitted with { OtherEnds = [new("Toth", e)] }, null, 0.1, null), "other curves")),
        Below("Capacity interval", 11, h => Passed(Capacity.Decide(Fitted with { High = h }, null, 0.1, null), "interval")),
        Above("Capacity interval", 9, l => Passed(Capacity.Decide(Fitted with { Low = l }, null, 0.1, null), "interval")),
        Below("Capacity.Entangled", Capacity.Limits.Entangled, c => Capacity.Decide(Fitted with { Correlation = -c }, null, 0.1, null).Questions.IsEmpty),
        Above("Capacity lack of fit", 0.05, p => Capacity.Decide(Fitted with { LackOfFitP = p }, null, 0.1, null).Gated == Ruling.Holds),
        Below("Capacity beyond", 10.2, q => Capacity.Decide(Fitted with { HighestUptake = q }, null, 0.1, null).Ruling != Ruling.Contradicted),
        Above("Capacity away", 9.8 / 1.1, s => Capacity.Decide(Fitted, s, 0.1, null).Ruling != Ruling.Contradicted),
        Below("Capacity away", 10.2 / 0.9, s => Capacity.Decide(Fitted, s, 0.1, null).Ruling != Ruling.Contradicted),
        Counted("Chemisorption.Kinds", Chemisorption.Limits.Kinds, n => Chemisorption.Decide([.. Enumerable.Range(0, n).Select(i => new KindOfEvidence(FormattableString.Invariant($"kind {i}"), Ruling.Holds, "It speaks for a bond.", []))], releaseTested: true).Gated == Ruling.Holds),
        Below("ControlsClean.Tolerated", ControlsClean.Limits.Tolerated, l => ControlsClean.Decide([new("K", l)]).Gated == Ruling.Holds),
        Below("ControlsClean.Tolerated", ControlsClean.Limits.Tolerated, l => ControlsClean.Decide([new("K", -l)]).Gated == Ruling.Holds),
        Below("ControlsClean sure", ControlsClean.Limits.Tolerated + 0.01 * 1.6448536269514722, l => ControlsClean.Decide([new("K", Measured.From(l, new Source("k", "k", 0.01)))]).Gated != Ruling.Contradicted),
        Counted("DetectionLimit.Blanks", Holdfast.Claims.Rules.DetectionLimit.Limits.Blanks, n => Passed(Limit(n, 1), "blanks")),
        Below("DetectionLimit.LowestStandard", Holdfast.Claims.Rules.DetectionLimit.Limits.LowestStandard, s => Passed(Limit(10, s), "lowest standard")),
        Counted("Endothermic.Levels", Endothermic.Limits.Levels, n => Passed(Endothermic.Decide(Line, ConstantChoice.Molar, false, [8, n]), "levels")),
        Above("EquilibriumReached.LaterBy", EquilibriumReached.Limits.LaterBy, by => EquilibriumReached.Decide("KIN", 100, [At(100, 6, 6.01, 5.99), At(100 * by * 1.0005, 6, 6.01, 5.99)], -0.05, 0.05).Numbers.Length > 0, 0.002),
        Counted("EquilibriumReached.Replicates", EquilibriumReached.Limits.Replicates, n => Passed(EquilibriumReached.Decide("KIN", 120, [At(120, Many(n, 6)), At(240, Many(4, 6))], -0.05, 0.05), "vessels per time")),
        Counted("EquilibriumReached.Replicates", EquilibriumReached.Limits.Replicates, n => Passed(EquilibriumReached.Decide("KIN", 120, [At(120, Many(4, 6)), At(240, Many(n, 6))], -0.05, 0.05), "vessels per time")),
        Above("EquilibriumReached.NearPlateau", EquilibriumReached.Limits.NearPlateau, share => EquilibriumReached.Decide("KIN", 120, [At(30, 6 * share - 2, 6 * share, 6 * share + 2), At(120, Many(3, 6)), At(240, Many(3, 6))], -0.05, 0.05).Ruling != Ruling.Holds),
        Above("EquilibriumReached concentration", 0.95 * 20, t => Passed(EquilibriumReached.Decide("KIN", 120, [At(120, Many(3, 6)), At(240, Many(3, 6))], -0.05, 0.05, t, 20), "highest concentration")),
        Below("EquilibriumReached plateau", 6 / 0.95 - 2 * Step, p => Passed(EquilibriumReached.Decide("KIN", 120, [At(120, Many(3, 6)), At(240, Many(3, 6))], -0.05, 0.05, plateau: p + Step), "plateau of a curve")),
        Below("Favourable.LeastBend", Favourable.Limits.LeastBend + 0.01 * StudentDistribution.Quantile(0.95, 21), s => Favourable.Decide(new("1/n", 0.5, 0.02, 21, 24), new("Sips", s, 0.01, 21, 24)).Gated == Ruling.Holds),
        Below("Favourable.Sure", Favourable.Limits.LeastBend + 0.01 * StudentDistribution.Quantile(Favourable.Limits.Sure, 21), s => Favourable.Decide(new("1/n", 0.5, 0.02, 21, 24), new("Sips", s, 0.01, 21, 24)).Gated != Ruling.Contradicted),
        Counted("LinearCalibration.Levels", LinearCalibration.Limits.Levels, n => Passed(Straight(n, 0), "levels")),
        Below("LinearCalibration.Matters", LinearCalibration.Limits.Matters, m => Bent(m).Ruling != Ruling.Contradicted, 0.03),
        Below("LinearCalibration.HalfOfReadBack", LinearCalibration.Limits.HalfOfReadBack, h => Passed(Bent(h * Tolerable), "bend that could hide"), 0.05),
        Above("MassBalance.AskedBelow", MassBalance.Limits.AskedBelow, share => MassBalance.Decide(At(0, Many(4, 8)), At(0, Many(4, 8 * share * (1 + 1e-12))), 0.9, 1.1).Questions.IsEmpty),
        Counted("MassBalance.Replicates", MassBalance.Limits.Replicates, n => Passed(MassBalance.Decide(At(0, Many(n, 8)), At(0, Many(4, 8)), 0.9, 1.1), "replicates")),
        Counted("MassBalance.Replicates", MassBalance.Limits.Replicates, n => Passed(MassBalance.Decide(At(0, Many(4, 8)), At(0, Many(n, 8)), 0.9, 1.1), "replicates")),
        Counted("MeetsLimit.Replicates", MeetsLimit.Limits.Replicates, n => Passed(MeetsLimit.Decide(At(0, Many(n, 0.5)), 1, 0.1, 0.03), "vessels")),
        Below("MeetsLimit.QuantificationShare", MeetsLimit.Limits.QuantificationShare, q => Passed(MeetsLimit.Decide(At(0, Many(3, 0.5)), 1, q, 0.03), "quantification")),
        Below("MeetsLimit.UncertaintyShare", MeetsLimit.Limits.UncertaintyShare, u => Passed(MeetsLimit.Decide(At(0, 0.5 - u / 2, 0.5, 0.5 + u / 2), 1, 0.1, 0.03), "uncertainty")),
        Above("Monolayer.Low", Monolayer.Limits.Low + 0.01 * StudentDistribution.Quantile(0.95, 21), e => Monolayer.Decide(new("Sips", e, 0.01, 21, 24), null, null, 1, null).Gated == Ruling.Holds),
        Below("Monolayer.High", Monolayer.Limits.High - 0.01 * StudentDistribution.Quantile(0.95, 21), e => Monolayer.Decide(new("Sips", e, 0.01, 21, 24), null, null, 1, null).Gated == Ruling.Holds),
        Above("Monolayer.Low outside", Monolayer.Limits.Low - 0.01 * StudentDistribution.Quantile(0.95, 21), e => Monolayer.Decide(new("Sips", e, 0.01, 21, 24), null, null, 1, null).Gated != Ruling.Contradicted),
        Below("Monolayer.High outside", Monolayer.Limits.High + 0.01 * StudentDistribution.Quantile(0.95, 21), e => Monolayer.Decide(new("Sips", e, 0.01, 21, 24), null, null, 1, null).Gated != Ruling.Contradicted),
        Below("Monolayer.Room", Monolayer.Limits.Room, c => Monolayer.Decide(new("Sips", 1, 0.01, 21, 24), null, null, c, null).Gated == Ruling.Holds),
        Counted("NoInterference.Vessels", NoInterference.Limits.Vessels, n => Passed(NoInterference.Decide("IF", Ions(20, n)), "vessels")),
        Below("NotPrecipitation.Passing", NotPrecipitation.Limits.Passing, l => NotPrecipitation.Decide(6, 6.7, Nickel, At(0, 80, 80), At(0, 80 * l - 1e-4, 80 * l + 1e-4)).Gated == Ruling.Holds, 1e-3),
        Above("NotPrecipitation.Failing", NotPrecipitation.Limits.Failing, l => NotPrecipitation.Decide(6, 6.7, Nickel, At(0, 80, 80), At(0, 80 * l - 1e-4, 80 * l + 1e-4)).Gated == Ruling.Contradicted, 1e-3),
        Counted("OptimumDose.Doses", OptimumDose.Limits.Doses, n => Passed(OptimumDose.Decide(2, [.. Peak.Take(n)], 2), "doses")),
        Counted("OptimumDose.Replicates", OptimumDose.Limits.Replicates, n => Passed(OptimumDose.Decide(2, [.. Peak[..3], At(4, Many(n, 74))], 2), "vessels per dose")),
        Counted("OptimumPh.Levels", OptimumPh.Limits.Levels, n => Passed(OptimumPh.Decide(2, [.. Peak.Take(n).Select(s => new PhLevel(s, Ruling.Holds))], 2), "pH levels")),
        Counted("OptimumPh.Replicates", OptimumPh.Limits.Replicates, n => Passed(OptimumPh.Decide(2, [.. Peak[..3].Append(At(4, Many(n, 74))).Select(s => new PhLevel(s, Ruling.Holds))], 2), "vessels per pH")),
        Counted("OrderRandomised.Vessels", OrderRandomised.Limits.Vessels, n => OrderRandomised.Decide([new("run", [.. Enumerable.Range(0, n).Select(i => (double)(i * 2 % 5))])]).Numbers.Length > 0),
        Above("OrderRandomised.Correlation", OrderRandomised.Limits.Correlation, rho => OrderRandomised.Decide([new("run", PlanSamples.Order(rho))]).Gated != Ruling.Holds, 0.05),
        Below("PhRecorded.Spread", PhRecorded.Limits.Spread, s => Passed(PhRecorded.Decide([6, 6 + s], null, constantPh: true), "end pH spread")),
        Counted("QuenchingMechanism.Levels", QuenchingMechanism.Limits.Levels, n => Passed(QuenchingMechanism.Decide(isStatic: false, Lifetimes.Of(new("F0/F", 0.0162, 0.0003, 22, 24), new("τ0/τ", 0.0158, 0.0009, 7, 9)), n, 1, null), "levels")),
        Counted("RemovalFallsWithConcentration.Levels", RemovalFallsWithConcentration.Limits.Levels, n => Passed(RemovalFallsWithConcentration.Decide([.. Enumerable.Range(1, n).Select(i => At(i, Many(3, 90 - 5 * i)))], []), "concentrations")),
        Counted("RemovalFallsWithConcentration.Replicates", RemovalFallsWithConcentration.Limits.Replicates, n => Passed(RemovalFallsWithConcentration.Decide([At(10, Many(3, 90)), At(20, Many(3, 85)), At(30, Many(3, 80)), At(40, Many(n, 75))], []), "vessels per concentration")),
        Counted("Reproducible.Batches", Reproducible.Limits.Batches, n => Passed(Reproducible.Decide([.. Enumerable.Range(0, n).Select(i => new Group(FormattableString.Invariant($"B{i}"), [8, 8.1, 8.05]))], 0.1), "batches")),
        Counted("Reproducible.Replicates", Reproducible.Limits.Replicates, n => Passed(Reproducible.Decide([new("B1", [8, 8.1, 8.05]), new("B2", [8, 8.1, 8.05]), new("B3", [.. Many(n, 8)])], 0.1), "vessels per batch")),
        Counted("Reusable.Vessels", Reusable.Limits.Vessels, n => Passed(Reusable.Decide([At(1, Many(3, 8)), At(2, Many(3, 8)), At(3, Many(3, 8)), At(4, Many(3, 8)), At(5, Many(n, 7.6))], 5, 0.8, massIsKnown: true), "vessels")),
        Counted("Reusable cycles", 5, n => Passed(Reusable.Decide([.. Enumerable.Range(1, n).Select(k => At(k, Many(3, 8)))], 2, 0.8, massIsKnown: true), "cycles")),
        Counted("Selective.Vessels", Selective.Limits.Vessels, n => Passed(Selective.Decide([("Zn", [.. Many(n, 3).Select(v => (Measured)v)])], 1), "vessels")),
        Counted("SensorResponds.Levels", SensorResponds.Limits.Levels, n => Passed(SensorResponds.Decide(Response with { Levels = n }), "levels")),
        Counted("SensorResponds.Blanks", SensorResponds.Limits.Blanks, n => Passed(SensorResponds.Decide(Response with { Blanks = n }), "blanks")),
        Counted("SensorResponds.EnoughToDeny", SensorResponds.Limits.EnoughToDeny, n => SensorResponds.Decide(Response with { Slope = new("slope", 0.0001, 0.0003, n - 2, n) }).Gated == Ruling.Contradicted),
        Counted("SmallestSufficientDose.Replicates", SmallestSufficientDose.Limits.Replicates, n => Passed(SmallestSufficientDose.Decide(2, [At(1, Many(3, 70)), At(2, Many(3, 86)), At(3, Many(n, 86))], 2), "vessels per dose")),
        Counted("StableInWater.Replicates", StableInWater.Limits.Replicates, n => StableInWater.Decide([At(6, Many(n, 0.5))], [At(5, Many(3, 0.5)), At(6, Many(3, 0.5))], 0.02, "calcium").Numbers.Length > 0),
        Counted("WorksInWater.Vessels", WorksInWater.Limits.Vessels, n => Passed(WorksInWater.Decide(Water(3), n, 0.8, 1.1), "vessels")),
        Counted("WorksInWater.Additions", WorksInWater.Limits.Additions, n => Passed(WorksInWater.Decide(Water(n), 3, 0.8, 1.1), "additions")),
        Below("Selective.Level", Selective.Limits.Level, p => Selective.Decide([("Zn", Preferences(p))], 1).Gated == Ruling.Holds, 1e-3),
        Counted("Adequacy points", 2 + Adequacy.Limits.PointsBeyondParameters, n => Adequacy.Comparable(n, 2)),
        Counted("Adequacy usable", 2 + Adequacy.Limits.PointsBeyondParameters, n => Adequacy.Usable(n, 10, 2).Passed),
        Counted("Adequacy usable share", (int)(40 * Adequacy.Limits.UsableShare), n => Adequacy.Usable(n, 40, 2).Passed),
        Below("Adequacy scatter", Adequacy.Limits.Scatter, s => Adequacy.Scattered(s, true).Passed),
    ];

    public static TheoryData<int> Indices => [.. Enumerable.Range(0, Samples.Length)];

    private static ImmutableArray<Candidate> Curves => [Candidate.FromSquares("first", 0.1, 21, 2, 0.6), Candidate.FromSquares("second", 0.4, 21, 2, 0.5)];

    private static FittedCapacity Fitted => new("Langmuir", 10, 0.2, 9.8, 10.2, 0.9, 9.4, 34, null, -0.9, 24, 8);

    private static SensorResponse Response => new(new("slope", 0.0162, 0.0003, 22, 24), 5, 0.085, 0.55, 0.022, 0.04, 10, 10, Rising: false);

    private static Hydroxide Nickel => new("Ni(OH)2", 20e-3 / 58.693, 2, 5.48e-16);

    private static VantHoff Line => VantHoff.OfLogarithms([288.15, 298.15, 308.15, 318.15, 328.15], [9.70, 9.93, 10.13, 10.25, 10.44]).Value!;

    private static Setting[] Peak => [At(1, Many(3, 70)), At(2, Many(3, 86)), At(3, Many(3, 80)), At(4, Many(3, 74))];

    // A parabola through the origin whose line reads back worst by a given share: the size follows from its shape.
    private static double Tolerable => Straight(6, 0).Numbers.Length > 0 ? 20 : 0;

    [Theory]
    [MemberData(nameof(Indices))]
    public void Limit_AtItAndBeyond_FallApart(int index)
    {
        var (limit, atIt, beyond) = Samples[index];
        Assert.True(atIt(), $"{limit}: not met at the limit itself.");
        Assert.False(beyond(), $"{limit}: met beyond the limit.");
    }

    [Fact]
    public void Limits_OfEveryRule_HaveSamplesOnBothSides()
    {
        var all = Defence.Rules.SelectMany(r => r.GetType().GetNestedType("Limits")?.GetMembers(BindingFlags.Public | BindingFlags.Static).Where(m => m is FieldInfo or PropertyInfo).Select(f => $"{r.GetType().Name}.{f.Name}") ?? []).ToArray();
        Assert.True(all.Length > 40);
        Assert.Empty(all.Except(Samples.Select(s => s.Limit)).Except(NoCondition).Except(Elsewhere));
    }

    private static (string, Func<bool>, Func<bool>) Counted(string limit, int n, Func<int, bool> met) => (limit, () => met(n), () => met(n - 1));

    private static (string, Func<bool>, Func<bool>) Below(string limit, double value, Func<double, bool> met, double step = Step) => (limit, () => met(value * (1 - step)), () => met(value * (1 + step)));

    private static (string, Func<bool>, Func<bool>) Above(string limit, double value, Func<double, bool> met, double step = Step) => (limit, () => met(value * (1 + step)), () => met(value * (1 - step)));

    private static bool Passed(Decision decision, string gate) => decision.Gates.Single(g => g.Name == gate).Passed;

    private static Setting At(double x, params double[] values) => new(x, [.. values]);

    private static double[] Many(int n, double mean) => [.. Enumerable.Range(0, n).Select(i => mean * (1 + 0.001 * (i - (n - 1) / 2.0)))];

    // Three coefficients whose logarithms lie so far above 0 that the one-sided t test gives p.
    private static Measured[] Preferences(double p)
    {
        var t = StudentDistribution.Quantile(1 - p, 2);
        return [.. new[] { -0.01, 0, 0.01 }.Select(d => (Measured)Math.Exp(t * 0.01 / Math.Sqrt(3) + d))];
    }

    private static Decision Kinetic(double[] shares, double apart = 4, double last = 0.99)
    {
        Setting[] levels = [.. shares.Select((s, i) => At(i + 1, 10 * s)), At(60, 8.7), At(120, 10 * last)];
        Candidate first = new("first", 0, 21, 2, 0.6) { Plateau = 10 }, second = new("second", apart, 21, 2, 0.6) { Plateau = 20 };
        return BestKineticModel.Decide("first", [], [("KIN", [first, second], [.. levels], [])]);
    }

    private static Decision Limit(int blanks, double lowest)
        => Holdfast.Claims.Rules.DetectionLimit.Decide(Holdfast.Claims.Rules.DetectionLimit.Found([.. Enumerable.Range(0, blanks).Select(i => 0.001 + (i % 2 == 0 ? 0.0006 : -0.0006))], 0.06)!, 1, lowest);

    private static Decision Straight(int levels, double bend)
    {
        double[] noise = [0.0002, -0.0003, 0.0001, -0.0002, 0.0003, -0.0001, 0.0001];
        return LinearCalibration.Decide([.. Enumerable.Range(1, levels).SelectMany(x => Enumerable.Range(0, 3).Select(j => new StandardReading(x, 0.001 + 0.06 * x + bend * x * x + noise[(x + 2 * j) % 7])))], "run");
    }

    // Readings without scatter on a bend that makes the worst level read back wrong by a given number of per cent.
    private static Decision Bent(double percent)
    {
        double Worst(double bend) => LinearCalibration.Decide(Curve(bend), "run").Numbers.First(n => n.Name == "worst level read back").Value;
        double low = 0, high = 0.01;
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (Math.Abs(Worst(middle)) < percent)
                low = middle;
            else
                high = middle;
        }

        return LinearCalibration.Decide(Curve(low), "run");
    }

    private static StandardReading[] Curve(double bend)
        => [.. Enumerable.Range(1, 8).SelectMany(x => new[] { -1, 0, 1 }.Select(j => new StandardReading(x, 0.06 * x + bend * x * x + 1e-7 * j)))];

    private static ImmutableArray<IonEffect> Ions(double quencher, int n)
        => [.. Interference.Of([0.998, 1.002, 1.000, 1.003, 0.997], [("Ca", 50.0, (IReadOnlyList<double>)[0.999, 1.001, 1.0])]).Ions
            .Select(f => new IonEffect(f.Ion, 1000, quencher, f, null, [.. Enumerable.Range(0, n).Select(i => FormattableString.Invariant($"V-{i}"))]))];

    private static SpikedWater Water(int additions)
    {
        double[] added = [.. Enumerable.Range(0, additions + 1).SelectMany(i => Enumerable.Repeat(10.0 * i, 3))];
        return SpikedWater.Of(added, [.. added.Select((a, i) => 1.5 + a + 0.1 * (i % 3 - 1))]).Value!;
    }
}
