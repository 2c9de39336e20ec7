namespace Holdfast.Studies.Properties;

/// <summary>What is recorded about a vessel of a batch test.</summary>
public static class BatchProperties
{
    /// <summary>Concentration at the start (made up, or measured when the start solution was read).</summary>
    public static readonly Property InitialConcentration = Property.Number("initial-concentration", "initial concentration", "mg/L", "C0", "c0", "initialconcentration", "cinitial", "startconcentration", "initialconc", "ci");

    /// <summary>Volume of liquid.</summary>
    public static readonly Property Volume = Property.Number("volume", "volume", "mL", "V", "v", "volume", "vol", "liquidvolume");

    /// <summary>Mass of dry sorbent weighed in.</summary>
    public static readonly Property Mass = Property.Number("mass", "sorbent mass", "mg", "m", "m", "mass", "sorbentmass", "weight", "massofsorbent");

    /// <summary>Dose as planned; the weighed mass wins where both are there.</summary>
    public static readonly Property Dose = Property.Number("dose", "dose", "g/L", "D", "dose", "dosage", "sorbentdose", "nominaldose");

    /// <summary>Time between adding the sorbent and separating it.</summary>
    public static readonly Property ContactTime = Property.Number("contact-time", "contact time", "min", "t", "t", "time", "contacttime", "shakingtime");

    /// <summary>Code of the start solution that went in: what was read of it is the vessel's C0.</summary>
    public static readonly Property StartSolution = Property.Words("start-solution", "start solution", "startsolution", "initialsolution", "solutionused");

    /// <summary>When the sorbent went in, kept as ISO 8601 with the offset; the contact time is counted from it and kept as a duration.</summary>
    public static readonly Property Started = Property.Words("started", "sorbent added at", "started", "startedat", "sorbentaddedat");

    /// <summary>pH before the sorbent went in.</summary>
    public static readonly Property StartPh = Property.Number("start-ph", "start pH", "", "pH0", "phstart", "startph", "initialph", "ph0", "phi", "ph");

    /// <summary>pH when the liquid was separated.</summary>
    public static readonly Property EndPh = Property.Number("end-ph", "end pH", "", "pHe", "phend", "endph", "finalph", "phf", "phe");

    /// <summary>Temperature during contact.</summary>
    public static readonly Property Temperature = Property.Number("temperature", "temperature", "K", "T", "temperature", "temp", "tk", "tc");

    /// <summary>Diameter of the sorbent's particles: the mean of the sieve fraction.</summary>
    public static readonly Property ParticleDiameter = Property.Number("particle-diameter", "particle diameter", "µm", null, "particlediameter", "particlesize", "grainsize", "meandiameter", "sievesize");

    /// <summary>Speed of the stirrer or the shaker.</summary>
    public static readonly Property StirringSpeed = Property.Number("stirring-speed", "stirring speed", "1/min", null, "stirringspeed", "stirring", "stirrerspeed", "shakingspeed", "shakerspeed", "agitation", "agitationspeed");

    /// <summary>Uptake found by dissolving the loaded solid.</summary>
    public static readonly Property UptakeBySolid = Property.Number("uptake-by-solid", "uptake found in the solid", "mg/g", "q_s", "qdigest", "qbydigestion", "uptakebydigestion", "qsolid");

    /// <summary>End concentration as her own evaluation repeats it: held against what was read, and used for nothing else.</summary>
    public static readonly Property ReportedEnd = Property.Number("reported-end", "end concentration as reported", "mg/L", null);

    /// <summary>Share of the metal that was taken out, where it was worked out elsewhere and no end concentration came with it.</summary>
    public static readonly Property ReportedRemoval = Property.Number("reported-removal", "removal as reported", "%", null, "removal", "removalpercent", "removalefficiency", "removed");

    /// <summary>Share of the metal that is left, C/C0, where it was worked out elsewhere and no end concentration came with it.</summary>
    public static readonly Property ReportedRemaining = Property.Number("reported-remaining", "share left as reported", "%", null, "remainingshare", "shareleft", "cc0", "cec0", "ctc0");

    /// <summary>Uptake as worked out elsewhere: held against what follows from the readings, and used where nothing else follows.</summary>
    public static readonly Property ReportedUptake = Property.Number("reported-uptake", "uptake as reported", "mg/g", null, "q", "qe", "qt", "uptake", "loading", "adsorbedamount", "amountadsorbed", "adsorptioncapacity");
}
