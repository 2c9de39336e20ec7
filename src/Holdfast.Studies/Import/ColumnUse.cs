namespace Holdfast.Studies.Import;

/// <summary>What becomes of a column.</summary>
public enum ColumnUse
{
    /// <summary>The code of the sample.</summary>
    Code,

    /// <summary>What the sample is for.</summary>
    Role,

    /// <summary>A fact about the sample.</summary>
    Fact,

    /// <summary>The standard uncertainty of a fact.</summary>
    Uncertainty,

    /// <summary>What an instrument showed: each cell becomes a reading.</summary>
    Signal,

    /// <summary>How many times the portion of this row was diluted.</summary>
    Dilution,

    /// <summary>The volume that was taken to be diluted.</summary>
    DilutedFrom,

    /// <summary>The volume that it was made up to; the factor is their quotient.</summary>
    DilutedTo,

    /// <summary>The volume of titrant that a portion took.</summary>
    Titre,

    /// <summary>The burette before a titration; the titre is the difference to its reading after.</summary>
    BuretteStart,

    /// <summary>The burette after a titration.</summary>
    BuretteEnd,

    /// <summary>The volume that was titrated.</summary>
    Aliquot,

    /// <summary>Which portion the row is.</summary>
    Portion,

    /// <summary>A weighing with the powder in its boat; the mass is the difference to the one without.</summary>
    WeighedFull,

    /// <summary>A weighing of the boat without the powder.</summary>
    WeighedEmpty,

    /// <summary>A weighing with the powder and the solution; the volume is the difference to the one with the powder alone, at the density of water.</summary>
    WeighedFilled,

    /// <summary>A concentration that was taken out of the water; with the start it gives the removal.</summary>
    TakenOut,

    /// <summary>The time of day at which contact began.</summary>
    ClockStart,

    /// <summary>The time of day at which contact ended.</summary>
    ClockEnd,

    /// <summary>Where the row stands; its order in the file says so already.</summary>
    Position,

    /// <summary>A column of a table that is no table of samples: a claim's parameter, a margin's end, x or y.</summary>
    Cell,

    /// <summary>A column of a measurement of the powder; see <see cref="ColumnUnderstanding.Measures"/>.</summary>
    Measured,

    /// <summary>Understood, but without a usable unit: kept as written, and feeds nothing.</summary>
    WithoutUnit,

    /// <summary>Not understood: it stays in the original only.</summary>
    NotUnderstood,

    /// <summary>Left out on purpose: a mean of columns that are read themselves.</summary>
    LeftOut,
}
