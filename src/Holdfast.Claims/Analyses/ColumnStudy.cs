using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Scaleup;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>What runs through a packed bed say: breakthrough by the trapezium rule and by one curve, service time over depth.</summary>
/// <param name="Runs">The runs, in the order they came.</param>
/// <param name="ServiceTime">The depth-service line at 5 % of the inlet, where three depths ran at one velocity; otherwise null.</param>
/// <param name="Findings">Caveats on the runs together.</param>
public sealed record ColumnStudy(ImmutableArray<BedRun> Runs, BedDepthServiceTime? ServiceTime, ImmutableArray<Finding> Findings)
{
    /// <summary>C/C0 at which service ends unless a limit says otherwise; common practice.</summary>
    public const double BreakShare = 0.05;

    private const double SameVelocity = 0.05;

    private static readonly Analysis<ColumnStudy> Known = new(Work);

    /// <summary>What is found in a study.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static ColumnStudy Of(Evidence evidence) => Known.Of(evidence);

    private static ColumnStudy Work(Evidence evidence)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        ImmutableArray<BedRun> runs = [.. evidence.Study.Samples
            .Where(s => !evidence.Study.IsStruck(s) && IsOutlet(s) && TimeOf(s) is not null)
            .GroupBy(s => s.Series ?? "column", StringComparer.Ordinal)
            .Select(g => One(g.Key, [.. g.OrderBy(s => TimeOf(s))], evidence, findings))
            .OfType<BedRun>()];
        return new(runs, Line(runs, findings), findings.ToImmutable());
    }

    private static bool IsOutlet(Sample sample)
        => sample.Role == SampleRole.Outlet || sample.Fact(ColumnProperties.OutletConcentration) is not null || sample.Fact(ColumnProperties.TimeOnStream) is not null;

    private static double? TimeOf(Sample sample) => sample.Number(ColumnProperties.TimeOnStream) ?? sample.Number(BatchProperties.ContactTime);

    private static BedRun? One(string name, Sample[] samples, Evidence evidence, ImmutableArray<Finding>.Builder findings)
    {
        var points = samples
            .Select(s => (Sample: s, Time: TimeOf(s)!.Value, Out: Outlet(s, evidence)))
            .Where(p => p.Out is not null)
            .GroupBy(p => p.Time)
            .Select(g => new BedPoint(g.First().Sample, g.Key, g.Select(p => p.Out!.Value).Aggregate((a, b) => a + b) / g.Count()))
            .ToImmutableArray();
        var inlet = samples.Select(s => s.Number(BatchProperties.InitialConcentration)).OfType<double>().Distinct().ToArray();
        if (points.Length < 4 || inlet.Length != 1 || inlet[0] <= 0)
        {
            findings.Add(Finding.Of("HF-660", Weight.Caution,
                $"Run {name} needs four outlet concentrations or more and one inlet concentration: nothing is worked out. Record them.", name));
            return null;
        }

        var first = samples[0];
        double[] times = [.. points.Select(p => p.Time)];
        Measured[] ratios = [.. points.Select(p => p.Outlet / inlet[0])];
        // The bed takes metal from the first drop on. Before the first portion the outlet counts as high as in it: an outlet that rises was lower, never higher.
        double[] since = times[0] > 0 ? [0, .. times] : times;
        Measured[] whole = times[0] > 0 ? [ratios[0], .. ratios] : ratios;
        var fit = ColumnRun.Fit<BreakthroughLogistic>(
            new Points(times, [.. ratios.Select(r => r.Value)], "min", "", ids: [.. points.Select(p => p.Sample.Code)]), new FitOptions { Profiles = false });
        var run = new BedRun(
            name, points, inlet[0], first.Number(ColumnProperties.BedDepth), first.Number(ColumnProperties.BedMass), first.Number(ColumnProperties.Flow),
            first.Number(ColumnProperties.Velocity), first.Number(ColumnProperties.HeldLiquid) ?? 0,
            BreakthroughIntegral.TotalTime<Measured>(since, whole), BreakthroughIntegral.BreakTime<Measured>(times, ratios, BreakShare),
            BreakthroughIntegral.UsedTime<Measured>(since, whole, BreakShare), fit);
        if (run.LastRatio < BreakthroughIntegral.RunUntil)
        {
            findings.Add(Finding.Of("HF-661", Weight.Caution, string.Create(CultureInfo.InvariantCulture,
                $"Run {name} ended at C/C0 = {run.LastRatio:0.00}: its capacity is a lower bound. Run until the outlet reaches 95 % of the inlet."), name));
        }

        return run;
    }

    private static Measured? Outlet(Sample sample, Evidence evidence)
        => sample.Fact(ColumnProperties.OutletConcentration) is { Value: { } value } fact
            ? fact.U is { } u and > 0 ? Measured.From(value, new Source("outlet:" + sample.Code, $"outlet of {sample.Code}, as recorded", u, Unit: "mg/L", Trail: fact.Origin.ToString())) : value
            : evidence.Vessels.FirstOrDefault(v => string.Equals(v.Code, sample.Code, StringComparison.Ordinal))?.End?.Value;

    private static BedDepthServiceTime? Line(ImmutableArray<BedRun> runs, ImmutableArray<Finding>.Builder findings)
    {
        var usable = runs.Where(r => r is { Depth: not null, Velocity: > 0, BreakTime: not null }).ToArray();
        if (usable.Select(r => r.Depth).Distinct().Count() < 3)
            return null;
        if (usable.Max(r => r.Velocity) > (1 + SameVelocity) * usable.Min(r => r.Velocity) || usable.Select(r => r.Inlet).Distinct().Count() > 1)
        {
            findings.Add(Finding.Of("HF-662", Weight.Caution,
                "The runs differ in velocity or inlet as well as in depth: no depth-service line is drawn. Run three depths with everything else alike.", [.. usable.Select(r => r.Name)]));
            return null;
        }

        var line = BedDepthServiceTime.Of(
            [.. usable.Select(r => r.Depth!.Value)], [.. usable.Select(r => r.BreakTime!.Value.Value)], BreakShare, usable[0].Inlet, usable[0].Velocity!.Value);
        findings.AddRange(line.Findings);
        return line.Findings.Any(f => f.Weight == Weight.Stop) ? null : line.Value;
    }
}

/// <summary>One run through a bed.</summary>
/// <param name="Name">Name of the series.</param>
/// <param name="Points">Outlet concentrations by rising time.</param>
/// <param name="Inlet">Inlet concentration, mg/L.</param>
/// <param name="Depth">Bed depth, cm, or null.</param>
/// <param name="Mass">Sorbent in the bed, g, or null.</param>
/// <param name="Flow">Flow, mL/min, or null.</param>
/// <param name="Velocity">Superficial velocity, cm/min, or null.</param>
/// <param name="Held">Liquid held in bed and tubes, mL; 0 when not recorded.</param>
/// <param name="TotalTime">∫(1 − C/C0)dt from the first drop to the last portion, min.</param>
/// <param name="BreakTime">Time at which the outlet reaches 5 % of the inlet, min, or null when it never did.</param>
/// <param name="UsedTime">∫(1 − C/C0)dt from the first drop to the break, min, or null.</param>
/// <param name="Curve">The one curve that goes by three names, fitted.</param>
public sealed record BedRun(
    string Name, ImmutableArray<BedPoint> Points, double Inlet, double? Depth, double? Mass, double? Flow, double? Velocity, double Held,
    Measured TotalTime, Measured? BreakTime, Measured? UsedTime, FitResult Curve)
{
    /// <summary>Highest C/C0 reached; no unit.</summary>
    public double LastRatio => Points.Max(p => p.Outlet.Value) / Inlet;

    /// <summary>Capacity by integration, mg/g; null without flow and mass.</summary>
    public Measured? Capacity => Flow is > 0 && Mass is > 0
        ? BreakthroughIntegral.Capacity<Measured>(TotalTime, Inlet, Flow.Value / 1000, Mass.Value, Held / 1000)
        : null;

    /// <summary>Length of bed not used at the break, cm; null without depth or break.</summary>
    public Measured? UnusedLength => Depth is > 0 && UsedTime is { } used ? BreakthroughIntegral.UnusedLength<Measured>(Depth.Value, used, TotalTime) : null;

    /// <summary>Time at which the outlet reaches a concentration, min, by straight interpolation; null when it never did.</summary>
    /// <param name="limit">Concentration, mg/L, between 0 and the inlet.</param>
    public Measured? TimeTo(double limit)
        => limit > 0 && limit < Inlet
            ? BreakthroughIntegral.BreakTime<Measured>([.. Points.Select(p => p.Time)], [.. Points.Select(p => p.Outlet / Inlet)], limit / Inlet)
            : null;
}

/// <summary>The outlet at one time.</summary>
/// <param name="Sample">The portion, the first of them where several were taken.</param>
/// <param name="Time">Time on stream, min.</param>
/// <param name="Outlet">Concentration, mg/L; the mean where several portions were taken.</param>
public sealed record BedPoint(Sample Sample, double Time, Measured Outlet);
