using Holdfast.Amounts;

namespace Holdfast.Reports.Figures;

/// <summary>The final size of a figure and how it is filled. A figure is drawn at its final size and never scaled afterwards.</summary>
/// <param name="WidthMm">Width in mm, 60 to 190.</param>
public sealed record FigureFormat(double WidthMm)
{
    /// <summary>One column, 85 mm.</summary>
    public static FigureFormat OneColumn { get; } = new(85);

    /// <summary>The full width of a page, 174 mm.</summary>
    public static FigureFormat FullWidth { get; } = new(174);

    /// <summary>Width in mm.</summary>
    public double WidthMm { get; } = WidthMm is >= 60 and <= 190
        ? WidthMm
        : throw new ArgumentOutOfRangeException(nameof(WidthMm), WidthMm, "A figure is 60 to 190 mm wide.");

    /// <summary>Panels side by side; null to let the width decide.</summary>
    public int? Columns { get; init; }

    /// <summary>Height of the space between the axes of a panel in mm, without the residual strip; null to let the width decide.</summary>
    public double? PlotHeightMm { get; init; }

    /// <summary>True to write the notes below the picture, for a figure that travels alone.</summary>
    public bool WithNotes { get; init; }

    /// <summary>The decimal mark of numbers at ticks.</summary>
    public DecimalMark DecimalMark { get; init; }
}
