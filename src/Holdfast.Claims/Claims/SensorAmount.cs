using Holdfast.Claims.Analyses;
using Holdfast.Composition;
using Holdfast.Solutions;

namespace Holdfast.Claims;

/// <summary>Amounts of a sensor's claims in µmol/L, which is what a sensor counts; milligrams become moles by the molar mass of the study's element.</summary>
internal static class SensorAmount
{
    /// <summary>The unit of a sensor's axis.</summary>
    public const string Unit = "µmol/L";

    /// <summary>A parameter in µmol/L, or null when it was not given or cannot be that.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="name">Name of the parameter.</param>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static double? In(Claim claim, string name, Evidence evidence)
        => claim.In(name, Unit) ?? (claim.In(name, "mg/L") is { } mass && MolarMass(evidence) is { } m
            ? 1000 * MolarUnits.ToMillimolar<Amounts.Number>(mass, m).Value : null);

    /// <summary>The same in mg/L behind an amount, " = 0.1381 mg/L"; empty when the study does not say which element it is about.</summary>
    /// <param name="amount">Amount, µmol/L.</param>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static string InMilligrams(double amount, Evidence evidence)
        => MolarMass(evidence) is { } m ? $" = {Phrase.With(MolarUnits.ToMilligramsPerLitre<Amounts.Number>(amount / 1000, m).Value, "mg/L")}" : "";

    private static double? MolarMass(Evidence evidence)
        => evidence.Study.Analyte is { } metal ? Formula.Read(metal).Value?.MolarMass : null;
}
