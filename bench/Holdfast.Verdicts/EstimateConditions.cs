using Holdfast.Amounts;
using Holdfast.Calibration;
using Holdfast.Claims.Rules;
using Holdfast.Competition;
using Holdfast.Fluorescence;
using Holdfast.Statistics;
using static Holdfast.Verdicts.NumberConditions;

namespace Holdfast.Verdicts;

/// <summary>Rules that judge estimates from lines, spectra and columns: an estimate is drawn about its truth, its standard error about its own, and given to the rule's decision.</summary>
internal static class EstimateConditions
{
    /// <summary>Rules without a row, and why chance has no part in what they say.</summary>
    public static IReadOnlyDictionary<string, string> WithoutChance { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["blocks-complete"] = "says what is on record",
        ["chemisorption"] = "counts kinds of evidence that are judged by their own rules",
        ["low-cost"] = "propagates the ranges that the author states; they have no hidden truth",
        ["margins-fixed-before"] = "says what is on record",
        ["order-randomised"] = "judges the order on record against the one limit of the plan; that chance alone passes it follows from Spearman's coefficient",
        ["ph-recorded"] = "says what is on record",
        ["replicates-as-planned"] = "says what is on record",
        ["readings-inside-range"] = "says what is on record",
    };

    /// <summary>All of them.</summary>
    public static IEnumerable<Condition> All() => OfLevels().Concat(OfLines()).Concat(OfSensors());

    private static IEnumerable<Condition> OfLevels()
    {
        PhLevel[] Levels(SeededStream chance, params double[] means) => [.. means.Select((m, i) => new PhLevel(Setting(chance, i + 3, m, 1, 3), Ruling.Holds, i + 3.2))];
        yield return new("optimum-ph", "beats both neighbours by 6 points, sd 1 point, n = 3", Truth.True, Ruled("optimum-ph 1", chance => OptimumPh.Decide(5, Levels(chance, 60, 76, 86, 80, 74), 2)));
        yield return new("optimum-ph", "a neighbour removes as much", Truth.Margin, Ruled("optimum-ph 2", chance => OptimumPh.Decide(5, Levels(chance, 60, 76, 86, 86, 74), 2)));
        yield return new("optimum-ph", "another pH removes 6 points more", Truth.False, Ruled("optimum-ph 3", chance => OptimumPh.Decide(5, Levels(chance, 60, 70, 80, 86, 74), 2)));
        yield return new("optimum-ph", "removes most, and precipitates", Truth.False, Ruled("optimum-ph 4", chance => OptimumPh.Decide(7, [.. Levels(chance, 60, 76, 86, 80), new PhLevel(Setting(chance, 7, 99, 1, 3), Ruling.Contradicted, 7.2)], 2)));

        // The window is on the reading of a check standard itself, by the convention of quality control: at its edge a reading passes or fails by chance.
        (string, double, Truth)[] checks = [("right", 100, Truth.True), ("20 % too high", 120, Truth.False)];
        foreach (var (name, mean, truth) in checks)
        {
            yield return new("calibration-fit", $"two check standards, sd 2 %, window 90 to 110 %, on the reading itself: {name}", truth, Ruled("checks " + name, chance => CalibrationFit.Decide(
                new(6, [.. Draw(chance, mean, 2, 2)], [], 0.3 * 0.03 * chance.Normal(), 0.03), 90, 110)));
        }

        foreach (var c in Three("outlet-meets-limit", "three beds last 280, 240, 200 min, sd 8 min, 240 min claimed", [280.0, 240, 200],
            (chance, minutes) => OutletMeetsLimit.DecideBed(Setting(chance, 0, minutes, 8, 3), 240)))
            yield return c;
        foreach (var c in Three("outlet-meets-limit", "the isotherm leaves 0.5, 1, 1.5 limits, u 0.1 limit", [0.5, 1, 1.5],
            (chance, left) => OutletMeetsLimit.DecideStage(Measured.From(left + 0.1 * chance.Normal(), new Source("isotherm", "isotherm", 0.1)), 1, 0.01, sameWater: true)))
            yield return c;
    }

    private static IEnumerable<Condition> OfLines()
    {
        foreach (var c in Three("ion-exchange", "released per sorbed 1, 0.90, 0.75, standard error 0.03, four loadings × 3, margin 10 %", [1.0, 0.90, 0.75],
            (chance, slope) => IonExchange.Decide(new ExchangeRatio(Found("line with errors in both", slope + 0.03 * chance.Normal(), 0.03, chance, 10), 0.002, 0.01), 4, 3, atEndPh: true, 1, -0.1, 0.1)))
            yield return c;
        (string Name, double Size, double Stirring, double Start, Truth Truth)[] steps =
        [
            ("spheres", 2, 1, 0, Truth.True), ("stirring speeds it up by the margin", 2, 1 + RateStep.Limits.Margin, 0, Truth.Margin), ("a film", 1, 1.41, 0, Truth.False), ("uptake at once of 0.3 mg/g", 2, 1, 0.3, Truth.False),
        ];
        foreach (var (name, size, stirring, start, truth) in steps)
        {
            yield return new("rate-step", $"u of the size exponent 0.15, of the stirring ratio 3 %, of uptake at √t = 0 0.05 mg/g: {name}", truth, Ruled("step " + name, chance => RateStep.Decide(new(
                Found("slope of ln k on ln d", size + 0.15 * chance.Normal(), 0.15, chance, 20), Found("ratio", stirring * Math.Exp(0.03 * chance.Normal()), 0.03, chance, 20) with { Scale = Scale.Logarithmic },
                [Found("uptake at √t = 0", start + 0.05 * chance.Normal(), 0.05, chance, 7)], 0.02))));
        }
    }

    private static IEnumerable<Condition> OfSensors()
    {
        (string Name, double Lifetime, Truth Truth)[] mechanisms = [("dynamic", 0.016, Truth.True), ("both at once", 0.008, Truth.False), ("static", 0, Truth.False)];
        foreach (var (name, lifetime, truth) in mechanisms)
        {
            yield return new("quenching-mechanism", $"dynamic claimed, constant of the signals 0.016 ± 0.0003 L/µmol, of the lifetimes ± 0.0012: {name}", truth, Ruled("mechanism " + name, chance => QuenchingMechanism.Decide(
                isStatic: false, Lifetimes.Of(Found("F0/F", 0.016 + 0.0003 * chance.Normal(), 0.0003, chance, 22), Found("τ0/τ", lifetime + 0.0012 * chance.Normal(), 0.0012, chance, 7)), 3, 1.0002, null)));
        }

        foreach (var c in Three("sensor-detection-limit", "stated at 2.5, 1, 0.4 times the true limit, ten blanks of sd 1.2 %", [2.5, 1, 0.4],
            (chance, times) => Holdfast.Claims.Rules.DetectionLimit.Decide(
                SensorLimits.OnLine(Draw(chance, 1000, 12, 10), 0.0162).Single(l => l.Definition == LimitDefinition.ThreePointThreeSd), times * 3.3 * 0.012 / 0.0162, 2, "µmol/L")))
            yield return c;
        double[] levels = [0, 5, 10, 20, 30, 40, 60];
        (string, double, Truth)[] bends = [("no bend", 0, Truth.True), .. Bends(levels)];
        foreach (var (name, bend, truth) in bends)
        {
            yield return new("sensor-linear", $"seven levels to 60 µmol/L, n = 3, sd 0.4 % of F0/F: {name}", truth, Ruled("sensor " + name, chance => LinearCalibration.Decide(
                [.. levels.SelectMany(q => Enumerable.Range(0, 3).Select(_ => new StandardReading(q, (1 + 0.016 * q * (1 - bend * q / 60)) * (1 + 0.004 * chance.Normal()))))], "FLUOR", "µmol/L", 2.4)));
        }

        (string Name, double Slope, double Lost, double Drift, Truth Truth)[] responses =
        [
            ("8 % lost at the lowest level", 0.016, 0.08, 0.02, Truth.True), ("drift takes what the lowest level takes", 0.016, 0.05, 0.05, Truth.False), ("no response", 0, 0, 0.01, Truth.False),
        ];
        foreach (var (name, slope, lost, drift, truth) in responses)
        {
            yield return new("sensor-responds", $"ten blanks of sd 1.2 %, three vessels a level: {name}", truth, Ruled("responds " + name, chance =>
            {
                var blanks = Draw(chance, 1, 0.012, 10);
                double Seen(double share) => share + 0.012 / Math.Sqrt(3) * chance.Normal() - (blanks.Average() - 1);
                var critical = StudentDistribution.Quantile(0.95, 9) * Summary.Of(blanks).Sd!.Value;
                return SensorResponds.Decide(new(Found("slope", slope + 0.0005 * chance.Normal(), 0.0005, chance, 19), 5, Seen(lost), slope == 0 ? Seen(0) : 0.5, critical, drift + 0.012 * chance.Normal(), 7, 10, Rising: false));
            }));
        }
    }
}
