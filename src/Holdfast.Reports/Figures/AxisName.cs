namespace Holdfast.Reports.Figures;

/// <summary>One of the two axes of a panel. There is no second y axis.</summary>
public enum AxisName
{
    /// <summary>The horizontal axis.</summary>
    X,

    /// <summary>The vertical axis.</summary>
    Y,
}
