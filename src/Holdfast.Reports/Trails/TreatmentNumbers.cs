using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.StudyTables;
using Holdfast.Scaleup;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Trails;

/// <summary>
/// Sorbent for a water and a limit, with inlet and limit in mg/L: in one stage, in two with fresh sorbent, in two against the water, at least
/// ("m1:roof-water@5-0.02", "m2-fresh:", "m2-counter:", "m-floor:"). Of a run through a bed: time to the break, total time, unused length, capacity by integration ("tb:BED-10",
/// "tt:", "LUB:", "qb:"), constants of the curve ("k:", "tau:", "kTh:", "q0:", "N0:"). Of several depths, under the name of the first run: "N0-line:",
/// "k-line:", "Z0:".
/// </summary>
internal sealed class TreatmentNumbers : IDerivedNumbers
{
    /// <inheritdoc/>
    public IEnumerable<NumberTrail> Of(Evidence evidence)
    {
        var beds = ColumnStudy.Of(evidence);
        return StagePlans.Of(evidence).Plans.SelectMany(p => Stages(evidence, p))
            .Concat(beds.Runs.SelectMany(r => Bed(evidence, r)))
            .Concat(beds.ServiceTime is { } line ? Depths(evidence, beds, line) : []);
    }

    /// <summary>Second part of the address of a plan's doses.</summary>
    /// <param name="plan">The plan.</param>
    public static string Name(StagePlan plan) => string.Create(CultureInfo.InvariantCulture, $"{DerivedTrails.Short(plan.Water)}@{plan.Stages.Inlet.Value:R}-{plan.Stages.Target:R}");

    private static IEnumerable<NumberTrail> Stages(Evidence evidence, StagePlan plan)
    {
        if (StagePlans.Isotherm(evidence, plan.Series) is not { } isotherm)
            yield break;
        var (fit, stages) = (isotherm.Fit, plan.Stages);
        var readings = DerivedTrails.Readings(evidence, fit.Points.Ids);
        var end = DerivedTrails.Fit(fit, "Ce", "q", id => "q:" + id);
        TrailInput[] inputs =
        [
            new("C0", stages.Inlet, "mg/L", $"concentration of {plan.Water} before treatment, as recorded or stated"),
            new("C", stages.Target, "mg/L", "limit as stated in the claim"),
            .. FittedNumbers.Inputs(fit, fit.MeasuredParameters("isotherm:" + plan.Series), plan.Series),
        ];
        var target = $"{plan.Water} from {InWords.Plain(stages.Inlet.Value)} to {InWords.Plain(stages.Target, "mg/L")}";
        yield return One("m1", "sorbent in one stage", stages.Single, "m/V = (C0 − C)/q(C)");
        yield return One("m2-fresh", "sorbent in two stages, fresh in each", stages.Cross.Total, "m/V = least of (C0 − C1)/q(C1) + (C1 − C)/q(C) over C1");
        yield return One("m2-counter", "sorbent in two stages, against the water", stages.Counter.Dose, "m/V = (C0 − C)/q(C1) with (C1 − C)·q(C1) = (C0 − C)·q(C)");
        yield return One("m-floor", "sorbent that no number of stages undercuts", stages.Floor, "m/V = (C0 − C)/q(C0)");

        NumberTrail One(string kind, string name, Measured value, string formula) => new($"{kind}:{Name(plan)}", $"{name}, {target}", value, "g/L", $"{formula}, q by {fit.Card.Formula}", [.. inputs], readings)
        {
            Samples = [.. fit.Points.Ids],
            Fit = end,
        };
    }

    private static IEnumerable<NumberTrail> Bed(Evidence evidence, BedRun run)
    {
        string[] samples = [.. run.Points.Select(p => p.Sample.Code)];
        var readings = DerivedTrails.Readings(evidence, samples);
        var first = run.Points[0].Sample;
        var inlet = Recorded("C0", run.Inlet, "mg/L", BatchProperties.InitialConcentration)!;
        var (flow, mass) = (Recorded("Q", run.Flow, "mL/min", ColumnProperties.Flow), Recorded("m", run.Mass, "g", ColumnProperties.BedMass));
        var (depth, velocity) = (Recorded("Z", run.Depth, "cm", ColumnProperties.BedDepth), Recorded("U", run.Velocity, "cm/min", ColumnProperties.Velocity));
        TrailInput[] outlets = [.. run.Points.Select(p => new TrailInput(
            $"C({InWords.Plain(p.Time, "min")})", p.Outlet, "mg/L", p.Sample.Fact(ColumnProperties.OutletConcentration)?.Origin.ToString() ?? "readings of " + p.Sample.Code))];
        yield return One("tt", "total time", run.TotalTime, "min", "tt = ∫(1 − C/C0)dt over the run, trapezium rule", null, [inlet, .. outlets])!;
        if (One("tb", "time to 5 % of the inlet", run.BreakTime, "min", "straight between the two outlets around C/C0 = 0.05", null, [inlet, .. outlets]) is { } end)
            yield return end;
        if (One("LUB", "length of bed not used at the break", run.UnusedLength, "cm", "LUB = Z·(1 − tu/tt), tu = ∫(1 − C/C0)dt up to the break", null, [depth, inlet, .. outlets]) is { } unused)
            yield return unused;
        if (One("qb", "capacity by integration", run.Capacity, "mg/g", "q = C0·(Q·tt − liquid held)/m", null, [inlet, flow, mass, .. outlets]) is { } capacity)
            yield return capacity;
        if (!run.Curve.IsFit)
            yield break;
        var fit = DerivedTrails.Fit(run.Curve, "t", "C/C0", _ => null);
        var known = run.Curve.MeasuredParameters("bed:" + run.Name, "curve of " + run.Name);
        Measured?[] p = [.. run.Curve.Parameters.Select((q, j) => (Measured?)(known.Count > j ? known[j] : q.Value))];
        var (k, tau) = (p[0]!.Value, p[1]!.Value);
        TrailInput steep = new("k", k, "1/min", "curve of " + run.Name, "k:" + run.Name), half = new("τ", tau, "min", "curve of " + run.Name, "tau:" + run.Name);
        yield return One("k", run.Curve.Parameters[0].Definition.Meaning, k, "1/min", run.Curve.Card.Formula, fit)!;
        yield return One("tau", run.Curve.Parameters[1].Definition.Meaning, tau, "min", run.Curve.Card.Formula, fit)!;
        yield return One("kTh", "rate constant", BedConstants.Rate<Measured>(k, run.Inlet), "L/(mg min)", "kTh = k/C0", fit, steep, inlet)!;
        if (run is { Flow: > 0, Mass: > 0 })
            yield return One("q0", "capacity by the curve", BedConstants.Capacity<Measured>(tau, run.Inlet, run.Flow.Value / 1000, run.Mass.Value), "mg/g", "q0 = τ·C0·Q/m", fit, half, inlet, flow, mass)!;
        if (run is { Velocity: > 0, Depth: > 0 })
            yield return One("N0", "capacity per litre of bed", BedConstants.CapacityPerBed<Measured>(tau, run.Inlet, run.Velocity.Value, run.Depth.Value), "mg/L", "N0 = τ·C0·U/Z", fit, half, inlet, velocity, depth)!;

        NumberTrail? One(string kind, string name, Measured? value, string unit, string formula, TrailFit? by, params TrailInput?[] inputs) => value is { } found
            ? new($"{kind}:{run.Name}", $"{name}, {run.Name}", found, unit, formula, [.. inputs.OfType<TrailInput>()], readings) { Samples = [.. samples], Fit = by }
            : null;

        TrailInput? Recorded(string symbol, double? value, string unit, Property property)
            => value is { } v ? new(symbol, v, unit, first.Fact(property)?.Origin.ToString() ?? "as recorded") : null;
    }

    private static IEnumerable<NumberTrail> Depths(Evidence evidence, ColumnStudy beds, BedDepthServiceTime line)
    {
        BedRun[] runs = [.. beds.Runs.Where(r => r is { Depth: not null, Velocity: > 0, BreakTime: not null })];
        string[] samples = [.. runs.SelectMany(r => r.Points).Select(p => p.Sample.Code)];
        var readings = DerivedTrails.Readings(evidence, samples);
        TrailFit fit = new(
            $"straight line of the time to 5 % of the inlet on bed depth, {InWords.Count(runs.Length, "run")} with equal weights", "Z (cm)", "tb (min)",
            [.. runs.Select(r => new TrailPoint(r.Name, r.Depth!.Value, r.BreakTime!.Value.Value, line.ServiceTime(r.Depth.Value).Value, "tb:" + r.Name))]);
        TrailInput[] inputs = [.. runs.Select(r => new TrailInput($"tb({InWords.Plain(r.Depth!.Value, "cm")})", r.BreakTime!.Value, "min", r.Name, "tb:" + r.Name))];
        yield return One("N0-line", "capacity per litre of bed, service time over depth", line.Capacity, "mg/L", "N0 = slope·C0·U");
        yield return One("k-line", "rate constant, service time over depth", line.Rate, "L/(mg min)", "k = −ln(C0/Cb − 1)/(intercept·C0)");
        yield return One("Z0", "critical depth, service time over depth", line.CriticalDepth, "cm", "Z0 = −intercept/slope");

        NumberTrail One(string kind, string name, Estimate estimate, string unit, string formula)
        {
            var address = $"{kind}:{runs[0].Name}";
            return new(address, name, DerivedTrails.Measured(estimate, address, "scatter about the line of service time on depth"), unit, formula, [.. inputs], readings) { Samples = [.. samples], Fit = fit };
        }
    }
}
