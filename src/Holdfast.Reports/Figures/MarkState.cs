namespace Holdfast.Reports.Figures;

/// <summary>What a mark says about its reading.</summary>
public enum MarkState
{
    /// <summary>Measured: a filled mark.</summary>
    Measured,

    /// <summary>Struck with a reason: a hollow grey mark.</summary>
    Struck,

    /// <summary>Measured and sound, yet not used in what is drawn: a standard above the range in use. A hollow mark in the colour of its series.</summary>
    LeftOut,

    /// <summary>Y lies below the drawn limit: an arrow down.</summary>
    BelowY,

    /// <summary>Y lies above the drawn limit: an arrow up.</summary>
    AboveY,

    /// <summary>X lies below the drawn limit: an arrow towards smaller values.</summary>
    BelowX,

    /// <summary>X lies above the drawn limit: an arrow towards larger values.</summary>
    AboveX,
}
