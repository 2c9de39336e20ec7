namespace Holdfast.Studies.Properties;

/// <summary>What is recorded when a powder or solution senses by its light: signals, quencher, absorbances, exposure, other ions, spiked water.</summary>
public static class FluorescenceProperties
{
    /// <summary>Intensity of emission, as the detector shows it after dark and solvent are taken off; in its own unit.</summary>
    public static readonly Property Intensity = Property.Signal("intensity", "signal intensity", "", "F", "intensity", "f", "counts", "signalintensity", "fluorescence", "fluorescenceintensity", "emissionintensity", "peakintensity", "integratedintensity");

    /// <summary>A whole spectrum of emission. Tables of spectra and JCAMP-DX files bring it; no heading of an ordinary column does.</summary>
    public static readonly Property Emission = Property.Signal("emission-spectrum", "emission spectrum", "", null);

    /// <summary>Lifetime of the emission; of several components the mean weighted by amplitude.</summary>
    public static readonly Property Lifetime = Property.Signal("lifetime", "lifetime", "ms", "τ", "lifetime", "tau", "decaytime", "meanlifetime");

    /// <summary>Concentration of the quencher that was added. Milligrams are turned into moles by the molar mass of the study's element.</summary>
    public static readonly Property Quencher = Property.Number("quencher", "quencher", "µmol/L", "Q", "quencher", "quencherconcentration", "cq", "quencheradded", "analyteadded");

    /// <summary>Absorbance of the mixture at the excitation wavelength, cell taken off, 1 cm.</summary>
    public static readonly Property AbsorbanceExcitation = Property.Number("absorbance-excitation", "absorbance at the excitation wavelength", "", null, "aex", "absex", "absexcitation", "absorbanceexcitation", "absorbanceatexcitation");

    /// <summary>Absorbance of the mixture at the emission wavelength, cell taken off, 1 cm.</summary>
    public static readonly Property AbsorbanceEmission = Property.Number("absorbance-emission", "absorbance at the emission wavelength", "", null, "aem", "absem", "absemission", "absorbanceemission", "absorbanceatemission");

    /// <summary>How long a vessel without quencher had been in the light when it was read: the drift run.</summary>
    public static readonly Property Exposure = Property.Number("exposure", "time of exposure", "min", null, "exposure", "exposuretime", "timeofexposure", "illumination", "illuminationtime");

    /// <summary>Time since the quencher was added when a vessel was read: how fast the sensor answers.</summary>
    public static readonly Property TimeAfterAddition = Property.Number("time-after-addition", "time after addition", "min", null, "timeafteraddition", "timesinceaddition", "afteraddition", "responsetime");

    /// <summary>Symbol of another ion that was added: "Ca".</summary>
    public static readonly Property Interferent = Property.Words("interferent", "other ion", "interferent", "interferingion", "otherion", "foreignion", "coexistingion");

    /// <summary>Concentration of the other ion.</summary>
    public static readonly Property InterferentConcentration = Property.Number("interferent-concentration", "concentration of the other ion", "µmol/L", null, "interferentconcentration", "cinterferent", "otherionconcentration", "cotherion", "foreignionconcentration") with { OfAnother = true };

    /// <summary>Known amount added to a water, 0 for the water as it is.</summary>
    public static readonly Property Added = Property.Number("added", "added", "µmol/L", null, "added", "spikeadded", "addedconcentration", "cadded");

    /// <summary>What the sensor found in a water, worked out outside; the sensor's own line is used where only the signal is recorded.</summary>
    public static readonly Property Found = Property.Number("found", "found by the sensor", "µmol/L", null, "found", "foundconcentration", "foundbysensor", "cfound");

    /// <summary>Concentration of sensing sites, counted independently; binding with depletion needs it.</summary>
    public static readonly Property Sites = Property.Number("sites", "concentration of sensing sites", "µmol/L", "H0", "sites", "siteconcentration", "sensingsites");

    /// <summary>Sensing powder per volume of the dispersion that is read.</summary>
    public static readonly Property Dispersion = Property.Number("dispersion", "powder in the dispersion", "g/L", null, "dispersion", "sensordose", "powderinthedispersion", "probedose");
}
