using Holdfast.Statistics;

namespace Holdfast.SurfaceCharge;

/// <summary>
/// Uptake against the ionic strength of an inert salt at one pH. A fall fits ions held by charge or by exchange; no change is compatible with a bond to the
/// surface and shows none (rule P4): only spectroscopy does. Ligands in the salt can fake a fall.
/// </summary>
/// <param name="PerDecade">Change of uptake per tenfold ionic strength, in the unit of uptake.</param>
public sealed record IonicStrengthSeries(Estimate PerDecade)
{
    /// <summary>Whether uptake falls with ionic strength.</summary>
    public Ruling Falls => PerDecade.UpperBound() < 0 ? Ruling.Holds : PerDecade.LowerBound() > 0 ? Ruling.Contradicted : Ruling.NotShownYet;

    /// <summary>Ionic strength ½·Σ c·z², mol/L.</summary>
    /// <param name="ions">Concentration, mol/L, and charge of every ion.</param>
    public static double IonicStrength(IEnumerable<(double Concentration, int Charge)> ions)
    {
        ArgumentNullException.ThrowIfNull(ions);
        return 0.5 * ions.Sum(i => i.Concentration >= 0
            ? i.Concentration * i.Charge * i.Charge
            : throw new ArgumentException("A concentration is below 0 mol/L.", nameof(ions)));
    }

    /// <summary>The trend of uptake over the logarithm of ionic strength.</summary>
    /// <param name="ionicStrengths">Ionic strengths, mol/L, above 0.</param>
    /// <param name="uptakes">Uptakes in the same order, one unit.</param>
    public static Outcome<IonicStrengthSeries> Of(IReadOnlyList<double> ionicStrengths, IReadOnlyList<double> uptakes)
    {
        ArgumentNullException.ThrowIfNull(ionicStrengths);
        if (ionicStrengths.Any(i => !(i > 0)))
            throw new ArgumentException("An ionic strength is not above 0 mol/L.", nameof(ionicStrengths));
        var trend = LinearTrend.Of([.. ionicStrengths.Select(i => Math.Log10(i))], uptakes);
        return new(trend.Value is { } slope ? new(slope) : null, trend.Findings);
    }
}
