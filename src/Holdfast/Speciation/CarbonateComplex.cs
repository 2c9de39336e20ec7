namespace Holdfast.Speciation;

/// <summary>A complex of one metal ion with carbonate: M + n CO3 = M(CO3)n, 25 °C, zero ionic strength.</summary>
/// <param name="Carbonates">n.</param>
/// <param name="LgBeta">lg of the constant.</param>
/// <param name="U">Standard uncertainty of the lg.</param>
/// <param name="Source">Where it is from.</param>
/// <param name="Status">How it is known: seen, or "from memory".</param>
public sealed record CarbonateComplex(int Carbonates, double LgBeta, double U, string Source, string Status)
{
    /// <summary>Formula for a metal: "CuCO3".</summary>
    /// <param name="metal">Symbol of the metal.</param>
    public string Formula(string metal) => Carbonates == 1 ? metal + "CO3" : $"{metal}(CO3){Carbonates.ToString(System.Globalization.CultureInfo.InvariantCulture)}";
}
