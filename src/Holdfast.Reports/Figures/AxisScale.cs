namespace Holdfast.Reports.Figures;

/// <summary>How values are laid along an axis.</summary>
public enum AxisScale
{
    /// <summary>Equal steps are equal lengths.</summary>
    Linear,

    /// <summary>Equal ratios are equal lengths; only values above zero can be shown.</summary>
    Logarithmic,

    /// <summary>Named places in the given order: the first is 1, the second 2.</summary>
    Named,
}
