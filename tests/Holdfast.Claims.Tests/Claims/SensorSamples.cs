using System.Collections.Immutable;
using Holdfast.Calibration;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.Rules;
using Holdfast.Fluorescence;
using Holdfast.Statistics;

namespace Holdfast.Claims.Tests.Claims;

/// <summary>For every rule about a sensor one sample of plain numbers for each ruling.</summary>
internal static class SensorSamples
{
    private const double Half = 0.012 * 0.9486832980505138;

    /// <summary>Rule id, the ruling expected, and the decision on the sample.</summary>
    public static IEnumerable<(string Rule, Ruling Expected, Decision Decision)> All
    {
        get
        {
            var slope = new Estimate("slope", 0.0162, 0.0003, 22, 24);
            var response = new SensorResponse(slope, 5, 0.085, 0.55, 0.022, 0.04, 10, 10, Rising: false);
            yield return ("sensor-responds", Ruling.Holds, SensorResponds.Decide(response));
            yield return ("sensor-responds", Ruling.NotShownYet, SensorResponds.Decide(response with { Drift = null, Rising = true }));
            yield return ("sensor-responds", Ruling.NotShownYet, SensorResponds.Decide(response with { Drift = 0.07 }));
            yield return ("sensor-responds", Ruling.NotShownYet, SensorResponds.Decide(response with { Blanks = 5 }));
            yield return ("sensor-responds", Ruling.Contradicted, SensorResponds.Decide(response with { Slope = slope with { Value = 0.0002 } }));
            yield return ("sensor-responds", Ruling.Contradicted, SensorResponds.Decide(response with { Drift = 0.60 }));

            // decision-check.csv K20 with ten blanks of sd 0.012 on F0/F at slope 0.0162: 1.68 to 4.46 µmol/L.
            double[] blanks = [.. Enumerable.Range(0, 10).Select(i => 1 / (1 + (i % 2 == 0 ? Half : -Half)))];
            var limit = SensorLimits.OnLine([.. blanks.Select(b => b * 1000)], 0.0162).Single(l => l.Definition == LimitDefinition.ThreePointThreeSd);
            yield return ("sensor-detection-limit", Ruling.Holds, Holdfast.Claims.Rules.DetectionLimit.Decide(limit, 5, 2, "µmol/L"));
            yield return ("sensor-detection-limit", Ruling.NotShownYet, Holdfast.Claims.Rules.DetectionLimit.Decide(limit, 2, 2, "µmol/L"));
            yield return ("sensor-detection-limit", Ruling.Contradicted, Holdfast.Claims.Rules.DetectionLimit.Decide(limit, 1, 2, "µmol/L"));

            yield return ("sensor-linear", Ruling.Holds, LinearCalibration.Decide(Ratios(0), "FLUOR", "µmol/L", 2.4));
            yield return ("sensor-linear", Ruling.NotShownYet, LinearCalibration.Decide([.. Ratios(0).Where(r => r.Level <= 5)], "FLUOR", "µmol/L", 2.4));
            yield return ("sensor-linear", Ruling.Contradicted, LinearCalibration.Decide(Ratios(-6e-5), "FLUOR", "µmol/L", 2.4));

            double[] without = [0.998, 1.002, 1.000, 1.003, 0.997];
            yield return ("no-interference", Ruling.Holds, NoInterference.Decide("IF", Ions(20, without, ("Ca", [0.999, 1.001, 1.0]), ("Na", [1.002, 0.998, 1.001]))));
            yield return ("no-interference", Ruling.NotShownYet, NoInterference.Decide("IF", Ions(0, without, ("Ca", [0.999, 1.001, 1.0]), ("Na", [1.002, 0.998, 1.001]))));
            yield return ("no-interference", Ruling.NotShownYet, NoInterference.Decide("IF", Ions(20, without, ("Ca", [0.94, 0.97, 1.01]), ("Na", [1.002, 0.998, 1.001]))));
            yield return ("no-interference", Ruling.Contradicted, NoInterference.Decide("IF", Ions(20, without, ("Pb", [0.90, 0.91, 0.92]), ("Na", [1.002, 0.998, 1.001]))));

            // K26: the lifetime falls as the signal does.
            var dynamic = Lifetimes.Of(new("F0/F", 0.0162, 0.0003, 22, 24), new("τ0/τ", 0.0158, 0.0009, 7, 9));
            var open = Lifetimes.Of(new("F0/F", 0.0162, 0.0003, 22, 24), new("τ0/τ", 0.008, 0.006, 7, 9));
            yield return ("quenching-mechanism", Ruling.Holds, QuenchingMechanism.Decide(isStatic: false, dynamic, 3, 1.0002, 1.76e7));
            yield return ("quenching-mechanism", Ruling.NotShownYet, QuenchingMechanism.Decide(isStatic: false, dynamic, 3, null, 1.76e7));
            yield return ("quenching-mechanism", Ruling.NotShownYet, QuenchingMechanism.Decide(isStatic: true, open, 3, 1.0002, null));
            yield return ("quenching-mechanism", Ruling.Contradicted, QuenchingMechanism.Decide(isStatic: true, dynamic, 3, 1.0002, 1.76e7));

            yield return ("works-in-water", Ruling.Holds, WorksInWater.Decide(Water(0.98, 0.3), 3, 0.80, 1.10));
            yield return ("works-in-water", Ruling.NotShownYet, WorksInWater.Decide(Water(0.98, 8), 3, 0.80, 1.10));
            yield return ("works-in-water", Ruling.NotShownYet, WorksInWater.Decide(Water(0.98, 0.3), 2, 0.80, 1.10));
            yield return ("works-in-water", Ruling.Contradicted, WorksInWater.Decide(Water(0.65, 0.3), 3, 0.80, 1.10));
        }
    }

    private static StandardReading[] Ratios(double bend)
    {
        double[] noise = [0.002, -0.003, 0.001, -0.002, 0.003, -0.001, 0.001], levels = [0, 5, 10, 20, 30, 40, 60];
        return [.. levels.SelectMany((q, i) => Enumerable.Range(0, 3).Select(j => new StandardReading(q, 1 + 0.016 * q + bend * q * q + noise[(i + 2 * j) % 7])))];
    }

    private static ImmutableArray<IonEffect> Ions(double quencher, double[] without, params (string Ion, double[] Responses)[] ions)
        => [.. Interference.Of(without, [.. ions.Select(i => (i.Ion, 50.0, (IReadOnlyList<double>)i.Responses))]).Ions
            .Select(f => new IonEffect(f.Ion, 1000, quencher, f, null, ["a", "b", "c"]))];

    private static SpikedWater Water(double slope, double noise)
    {
        double[] added = [0, 0, 0, 10, 10, 10, 20, 20, 20, 30, 30, 30], pattern = [1, -0.6, -0.4, -1, 0.3, 0.7, 0.5, -0.9, 0.4, -0.2, 1, -0.8];
        return SpikedWater.Of(added, [.. added.Select((a, i) => 1.5 + slope * a + noise * pattern[i])]).Value!;
    }
}
