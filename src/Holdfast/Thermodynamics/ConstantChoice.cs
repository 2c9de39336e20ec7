using Holdfast.Amounts;

namespace Holdfast.Thermodynamics;

/// <summary>
/// What may stand for K under a logarithm, and what follows from the choice. One isotherm gives values of ΔG° 10 to 30 kJ/mol apart by choice of standard
/// state alone, so that a sign or a class read off ΔG° is the choice, not the material.
/// </summary>
/// <remarks>Zhou and Zhou, Chem. Eng. Commun. 201 (2014) 1459; Lima and co-workers, J. Mol. Liq. 273 (2019) 425, on constants with and without unit.</remarks>
/// <param name="Name">What is taken.</param>
/// <param name="StandardState">The state that makes it a number without unit; null when there is none.</param>
/// <param name="Limits">What to say beside it.</param>
public sealed record ConstantChoice(string Name, string? StandardState, string Limits)
{
    /// <summary>Water in a litre of dilute solution, mol/L, as the trade rounds it.</summary>
    public const double WaterAmount = 55.5;

    /// <summary>Langmuir's affinity against 1 mol/L.</summary>
    public static ConstantChoice Molar { get; } = new(
        "Langmuir affinity × 1 mol/L", "1 mol/L in the ideal dilute solution, half-filled sites",
        "State it: ΔG° and ΔS° belong to 1 mol/L.");

    /// <summary>Langmuir's affinity against the mole fraction of pure water.</summary>
    public static ConstantChoice MoleFraction { get; } = new(
        "Langmuir affinity × 55.5 mol/L", "mole fraction 1 in water, half-filled sites",
        "Adds R·ln 55.5 = 33.4 J/(mol K) to ΔS° against 1 mol/L. Never mix the two in one table.");

    /// <summary>The limiting distribution coefficient in L/g.</summary>
    public static ConstantChoice Distribution { get; } = new(
        "limiting q/C in L/g", null,
        "Its value depends on the unit of mass: ΔG° and ΔS° mean nothing, ΔH° survives.");

    /// <summary>The limiting distribution coefficient times 1000 g/L.</summary>
    public static ConstantChoice DistributionByWater { get; } = new(
        "limiting q/C × 1000 g/L", "1 g of sorbent as 1 mL of water",
        "Adds R·ln 1000 = 57.4 J/(mol K) to ΔS° against L/g; ΔH° is the same.");

    /// <summary>The ratio sorbed to dissolved in one vessel.</summary>
    public static ConstantChoice RatioInOneVessel { get; } = new(
        "(C0 − Ce)/Ce at one dose", null,
        "It moves with dose and start concentration: not a constant of anything.");

    /// <summary>Every choice, from the one to make downwards.</summary>
    public static IReadOnlyList<ConstantChoice> All { get; } = [Molar, MoleFraction, DistributionByWater, Distribution, RatioInOneVessel];

    /// <summary>K = KL·M·1000 mg/g × 1 mol/L, without unit.</summary>
    /// <param name="affinity">Langmuir's K, L/mg.</param>
    /// <param name="molarMass">Molar mass of the species that the milligrams count, g/mol.</param>
    public static T OfAffinity<T>(T affinity, double molarMass) where T : struct, IReal<T>
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(molarMass);
        return affinity * (molarMass * 1000);
    }

    /// <summary>K against mole fraction 1: <see cref="OfAffinity"/> × 55.5, without unit.</summary>
    /// <param name="affinity">Langmuir's K, L/mg.</param>
    /// <param name="molarMass">Molar mass of the species that the milligrams count, g/mol.</param>
    public static T OfAffinityByMoleFraction<T>(T affinity, double molarMass) where T : struct, IReal<T> => OfAffinity(affinity, molarMass) * WaterAmount;

    /// <summary>Limiting distribution coefficient of a Langmuir isotherm, qm·K, L/g.</summary>
    /// <param name="capacity">qm, mg/g.</param>
    /// <param name="affinity">K, L/mg.</param>
    public static T LimitingDistribution<T>(T capacity, T affinity) where T : struct, IReal<T> => capacity * affinity;

    /// <summary>What a change of standard state adds to ΔS°, J/(mol K): R·ln of the factor.</summary>
    /// <param name="factor">New K over old K; no unit, above 0.</param>
    public static double EntropyShift(double factor)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(factor);
        return Constants.MolarGas * Math.Log(factor);
    }
}
