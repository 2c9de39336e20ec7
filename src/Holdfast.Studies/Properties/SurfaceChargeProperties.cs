namespace Holdfast.Studies.Properties;

/// <summary>What is recorded when the surface is charged: the salt that it stands in. Start and end pH are those of any vessel.</summary>
public static class SurfaceChargeProperties
{
    /// <summary>Ionic strength of the background salt.</summary>
    public static readonly Property IonicStrength = Property.Number("ionic-strength", "ionic strength", "mol/L", null, "ionicstrength", "saltlevel", "saltconcentration", "backgroundsalt");
}
