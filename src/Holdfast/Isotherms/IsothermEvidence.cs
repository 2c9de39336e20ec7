using MathNet.Numerics.Statistics;

namespace Holdfast.Isotherms;

/// <summary>
/// What an isotherm's numbers allow to be said. Each rule is one comparison; thresholds are common practice unless a source is named. Two readings
/// are not rules here because no number can carry them: a mechanism from the energy E of Dubinin-Radushkevich (E follows the unit or the
/// solubility chosen) and "favourable" from the separation factor (it lies between 0 and 1 for every positive K).
/// </summary>
public static class IsothermEvidence
{
    private const double Avogadro = 6.02214076e23;

    /// <summary>How a mechanism stands that is read from E, whatever E is.</summary>
    public const Standing MechanismFromEnergy = Standing.NotShown;

    /// <summary>How "favourable" stands that is read from the separation factor, whatever it is.</summary>
    public const Standing FavourableFromSeparationFactor = Standing.NotShown;

    /// <summary>Whether the levels can carry a curve: four more distinct concentrations than parameters, over a tenfold range.</summary>
    /// <param name="distinctLevels">Number of different equilibrium concentrations.</param>
    /// <param name="parameters">Number of fitted parameters.</param>
    /// <param name="lowest">Lowest equilibrium concentration, above 0.</param>
    /// <param name="highest">Highest, in the same unit.</param>
    public static Standing Levels(int distinctLevels, int parameters, double lowest, double highest)
        => distinctLevels >= parameters + 4 && highest >= 10 * lowest ? Standing.Holds : Standing.NotShown;

    /// <summary>Whether the capacity is known: coverage at the highest concentration from 0.8, weakly from 0.5, and a closed profile interval.</summary>
    /// <param name="highestCoverage">K·Cmax/(1 + K·Cmax), 0 to 1.</param>
    /// <param name="intervalIsClosed">Whether the profile interval of qm has both ends.</param>
    public static Standing Capacity(double highestCoverage, bool intervalIsClosed = true)
        => highestCoverage < 0.5 || !intervalIsClosed ? Standing.NotShown : highestCoverage < 0.8 ? Standing.Weak : Standing.Holds;

    /// <summary>Whether the affinity is known: some point at coverage 0.5 or below.</summary>
    /// <param name="lowestCoverage">K·Cmin/(1 + K·Cmin), 0 to 1.</param>
    public static Standing Affinity(double lowestCoverage) => lowestCoverage > 0.5 ? Standing.NotShown : Standing.Holds;

    /// <summary>Whether the Langmuir form survives: the Sips exponent's interval contains 1 and lack of fit is not seen.</summary>
    /// <param name="exponentLow">Lower end of the 95 % interval of the Sips exponent.</param>
    /// <param name="exponentHigh">Upper end.</param>
    /// <param name="lackOfFit">p of the lack-of-fit test, or null without replicates.</param>
    public static Standing LangmuirForm(double exponentLow, double exponentHigh, double? lackOfFit = null)
        => exponentLow > 1 || exponentHigh < 1 || lackOfFit < 0.05 ? Standing.Contradicted : Standing.NotContradicted;

    /// <summary>Area that a full layer of the ion would cover, m²/g.</summary>
    /// <param name="capacity">qm, mmol/g.</param>
    /// <param name="radius">Radius of the ion as it sits, nm; hydrated unless shown otherwise.</param>
    public static double AreaNeeded(double capacity, double radius) => capacity * 1e-3 * Avogadro * Math.PI * radius * radius * 1e-18;

    /// <summary>Whether a single layer is possible: the area needed is at most 1.2 times the area measured.</summary>
    /// <param name="areaNeeded">m²/g.</param>
    /// <param name="areaMeasured">By nitrogen, m²/g, above 0.</param>
    public static Standing Monolayer(double areaNeeded, double areaMeasured)
        => areaNeeded > 1.2 * areaMeasured ? Standing.Contradicted : Standing.NotContradicted;

    /// <summary>Whether AICc exists: more than K + 1 readings, K counting the error variance.</summary>
    /// <param name="readings">Number of readings.</param>
    /// <param name="parameters">Number of fitted parameters, without the variance.</param>
    public static bool AiccIsDefined(int readings, int parameters) => readings > parameters + 2;

    /// <summary>Whether the isotherm bends the favourable way.</summary>
    /// <param name="inverseN">Freundlich's 1/n.</param>
    /// <param name="affinity">Langmuir's K, or null when it was not fitted.</param>
    public static Standing Favourable(double inverseN, double? affinity = null)
        => inverseN > 1 || affinity <= 0 ? Standing.Contradicted : Standing.Holds;

    /// <summary>Whether the points are an isotherm at all: uptake must rise with concentration in rank. A series at one C0 and varied dose often does not.</summary>
    /// <param name="concentration">Equilibrium concentrations.</param>
    /// <param name="uptake">Uptakes.</param>
    public static Standing PointsFormIsotherm(IReadOnlyList<double> concentration, IReadOnlyList<double> uptake)
        => PointsFormIsotherm(Correlation.Spearman(concentration, uptake));

    /// <summary>The same from a rank correlation already known.</summary>
    /// <param name="rankCorrelation">Spearman's coefficient of uptake with concentration, −1 to 1.</param>
    public static Standing PointsFormIsotherm(double rankCorrelation) => rankCorrelation > 0 ? Standing.Holds : Standing.Contradicted;

    /// <summary>Whether the vessels were at one equilibrium: contact at least as long as the shown plateau, final pH within 0.3.</summary>
    /// <param name="contactTime">Contact time, any unit.</param>
    /// <param name="plateauTime">Time by which equilibrium was shown, same unit; null when it was not.</param>
    /// <param name="finalPhSpread">Highest less lowest final pH; null when not read.</param>
    public static Standing Conditions(double contactTime, double? plateauTime, double? finalPhSpread)
        => contactTime >= plateauTime && finalPhSpread <= 0.3 ? Standing.Holds : Standing.NotShown;

    /// <summary>Whether the capacity rests on no single vessel.</summary>
    /// <param name="largestMove">Largest relative change of qm when one vessel is left out.</param>
    /// <param name="largestLeverage">Largest leverage of a vessel, 0 to 1.</param>
    public static Standing Robust(double largestMove, double largestLeverage)
        => largestMove > 0.2 || largestLeverage > 0.8 ? Standing.NotShown : Standing.Holds;
}
