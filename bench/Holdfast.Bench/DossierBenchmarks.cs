using System.Collections.Immutable;
using System.Globalization;
using BenchmarkDotNet.Attributes;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Properties;

namespace Holdfast.Bench;

/// <summary>A whole study worked out: the invented demo, and 200 vials of a study made here.</summary>
[MemoryDiagnoser]
public class DossierBenchmarks
{
    private static readonly Origin Here = new(null, "made for the benchmark", null, 0, null);
    private Study demo = null!;
    private Study vials = null!;
    private Evidence worked = null!;

    /// <summary>Reads the demo's files and makes the other study.</summary>
    [GlobalSetup]
    public void Prepare()
    {
        demo = Demo();
        vials = TwoHundredVials();
        worked = Evidence.Of(demo);
    }

    /// <summary>Readings to verdicts of the demo.</summary>
    [Benchmark]
    public Dossier DemoDossier() => Dossier.Of(demo);

    /// <summary>Readings to quantities and fits of the demo.</summary>
    [Benchmark]
    public Evidence DemoEvidence() => Evidence.Of(demo);

    /// <summary>Verdicts of the demo alone.</summary>
    [Benchmark]
    public ImmutableArray<Verdict> DemoDefence() => Defence.Of(worked);

    /// <summary>200 vials in ten series, every model and every invited claim.</summary>
    [Benchmark]
    public Dossier TwoHundredVialsDossier() => Dossier.Of(vials);

    /// <summary>The invented demo, from its files.</summary>
    internal static Study Demo()
    {
        var root = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(root, "Holdfast.slnx")))
            root = Path.GetDirectoryName(root) ?? throw new InvalidOperationException("Run it from inside the repository.");
        var files = Directory.GetFiles(Path.Combine(root, "samples", "demo")).Where(f => !f.EndsWith(".md", StringComparison.Ordinal)).Order(StringComparer.Ordinal)
            .Select(f => new IncomingFile(Path.GetFileName(f), File.ReadAllBytes(f))).ToArray();
        var demo = new Study { Title = "demo", Analyte = "Ni", Invented = true };
        foreach (var one in Take.Understand(demo, files, Answers.None).OrderBy(u => u.Turn))
            demo = Studies.History.Fold.After(demo, one.Understanding.Proposal! with { Files = [] }, demo.Version + 1, default, "");
        return demo;
    }

    private static Study TwoHundredVials()
    {
        var stream = new SeededStream(1589, "BENCH");
        var samples = ImmutableArray.CreateBuilder<Sample>();
        var readings = ImmutableArray.CreateBuilder<Reading>();
        for (var series = 1; series <= 10; series++)
        {
            var kinetics = series > 5;
            for (var vial = 0; vial < 20; vial++)
            {
                var level = vial / 2;
                var code = string.Create(CultureInfo.InvariantCulture, $"S{series}-{vial}");
                var c0 = kinetics ? 20 : 3.0 * (level + 1);
                var time = kinetics ? 5.0 * (1 << Math.Min(level, 6)) : 1440;
                var left = Left(c0) + (kinetics ? (c0 - Left(c0)) * Math.Exp(-0.05 * time) : 0);
                samples.Add(new Sample(code, SampleRole.Vessel, Facts(
                    (BatchProperties.InitialConcentration, c0), (BatchProperties.Volume, 25), (BatchProperties.Mass, 50), (BatchProperties.ContactTime, time))
                    .SetItem(SampleProperties.Series.Name, new Fact(SampleProperties.Series.Name, null, null, null, "S" + series.ToString(CultureInfo.InvariantCulture), "", Here))));
                for (var portion = 0; portion < 2; portion++)
                {
                    readings.Add(new Reading(
                        string.Create(CultureInfo.InvariantCulture, $"R-{readings.Count + 1:0000}"), code, "reported", readings.Count + 1,
                        SpectrometryProperties.ReportedConcentration.Name, left * (1 + 0.02 * stream.Normal()), null, 1, 1, "", Here));
                }
            }
        }

        return new Study { Title = "two hundred vials", Analyte = "Ni", Samples = samples.ToImmutable(), Readings = readings.ToImmutable() };
    }

    // Langmuir in a closed vessel with qm 14 mg/g, K 0.35 L/mg and 2 g/L.
    private static double Left(double c0)
    {
        var b = 1 + 2 * 0.35 * 14 - 0.35 * c0;
        return (Math.Sqrt(b * b + 4 * 0.35 * c0) - b) / (2 * 0.35);
    }

    private static ImmutableSortedDictionary<string, Fact> Facts(params (Property Property, double Value)[] facts)
        => facts.ToImmutableSortedDictionary(f => f.Property.Name, f => new Fact(f.Property.Name, f.Value, null, null, null, "", Here), StringComparer.Ordinal);
}
