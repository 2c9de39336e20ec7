namespace Holdfast.Reports.Figures;

/// <summary>One bar.</summary>
/// <param name="From">Left edge, in the unit of x.</param>
/// <param name="To">Right edge, in the unit of x.</param>
/// <param name="Height">Height above zero, in the unit of y.</param>
public sealed record Bar(double From, double To, double Height)
{
    /// <summary>Error bar along y; null for none.</summary>
    public ErrorBar? YBar { get; init; }

    /// <summary>What it stands for: the door to its trail. Null when it has none.</summary>
    public string? Id { get; init; }

    /// <summary>A bar at a named place.</summary>
    /// <param name="place">Number of the place, from 1; without a unit.</param>
    /// <param name="height">Height above zero, in the unit of y.</param>
    public static Bar AtPlace(int place, double height) => new(place - 0.32, place + 0.32, height);
}
