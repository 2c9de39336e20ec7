using System.Numerics;

namespace Holdfast.Amounts;

/// <summary>
/// The size of a unit as an exact fraction, so that 1000 mg/L is exactly 1 g/L. A power that is not whole (min^0.5) leaves the
/// fractions; it is carried in <see cref="Rest"/>.
/// </summary>
internal readonly struct ScaleFactor : IEquatable<ScaleFactor>
{
    private readonly BigInteger numerator;
    private readonly BigInteger denominator;

    private ScaleFactor(BigInteger numerator, BigInteger denominator, double rest)
    {
        var common = BigInteger.GreatestCommonDivisor(numerator, denominator);
        this.numerator = numerator / common;
        this.denominator = denominator / common;
        Rest = rest;
    }

    /// <summary>Factor 1.</summary>
    public static ScaleFactor One { get; } = Of(1, 1, 0);

    /// <summary>What no fraction holds: 1 unless a power is not whole.</summary>
    public double Rest { get; }

    /// <summary>The factor as one double.</summary>
    public double Value => (double)numerator / (double)denominator * Rest;

    /// <summary>numerator / denominator × 10^exponent.</summary>
    /// <param name="numerator">Above 0.</param>
    /// <param name="denominator">Above 0.</param>
    /// <param name="exponent">Power of ten.</param>
    public static ScaleFactor Of(long numerator, long denominator, int exponent)
        => exponent >= 0
            ? new(numerator * BigInteger.Pow(10, exponent), denominator, 1)
            : new(numerator, denominator * BigInteger.Pow(10, -exponent), 1);

    public static ScaleFactor operator *(ScaleFactor a, ScaleFactor b)
        => new(a.numerator * b.numerator, a.denominator * b.denominator, a.Rest * b.Rest);

    public static ScaleFactor operator /(ScaleFactor a, ScaleFactor b)
        => new(a.numerator * b.denominator, a.denominator * b.numerator, a.Rest / b.Rest);

    /// <summary>The factor of a power of the unit.</summary>
    /// <param name="power">The power, without unit.</param>
    public ScaleFactor Pow(double power)
    {
        if (power != Math.Floor(power) || Math.Abs(power) > 20)
            return new(1, 1, Math.Pow(Value, power));
        var n = (int)power;
        return n >= 0
            ? new(BigInteger.Pow(numerator, n), BigInteger.Pow(denominator, n), Math.Pow(Rest, n))
            : new(BigInteger.Pow(denominator, -n), BigInteger.Pow(numerator, -n), Math.Pow(Rest, n));
    }

    /// <summary>A value times this factor, rounded once when the factor or its inverse is a whole number.</summary>
    /// <param name="value">Any finite value, in the unit the factor belongs to.</param>
    public double Times(double value)
    {
        if (Rest != 1 || !Fits(numerator) || !Fits(denominator))
            return value * Value;
        var scaled = numerator.IsOne ? value : value * (double)numerator;
        return denominator.IsOne ? scaled : scaled / (double)denominator;
    }

    /// <inheritdoc/>
    public bool Equals(ScaleFactor other) => numerator == other.numerator && denominator == other.denominator && Rest.Equals(other.Rest);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is ScaleFactor other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(numerator, denominator, Rest);

    private static bool Fits(BigInteger n) => n <= (BigInteger.One << 53);
}
