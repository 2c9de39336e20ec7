namespace Holdfast.Calibration;

/// <summary>What to dilute to, when a reading lies above the top standard.</summary>
public static class RangeGuard
{
    private const double Reserve = 1.25;

    /// <summary>Dilution factors in use; no unit.</summary>
    public static IReadOnlyList<double> Factors { get; } = [1, 2, 5, 10, 20, 25, 50, 100, 200, 500, 1000];

    /// <summary>The next factor: smallest of the usual ones that brings the reading a quarter below the top; a saturated reading takes two steps up.</summary>
    /// <param name="now">Factor used so far, 1 or more; no unit.</param>
    /// <param name="reading">Mean reading of the sample, in the unit of the readings.</param>
    /// <param name="top">Mean reading of the top standard, same unit.</param>
    /// <param name="isSaturated">True when the detector was full, so that the reading says nothing.</param>
    /// <returns>The factor, or null when more than 1000 would be needed.</returns>
    public static double? NextDilution(double now, double reading, double top, bool isSaturated = false)
    {
        if (isSaturated)
            return Factors.Where(f => f > now).Skip(1).Cast<double?>().FirstOrDefault();
        var needed = now * Reserve * reading / top;
        return Factors.Where(f => f >= needed && f > now).Cast<double?>().FirstOrDefault();
    }
}
