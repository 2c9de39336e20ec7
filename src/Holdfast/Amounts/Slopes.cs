using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Holdfast.Amounts;

/// <summary>
/// A value with its exact partial derivatives by up to four parameters (forward differentiation). Four doubles fill one
/// vector register, which is why a model of the trade has at most four free parameters; a curve with more is read in blocks of four.
/// </summary>
public readonly struct Slopes : IReal<Slopes>
{
    private readonly double value;
    private readonly Vector256<double> partials;

    /// <summary>A value with the given partial derivatives.</summary>
    /// <param name="value">The value, in the formula's unit.</param>
    /// <param name="partials">Derivatives by parameter 0 to 3.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Slopes(double value, Vector256<double> partials)
    {
        this.value = value;
        this.partials = partials;
    }

    /// <summary>The value.</summary>
    public double Value
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => value;
    }

    /// <summary>The four partial derivatives.</summary>
    public Vector256<double> Partials
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => partials;
    }

    /// <summary>The derivative by one parameter.</summary>
    /// <param name="parameter">0 to 3.</param>
    public double this[int parameter] => partials.GetElement(parameter);

    /// <summary>A parameter: slope 1 by itself, 0 by the others.</summary>
    /// <param name="value">The parameter's present value.</param>
    /// <param name="parameter">Its position, 0 to 3.</param>
    public static Slopes Parameter(double value, int parameter) => new(value, Vector256<double>.Zero.WithElement(parameter, 1.0));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Slopes operator +(Slopes a, Slopes b) => new(a.value + b.value, a.partials + b.partials);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Slopes operator -(Slopes a, Slopes b) => new(a.value - b.value, a.partials - b.partials);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Slopes operator *(Slopes a, Slopes b)
        => new(a.value * b.value, a.partials * b.value + b.partials * a.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Slopes operator /(Slopes a, Slopes b)
    {
        var quotient = a.value / b.value;
        return new(quotient, (a.partials - b.partials * quotient) * (1 / b.value));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Slopes operator -(Slopes a) => new(-a.value, -a.partials);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Slopes(double value) => new(value, Vector256<double>.Zero);

    public static Slopes Exp(Slopes a)
    {
        var e = Math.Exp(a.value);
        return new(e, a.partials * e);
    }

    public static Slopes ExpM1(Slopes a) => new(Elementary.ExpM1(a.value), a.partials * Math.Exp(a.value));

    public static Slopes Log(Slopes a) => new(Math.Log(a.value), a.partials * (1 / a.value));

    public static Slopes LogP1(Slopes a) => new(Elementary.LogP1(a.value), a.partials * (1 / (1 + a.value)));

    public static Slopes Pow(Slopes a, Slopes b)
    {
        var power = Math.Pow(a.value, b.value);
        if (a.value == 0)
        {
            // x^n at x = 0: d/dn = x^n ln x tends to 0; d/dx = n x^(n-1) is 0, 1 or unbounded. A blank point carries no slope either way.
            return b.value == 1 ? new(power, a.partials) : new(power, Vector256<double>.Zero);
        }

        var slopes = a.partials * (b.value * power / a.value);
        if (b.partials != Vector256<double>.Zero)
            slopes += b.partials * (power * Math.Log(a.value));
        return new(power, slopes);
    }

    public static Slopes Sqrt(Slopes a)
    {
        var root = Math.Sqrt(a.value);
        return new(root, a.partials * (0.5 / root));
    }
}
