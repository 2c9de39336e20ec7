namespace Holdfast.Studies.Properties;

/// <summary>What is recorded when a sorbent is used again.</summary>
public static class RegenerationProperties
{
    /// <summary>Which use it is, from 1.</summary>
    public static readonly Property Cycle = Property.Number("cycle", "cycle", "", null, "cycle", "cycleno", "use", "reuse");

    /// <summary>What the eluent took off, per mass of sorbent.</summary>
    public static readonly Property Eluted = Property.Number("eluted", "eluted amount", "mg/g", null, "eluted", "desorbed", "qeluted", "qdesorbed", "amounteluted");
}
