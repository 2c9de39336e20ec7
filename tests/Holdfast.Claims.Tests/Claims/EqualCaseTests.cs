using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Claims.Rules;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>
/// A number that lies exactly at a limit, beside <see cref="EdgeTests"/> with a step on either side: whether the limit itself still meets the condition, as each limit's words say ("at most",
/// "fewest", "largest" include it; "above", "below" do not). Numbers are chosen so that both sides are equal to the last bit.
/// </summary>
public sealed class EqualCaseTests
{
    private const double Quarter = 0.25;

    private static readonly ImmutableArray<(string Limit, bool Met, Func<bool> AtIt)> Samples =
    [
        ("BestKineticModel.EarlyShare", false, () => Passed(Kinetic([1, 2, 3, 10 * BestKineticModel.Limits.EarlyShare], 9.9), "early times in KIN")),
        ("BestKineticModel.Measured", true, () => Passed(Kinetic([3, 4, 5, 6], 10 * BestKineticModel.Limits.Measured), "plateau measured in KIN")),
        ("RisingPoints.From", false, () => Passed(Kinetic([1, 4, 5], 9.9), "times on the rise in KIN")),
        ("RisingPoints.To", false, () => Passed(Kinetic([4, 5, 8], 9.9), "times on the rise in KIN")),
        ("CalibrationFit low end of the window", true, () => Checks(90).Gated == Ruling.Holds),
        ("CalibrationFit high end of the window", true, () => Checks(110).Gated == Ruling.Holds),
        ("CalibrationFit blank at the detection limit", true, () => CalibrationFit.Decide(new(6, [100], [], 0.03, 0.03), 90, 110).Gated == Ruling.Holds),
        ("CalibrationFit.Drift", true, () => Passed(Checks(100, 100 + CalibrationFit.Limits.Drift), "drift")),
        ("CalibrationFit advice at the drift", false, () => Checks(100, 100 + CalibrationFit.Limits.Drift).Next!.Sentence.StartsWith("Recalibrate", StringComparison.Ordinal)),
        ("Capacity distance of curves", false, () => Passed(Capacity(Fitted with { Trails = AiccDistance.ForFew }), "curve")),
        ("Capacity.Coverage", true, () => Capacity(Fitted with { Coverage = Holdfast.Claims.Rules.Capacity.Limits.Coverage }).Gated == Ruling.Holds),
        ("Capacity coverage question", false, () => Capacity(Fitted with { Coverage = Holdfast.Claims.Rules.Capacity.Limits.Coverage }).Questions.Any(q => q.Code == "Q21")),
        ("Capacity uptake beyond", false, () => Capacity(Fitted with { HighestUptake = 10.2 }).Ruling == Ruling.Contradicted),
        ("Capacity away above", false, () => Capacity(Fitted with { Value = 10.2, Low = 10, High = 10.4 }, 8).Ruling == Ruling.Contradicted),
        ("Capacity away below", false, () => Capacity(Fitted with { Value = 11.9, Low = 11.8, High = 12 }, 16).Ruling == Ruling.Contradicted),
        ("Capacity near from below", false, () => Passed(Capacity(Fitted with { Value = 10, Low = 9, High = 11 }, 12), "stated capacity")),
        ("Capacity near from above", false, () => Passed(Capacity(Fitted with { Value = 9.9, Low = 9.5, High = 10 }, 8), "stated capacity")),
        ("Capacity interval", true, () => Passed(Capacity(Fitted with { Value = 8, Low = 7.5, High = 10, HighestUptake = 7 }), "interval")),
        ("Capacity ends of other curves", true, () => Passed(Capacity(Fitted with { OtherEnds = [new("Toth", 1 + Quarter)] }), "other curves")),
        ("Capacity lack of fit", true, () => Capacity(Fitted with { LackOfFitP = 0.05 }).Gated == Ruling.Holds),
        ("Chemisorption.Kinds", true, () => Chemisorption.Decide([.. Enumerable.Repeat(new KindOfEvidence("kind", Ruling.Holds, "It speaks for a bond.", []), Chemisorption.Limits.Kinds)], releaseTested: true).Ruling == Ruling.Holds),
        ("DetectionLimit.LowestStandard", true, () => Passed(Holdfast.Claims.Rules.DetectionLimit.Decide(Found, 1, Holdfast.Claims.Rules.DetectionLimit.Limits.LowestStandard), "lowest standard")),
        ("DetectionLimit high end", true, () => Holdfast.Claims.Rules.DetectionLimit.Decide(Found, Found.Interval!.Value.High, 0.01).Ruling == Ruling.Holds),
        ("DetectionLimit low end", false, () => Holdfast.Claims.Rules.DetectionLimit.Decide(Found, Found.Interval!.Value.Low, 0.01).Ruling == Ruling.Contradicted),
        ("EquilibriumReached concentration", true, () => Passed(EquilibriumReached.Decide("KIN", 120, [At(120, 6, 6.01, 5.99), At(240, 6, 6.01, 5.99)], -0.05, 0.05, 19, 20), "highest concentration")),
        ("MeetsLimit.QuantificationShare", true, () => Passed(MeetsLimit.Decide(At(0, 0.5, 0.51, 0.49), 1, MeetsLimit.Limits.QuantificationShare, null), "quantification")),
        ("MeetsLimit advice at the quantification share", false, () => MeetsLimit.Decide(At(0, 0.5, 0.51, 0.49), 1, MeetsLimit.Limits.QuantificationShare, null).Next!.Sentence.StartsWith("Use a method", StringComparison.Ordinal)),
        ("MeetsLimit.UncertaintyShare", true, () => Passed(MeetsLimit.Decide(At(0, 0.25, 0.5, 0.75), 1, 0.1, null), "uncertainty")),
        ("MeetsLimit question at the limit", false, () => MeetsLimit.Decide(At(0, 0.5, 0.51, 0.49), 1, 1, 1).Questions.Any(q => q.Code == "Q49")),
        ("MeetsLimit readings at the detection limit", false, () => MeetsLimit.Decide(At(0, 0.25, 0.5), 1, null, 0.5).Reason.Contains("lie below", StringComparison.Ordinal)),
        ("MeetsLimit readings at the quantification limit", false, () => MeetsLimit.Decide(At(0, 0.25, 0.5), 1, 0.5, null).Reason.Contains("lie below", StringComparison.Ordinal)),
        ("ModelChoice lead that contradicts", true, () => Choice(AiccDistance.ForFew, 0, 0.6).Ruling == Ruling.Contradicted),
        ("ModelChoice misfit", true, () => Choice(0, 10, 0.05).Ruling == Ruling.Holds),
        ("Monolayer.Room", true, () => Monolayer.Decide(new("Sips", 1, 0.01, 21, 24), null, null, Monolayer.Limits.Room, null).Gated == Ruling.Holds),
        ("OutletMeetsLimit lowest of the isotherm", true, () => Passed(OutletMeetsLimit.DecideStage(Measured.From(0.5, new Source("left", "left", 0.01)), 1, 0.5, sameWater: true), "within the data")),
        ("OutletMeetsLimit without an uncertainty", false, () => OutletMeetsLimit.DecideStage(0.5, 1, 0.2, sameWater: true).Numbers.Length > 0),
        ("PhRecorded at saturation", true, () => PhRecorded.Decide([6.5], 6.5, constantPh: true).Ruling == Ruling.Contradicted),
        ("PhRecorded near saturation", true, () => PhRecorded.Decide([6.0], 6.5, constantPh: true).Ruling == Ruling.NotShownYet),
        ("RegeneratedBetter start pH", true, () => Passed(RegeneratedBetter.Decide(RegeneratedBetter.Paired([8.02, 7.95, 8.10, 8.0], [8.35, 8.31, 8.38, 8.36]), massIsKnown: true, BatchSorption.Attribution.LargestPHShift), "start pH")),
        ("SensorResponds drift as large as the response", true, () => Responds(Quarter, 0.5, 0.1, 0.5).Ruling == Ruling.Contradicted),
        ("SensorResponds response at the critical value", false, () => Responds(0.0625 + Math.Sqrt(2) * 0.0625, 0.5, 0.0625, 0.0625).Ruling == Ruling.Holds),
        ("Adequacy scatter", true, () => Adequacy.Scattered(Adequacy.Limits.Scatter, replicated: true).Passed),
        ("LinearCalibration three levels", true, () => LinearCalibration.Decide([new(1, 0.061), new(1, 0.062), new(2, 0.121), new(2, 0.12), new(3, 0.181), new(3, 0.183)], "run").Numbers.Length > 0),
        ("Reusable two cycles claimed", true, () => Defence.RuleNamed("reusable")!.Judge(Made.Claim("reusable", ("series", "REUSE"), ("cycles", "2")), DemoStudy.Textbook).Sentence.Contains("used 2 times", StringComparison.Ordinal)),
        ("LinearCalibration level at the detection limit", true, () => LinearCalibration.Decide(Standards, "run", "mg/L", 1).Warnings.All(w => !w.Contains("below the detection limit", StringComparison.Ordinal))),
    ];

    public static TheoryData<int> Indices => [.. Enumerable.Range(0, Samples.Length)];

    private static FittedCapacity Fitted => new("Langmuir", 10, 0.2, 9.8, 10.2, 0.9, 9.4, 34, null, -0.9, 24, 8);

    private static Calibration.DetectionLimit Found => Holdfast.Claims.Rules.DetectionLimit.Found([0.001, 0.002, 0.0015, 0.0012, 0.0018, 0.0011, 0.0016, 0.0013, 0.0017, 0.0014], 0.06)!;

    private static Calibration.StandardReading[] Standards => [.. Enumerable.Range(1, 6).SelectMany(x => new[] { -1e-4, 0, 1e-4 }.Select(e => new Calibration.StandardReading(x, 0.06 * x + e * (x % 2 == 0 ? 1 : -1))))];

    [Theory]
    [MemberData(nameof(Indices))]
    public void Limit_AtItself_IsMetAsItsWordsSay(int index) => Assert.True(Samples[index].Met == Samples[index].AtIt(), Samples[index].Limit);

    private static bool Passed(Decision decision, string gate) => decision.Gates.Single(g => g.Name == gate).Passed;

    private static Setting At(double x, params double[] values) => new(x, [.. values]);

    private static Decision Checks(params double[] recoveries) => CalibrationFit.Decide(new(6, [.. recoveries], [], null, null), 90, 110);

    private static Decision Capacity(FittedCapacity found, double? stated = null) => Holdfast.Claims.Rules.Capacity.Decide(found, stated, Quarter, null);

    private static Decision Responds(double response, double top, double critical, double drift)
        => SensorResponds.Decide(new(new("slope", 0.0162, 0.0003, 22, 24), 5, response, top, critical, drift, 10, 10, Rising: false));

    private static Decision Choice(double first, double second, double lackOfFit)
        => BestIsotherm.Decide("first", [], "ISO", [new("first", first, 24, 2, lackOfFit), new("second", second, 24, 2, 0.5)], 8);

    private static Decision Kinetic(double[] early, double last)
    {
        Setting[] levels = [.. early.Select((q, i) => At(i + 1, q)), At(60, 8.7), At(120, last)];
        return BestKineticModel.Decide("first", [], [("KIN", [new("first", 0, 21, 2, 0.6) { Plateau = 10 }, new("second", 9, 21, 2, 0.6) { Plateau = 10 }], [.. levels], [])]);
    }
}
