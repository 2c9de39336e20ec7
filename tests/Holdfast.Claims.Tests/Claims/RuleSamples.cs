using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Calibration;
using Holdfast.Claims.NextExperiments;
using Holdfast.Claims.Rules;
using Holdfast.Statistics;
using static System.FormattableString;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>For every rule one sample of plain numbers for each ruling: what a reader would expect to hold, to be open, to be contradicted.</summary>
internal static class RuleSamples
{
    private static readonly Lazy<ImmutableArray<(string Rule, Ruling Expected, Decision Decision)>> Made = new(() => [.. Make(), .. ReuseSamples.Make(), .. WaterSamples.Make(), .. Rules.RateStepTests.Samples, .. PlanSamples.Make()]);

    /// <summary>Rule id, the ruling expected, and the decision on the sample.</summary>
    public static ImmutableArray<(string Rule, Ruling Expected, Decision Decision)> All => Made.Value;

    private static IEnumerable<(string Rule, Ruling Expected, Decision Decision)> Make()
        => OfSorption().Concat(SensorSamples.All);

    private static IEnumerable<(string Rule, Ruling Expected, Decision Decision)> OfSorption()
    {
        Setting[] interior = Levels((1, [71.2, 70.1, 72.0]), (2, [84.9, 86.2, 85.5]), (3, [80.1, 79.0, 78.7]), (4, [74, 75, 73]));
        Setting[] rising = Levels((1, [71.2, 70.1, 72.0]), (2, [84.9, 86.2, 85.5]), (3, [86.1, 85.0, 84.7]), (4, [85.8, 85.1, 85.6]));
        yield return ("optimum-dose", Ruling.Holds, OptimumDose.Decide(2, interior, 2));
        yield return ("optimum-dose", Ruling.NotShownYet, OptimumDose.Decide(2, rising, 2));
        yield return ("optimum-dose", Ruling.Contradicted, OptimumDose.Decide(1, rising, 2));

        Setting[] noisy = Levels((1, [70, 75, 80]), (2, [82, 86, 90]), (3, [83, 87, 92]));
        yield return ("smallest-sufficient-dose", Ruling.Holds, SmallestSufficientDose.Decide(2, rising, 2));
        yield return ("smallest-sufficient-dose", Ruling.NotShownYet, SmallestSufficientDose.Decide(2, noisy, 2));
        yield return ("smallest-sufficient-dose", Ruling.Contradicted, SmallestSufficientDose.Decide(1, rising, 2));

        yield return ("equilibrium-reached", Ruling.Holds, EquilibriumReached.Decide("KIN", 120, Levels((120, [5.92, 6.05, 5.98]), (180, [6.02, 6.10, 5.95])), -0.05, 0.05));
        yield return ("equilibrium-reached", Ruling.NotShownYet, EquilibriumReached.Decide("KIN", 120, Levels((120, [5.2, 6.5, 5.9]), (180, [6.6, 5.3, 6.1])), -0.05, 0.05));
        yield return ("equilibrium-reached", Ruling.Contradicted, EquilibriumReached.Decide("KIN", 120, Levels((120, [5.52, 5.61, 5.47]), (180, [6.02, 6.10, 5.95])), -0.05, 0.05));

        yield return ("removal-falls-with-concentration", Ruling.Holds, RemovalFallsWithConcentration.Decide(Levels((10, [92.4, 91.8, 92.9]), (20, [88.1, 89.0, 87.6]), (40, [81.2, 80.5, 82.2]), (80, [66.0, 67.1, 65.2])), []));
        yield return ("removal-falls-with-concentration", Ruling.NotShownYet, RemovalFallsWithConcentration.Decide(Levels((10, [92, 88]), (20, [89, 91]), (40, [90, 92]), (80, [88, 90])), []));
        yield return ("removal-falls-with-concentration", Ruling.Contradicted, RemovalFallsWithConcentration.Decide(Levels((10, [66.0, 67.1]), (20, [81.2, 80.5]), (40, [88.1, 89.0]), (80, [92.4, 91.8])), []));

        var design = new LangmuirDesign(13.5, 0.37, 2);
        yield return ("capacity", Ruling.Holds, Capacity.Decide(Fitted(0.93, 12.97, 14.06, 12.8), 13.5, 0.10, design));
        yield return ("capacity", Ruling.NotShownYet, Capacity.Decide(Fitted(0.52, 11.0, null, 7.0), 13.5, 0.10, design));
        yield return ("capacity", Ruling.Contradicted, Capacity.Decide(Fitted(0.93, 12.97, 14.06, 12.8), 18, 0.10, design));

        Setting[] early = Levels((5, [1.1]), (10, [1.6]), (15, [1.85]), (20, [2.05]), (25, [2.2]), (60, [2.5]), (120, [2.55]));
        yield return ("best-kinetic-model", Ruling.Holds, BestKineticModel.Decide("first", [], [("KIN", Curves(0.1, 0.4, 0.6), [.. early], [])]));
        yield return ("best-kinetic-model", Ruling.NotShownYet, BestKineticModel.Decide("first", [], [("KIN", Curves(0.1, 0.11, 0.6), [.. early], [])]));
        yield return ("best-kinetic-model", Ruling.Contradicted, BestKineticModel.Decide("first", [], [("KIN", Curves(0.4, 0.1, 0.6), [.. early], [])]));

        yield return ("best-isotherm", Ruling.Holds, BestIsotherm.Decide("first", [], "ISO", Curves(0.1, 0.4, 0.6), 8));
        yield return ("best-isotherm", Ruling.NotShownYet, BestIsotherm.Decide("first", [], "ISO", Curves(0.1, 0.4, 0.01), 8));
        yield return ("best-isotherm", Ruling.Contradicted, BestIsotherm.Decide("first", [], "ISO", Curves(0.4, 0.1, 0.6), 8));

        yield return ("monolayer", Ruling.Holds, Monolayer.Decide(Exponent(1.0, 0.02), 2, 0.6, 0.97, null));
        yield return ("monolayer", Ruling.NotShownYet, Monolayer.Decide(Exponent(0.89, 0.07), -0.1, 0.12, 0.97, null));
        yield return ("monolayer", Ruling.Contradicted, Monolayer.Decide(Exponent(1.0, 0.02), 2, 0.6, 1.8, null));

        yield return ("favourable", Ruling.Holds, Favourable.Decide(Exponent(0.48, 0.05)));
        yield return ("favourable", Ruling.NotShownYet, Favourable.Decide(Exponent(0.95, 0.10)));
        yield return ("favourable", Ruling.Contradicted, Favourable.Decide(Exponent(1.31, 0.05)));

        yield return ("mass-balance", Ruling.Holds, MassBalance.Decide(At(0, 8.22, 8.15, 8.17), At(0, 7.64, 7.73, 7.74), 0.90, 1.10));
        yield return ("mass-balance", Ruling.NotShownYet, MassBalance.Decide(At(0, 8.22, 8.15, 8.17), At(0, 7.0, 7.9, 7.4), 0.90, 1.10));
        yield return ("mass-balance", Ruling.Contradicted, MassBalance.Decide(At(0, 8.22, 8.15, 8.17), At(0, 6.04, 6.13, 6.14), 0.90, 1.10));

        yield return ("linear-calibration", Ruling.Holds, LinearCalibration.Decide(Standards(0), "run"));
        yield return ("linear-calibration", Ruling.NotShownYet, LinearCalibration.Decide([.. Standards(0).Where(s => s.Level is 0 or 1 or 2)], "run"));
        yield return ("linear-calibration", Ruling.Contradicted, LinearCalibration.Decide(Standards(-0.002), "run"));

        double[] blanks = [0.0011, 0.0006, -0.0008, 0.0005, 0.0014, 0.0010, 0.0013, 0.0008, 0.0015, 0.0009];
        var limit = Holdfast.Claims.Rules.DetectionLimit.Found(blanks, 0.06)!;
        yield return ("detection-limit", Ruling.Holds, Holdfast.Claims.Rules.DetectionLimit.Decide(limit, 0.1, 0.5));
        yield return ("detection-limit", Ruling.NotShownYet, Holdfast.Claims.Rules.DetectionLimit.Decide(limit, 0.036, 0.5));
        yield return ("detection-limit", Ruling.Contradicted, Holdfast.Claims.Rules.DetectionLimit.Decide(limit, 0.02, 0.5));

        yield return ("meets-limit", Ruling.Holds, MeetsLimit.Decide(At(0, 0.653, 0.685, 0.57), 2.38, 0.109, 0.036));
        yield return ("meets-limit", Ruling.NotShownYet, MeetsLimit.Decide(At(0, 0.0077, 0.011, 0.0145), 0.02, 0.109, 0.036));
        yield return ("meets-limit", Ruling.Contradicted, MeetsLimit.Decide(At(0, 0.653, 0.685, 0.57), 0.02, 0.109, 0.036));

        yield return ("reproducible", Ruling.Holds, Reproducible.Decide(Batches([8.02, 8.05, 7.98], [8.06, 8.0, 8.03], [7.99, 8.04, 8.01]), 0.10));
        yield return ("reproducible", Ruling.NotShownYet, Reproducible.Decide(Batches([8.0, 8.2, 7.9], [8.4, 8.6, 8.5], [7.8, 7.7, 7.9]), 0.10));
        yield return ("reproducible", Ruling.Contradicted, Reproducible.Decide(Batches([8.0, 8.2, 7.9], [10.4, 10.6, 10.5], [7.8, 7.7, 7.9]), 0.10));

        ImmutableArray<Gate> same = [new("pH", true, "own pH 6, theirs 6"), new("temperature", true, "own temperature 298 K, theirs 298 K")];
        yield return ("better-than-published", Ruling.Holds, BetterThanPublished.Decide(new("own", 11.0, 0.2, 20, 24), 9.1, 0.3, same));
        yield return ("better-than-published", Ruling.NotShownYet, BetterThanPublished.Decide(new("own", 11.0, 0.2, 20, 24), 9.1, null, same));
        yield return ("better-than-published", Ruling.Contradicted, BetterThanPublished.Decide(new("own", 11.0, 0.2, 20, 24), 14.0, 0.3, same));

        yield return ("controls-clean", Ruling.Holds, ControlsClean.Decide([new("K-1", U(0.004, 0.007)), new("K-2", U(0.02, 0.007))]));
        yield return ("controls-clean", Ruling.NotShownYet, ControlsClean.Decide([new("K-1", U(0.08, 0.06))]));
        yield return ("controls-clean", Ruling.Contradicted, ControlsClean.Decide([new("K-1", U(0.40, 0.006))]));

        yield return ("ph-recorded", Ruling.Holds, PhRecorded.Decide([5.0, 5.1, 5.0], 5.9, constantPh: true));
        yield return ("ph-recorded", Ruling.NotShownYet, PhRecorded.Decide([5.0, null, 5.0], null, constantPh: true));
        yield return ("ph-recorded", Ruling.Contradicted, PhRecorded.Decide([6.4, 6.3, 6.4], 5.9, constantPh: true));

        var nickel = new Hydroxide("Ni(OH)2", 20e-3 / 58.693, 2, 5.48e-16);
        yield return ("not-precipitation", Ruling.Holds, NotPrecipitation.Decide(6, 6.7, nickel, At(0, 80.1, 80.3), At(0, -0.2, 0.3)));
        yield return ("not-precipitation", Ruling.NotShownYet, NotPrecipitation.Decide(8, 7.6, nickel, At(0, 91, 90.5), At(0, 1.2, 1.3)));
        yield return ("not-precipitation", Ruling.Contradicted, NotPrecipitation.Decide(9, 8.4, nickel, At(0, 98, 99), At(0, 70.3, 71.8)));

        yield return ("readings-inside-range", Ruling.Holds, ReadingsInsideRange.Decide([("V-1", 0.10, 1), ("V-2", 0.11, 5), ("V-2", 0.30, 1)], 0.216));
        yield return ("readings-inside-range", Ruling.NotShownYet, ReadingsInsideRange.Decide([], 0.216));
        yield return ("readings-inside-range", Ruling.Contradicted, ReadingsInsideRange.Decide([("V-1", 0.10, 1), ("V-2", 0.30, 1)], 0.216));

        yield return ("calibration-fit", Ruling.Holds, CalibrationFit.Decide(new(6, [98, 101, 99], [new(2.10, 2.40, 0.03)], 0.001, 0.03), 90, 110));
        yield return ("calibration-fit", Ruling.NotShownYet, CalibrationFit.Decide(new(6, [], [], 0.001, 0.03), 90, 110));
        yield return ("calibration-fit", Ruling.Contradicted, CalibrationFit.Decide(new(6, [98, 111.5], [], 0.001, 0.03), 90, 110));

        var release = new KindOfEvidence("release", Ruling.Holds, "Plain water took off 3 %.", []);
        yield return ("chemisorption", Ruling.Holds, Chemisorption.Decide([release, new("spectra", Ruling.Holds, "A band moved by 12 cm⁻¹.", [])], releaseTested: true));
        yield return ("chemisorption", Ruling.NotShownYet, Chemisorption.Decide([], releaseTested: false));
        yield return ("chemisorption", Ruling.Contradicted, Chemisorption.Decide([release with { Ruling = Ruling.Contradicted }], releaseTested: true));
    }

    private static Setting[] Levels(params (double X, double[] Values)[] levels) => [.. levels.Select(l => new Setting(l.X, [.. l.Values]))];

    private static Setting At(double x, params double[] values) => new(x, [.. values]);

    private static Measured U(double value, double u) => Measured.From(value, new Source("control", "control", u));

    private static Estimate Exponent(double value, double error) => new("exponent", value, error, 21, 24);

    private static FittedCapacity Fitted(double coverage, double? low, double? high, double highest)
        => new("Langmuir", 13.5, 0.26, low, high, coverage, highest, 34, null, -0.9, 24, 8);

    private static Statistics.Group[] Batches(params double[][] batches) => [.. batches.Select((b, i) => new Statistics.Group(Invariant($"B{i + 1}"), b))];

    private static ImmutableArray<Candidate> Curves(double first, double second, double lackOfFit)
        =>
        [
            Candidate.FromSquares("first", first, 21, 2, lackOfFit) with { Plateau = 2.6 },
            Candidate.FromSquares("second", second, 21, 2, 0.5) with { Plateau = 2.6 },
        ];

    private static StandardReading[] Standards(double bend)
    {
        double[] noise = [0.0002, -0.0003, 0.0001, -0.0002, 0.0003, -0.0001, 0.0001];
        double[] levels = [0, 0.5, 1, 1.5, 2, 3, 4];
        return [.. levels.SelectMany((x, i) => Enumerable.Range(0, 3).Select(j => new StandardReading(x, 0.001 + 0.06 * x + bend * x * x + noise[(i + 2 * j) % 7])))];
    }
}
