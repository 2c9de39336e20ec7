using Holdfast.Amounts;
using Holdfast.Composition;

namespace Holdfast.Solutions;

/// <summary>A stock solution from a weighed salt. "1000 mg/L" always means milligrams of the named element in each litre here.</summary>
public static class Stock
{
    /// <summary>Weigh at least this many steps of the balance, for a tenth of a percent.</summary>
    public const double StepsOfTheBalance = 1000;

    /// <summary>Mass of salt to weigh, m = c·V·M/(A·w), g.</summary>
    /// <param name="concentration">Concentration wanted, mg of the element in each litre.</param>
    /// <param name="volume">Volume, L.</param>
    /// <param name="massFraction">Mass fraction of the element in the pure salt, no unit.</param>
    /// <param name="purity">Mass fraction of pure salt in what is weighed, no unit.</param>
    public static T MassNeeded<T>(T concentration, T volume, T massFraction, T purity) where T : struct, IReal<T>
        => concentration * volume / (1000 * massFraction * purity);

    /// <summary>Concentration from what was really weighed, mg of the element in each litre.</summary>
    /// <param name="mass">Mass of salt, g.</param>
    /// <param name="volume">Volume, L.</param>
    /// <param name="massFraction">Mass fraction of the element in the pure salt, no unit.</param>
    /// <param name="purity">Mass fraction of pure salt in what is weighed, no unit.</param>
    public static T Concentration<T>(T mass, T volume, T massFraction, T purity) where T : struct, IReal<T>
        => 1000 * mass * massFraction * purity / volume;

    /// <summary>A stock with the uncertainty of weighing, purity, flask and atomic weights, mg of the element in each litre.</summary>
    /// <param name="salt">The salt, hydrate water included.</param>
    /// <param name="element">Symbol of the element that is counted.</param>
    /// <param name="mass">Mass weighed, g.</param>
    /// <param name="purity">Mass fraction of pure salt, no unit.</param>
    /// <param name="volume">Volume, L.</param>
    /// <exception cref="ArgumentException">The salt has none of the element.</exception>
    public static Measured Of(Formula salt, string element, Measured mass, Measured purity, Measured volume)
    {
        ArgumentNullException.ThrowIfNull(salt);
        if (!(salt.Count(element) > 0))
            throw new ArgumentException($"{salt} has no {element}.", nameof(element));
        return Concentration(mass, volume, salt.MassFraction(element), purity);
    }

    /// <summary>True when so little is weighed that the balance itself spoils the stock.</summary>
    /// <param name="mass">Mass to weigh, g.</param>
    /// <param name="resolution">Step of the balance, g.</param>
    public static bool IsTooLittle(double mass, double resolution) => mass < StepsOfTheBalance * resolution;
}
