using BenchmarkDotNet.Attributes;
using Holdfast.Speciation;
using Holdfast.Tests.Speciation;

namespace Holdfast.Bench;

/// <summary>Metals in water: one free ion, one onset, and a thousand waters drawn at random.</summary>
[MemoryDiagnoser]
public class SpeciationBenchmarks
{
    private readonly MetalInWater copper = new(MetalIon.Named("Cu")!, 1e-4, 0.01, CarbonateConstants.LgAir);
    private readonly Solid fresh = MetalIon.Named("Cu")!.Solids.First(s => s.Kind == SolidKind.Fresh);

    /// <summary>Copper among ten species.</summary>
    [Benchmark]
    public double OneMetal() => copper.LgFree(7);

    /// <summary>The pH from which fresh copper hydroxide forms, with its range.</summary>
    [Benchmark]
    public PrecipitationOnset Onset() => PrecipitationOnset.Of(copper, fresh);

    /// <summary>A thousand waters of up to four metals and two ligands, half of them with every solid allowed.</summary>
    [Benchmark]
    public double ThousandWaters()
    {
        var waters = new RandomWaters(7);
        var open = 0.0;
        for (var i = 0; i < 1000; i++)
        {
            var (water, ph, _) = waters.Next();
            open = Math.Max(open, water.Solve(ph).Open);
        }

        return open;
    }
}
