using BenchmarkDotNet.Attributes;
using Holdfast.Fitting;
using Holdfast.Fitting.Diagnostics;
using Holdfast.Fitting.Solving;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace Holdfast.Bench;

/// <summary>One fit of each small curve: the bare refit from the stated start, the reported fit from that start, the fit with scan and profiles, and Math.NET.</summary>
[MemoryDiagnoser]
public class FitBenchmarks
{
    private double[] y = [];
    private double[] w = [];
    private double[] start = [];
    private double[] theta = [];
    private double[] downhill = [];
    private Holdfast.Fitting.Model model = null!;
    private Points points = null!;
    private IProblem problem = null!;
    private FitOptions fromStart = null!;
    private IObjectiveModel objective = null!;
    private Vector<double> guess = null!;

    /// <summary>Which curve.</summary>
    [Params("Langmuir", "Freundlich", "PseudoFirstOrder", "PseudoSecondOrder", "Sips", "RedlichPeterson", "Elovich", "Toth")]
    public string Curve { get; set; } = "";

    /// <summary>Prepares the series.</summary>
    [GlobalSetup]
    public void Prepare()
    {
        (_, model, points, var natural) = Series.Of(Curve);
        var fit = model.Fit(points, new() { Profiles = false });
        problem = fit.Problem!;
        (y, w) = ([.. points.Y], [.. fit.Weights]);
        start = [.. natural.Select((b, j) => problem.Coordinates.ToTheta(j, b))];
        (theta, downhill) = (new double[start.Length], new double[start.Length]);
        fromStart = new() { Scan = false, Profiles = false, Starts = [natural] };
        var (m, x) = (model, points.X);
        objective = ObjectiveFunction.NonlinearModel(
            (p, xs) => Vector<double>.Build.Dense(xs.Count, i => m.Value(x[i], p.AsArray())),
            (p, xs) =>
            {
                var slopes = new double[p.Count];
                var all = Matrix<double>.Build.Dense(xs.Count, p.Count);
                for (var i = 0; i < xs.Count; i++)
                {
                    m.Value(x[i], p.AsArray(), slopes);
                    all.SetRow(i, slopes);
                }

                return all;
            },
            Vector<double>.Build.DenseOfEnumerable(points.X), Vector<double>.Build.DenseOfEnumerable(points.Y));
        guess = Vector<double>.Build.Dense(natural);
    }

    /// <summary>The inner fit that resamples and profiles are made of, from the stated start.</summary>
    [Benchmark(Baseline = true)]
    public double BareRefit()
    {
        start.CopyTo(theta, 0);
        return problem.Refit(y, w, theta, 0, Damping.Cold, downhill, []).S;
    }

    /// <summary>A reported fit from the stated start: orthogonal factors, rank, covariance, leverages, findings.</summary>
    [Benchmark]
    public FitResult ReportedFit() => model.Fit(points, fromStart);

    /// <summary>As a user gets it: starts from the data, every minimum, 95 % profiles.</summary>
    [Benchmark]
    public FitResult ScanAndProfiles() => model.Fit(points);

    /// <summary>Math.NET 5.0.0, Levenberg–Marquardt with the same exact slopes from the same start.</summary>
    [Benchmark]
    public NonlinearMinimizationResult MathNet() => new LevenbergMarquardtMinimizer().FindMinimum(objective, guess);
}

/// <summary>Ten thousand residual resamples, and all eight curves with profiles.</summary>
[MemoryDiagnoser]
public class ResampleBenchmarks
{
    private FitResult langmuir = null!;
    private FitResult sips = null!;

    /// <summary>Prepares the fits.</summary>
    [GlobalSetup]
    public void Prepare()
    {
        var plain = new FitOptions { Profiles = false };
        langmuir = Series.Of("Langmuir").Model.Fit(Series.Of("Langmuir").Points, plain);
        sips = Series.Of("Sips").Model.Fit(Series.Of("Sips").Points, plain);
    }

    /// <summary>10,000 residual resamples of Langmuir, one core.</summary>
    [Benchmark]
    public object LangmuirTenThousand() => Bootstrap.Of(langmuir, new() { Count = 10_000 });

    /// <summary>10,000 residual resamples of Sips, one core.</summary>
    [Benchmark]
    public object SipsTenThousand() => Bootstrap.Of(sips, new() { Count = 10_000 });

    /// <summary>10,000 residual resamples of Sips, two cores.</summary>
    [Benchmark]
    public object SipsTenThousandTwoThreads() => Bootstrap.Of(sips, new() { Count = 10_000, Threads = 2 });

    /// <summary>All eight curves with scan and profiles.</summary>
    [Benchmark]
    public int EightCurvesWithProfiles()
    {
        var closed = 0;
        foreach (var (_, model, points, _) in Series.All)
            closed += model.Fit(points).Parameters.Count(p => p.Profile!.IsClosed);
        return closed;
    }
}
