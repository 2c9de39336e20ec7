using Holdfast.Statistics;
using static System.FormattableString;

namespace Holdfast.DemoData;

/// <summary>
/// Uptake against time at 5 mg/L and three more temperatures, two vessels at each time. The rates rise by an activation energy of 30 kJ/mol, the
/// final uptake by the same enthalpy as the isotherms.
/// </summary>
public static class RateSeries
{
    private const double Start = 5;
    private const double Dose = 2;
    private const double ActivationEnergy = 30000;
    private const double MolarGas = 8.314462618;
    private const double Known = 298.15;
    private static readonly double[] Times = [3, 6, 10, 15, 20, 30, 45, 60, 90, 120];
    private static readonly Pace AtKnown = new(0.90, 0.15, 0.030);

    /// <summary>The invented truth: both rate constants times exp(−Ea/R·(1/T − 1/298.15)).</summary>
    /// <param name="kelvin">Temperature in K.</param>
    public static Pace PaceAt(double kelvin)
    {
        var faster = Math.Exp(-(ActivationEnergy / MolarGas) * (1 / kelvin - 1 / Known));
        return AtKnown with { Fast = AtKnown.Fast * faster, Slow = AtKnown.Slow * faster };
    }

    /// <summary>Thirty levels, two vessels each; each series has a random stream of its name.</summary>
    /// <param name="seed">Seed of the study.</param>
    /// <param name="line">Calibration line the liquids are worked out with.</param>
    public static IEnumerable<Vessel> Of(ulong seed, Line line)
    {
        foreach (var celsius in (double[])[15, 35, 45])
        {
            var kelvin = celsius + 273.15;
            var series = Invariant($"KIN-05-{Math.Floor(kelvin)}");
            var chance = new SeededStream(seed, series);
            var final = (Start - Sorption.Equilibrium(Start, Dose, Sorption.AffinityAt(kelvin))) / Dose;
            foreach (var minutes in Times)
            {
                var q = final * Sorption.Reached(minutes, PaceAt(kelvin));
                for (var r = 1; r <= 2; r++)
                {
                    yield return new Vessel(Invariant($"KT{celsius}-{minutes:000}-{r}"), series, series, Invariant($"{minutes} min"), r)
                    {
                        C0 = Start,
                        Minutes = minutes,
                        Celsius = celsius,
                        Portion = Flame.Portion(chance, Start - Dose * q * (1 + 0.020 * chance.Normal()), line),
                    };
                }
            }
        }
    }
}
