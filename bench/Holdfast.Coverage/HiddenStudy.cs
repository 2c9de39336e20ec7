using System.Collections.Immutable;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Coverage;

/// <summary>
/// One invented study from a hidden truth: flasks, weighings, a pipette and dilutions with the errors that are stated of them, vessels that come to their
/// equilibrium or stand their time, and an instrument that reads standards, blanks and portions. Only what an author would write down goes into it.
/// </summary>
internal static class HiddenStudy
{
    /// <summary>Standard uncertainty of a weighing, mg.</summary>
    public const double Weighing = 0.13;

    /// <summary>Relative standard uncertainty of the one pipette that fills every vessel.</summary>
    public const double Pipette = 0.002;

    /// <summary>Relative standard uncertainty of each start solution, shared by the vessels it fills.</summary>
    public const double Flask = 0.01;

    /// <summary>Relative standard uncertainty of each dilution.</summary>
    public const double Diluting = 0.006;

    private const double Volume = 25;
    private const double Sensitivity = 0.05;
    private const double TopStandard = 4;
    private const int Readings = 3;
    private static readonly double[] Standards = [0, 0.5, 1, 2, 3, 4];
    private static readonly double[] Dilutions = [1, 2, 5, 10, 20, 25, 50];
    private static readonly Origin Nowhere = new(null, "invented", null, 0, null);

    /// <summary>A study of one series, with the concentration that was truly left in each vessel, mg/L.</summary>
    /// <param name="condition">What is simulated.</param>
    /// <param name="stream">Random numbers.</param>
    public static (Study Study, IReadOnlyDictionary<string, double> Left) Of(Condition condition, SeededStream stream)
    {
        var truths = new SortedDictionary<string, double>(StringComparer.Ordinal);
        var samples = new List<Sample>();
        var readings = new List<Reading>();
        foreach (var level in Standards)
            Standard(level);
        for (var blank = 1; blank <= 10; blank++)
        {
            samples.Add(Made($"BL-{blank}", SampleRole.Blank, []));
            Read($"BL-{blank}", 0, 1, 1);
        }

        var pipetted = Volume * (1 + Pipette * stream.Normal());
        var solution = new SortedDictionary<double, double>();
        foreach (var start in condition.Start is { } one ? [one] : condition.Settings)
            solution[start] = start * (1 + Flask * stream.Normal());
        foreach (var setting in condition.Settings)
        {
            var start = condition.Start ?? setting;
            for (var replicate = 1; replicate <= condition.Vessels; replicate++)
            {
                var code = FormattableString.Invariant($"V-{setting}-{replicate}");
                var written = Math.Round(condition.Dose * Volume, 1);
                var mass = written + Weighing * stream.Normal();
                var left = truths[code] = Left(condition, setting, solution[start], mass / pipetted, 1 + condition.Scatter * stream.Normal());
                samples.Add(Made(code, SampleRole.Vessel,
                [
                    (BatchProperties.InitialConcentration, start), (BatchProperties.Volume, Volume), (BatchProperties.Mass, written),
                    (BatchProperties.ContactTime, condition.Start is null ? 1440 : setting), (BatchProperties.Temperature, 298.15),
                ]));
                var dilution = Dilutions.First(d => left / d <= 0.8 * TopStandard);
                Read(code, left / (dilution == 1 ? 1 : dilution * (1 + Diluting * stream.Normal())), dilution, Readings);
            }
        }

        var study = new Study
        {
            Title = "invented",
            Invented = true,
            Analyte = "Ni",
            Samples = [.. samples],
            Readings = [.. readings],
            Runs = [new Run("run", SpectrometryProperties.Absorbance.Name, ImmutableSortedDictionary<string, string>.Empty, Nowhere)],
        };
        return (study, truths);

        void Standard(double level)
        {
            var code = FormattableString.Invariant($"S-{level}");
            samples.Add(Made(code, SampleRole.Standard, [(SpectrometryProperties.StandardConcentration, level)]));
            Read(code, level, 1, Readings);
        }

        void Read(string code, double level, double dilution, int times)
        {
            for (var time = 0; time < times; time++)
            {
                readings.Add(new(
                    $"R-{readings.Count + 1:0000}", code, "run", readings.Count + 1, SpectrometryProperties.Absorbance.Name, Shown(condition.Noise, level, stream), null, dilution, 1, "", Nowhere));
            }
        }
    }

    /// <summary>What the instrument shows of a concentration in mg/L.</summary>
    public static double Shown(Noise noise, double level, SeededStream stream)
    {
        var signal = Sensitivity * level;
        return signal + stream.Normal() * (noise == Noise.Constant ? 0.001 : Math.Sqrt(Math.Pow(0.0004, 2) + Math.Pow(0.015 * signal, 2)));
    }

    // The concentration left in a vessel whose uptake is off by a factor: by bisection, C0 − C = s·f(C) for an isotherm, at its time for kinetics.
    private static double Left(Condition condition, double setting, double start, double dose, double factor)
    {
        if (condition.Start is not null)
            return start - dose * factor * condition.Model.Value(setting, condition.Truth);
        if (condition.InAmount)
        {
            var even = Root(condition, start, dose, 1);
            return start - (start - even) * factor;
        }

        return Root(condition, start, dose, factor);
    }

    private static double Root(Condition condition, double start, double dose, double factor)
    {
        double low = 0, high = start;
        for (var step = 0; step < 200; step++)
        {
            var middle = (low + high) / 2;
            if (middle + dose * factor * condition.Model.Value(middle, condition.Truth) > start)
                high = middle;
            else
                low = middle;
        }

        return (low + high) / 2;
    }

    private static Sample Made(string code, SampleRole role, (Property Property, double Value)[] numbers)
        => new(code, role, numbers.Select(n => new Fact(n.Property.Name, n.Value, null, null, null, "", Nowhere))
            .Append(new Fact(SampleProperties.Series.Name, null, null, null, "S", "S", Nowhere))
            .ToImmutableSortedDictionary(f => f.Property, f => f, StringComparer.Ordinal));
}
