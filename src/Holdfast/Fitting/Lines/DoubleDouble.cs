namespace Holdfast.Fitting.Lines;

/// <summary>A running sum kept as two doubles, about 32 digits.</summary>
/// <remarks>T. J. Dekker, Numer. Math. 18 (1971) 224; D. E. Knuth's two-sum; products split by fused multiply-add (from memory).</remarks>
/// <param name="start">First value.</param>
internal struct DoubleDouble(double start)
{
    private double high = start;
    private double low;

    /// <summary>The sum, rounded once.</summary>
    public readonly double Value => high + low;

    /// <summary>Adds a number.</summary>
    public void Add(double value)
    {
        var sum = high + value;
        var part = sum - high;
        low += high - (sum - part) + (value - part);
        high = sum;
    }

    /// <summary>Adds a product without rounding it first.</summary>
    public void AddProduct(double a, double b)
    {
        var product = a * b;
        Add(product);
        low += Math.FusedMultiplyAdd(a, b, -product);
    }
}
