using Holdfast.Amounts;
using Holdfast.Composition;

namespace Holdfast.Solutions;

/// <summary>Mass into amount and back, for readings and for fitted constants. Which species the milligrams count must be known.</summary>
public static class MolarUnits
{
    private static readonly Unit MolePerGram = Unit.Parse("mol/g");

    /// <summary>Concentration in mmol/L.</summary>
    /// <param name="massConcentration">Concentration, mg/L.</param>
    /// <param name="molarMass">Molar mass of the species that is counted, g/mol.</param>
    public static T ToMillimolar<T>(T massConcentration, T molarMass) where T : struct, IReal<T> => massConcentration / molarMass;

    /// <summary>Concentration in mg/L.</summary>
    /// <param name="amountConcentration">Concentration, mmol/L.</param>
    /// <param name="molarMass">Molar mass of the species that is counted, g/mol.</param>
    public static T ToMilligramsPerLitre<T>(T amountConcentration, T molarMass) where T : struct, IReal<T> => amountConcentration * molarMass;

    /// <summary>An affinity such as Langmuir's K in L/mmol.</summary>
    /// <param name="affinity">Affinity, L/mg.</param>
    /// <param name="molarMass">Molar mass of the species that is counted, g/mol.</param>
    public static T Affinity<T>(T affinity, T molarMass) where T : struct, IReal<T> => affinity * molarMass;

    /// <summary>Freundlich's factor for q in mmol/g and C in mmol/L: KF·M^(1/n − 1), from q = KF·C^(1/n) with both sides divided by M.</summary>
    /// <param name="factor">KF for q in mg/g and C in mg/L; its unit depends on n.</param>
    /// <param name="oneOverN">Exponent 1/n, no unit.</param>
    /// <param name="molarMass">Molar mass of the species that is counted, g/mol.</param>
    public static T FreundlichFactor<T>(T factor, T oneOverN, T molarMass) where T : struct, IReal<T> => factor * T.Pow(molarMass, oneOverN - 1);

    /// <summary>A quantity in another unit, where mass may become amount or the other way: mg/L into mmol/L, mg/g into mmol/g, L/mg into L/mmol.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <param name="unit">The unit wanted.</param>
    /// <param name="molarMass">Molar mass of the species that is counted, g/mol, above 0.</param>
    /// <exception cref="ArgumentException">No molar mass turns the one unit into the other.</exception>
    public static Quantity Convert(Quantity quantity, Unit unit, double molarMass)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(molarMass);
        if (quantity.Unit.IsConvertibleTo(unit))
            return quantity.In(unit);
        var toAmount = quantity.Unit * MolePerGram;
        if (toAmount.IsConvertibleTo(unit))
            return (quantity with { Value = quantity.Value / molarMass, U = quantity.U / molarMass, Unit = toAmount }).In(unit);
        var toMass = quantity.Unit / MolePerGram;
        if (toMass.IsConvertibleTo(unit))
            return (quantity with { Value = quantity.Value * molarMass, U = quantity.U * molarMass, Unit = toMass }).In(unit);
        throw new ArgumentException($"No molar mass turns {quantity.Unit} into {unit}.", nameof(unit));
    }

    /// <summary>Factor from "as one species" to "as another" by the element they share: 0.226 from nitrate to nitrogen. By mass, no unit.</summary>
    /// <param name="from">Species the value is stated as.</param>
    /// <param name="to">Species wanted.</param>
    /// <param name="element">Symbol of the element both hold.</param>
    /// <exception cref="ArgumentException">One of them has none of the element.</exception>
    public static Measured SpeciesFactor(Formula from, Formula to, string element)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        if (!(from.Count(element) > 0 && to.Count(element) > 0))
            throw new ArgumentException($"{from} and {to} do not both hold {element}.", nameof(element));
        return from.Count(element) / to.Count(element) * (to.Mass / from.Mass);
    }
}
