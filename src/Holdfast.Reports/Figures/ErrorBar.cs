namespace Holdfast.Reports.Figures;

/// <summary>The two ends of an error bar, in the axis unit; they need not lie at equal distances from the value.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public readonly record struct ErrorBar(double Low, double High)
{
    /// <summary>A bar of equal arms.</summary>
    /// <param name="value">The middle, in the axis unit.</param>
    /// <param name="half">Half the length, in the axis unit.</param>
    public static ErrorBar Around(double value, double half) => new(value - half, value + half);
}
