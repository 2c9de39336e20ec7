using Holdfast.Amounts;

namespace Holdfast.Reports.Tables;

/// <summary>A value with its uncertainty. Shown rounded, kept whole: the CSV twin has every digit.</summary>
/// <param name="Value">The value, in the unit of the column; finite.</param>
/// <param name="U">Its uncertainty, standard or expanded as the table's note says, in the unit of the column; finite, not negative.</param>
public sealed record MeasuredCell(double Value, double U) : Cell
{
    /// <summary>The value, in the unit of the column; finite.</summary>
    public double Value { get; } = double.IsFinite(Value)
        ? Value
        : throw new ArgumentOutOfRangeException(nameof(Value), Value, "A cell holds a finite number; what is missing is a MissingCell.");

    /// <summary>Its uncertainty, in the unit of the column.</summary>
    public double U { get; } = double.IsFinite(U) && U >= 0
        ? U
        : throw new ArgumentOutOfRangeException(nameof(U), U, "An uncertainty is finite and not negative.");

    /// <summary>The result with its degrees of freedom, where <see cref="U"/> is its standard uncertainty; null where only the two numbers are known.</summary>
    public Measured? Whole { get; init; }

    /// <summary>A result with its standard uncertainty times a coverage factor.</summary>
    /// <param name="value">The result, in the unit of the column.</param>
    /// <param name="coverage">Coverage factor k; no unit.</param>
    public static MeasuredCell Of(Measured value, double coverage = 1) => new(value.Value, coverage * value.U) { Whole = coverage == 1 ? value : null };

    /// <summary>As shown.</summary>
    internal string Shown(DecimalMark mark) => RoundedNumber.Of(Value, U, mark: mark).PlusMinus;
}
