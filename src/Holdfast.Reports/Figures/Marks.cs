namespace Holdfast.Reports.Figures;

/// <summary>Measured values as marks. They are never joined by a line.</summary>
/// <param name="Points">The marks.</param>
public sealed record Marks(IReadOnlyList<Mark> Points) : SeriesLayer;
