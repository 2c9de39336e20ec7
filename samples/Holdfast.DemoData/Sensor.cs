using System.Collections.Immutable;
using Holdfast.Statistics;
using static System.FormattableString;

namespace Holdfast.DemoData;

/// <summary>The invented sensor: 0.20 g/L of the powder in water, excited at 394 nm and read at 616 nm, dims with nickel.</summary>
public sealed record Sensor
{
    /// <summary>Powder in the dispersion, g/L.</summary>
    public const double Dispersion = 0.20;

    private const double Bright = 1000;
    private const double Lifetime = 0.92;
    private const double Lost = 0.04;
    private const double DriftMinutes = 60;
    private static readonly double[] Levels = [0, 2, 5, 10, 15, 20, 30, 40, 60, 80];
    private static readonly double[] Additions = [0, 10, 20, 30];

    private static readonly (string Ion, double Concentration, double Share, double? Excitation, double? Emission)[] Ions =
    [
        ("Na", 1000, 1.00, null, null), ("K", 1000, 1.00, null, null), ("Mg", 1000, 1.00, null, null), ("Ca", 1000, 0.99, null, null),
        ("Zn", 20, 0.98, null, null), ("Cd", 20, 0.99, null, null), ("Mn", 20, 0.97, null, null), ("Pb", 20, 0.93, null, null), ("Co", 20, 0.86, null, null),
        ("Fe", 20, 0.62, 0.11, 0.01),
    ];

    /// <summary>Signals at ten levels of nickel, three vessels each, read in rising order.</summary>
    public required ImmutableArray<SensorVessel> Quenching { get; init; }

    /// <summary>Ten separate dispersions without nickel.</summary>
    public required ImmutableArray<SensorVessel> Blanks { get; init; }

    /// <summary>One dispersion without nickel, read over an hour.</summary>
    public required ImmutableArray<SensorVessel> Drift { get; init; }

    /// <summary>Lifetimes at three levels, three vessels each, ms.</summary>
    public required ImmutableArray<SensorVessel> Lifetimes { get; init; }

    /// <summary>Other ions alone, three vessels each, with six blanks and nickel alone of the same day.</summary>
    public required ImmutableArray<SensorVessel> Interference { get; init; }

    /// <summary>Roof water and diluted rinse water with known additions: what the student worked out, µmol/L.</summary>
    public required ImmutableArray<SensorVessel> Spikes { get; init; }

    /// <summary>Draws the sensor.</summary>
    /// <param name="seed">Seed of the study.</param>
    public static Sensor Read(ulong seed)
    {
        SeededStream quenching = new(seed, "FLUOR"), blanks = new(seed, "FLUOR-BLANK"), drift = new(seed, "FLUOR-DRIFT"), lifetimes = new(seed, "LIFETIME");
        SeededStream other = new(seed, "INTERFERENCE"), spikes = new(seed, "SPIKE");
        return new()
        {
            Quenching = [.. Replicates(Levels, "FL", "FLUOR", q => Bright * Share(q) * (1 + 0.012 * quenching.Normal()))],
            Blanks = [.. Enumerable.Range(1, 10).Select(i => Blank(Invariant($"FB-{i}"), "FLUOR-BLANK", Bright * (1 + 0.012 * blanks.Normal())))],
            Drift =
            [
                .. Enumerable.Range(0, 7).Select(i => 10.0 * i).Select(t => new SensorVessel(Invariant($"FD-{t}"), "FLUOR-DRIFT", Bright * Math.Pow(1 - Lost, t / DriftMinutes) * (1 + 0.004 * drift.Normal()))
                {
                    Quencher = 0,
                    Minutes = t,
                }),
            ],
            Lifetimes =
            [
                .. Replicates([0, 20, 40], "LT", "LIFETIME", q => Lifetime / (1 + 0.0175 * q) * (1 + 0.02 * lifetimes.Normal()))
                    .Select(v => v with { Excitation = 5.1e-6 * v.Quencher, Emission = 0 }),
            ],
            Interference = [.. OtherIons(other)],
            Spikes = [.. Spiked("SR", "SPIKE-roof", "roof water", 1.5, 1.00, spikes), .. Spiked("SN", "SPIKE-rinse", "rinse water, diluted", 6.0, 0.84, spikes)],
        };
    }

    /// <summary>True share of the signal left: eight hundredths of it are out of reach.</summary>
    /// <param name="quencher">Nickel, µmol/L.</param>
    public static double Share(double quencher) => 0.08 + 0.92 / (1 + 0.0190 * quencher);

    private static IEnumerable<SensorVessel> Replicates(double[] levels, string code, string series, Func<double, double> read)
        => levels.SelectMany(q => Enumerable.Range(1, 3).Select(r => new SensorVessel(Invariant($"{code}{q:00}-{r}"), series, read(q)) { Quencher = q, Replicate = r }));

    private static IEnumerable<SensorVessel> OtherIons(SeededStream chance)
    {
        for (var i = 1; i <= 6; i++)
            yield return Blank(Invariant($"IFB-{i}"), "INTERFERENCE", Bright * (1 + 0.015 * chance.Normal()));
        for (var r = 1; r <= 3; r++)
            yield return new(Invariant($"IF-Ni-{r}"), "INTERFERENCE", Bright * 0.747 * (1 + 0.015 * chance.Normal())) { Quencher = 20, Replicate = r };
        foreach (var (ion, concentration, share, excitation, emission) in Ions)
        {
            for (var r = 1; r <= 3; r++)
            {
                yield return new(Invariant($"IF-{ion}-{r}"), "INTERFERENCE", Bright * share * (1 + 0.015 * chance.Normal()))
                {
                    Ion = ion,
                    IonConcentration = concentration,
                    Excitation = excitation,
                    Emission = emission,
                    Replicate = r,
                };
            }
        }
    }

    private static IEnumerable<SensorVessel> Spiked(string code, string series, string water, double native, double slope, SeededStream chance)
        => Additions.SelectMany(added => Enumerable.Range(1, 3).Select(r => new SensorVessel(Invariant($"{code}{added:00}-{r}"), series, native + slope * added + 0.7 * chance.Normal())
        {
            Role = "spike",
            Added = added,
            Matrix = water,
            Replicate = r,
        }));

    private static SensorVessel Blank(string code, string series, double signal) => new(code, series, signal) { Role = "blank" };
}
