namespace Holdfast.Studies.Properties;

/// <summary>What the sorbent itself gives to the liquid.</summary>
public static class StabilityProperties
{
    /// <summary>Calcium found in the liquid.</summary>
    public static readonly Property DissolvedCalcium = Property.Number("dissolved-calcium", "dissolved calcium", "mg/L", null, "dissolvedca", "dissolvedcalcium", "ca", "careleased", "releasedca");
}
