namespace Holdfast.Reports.Figures.Drawing;

/// <summary>A path, filled, stroked or both.</summary>
/// <param name="Steps">Its steps, in pt.</param>
public sealed record SheetPath(IReadOnlyList<PathStep> Steps) : SheetItem
{
    /// <summary>Tone of the inside; null for none.</summary>
    public Tone? Fill { get; init; }

    /// <summary>How much of the fill covers, 0 to 1; without a unit.</summary>
    public double FillOpacity { get; init; } = 1;

    /// <summary>Tone of the line; null for none.</summary>
    public Tone? Stroke { get; init; }

    /// <summary>Width of the line in pt.</summary>
    public double LineWidth { get; init; } = Lettering.ThinLine;

    /// <summary>Lengths of dashes and gaps in pt; empty for a whole line.</summary>
    public IReadOnlyList<double> Dash { get; init; } = [];

    /// <summary>True for round corners and ends, as curves of many short pieces need.</summary>
    public bool Round { get; init; }
}
