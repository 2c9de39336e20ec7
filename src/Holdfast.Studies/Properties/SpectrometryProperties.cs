namespace Holdfast.Studies.Properties;

/// <summary>What an absorption spectrometer shows, and what is known of a standard.</summary>
public static class SpectrometryProperties
{
    /// <summary>Absorbance.</summary>
    public static readonly Property Absorbance = Property.Signal("absorbance", "absorbance", "", "A", "absorbance", "abs", "a", "signal", "meanabs", "meanabsorbance");

    /// <summary>What another instrument shows, counts or a signal without unit, from which standards make a concentration.</summary>
    public static readonly Property InstrumentSignal = Property.Signal("instrument-signal", "instrument signal", "", null, "instrumentsignal", "countspers", "countspersecond", "coupss", "cps");

    /// <summary>True for a signal that standards of known concentration calibrate.</summary>
    /// <param name="signal">Name of a signal.</param>
    public static bool IsCalibrated(string signal) => signal == Absorbance.Name || signal == InstrumentSignal.Name;

    /// <summary>A concentration that the instrument or another laboratory already worked out.</summary>
    public static readonly Property ReportedConcentration = Property.Signal("reported-concentration", "reported concentration", "mg/L", "C", "ce", "cf", "concentration", "conc", "finalconcentration", "reportedconcentration", "residualconcentration", "equilibriumconcentration");

    /// <summary>Known concentration of a standard or check standard.</summary>
    public static readonly Property StandardConcentration = Property.Number("standard-concentration", "concentration of the standard", "mg/L", "C", "standard", "standardconcentration", "nominal", "nominalconcentration", "known", "cstandard", "stdconc");

    /// <summary>How many times a portion was diluted before it was read.</summary>
    public static readonly Property Dilution = Property.Number("dilution", "dilution factor", "", "d", "dilution", "dilutionfactor", "df", "d", "factor", "facteur", "faktor", "fattore", "fator", "verdunningsfactor");
}
