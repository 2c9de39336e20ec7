using System.Globalization;

namespace Holdfast.Amounts;

/// <summary>A value with its unit, as it enters or leaves by a door. Inside, formulas take doubles or <see cref="Measured"/>.</summary>
/// <param name="Value">The value, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The unit.</param>
/// <param name="U">Standard uncertainty in the same unit, or null when not known.</param>
/// <param name="Basis">As what and per what, or null when not stated.</param>
public sealed record Quantity(double Value, Unit Unit, double? U = null, Basis? Basis = null)
{
    /// <summary>The same quantity in another unit.</summary>
    /// <param name="unit">The unit wanted.</param>
    /// <exception cref="ArgumentException">The units measure different things.</exception>
    public Quantity In(Unit unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        return this with
        {
            Value = Unit.Convert(Value, unit),
            Unit = unit,
            U = U is { } u ? Unit.ConvertDifference(u, unit) : null,
        };
    }

    /// <summary>The bare value in a unit, for a formula.</summary>
    /// <param name="unit">The unit that the formula's card names, in the plain form.</param>
    /// <exception cref="ArgumentException">The units measure different things.</exception>
    public double InUnit(string unit) => Unit.Convert(Value, Unit.Parse(unit));

    /// <summary>Value and unit in the form for files, every digit kept: "12.5 mg/L".</summary>
    public override string ToString()
    {
        var value = Value.ToString("R", CultureInfo.InvariantCulture);
        return Unit.IsOne ? value : $"{value} {Unit.Plain}";
    }
}
