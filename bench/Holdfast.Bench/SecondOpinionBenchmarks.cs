using BenchmarkDotNet.Attributes;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting.Diagnostics;

namespace Holdfast.Bench;

/// <summary>Resampling as a user asks for it, on the invented demo: the curves of a series that are not told apart.</summary>
[MemoryDiagnoser]
public class SecondOpinionBenchmarks
{
    private IReadOnlyList<CandidateCurve> kinetics = [];
    private IReadOnlyList<CandidateCurve> isotherm = [];

    /// <summary>How many resamples of each curve.</summary>
    [Params(5_000, 10_000)]
    public int Count { get; set; }

    /// <summary>Works the demo out.</summary>
    [GlobalSetup]
    public void Prepare()
    {
        var evidence = Evidence.Of(DossierBenchmarks.Demo());
        kinetics = Of("kinetics", "KIN-20");
        isotherm = Of("isotherm", "ISO-298");

        IReadOnlyList<CandidateCurve> Of(string family, string series)
        {
            var of = CurveFamily.All.First(f => f.Name == family);
            return CandidateCurve.Among(series, of.OfStudy(evidence).First(s => s.Series == series).Fits);
        }
    }

    /// <summary>KIN-20, the double exponential over 27 vessels, one core.</summary>
    [Benchmark]
    public object Kinetics() => Draw(kinetics, 1);

    /// <summary>The same, two cores.</summary>
    [Benchmark]
    public object KineticsTwoThreads() => Draw(kinetics, 2);

    /// <summary>ISO-298, the isotherms not told apart over 24 vessels, one core.</summary>
    [Benchmark]
    public object Isotherm() => Draw(isotherm, 1);

    private IReadOnlyList<Outcome<ResampledFit>> Draw(IReadOnlyList<CandidateCurve> curves, int threads)
        => ResampledFit.Draw(curves, new BootstrapOptions { Count = Count, Seed = ResampledFit.UsualSeed, Threads = threads });
}
