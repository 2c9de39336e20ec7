namespace Holdfast.DemoData;

/// <summary>The invented truth about the powder: how much nickel it holds at which concentration, and how fast.</summary>
public static class Sorption
{
    /// <summary>Affinity at 298.15 K in L/mg.</summary>
    public const double Affinity = 0.35;

    /// <summary>True uptake in mg/g: sites that differ a little, exponent 0.90.</summary>
    /// <param name="ce">Concentration left in the liquid, mg/L.</param>
    /// <param name="affinity">Affinity in L/mg.</param>
    public static double Uptake(double ce, double affinity = Affinity)
    {
        var filled = Math.Pow(affinity * ce, 0.90);
        return 14.0 * filled / (1 + filled);
    }

    /// <summary>Affinity in L/mg at another temperature; the enthalpy is 9.0 kJ/mol.</summary>
    /// <param name="kelvin">Temperature in K.</param>
    public static double AffinityAt(double kelvin) => Affinity * Math.Exp(-(9000 / 8.314462618) * (1 / kelvin - 1 / 298.15));

    /// <summary>Concentration in mg/L left at equilibrium: what the powder took and what is left make up the start.</summary>
    /// <param name="c0">Concentration at the start, mg/L.</param>
    /// <param name="dose">Effective dose, g/L.</param>
    /// <param name="affinity">Affinity in L/mg.</param>
    public static double Equilibrium(double c0, double dose, double affinity = Affinity)
    {
        double low = 0, high = c0;
        for (var i = 0; i < 200; i++)
        {
            var middle = 0.5 * (low + high);
            if (middle + dose * Uptake(middle, affinity) > c0)
                high = middle;
            else
                low = middle;
        }

        return low;
    }

    /// <summary>Dose that is reached by the liquid, g/L: above 2 g/L the powder clumps.</summary>
    /// <param name="dose">Dose weighed in, g/L.</param>
    public static double EffectiveDose(double dose) => dose > 2 ? dose / (1 + Math.Pow((dose - 2) / 2.8, 1.7)) : dose;

    /// <summary>True share of the final uptake after a time: a fast and a slow part.</summary>
    /// <param name="minutes">Contact time in min.</param>
    /// <param name="pace">The fast share and the two rate constants.</param>
    public static double Reached(double minutes, Pace pace)
        => 1 - pace.FastShare * Math.Exp(-pace.Fast * minutes) - (1 - pace.FastShare) * Math.Exp(-pace.Slow * minutes);
}

/// <summary>How fast an invented uptake goes.</summary>
/// <param name="FastShare">Share of the sites that fill fast.</param>
/// <param name="Fast">Rate constant of the fast part, 1/min.</param>
/// <param name="Slow">Rate constant of the slow part, 1/min.</param>
public readonly record struct Pace(double FastShare, double Fast, double Slow);
