using Holdfast.Amounts;

namespace Holdfast.Reports.Tables;

/// <summary>A number without an uncertainty of its own: a count, a set temperature.</summary>
/// <param name="Value">The number, in the unit of the column; finite.</param>
public sealed record NumberCell(double Value) : Cell
{
    /// <summary>The number, in the unit of the column; finite.</summary>
    public double Value { get; } = double.IsFinite(Value)
        ? Value
        : throw new ArgumentOutOfRangeException(nameof(Value), Value, "A cell holds a finite number; what is missing is a MissingCell.");

    /// <summary>Decimal places shown; null for up to four significant figures.</summary>
    public int? Decimals { get; init; }

    /// <summary>As shown.</summary>
    internal string Shown(DecimalMark mark)
        => Decimals is { } places ? RoundedNumber.Fixed(Value, places, mark) : RoundedNumber.WithoutUncertainty(Value, mark: mark).PlusMinus;
}
