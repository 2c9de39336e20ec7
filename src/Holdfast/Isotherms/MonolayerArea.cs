namespace Holdfast.Isotherms;

/// <summary>The surface that one layer of ions covers.</summary>
public static class MonolayerArea
{
    /// <summary>Area that a full layer of the ion would cover, m²/g.</summary>
    /// <param name="capacity">qm, mmol/g.</param>
    /// <param name="radius">Radius of the ion as it sits, nm; hydrated unless shown otherwise.</param>
    public static double Needed(double capacity, double radius) => capacity * 1e-3 * Constants.Avogadro * Math.PI * radius * radius * 1e-18;
}
