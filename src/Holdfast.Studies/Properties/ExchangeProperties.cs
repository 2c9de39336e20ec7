namespace Holdfast.Studies.Properties;

/// <summary>What is recorded of an ion that the sorbent gives while it takes the metal. Calcium has a property of its own.</summary>
public static class ExchangeProperties
{
    /// <summary>Symbol of the ion that was released: "Na".</summary>
    public static readonly Property ReleasedIon = Property.Words("released-ion", "released ion", "releasedion", "exchangedion", "counterion");

    /// <summary>Concentration of that ion in the liquid after contact.</summary>
    public static readonly Property Released = Property.Number("released", "released ion in the liquid", "mg/L", null, "released", "releasedconcentration", "exchanged");
}
