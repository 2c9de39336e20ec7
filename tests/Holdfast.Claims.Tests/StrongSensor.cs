using System.Collections.Immutable;
using Holdfast.Statistics;
using Holdfast.Studies;
using Holdfast.Studies.Properties;
using static System.FormattableString;

namespace Holdfast.Claims.Tests;

/// <summary>
/// An invented sensor read as it should be: levels in mixed order, a dozen separate blanks, a drift vessel, lifetimes with absorbances, ions beside the
/// analyte, a spiked water read on the sensor itself. Truth: dynamic, 0.02 L/µmol, nothing interferes; vessels scatter by 0.4 %.
/// </summary>
internal static class StrongSensor
{
    private const double Constant = 0.02, Bright = 1000, Lifetime = 0.92, Scatter = 0.004;
    private static readonly Origin File = new("01", "sensor.csv", null, 1, null);
    private static readonly Lazy<(ImmutableArray<Sample> Samples, ImmutableArray<Reading> Readings)> Made = new(Build);

    /// <summary>Its samples.</summary>
    public static ImmutableArray<Sample> Samples => Made.Value.Samples;

    /// <summary>Its readings.</summary>
    public static ImmutableArray<Reading> Readings => Made.Value.Readings;

    /// <summary>Its runs.</summary>
    public static ImmutableArray<Run> Runs =>
        [.. new[] { ("signals", FluorescenceProperties.Intensity), ("decays", FluorescenceProperties.Lifetime) }.Select(r => new Run(r.Item1, r.Item2.Name, ImmutableSortedDictionary<string, string>.Empty, File))];

    /// <summary>Margins fixed before the first file.</summary>
    public static ImmutableArray<Margin> Margins => [new("interference", -5, 5, "%", 2), new("recovery", 80, 110, "%", 2)];

    /// <summary>What its author states.</summary>
    public static ImmutableArray<StatedClaim> Claims =>
    [
        Claim("sensor-responds", ("series", "SENSE")), Claim("sensor-linear", ("series", "SENSE"), ("to", "60 µmol/L")),
        Claim("sensor-detection-limit", ("series", "SENSE"), ("limit", "2 µmol/L")), Claim("quenching-mechanism", ("series", "SENSE"), ("mechanism", "dynamic")),
        Claim("no-interference", ("series", "IONS")), Claim("works-in-water", ("series", "TAP")),
    ];

    private static (ImmutableArray<Sample> Samples, ImmutableArray<Reading> Readings) Build()
    {
        var chance = new SeededStream(2718, "strong sensor");
        var samples = ImmutableArray.CreateBuilder<Sample>();
        var readings = ImmutableArray.CreateBuilder<Reading>();
        for (var i = 0; i < 12; i++)
            Read(Invariant($"SB-{i}"), SampleRole.Blank, "SENSE", Signal(0));
        foreach (var level in new[] { 30.0, 5, 60, 0, 20, 40, 10, 50 })
        {
            for (var i = 1; i <= 3; i++)
                Read(Invariant($"SQ-{level}-{i}"), SampleRole.Vessel, "SENSE", Signal(level), (FluorescenceProperties.Quencher, level));
        }

        foreach (var minutes in new[] { 0.0, 10, 20, 30, 40, 50, 60 })
            Read(Invariant($"SD-{minutes}"), SampleRole.Vessel, "DRIFT", Bright * (1 - 0.0001 * minutes) * (1 + 0.0005 * chance.Normal()), (FluorescenceProperties.Exposure, minutes));
        foreach (var level in new[] { 0.0, 10, 20, 40 })
        {
            for (var i = 1; i <= 3; i++)
            {
                Add(Invariant($"ST-{level}-{i}"), SampleRole.Vessel, "DECAY", "decays", FluorescenceProperties.Lifetime, Lifetime / (1 + Constant * level) * (1 + Scatter * chance.Normal()), null,
                    (FluorescenceProperties.Quencher, level), (FluorescenceProperties.AbsorbanceExcitation, 0.0001 * level), (FluorescenceProperties.AbsorbanceEmission, 0));
            }
        }

        for (var i = 1; i <= 8; i++)
            Read(Invariant($"SI-none-{i}"), SampleRole.Vessel, "IONS", Signal(20), (FluorescenceProperties.Quencher, 20));
        foreach (var ion in new[] { "Na", "Ca", "Mg" })
        {
            for (var i = 1; i <= 4; i++)
            {
                Add(Invariant($"SI-{ion}-{i}"), SampleRole.Vessel, "IONS", "signals", FluorescenceProperties.Intensity, Signal(20), ion,
                    (FluorescenceProperties.Quencher, 20), (FluorescenceProperties.InterferentConcentration, 1000));
            }
        }

        foreach (var added in new[] { 0.0, 10, 20, 30 })
        {
            for (var i = 1; i <= 3; i++)
                Read(Invariant($"SW-{added}-{i}"), SampleRole.Spike, "TAP", Signal(1.5 + added), (FluorescenceProperties.Added, added));
        }

        return (samples.ToImmutable(), readings.ToImmutable());

        double Signal(double quencher) => Bright / (1 + Constant * quencher) * (1 + Scatter * chance.Normal());

        void Read(string code, SampleRole role, string series, double value, params (Property, double)[] numbers)
            => Add(code, role, series, "signals", FluorescenceProperties.Intensity, value, null, numbers);

        void Add(string code, SampleRole role, string series, string run, Property signal, double value, string? ion, params (Property, double)[] numbers)
        {
            (Property, string)[] words = ion is null ? [(SampleProperties.Series, series)] : [(SampleProperties.Series, series), (FluorescenceProperties.Interferent, ion)];
            samples.Add(new Sample(code, role, Holdfast.Claims.Tests.Made.Facts(numbers, words)));
            readings.Add(new(Invariant($"F-{readings.Count:0000}"), code, run, readings.Count + 1, signal.Name, value, null, 1, 1, "", File));
        }
    }

    private static StatedClaim Claim(string rule, params (string Name, string Words)[] parameters)
        => new(rule, rule, parameters.ToImmutableSortedDictionary(p => p.Name, p => p.Words, StringComparer.Ordinal), null, 10, default);
}
