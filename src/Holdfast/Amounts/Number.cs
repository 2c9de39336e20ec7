using System.Runtime.CompilerServices;

namespace Holdfast.Amounts;

/// <summary>A plain double read as an <see cref="IReal{T}"/>: the value of a formula and nothing else.</summary>
/// <param name="Value">The value, in the unit that the formula's card names.</param>
public readonly record struct Number(double Value) : IReal<Number>
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Number operator +(Number a, Number b) => new(a.Value + b.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Number operator -(Number a, Number b) => new(a.Value - b.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Number operator *(Number a, Number b) => new(a.Value * b.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Number operator /(Number a, Number b) => new(a.Value / b.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Number operator -(Number a) => new(-a.Value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static implicit operator Number(double value) => new(value);

    /// <summary>The value.</summary>
    public static explicit operator double(Number a) => a.Value;

    public static Number Exp(Number a) => new(Math.Exp(a.Value));

    public static Number ExpM1(Number a) => new(Elementary.ExpM1(a.Value));

    public static Number Log(Number a) => new(Math.Log(a.Value));

    public static Number LogP1(Number a) => new(Elementary.LogP1(a.Value));

    public static Number Pow(Number a, Number b) => new(Math.Pow(a.Value, b.Value));

    public static Number Sqrt(Number a) => new(Math.Sqrt(a.Value));
}
