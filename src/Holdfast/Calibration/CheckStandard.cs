namespace Holdfast.Calibration;

/// <summary>A standard from another stock, read among the samples. When it fails, everything since the last pass is not shown and is read again.</summary>
/// <param name="Expected">Its true concentration.</param>
/// <param name="Found">What the curve made of it, same unit.</param>
public sealed record CheckStandard(double Expected, double Found)
{
    /// <summary>Usual window, 90 to 110 % (common practice).</summary>
    public const double WindowPercent = 10;

    /// <summary>Found over expected, in %; no unit.</summary>
    public double Percent => 100 * Found / Expected;

    /// <summary>True inside the window.</summary>
    public bool Passes => Math.Abs(Percent - 100) <= WindowPercent;

    /// <summary>Judges a check standard.</summary>
    /// <param name="id">Its name.</param>
    /// <param name="expected">True concentration, above 0, any unit.</param>
    /// <param name="found">Found concentration, same unit.</param>
    public static Outcome<CheckStandard> Of(string id, double expected, double found)
    {
        ArgumentException.ThrowIfNullOrEmpty(id);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(expected);
        var check = new CheckStandard(expected, found);
        return new(check, check.Passes ? [] : [CalibrationFindings.CheckFailed(id, check.Percent)]);
    }
}
