namespace Holdfast.Reports.Figures.Drawing;

/// <summary>Which part of a text lies at its anchor.</summary>
public enum TextAnchor
{
    /// <summary>Its start.</summary>
    Start,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Its end.</summary>
    End,
}
