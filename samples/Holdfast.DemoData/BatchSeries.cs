using Holdfast.Statistics;
using static System.FormattableString;

namespace Holdfast.DemoData;

/// <summary>
/// The series of vessels that went through the spectrometer. Each has its own random stream: for each level and each replicate
/// the vessel's error is drawn first, then the dilution's, then the three readings.
/// </summary>
/// <param name="seed">Seed of the study.</param>
/// <param name="line">Calibration line the liquids are worked out with.</param>
public sealed class BatchSeries(ulong seed, Line line)
{
    private const double Dose = 2;
    private static readonly double[] Times = [5, 10, 20, 30, 45, 60, 90, 120, 180];
    private static readonly double[] EndPh = [4.9, 6.1, 6.5, 6.7, 7.0, 7.6, 8.4];
    private static readonly double[] RemovalByPh = [0.38, 0.74, 0.79, 0.802, 0.84, 0.91, 0.986];
    private static readonly double[] LossByPh = [0, 0, 0, 0, 0.005, 0.025, 0.71];

    /// <summary>The isotherm at 25 °C: eight concentrations, three vessels each.</summary>
    public IEnumerable<Vessel> Isotherm()
    {
        var chance = new SeededStream(seed, "ISO-298");
        foreach (var c0 in (double[])[2, 5, 10, 15, 20, 30, 40, 60])
        {
            var q = (c0 - Sorption.Equilibrium(c0, Dose)) / Dose;
            for (var r = 1; r <= 3; r++)
            {
                yield return new Vessel(Invariant($"ISO-{c0:00}-{r}"), "ISO-298", "ISO-298", Invariant($"{c0} mg/L"), r)
                {
                    C0 = c0,
                    EndPh = 6.7,
                    Portion = Flame.Portion(chance, Math.Max(c0 - Dose * q * (1 + 0.025 * chance.Normal()), 0.01), line),
                };
            }
        }
    }

    /// <summary>Six doses at 20 mg/L, three vessels each.</summary>
    public IEnumerable<Vessel> Doses()
    {
        var chance = new SeededStream(seed, "DOSE");
        foreach (var dose in (double[])[0.5, 1, 1.5, 2, 3, 4])
        {
            var ce = Sorption.Equilibrium(20, Sorption.EffectiveDose(dose));
            for (var r = 1; r <= 3; r++)
            {
                yield return new Vessel(Invariant($"DOSE-{dose:0.0}-{r}"), "DOSE", "DOSE", Invariant($"{dose} g/L"), r)
                {
                    Mass = 25 * dose,
                    Portion = Flame.Portion(chance, ce + 0.22 * chance.Normal(), line),
                };
            }
        }
    }

    /// <summary>Uptake against time at 5 and at 20 mg/L, three vessels at each time.</summary>
    public IEnumerable<Vessel> ContactTimes()
        => ContactTimes("KIN-05", "K05", 5, new Pace(0.90, 0.15, 0.030)).Concat(ContactTimes("KIN-20", "K20", 20, new Pace(0.62, 0.10, 0.009)));

    /// <summary>Short isotherms at three temperatures, two vessels each.</summary>
    public IEnumerable<Vessel> Temperatures()
    {
        foreach (var kelvin in (double[])[298.15, 308.15, 318.15])
        {
            var series = Invariant($"TEMP-{Math.Floor(kelvin)}");
            var chance = new SeededStream(seed, series);
            var affinity = Sorption.AffinityAt(kelvin);
            foreach (var c0 in (double[])[5, 10, 20, 30, 50])
            {
                var q = (c0 - Sorption.Equilibrium(c0, Dose, affinity)) / Dose;
                for (var r = 1; r <= 2; r++)
                {
                    yield return new Vessel(Invariant($"T{Math.Floor(kelvin)}-{c0:00}-{r}"), series, series, Invariant($"{c0} mg/L"), r)
                    {
                        C0 = c0,
                        Celsius = Math.Round(kelvin - 273.15),
                        Portion = Flame.Portion(chance, Math.Max(c0 - Dose * q * (1 + 0.025 * chance.Normal()), 0.01), line),
                    };
                }
            }
        }
    }

    /// <summary>Start pH 3 to 9 at 20 mg/L, three vessels each.</summary>
    public IEnumerable<Vessel> AcidityLevels()
    {
        var chance = new SeededStream(seed, "PH");
        for (var i = 0; i < EndPh.Length; i++)
        {
            for (var r = 1; r <= 3; r++)
            {
                yield return new Vessel(Invariant($"PH{i + 3}-{r}"), "PH", "PH", Invariant($"pH {i + 3}"), r)
                {
                    StartPh = i + 3,
                    EndPh = EndPh[i],
                    Portion = Flame.Portion(chance, Math.Max(20 * (1 - RemovalByPh[i]) + 0.22 * chance.Normal(), 0.02), line),
                };
            }
        }
    }

    /// <summary>The same solutions without powder, two at each pH.</summary>
    public IEnumerable<Vessel> AcidityControls()
    {
        var chance = new SeededStream(seed, "PH-BLANK");
        for (var i = 0; i < LossByPh.Length; i++)
        {
            for (var r = 1; r <= 2; r++)
            {
                yield return new Vessel(Invariant($"PH{i + 3}-C{r}"), "PH", "PH-BLANK", Invariant($"pH {i + 3}"), r)
                {
                    Role = "control",
                    Mass = null,
                    StartPh = i + 3,
                    Portion = Flame.Portion(chance, 20 * (1 - LossByPh[i]) + 0.15 * chance.Normal(), line),
                };
            }
        }
    }

    /// <summary>Two real waters after treatment, three vessels each.</summary>
    public IEnumerable<Vessel> Waters()
        => Water("WATER-rinse", "RINSE", "plating-rinse water", 6.80, 0.62, 0.03)
            .Concat(Water("WATER-roof", "ROOF", "roof-catchment water", 0.120, 0.012, 0.002));

    private IEnumerable<Vessel> ContactTimes(string series, string prefix, double c0, Pace pace)
    {
        var chance = new SeededStream(seed, series);
        var final = (c0 - Sorption.Equilibrium(c0, Dose)) / Dose;
        foreach (var minutes in Times)
        {
            var q = final * Sorption.Reached(minutes, pace);
            for (var r = 1; r <= 3; r++)
            {
                yield return new Vessel(Invariant($"{prefix}-{minutes:000}-{r}"), series, series, Invariant($"{minutes} min"), r)
                {
                    C0 = c0,
                    Minutes = minutes,
                    Portion = Flame.Portion(chance, c0 - Dose * q * (1 + 0.020 * chance.Normal()), line),
                };
            }
        }
    }

    private IEnumerable<Vessel> Water(string series, string prefix, string water, double untreated, double treated, double sd)
    {
        var chance = new SeededStream(seed, series);
        for (var r = 1; r <= 3; r++)
        {
            yield return new Vessel(Invariant($"{prefix}-{r}"), series, series, "treated", r)
            {
                C0 = untreated,
                StartPh = null,
                Matrix = water,
                Portion = Flame.Portion(chance, treated + sd * chance.Normal(), line),
            };
        }
    }
}
