namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>What a column of a scan is.</summary>
internal enum ScanColumn
{
    /// <summary>The abscissa.</summary>
    Axis,

    /// <summary>Measured intensity.</summary>
    Intensity,

    /// <summary>A background drawn by somebody.</summary>
    Background,

    /// <summary>Uncertainty of the intensity.</summary>
    Uncertainty,

    /// <summary>A curve computed elsewhere, or its difference.</summary>
    Computed,

    /// <summary>Counting time of each step.</summary>
    Time,

    /// <summary>Running number.</summary>
    Number,
}
