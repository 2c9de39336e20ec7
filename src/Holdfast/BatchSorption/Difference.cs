using Holdfast.Amounts;

namespace Holdfast.BatchSorption;

/// <summary>The difference between two conditions and whether it is shown (rules D3 and K10).</summary>
/// <remarks>For two independent values of equal u the bar is 2·√2·u; what two vessels share (stock, calibration line) cancels by itself.</remarks>
/// <param name="Value">Second minus first, in their unit.</param>
/// <param name="U">Standard uncertainty of the difference.</param>
public readonly record struct Difference(double Value, double U)
{
    /// <summary>True when the difference exceeds twice its uncertainty.</summary>
    public bool IsShown => Math.Abs(Value) > 2 * U;

    /// <summary>The difference of two results.</summary>
    /// <param name="first">First result.</param>
    /// <param name="second">Second result, in the same unit.</param>
    public static Difference Of(Measured first, Measured second)
    {
        var difference = second - first;
        return new(difference.Value, difference.U);
    }
}
