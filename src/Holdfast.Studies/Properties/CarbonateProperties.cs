namespace Holdfast.Studies.Properties;

/// <summary>What is recorded about carbonate in a vessel: it decides whether a metal carbonate can form.</summary>
public static class CarbonateProperties
{
    /// <summary>Contact with air during the test: "open" (stirred open, or carbonate added), "closed", or "excluded" (nitrogen or argon over boiled water).</summary>
    public static readonly Property Air = Property.Words("air", "contact with air", "air", "aircontact", "contactwithair", "headspace", "atmosphere");
}
