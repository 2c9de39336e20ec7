using BenchmarkDotNet.Attributes;
using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Isotherms;
using Holdfast.Scaleup;
using Holdfast.Statistics;
using Holdfast.Thermodynamics;

namespace Holdfast.Bench;

/// <summary>What stands on the fits: a line on 1/T, doses in stages, one run through a bed, a cost drawn from its ranges.</summary>
[MemoryDiagnoser]
public class EngineeringBenchmarks
{
    private static readonly double[] Kelvin = [288.15, 298.15, 308.15, 318.15];
    private static readonly Holdfast.Fitting.Model Isotherm = Holdfast.Fitting.Model.Of<Langmuir>();

    private readonly Measured[] constants = [.. Kelvin.Select((t, i) => Measured.From(Math.Exp(10 - 3600 / t), new Source($"k{i}", "k", 0.03 * Math.Exp(10 - 3600 / t))))];
    private readonly Measured[] p = [Measured.From(85, new Source("qm", "qm", 1.5)), Measured.From(0.065, new Source("K", "K", 0.004))];
    private readonly Points outlet = new(
        [.. Enumerable.Range(0, 20).Select(i => 40.0 * i)],
        [.. Enumerable.Range(0, 20).Select(i => 1 / (1 + Math.Exp(0.02 * (400 - 40.0 * i))) + 0.003 * Math.Sin(7 * i))], "min", "");
    private readonly TreatmentCost<Measured> cost = new(
        CostDraws.Between("dose", "dose", 0.6, 0.8, ""), CostDraws.Between("price", "price", 40, 60, ""), CostDraws.Between("uses", "uses", 1, 5, ""), 1, 7, 0.07, 2, 0.1, 1);

    /// <summary>Four rate constants to an activation energy, both ways.</summary>
    [Benchmark]
    public Estimate ActivationEnergy() => Arrhenius.Of(Kelvin, constants).Value!.WiderActivationEnergy;

    /// <summary>Dose of one stage with the covariance of the isotherm.</summary>
    [Benchmark]
    public Measured OneStage() => SingleStage.Dose(Isotherm, p, 50, 1);

    /// <summary>Two stages with fresh sorbent in each, the best split found.</summary>
    [Benchmark]
    public CrossCurrent TwoFresh() => CrossCurrent.Of(Isotherm, p, 50, 1);

    /// <summary>Two stages against the water.</summary>
    [Benchmark]
    public CounterCurrent TwoAgainst() => CounterCurrent.Of(Isotherm, p, 50, 1);

    /// <summary>The logistic through twenty portions.</summary>
    [Benchmark]
    public FitResult OneBed() => ColumnRun.Fit<BreakthroughLogistic>(outlet, new FitOptions { Profiles = false });

    /// <summary>A cost per gram from 50,000 draws.</summary>
    [Benchmark]
    public object? Cost() => CostDraws.PerGram(cost, 4.4, new SeededStream(1, "bench")).Value;
}
