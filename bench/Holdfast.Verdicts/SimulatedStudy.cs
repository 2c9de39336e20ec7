using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using static System.FormattableString;

namespace Holdfast.Verdicts;

/// <summary>
/// An invented batch study with a truth that only the simulation knows: one isotherm series, and what a sound study has beside it, each of which can be left out. It is
/// built as readings, so that a verdict on it has gone through calibration, work-up and fits. Every number follows from the seed.
/// </summary>
internal sealed record SimulatedStudy
{
    private static readonly double[] Dilutions = [1.0, 2, 5, 10, 20, 25, 50];
    private static readonly Origin File = new("00", "simulated.csv", null, 1, null);

    /// <summary>Uptake in mg/g at a concentration in mg/L: the truth.</summary>
    public Func<double, double> Uptake { get; init; } = c => 14 * 0.35 * c / (1 + 0.35 * c);

    /// <summary>Stands in for the isotherm where removal follows none: the share removed from a start concentration in mg/L.</summary>
    public Func<SeededStream, double, double>? Removed { get; init; }

    /// <summary>Start concentrations, mg/L.</summary>
    public ImmutableArray<double> Starts { get; init; } = [2, 5, 10, 15, 20, 30, 40, 60];

    /// <summary>Vessels at each start concentration.</summary>
    public int Vessels { get; init; } = 3;

    /// <summary>Dose, g/L.</summary>
    public double Dose { get; init; } = 2;

    /// <summary>Scatter of a vessel's uptake, as a share of it.</summary>
    public double VesselScatter { get; init; } = 0.02;

    /// <summary>Scatter of a reading, as a share of it.</summary>
    public double ReadingNoise { get; init; } = 0.005;

    /// <summary>Change of the instrument's slope from the standards to the last reading, as a share.</summary>
    public double Drift { get; init; }

    /// <summary>Share of the metal that goes to wall and filter without any sorbent.</summary>
    public double Leak { get; init; }

    /// <summary>Whether check standards were read at both ends of the run.</summary>
    public bool Checks { get; init; } = true;

    /// <summary>Series the controls without sorbent are filed under, one at each start concentration; null when none were run.</summary>
    public string? Controls { get; init; } = "ISO";

    /// <summary>Whether end pH was recorded.</summary>
    public bool EndPh { get; init; } = true;

    /// <summary>First-order rate of a kinetic series at the highest start concentration, 1/min; null when none was run.</summary>
    public double? Rate { get; init; } = 0.08;

    /// <summary>What its author claims.</summary>
    public ImmutableArray<StatedClaim> Claims { get; init; } = [];

    /// <summary>A claim about the isotherm series.</summary>
    /// <param name="rule">Id of the rule.</param>
    /// <param name="parameters">Further parameters.</param>
    public static StatedClaim Claim(string rule, params (string Name, string Words)[] parameters)
        => ClaimOn("ISO", rule, parameters);

    /// <summary>A claim about a series.</summary>
    /// <param name="series">ISO or KIN.</param>
    /// <param name="rule">Id of the rule.</param>
    /// <param name="parameters">Further parameters.</param>
    public static StatedClaim ClaimOn(string series, string rule, params (string Name, string Words)[] parameters)
        => new(rule, rule, parameters.Prepend(("series", series)).ToImmutableSortedDictionary(p => p.Item1, p => p.Item2, StringComparer.Ordinal), null, 10, default);

    /// <summary>The study of one seed.</summary>
    /// <param name="seed">Any number.</param>
    public Study Build(ulong seed) => new Work(this, seed).Study();

    /// <summary>The verdicts of one seed.</summary>
    /// <param name="seed">Any number.</param>
    public ImmutableArray<Verdict> Judge(ulong seed) => Defence.Of(Holdfast.Claims.Analyses.Evidence.Of(Build(seed)), null);

    private sealed class Work(SimulatedStudy plan, ulong seed)
    {
        private readonly SeededStream chance = new(seed, "simulated study");
        private readonly List<(Sample Sample, double Concentration)> queue = [];

        public Study Study()
        {
            for (var i = 0; i < 10; i++)
                Add(Invariant($"B-{i}"), SampleRole.Blank, 0);
            foreach (var level in new[] { 0, 0.25, 0.5, 1, 1.5, 2, 3 })
                Add(Invariant($"S-{level}"), SampleRole.Standard, level, (SpectrometryProperties.StandardConcentration, level));
            if (plan.Checks)
                Add("Q-1", SampleRole.CheckStandard, 1.5, (SpectrometryProperties.StandardConcentration, 1.5));
            foreach (var c0 in plan.Starts)
                Level(c0);
            if (plan.Rate is { } rate)
                Kinetics(plan.Starts.Max(), rate);
            if (plan.Checks)
                Add("Q-2", SampleRole.CheckStandard, 1.5, (SpectrometryProperties.StandardConcentration, 1.5));
            return new Study
            {
                Title = "simulated",
                Invented = true,
                Analyte = "Ni",
                Samples = [.. queue.Select(q => q.Sample)],
                Readings = [.. Readings()],
                Runs = [new Run("run", SpectrometryProperties.Absorbance.Name, ImmutableSortedDictionary<string, string>.Empty, File)],
                Originals = [new Original("00", "simulated.csv", 1, 9, default)],
                Margins = [new("plateau", -5, 5, "%", 2), new("removal", -2, 2, "percentage points", 2), new("capacity", -10, 10, "%", 2), new("check-standard", 90, 110, "%", 2)],
                Apparatus = [new("flask", BatchProperties.InitialConcentration.Name, null, 0.002, true, "certificate", null)],
                Claims = plan.Claims,
            };
        }

        private void Level(double c0)
        {
            for (var i = 1; i <= plan.Vessels; i++)
                Vial(SampleRole.Vessel, Invariant($"ISO-{c0}-{i}"), "ISO", c0, 1440, plan.Removed is { } share ? c0 * (1 - share(chance, c0)) : Left(c0, 1));
            if (plan.Controls is { } series)
                Vial(SampleRole.Control, Invariant($"{series}-{c0}-C"), series, c0, 1440, c0 * (1 - plan.Leak));
        }

        private void Kinetics(double c0, double rate)
        {
            foreach (var time in new[] { 2.0, 4, 7, 11, 16, 25, 40, 60, 90, 135 })
            {
                for (var i = 1; i <= 3; i++)
                    Vial(SampleRole.Vessel, Invariant($"KIN-{time}-{i}"), "KIN", c0, time, plan.Removed is { } share ? c0 * (1 - share(chance, c0)) : Left(c0, 1 - Math.Exp(-rate * time)));
            }
        }

        // What the wall takes is gone before the sorbent shares the rest (a loss in proportion).
        private double Left(double c0, double reached)
        {
            double free = c0 * (1 - plan.Leak), low = 0, high = free;
            for (var i = 0; i < 60; i++)
            {
                var middle = (low + high) / 2;
                if (middle + plan.Dose * plan.Uptake(middle) > free)
                    high = middle;
                else
                    low = middle;
            }

            return Math.Max(free - plan.Dose * plan.Uptake(low) * reached * (1 + plan.VesselScatter * chance.Normal()), 0.01);
        }

        private void Vial(SampleRole role, string code, string series, double c0, double time, double left)
            => Add(
                code, role, left, series, (BatchProperties.InitialConcentration, c0), (BatchProperties.Volume, 25), (BatchProperties.Mass, role == SampleRole.Control ? 0 : 25 * plan.Dose),
                (BatchProperties.ContactTime, time), (BatchProperties.StartPh, 6), (BatchProperties.Temperature, 298.15));

        private void Add(string code, SampleRole role, double concentration, params ReadOnlySpan<(Property Property, double Value)> numbers) => Add(code, role, concentration, null, numbers);

        private void Add(string code, SampleRole role, double concentration, string? series, params ReadOnlySpan<(Property Property, double Value)> numbers)
        {
            List<Fact> facts = [];
            foreach (var (property, value) in numbers)
                facts.Add(new(property.Name, value, null, null, null, "", File));
            if (series is not null)
            {
                if (plan.EndPh)
                    facts.Add(new(BatchProperties.EndPh.Name, 6.5, null, null, null, "", File));
                foreach (var (property, words) in new[] { (SampleProperties.Series, series), (SampleProperties.Batch, "B1"), (SampleProperties.Matrix, "0.01 mol/L NaNO3") })
                    facts.Add(new(property.Name, null, null, null, words, words, File));
            }

            queue.Add((new(code, role, facts.ToImmutableSortedDictionary(f => f.Property, f => f, StringComparer.Ordinal)), concentration));
        }

        // Read in the order of the queue, three times each; diluted so that a reading stays inside the standards.
        private IEnumerable<Reading> Readings()
        {
            var order = 0;
            for (var k = 0; k < queue.Count; k++)
            {
                var (sample, concentration) = queue[k];
                var contact = sample.Role is SampleRole.Vessel or SampleRole.Control;
                var dilution = contact ? Dilutions.First(d => concentration / d <= 2.7 || d >= 50) : 1;
                var portion = concentration / dilution * (dilution > 1 ? 1 + 0.003 * chance.Normal() : 1);
                var slope = 0.06 * (sample.Role is SampleRole.Standard or SampleRole.Blank ? 1 : 1 + plan.Drift * k / queue.Count);
                for (var i = 0; i < (sample.Role == SampleRole.Blank ? 1 : 3); i++)
                {
                    var signal = 0.001 + slope * portion;
                    signal += Math.Sqrt(0.0003 * 0.0003 + plan.ReadingNoise * plan.ReadingNoise * signal * signal) * chance.Normal();
                    yield return new(Invariant($"R-{++order:0000}"), sample.Code, "run", order, SpectrometryProperties.Absorbance.Name, signal, null, dilution, 1, "", File);
                }
            }
        }
    }
}
