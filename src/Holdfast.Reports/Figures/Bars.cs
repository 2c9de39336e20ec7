namespace Holdfast.Reports.Figures;

/// <summary>Bars from zero: a histogram, or one bar a named place. The y axis then starts at zero.</summary>
/// <param name="Items">The bars.</param>
public sealed record Bars(IReadOnlyList<Bar> Items) : SeriesLayer;
