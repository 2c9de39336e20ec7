namespace Holdfast.Reports.Figures;

/// <summary>From values on an axis to places on the sheet.</summary>
/// <param name="Range">The values shown.</param>
/// <param name="Scale">Linear, logarithmic or named places.</param>
/// <param name="Start">Where the lower end lies, in pt from the left or top of the sheet.</param>
/// <param name="End">Where the upper end lies, in pt from the left or top of the sheet.</param>
public readonly record struct AxisMap(AxisRange Range, AxisScale Scale, double Start, double End)
{
    /// <summary>The place of a value, in pt; null where a logarithmic axis cannot show it.</summary>
    /// <param name="value">The value, in the axis unit.</param>
    public double? Place(double value)
    {
        if (Scale != AxisScale.Logarithmic)
            return Start + (value - Range.Low) / (Range.High - Range.Low) * (End - Start);
        if (value <= 0)
            return null;
        return Start + Math.Log10(value / Range.Low) / Math.Log10(Range.High / Range.Low) * (End - Start);
    }

    /// <summary>The value at a place.</summary>
    /// <param name="place">The place, in pt from the left or top of the sheet.</param>
    /// <returns>The value, in the axis unit.</returns>
    public double ValueAt(double place)
    {
        var share = (place - Start) / (End - Start);
        return Scale == AxisScale.Logarithmic ? Range.Low * Math.Pow(Range.High / Range.Low, share) : Range.Low + share * (Range.High - Range.Low);
    }

    /// <summary>An axis along the sheet; a reversed one runs the other way.</summary>
    /// <param name="axis">The axis.</param>
    /// <param name="range">The values shown.</param>
    /// <param name="start">Where it starts, in pt.</param>
    /// <param name="end">Where it ends, in pt.</param>
    public static AxisMap Of(Axis axis, AxisRange range, double start, double end)
    {
        ArgumentNullException.ThrowIfNull(axis);
        return axis.Reversed ? new(range, axis.Scale, end, start) : new(range, axis.Scale, start, end);
    }
}
