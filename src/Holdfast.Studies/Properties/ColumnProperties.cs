namespace Holdfast.Studies.Properties;

/// <summary>What is recorded when water runs through a packed bed. Each row is one portion of the outlet; a series is one run.</summary>
public static class ColumnProperties
{
    /// <summary>Time since the water first entered the bed.</summary>
    public static readonly Property TimeOnStream = Property.Number("time-on-stream", "time on stream", "min", null, "timeonstream", "streamtime", "columntime", "servicetime", "tcolumn");

    /// <summary>Concentration in the outlet, where it was worked out elsewhere; otherwise it follows from the readings.</summary>
    public static readonly Property OutletConcentration = Property.Number("outlet-concentration", "outlet concentration", "mg/L", null, "outletconcentration", "coutlet", "cout", "outlet", "effluentconcentration", "ceffluent");

    /// <summary>Depth of the packed bed.</summary>
    public static readonly Property BedDepth = Property.Number("bed-depth", "bed depth", "cm", "Z", "beddepth", "bedheight", "bedlength", "depth", "z");

    /// <summary>Mass of dry sorbent in the bed.</summary>
    public static readonly Property BedMass = Property.Number("bed-mass", "mass of sorbent in the bed", "g", null, "bedmass", "massinbed", "columnmass", "packedmass");

    /// <summary>Volume of water through the bed per time.</summary>
    public static readonly Property Flow = Property.Number("flow", "flow", "mL/min", null, "flow", "flowrate", "feedrate");

    /// <summary>Flow over the empty cross-section of the bed.</summary>
    public static readonly Property Velocity = Property.Number("velocity", "superficial velocity", "cm/min", null, "velocity", "superficialvelocity", "linearvelocity");

    /// <summary>Liquid that bed and tubes hold.</summary>
    public static readonly Property HeldLiquid = Property.Number("held-liquid", "liquid held in bed and tubes", "mL", null, "heldliquid", "holdup", "deadvolume", "voidvolume");
}
