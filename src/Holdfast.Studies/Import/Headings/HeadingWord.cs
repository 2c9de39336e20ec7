namespace Holdfast.Studies.Import.Headings;

/// <summary>A word of the bench that a heading, a note or a label can hold, whatever its language.</summary>
internal enum HeadingWord
{
    /// <summary>Concentration, content.</summary>
    Concentration,

    /// <summary>Before, initial, start.</summary>
    Start,

    /// <summary>After, final, residual, at equilibrium.</summary>
    End,

    /// <summary>Mass, weight.</summary>
    Mass,

    /// <summary>The powder, however it is called.</summary>
    Sorbent,

    /// <summary>What the powder was weighed in.</summary>
    Boat,

    /// <summary>With the powder in it.</summary>
    Full,

    /// <summary>Without the powder.</summary>
    Empty,

    /// <summary>Volume.</summary>
    Volume,

    /// <summary>Liquid, solution.</summary>
    Liquid,

    /// <summary>Time, duration.</summary>
    Time,

    /// <summary>Contact, shaking, stirring.</summary>
    Contact,

    /// <summary>pH.</summary>
    Ph,

    /// <summary>Temperature.</summary>
    Temperature,

    /// <summary>Taken out: removal, efficiency.</summary>
    Removal,

    /// <summary>What is left, as a share.</summary>
    Remaining,

    /// <summary>Loading of the powder: q, capacity.</summary>
    Uptake,

    /// <summary>Powder per volume.</summary>
    Dose,

    /// <summary>Absorbance.</summary>
    Absorbance,

    /// <summary>Dilution.</summary>
    Dilution,

    /// <summary>Sample, vial, code.</summary>
    Sample,

    /// <summary>What a sample is for.</summary>
    Role,

    /// <summary>Standard, calibration.</summary>
    Standard,

    /// <summary>Known, nominal.</summary>
    Known,

    /// <summary>Check standard.</summary>
    Check,

    /// <summary>Blank.</summary>
    Blank,

    /// <summary>Without powder, control.</summary>
    Control,

    /// <summary>Replicate.</summary>
    Replicate,

    /// <summary>Remark.</summary>
    Remark,

    /// <summary>Person.</summary>
    Person,

    /// <summary>Date, time of the day.</summary>
    Date,

    /// <summary>Standard deviation, error.</summary>
    Spread,

    /// <summary>Detection or quantification limit.</summary>
    Limit,

    /// <summary>Parameter, element, analyte: what a row of a report is about.</summary>
    Parameter,

    /// <summary>Result, value.</summary>
    Result,

    /// <summary>Unit.</summary>
    Unit,

    /// <summary>Corrected, multiplied, taken into account.</summary>
    Corrected,

    /// <summary>As read, raw, on the instrument.</summary>
    AsRead,

    /// <summary>Mean.</summary>
    Mean,

    /// <summary>Running number, position.</summary>
    Position,

    /// <summary>Series, set, experiment.</summary>
    Series,

    /// <summary>Speed of shaking.</summary>
    Speed,

    /// <summary>Share, ratio, fraction.</summary>
    Ratio,

    /// <summary>Per cent.</summary>
    Percent,

    /// <summary>Metal, ion.</summary>
    Metal,

    /// <summary>Sum, minimum, maximum: what stands below a table.</summary>
    Total,

    /// <summary>Preparation of the powder or of glassware: drying, calcining, washing, ageing.</summary>
    Preparing,

    /// <summary>Salt, acid, buffer: what else is in the water.</summary>
    Background,

    /// <summary>A solid that was dissolved to be read.</summary>
    Solid,

    /// <summary>Recovery.</summary>
    Recovery,

    /// <summary>Counts of a detector.</summary>
    Counts,

    /// <summary>Liquid that took the metal off the powder again.</summary>
    Eluate,

    /// <summary>Wavelength, line.</summary>
    Line,

    /// <summary>Powder kept in water, added by volume.</summary>
    Suspension,

    /// <summary>What is yet to be done: next week, planned.</summary>
    Planned,

    /// <summary>Intensity, signal, response.</summary>
    Signal,
}
