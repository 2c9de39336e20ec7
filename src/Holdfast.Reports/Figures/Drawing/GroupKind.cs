namespace Holdfast.Reports.Figures.Drawing;

/// <summary>What a group is.</summary>
public enum GroupKind
{
    /// <summary>All marks or bars of a series.</summary>
    Series,

    /// <summary>One mark or bar.</summary>
    Mark,
}
