using System.Globalization;

namespace Holdfast.Statistics;

/// <summary>A two-sided interval with the confidence it was made for.</summary>
/// <param name="Low">Lower end, in the unit of the estimate.</param>
/// <param name="High">Upper end, in the unit of the estimate.</param>
/// <param name="Confidence">For example 0.95; no unit.</param>
public readonly record struct Interval(double Low, double High, double Confidence)
{
    /// <summary>Half the width, in the unit of the estimate.</summary>
    public double Half => 0.5 * (High - Low);

    /// <summary>True when the whole interval lies between two limits, neither touched.</summary>
    /// <param name="low">Lower limit, in the unit of the estimate.</param>
    /// <param name="high">Upper limit, in the unit of the estimate.</param>
    public bool LiesWithin(double low, double high) => Low > low && High < high;

    /// <summary>True when the interval holds the value.</summary>
    /// <param name="value">In the unit of the estimate.</param>
    public bool Contains(double value) => Low <= value && value <= High;

    /// <summary>The interval as text with four significant figures: "−0.3..1.2 (95 %)".</summary>
    public override string ToString()
        => string.Create(CultureInfo.InvariantCulture, $"{Low:G4}..{High:G4} ({100 * Confidence:G4} %)");
}
