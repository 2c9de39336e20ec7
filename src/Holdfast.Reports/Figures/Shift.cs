namespace Holdfast.Reports.Figures;

/// <summary>Where a run stands against the line of the text.</summary>
public enum Shift
{
    /// <summary>On the line.</summary>
    None,

    /// <summary>Lowered and smaller.</summary>
    Sub,

    /// <summary>Raised and smaller.</summary>
    Super,
}
