namespace Holdfast.Reports.Figures;

/// <summary>A shaded band about a line, for example the 95 % confidence band; its label says which.</summary>
/// <param name="Points">Lower and upper edge by rising x, in axis units.</param>
public sealed record Band(IReadOnlyList<(double X, double Low, double High)> Points) : SeriesLayer
{
    /// <summary>True for the wider, paler one of two bands about one line.</summary>
    public bool Pale { get; init; }
}
