namespace Holdfast.Reports.Figures.Drawing;

/// <summary>
/// Sizes of type and lines at final size, in pt. Type is 7 pt or more, raised and lowered characters 6 pt or more (a large publisher's artwork
/// page asks for 7 and 6); lines are 0.5 pt or more; marks measure 1.5 to 2.5 mm.
/// </summary>
internal static class Lettering
{
    public const double Title = 8.5;
    public const double Tick = 7.5;
    public const double Label = 7.5;
    public const double Note = 7;
    public const double Letter = 9;
    public const double SmallestShifted = 6;
    public const double ShiftedShare = 0.72;

    public const double ThinLine = 0.5;
    public const double AxisLine = 0.6;
    public const double BarLine = 0.75;
    public const double CurveLine = 1.1;
    public const double TraceLine = 0.8;

    public const double MajorTick = 3;
    public const double MinorTick = 1.75;

    /// <summary>From one base line to the next, as a share of the size.</summary>
    public const double Leading = 1.2;

    /// <summary>Half the height of a capital as a share of the size: what centres a line on a place (capitals are 0.688 em high).</summary>
    public const double HalfCapital = 0.344;

    public static IReadOnlyList<double> ReferenceDash { get; } = [3, 2];

    public static IReadOnlyList<double> BeyondDash { get; } = [1.2, 1.8];

    /// <summary>Dashes of the series, by slot: no two look alike in grey.</summary>
    public static IReadOnlyList<double> DashOf(int slot) => slot switch
    {
        1 => [6, 2],
        2 => [7, 2, 1.5, 2],
        3 => [7, 2, 1.5, 2, 1.5, 2],
        _ => [],
    };
}
