namespace Holdfast.Amounts;

/// <summary>
/// What a formula of the trade asks of a number. A formula is written once over this interface and read by
/// <see cref="Number"/> (a plain double), <see cref="Slopes"/> (value and exact partial derivatives) and
/// <see cref="Measured"/> (value, uncertainty and trail), so that fit, derivative and uncertainty cannot disagree.
/// </summary>
/// <typeparam name="T">The number type itself.</typeparam>
public interface IReal<T> where T : struct, IReal<T>
{
    /// <summary>The value without anything it carries.</summary>
    double Value { get; }

    static abstract T operator +(T a, T b);
    static abstract T operator -(T a, T b);
    static abstract T operator *(T a, T b);
    static abstract T operator /(T a, T b);
    static abstract T operator -(T a);

    /// <summary>A number that is known exactly: no slope, no uncertainty.</summary>
    /// <param name="value">The exact number, in any unit.</param>
    static abstract implicit operator T(double value);

    /// <summary>e to the power a.</summary>
    static abstract T Exp(T a);

    /// <summary>e to the power a, less 1, without losing digits near a = 0.</summary>
    static abstract T ExpM1(T a);

    /// <summary>Natural logarithm.</summary>
    static abstract T Log(T a);

    /// <summary>Natural logarithm of 1 + a, without losing digits near a = 0.</summary>
    static abstract T LogP1(T a);

    /// <summary>a to the power b, for a ≥ 0. At a = 0 with b &gt; 0 the value is 0 and the slopes take their limit 0 (b ≥ 1 apart).</summary>
    static abstract T Pow(T a, T b);

    /// <summary>Square root.</summary>
    static abstract T Sqrt(T a);
}
