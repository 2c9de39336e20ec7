namespace Holdfast.Reports.Figures;

/// <summary>One plotted reading or mean.</summary>
/// <param name="X">Place along x, in the unit of the x axis.</param>
/// <param name="Y">Place along y, in the unit of the y axis.</param>
public sealed record Mark(double X, double Y)
{
    /// <summary>Error bar along x; null for none.</summary>
    public ErrorBar? XBar { get; init; }

    /// <summary>Error bar along y; null for none.</summary>
    public ErrorBar? YBar { get; init; }

    /// <summary>Measured, struck, or known only to lie beyond a limit.</summary>
    public MarkState State { get; init; }

    /// <summary>The vessel or quantity it stands for, "V-12": the door to its trail. Null when it has none.</summary>
    public string? Id { get; init; }
}
