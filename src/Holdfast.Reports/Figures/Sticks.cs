namespace Holdfast.Reports.Figures;

/// <summary>Thin lines from zero upwards, or from zero downwards below a curve: the reference lines of a diffraction pattern.</summary>
/// <param name="Points">Places and heights, in axis units; all heights of one sign.</param>
public sealed record Sticks(IReadOnlyList<(double X, double Height)> Points) : SeriesLayer
{
    /// <summary>True when they hang below zero.</summary>
    public bool Hang => Points.Count > 0 && Points.All(p => p.Height <= 0);
}
