using Holdfast.Amounts;

namespace Holdfast.Studies.Import;

/// <summary>One value written twice, in two units: 0.1476 g and 147.6 mg, 5 min and 0.083 h, 0.15 g and 148.2 mg. What is rounded contradicts nothing.</summary>
internal static class WrittenRounder
{
    // Floating point alone; and what rounding may explain at most, lest "0 h" be any time.
    private const double ToTheLastBit = 1e-9, AtMost = 0.05;

    /// <summary>The one of two facts that the other was rounded from, where they are one value in two units; null where they are two values.</summary>
    /// <param name="one">A fact; itself where both say the same.</param>
    /// <param name="other">Another of the same property.</param>
    public static Fact? Source(Fact one, Fact other)
    {
        if (one is not { Value: { } a, U: null, Below: null } || other is not { Value: { } b, U: null, Below: null })
            return null;
        var apart = Math.Abs(a - b);
        if (apart <= ToTheLastBit * Math.Max(Math.Abs(a), Math.Abs(b)))
            return one;
        // In one unit, 25 beside 25.4 may be what was planned beside what was weighed: that is for her to say.
        if (Read(one) is not var (step, unit) || Read(other) is not var (otherStep, otherUnit) || string.Equals(unit, otherUnit, StringComparison.OrdinalIgnoreCase))
            return null;
        var (fine, coarse) = step <= otherStep ? (one, other) : (other, one);
        if (apart > Half(Math.Max(step, otherStep)) || apart > AtMost * Math.Min(Math.Abs(a), Math.Abs(b)))
            return null;
        // 5 min in hours is 0.083 to its last digit: the round number was set, and the finer one is worked out from it. 148.2 mg is not what 0.15 g gives.
        return apart <= Half(Math.Min(step, otherStep)) ? coarse : fine;
        double Half(double digit) => (digit / 2) + (ToTheLastBit * Math.Abs(a));
    }

    /// <summary>True where two facts are one value, written alike or in two units.</summary>
    /// <param name="one">A fact.</param>
    /// <param name="other">Another of the same property.</param>
    public static bool Agree(Fact one, Fact other) => Nullable.Equals(one.Value, other.Value) || Source(one, other) is not null;

    // What one of the last digit written is in the property's unit, and the unit that stands behind it.
    private static (double Step, string Unit)? Read(Fact fact)
    {
        var written = fact.Written.Trim();
        var digits = string.Concat(written.TakeWhile(c => char.IsAsciiDigit(c) || c is '.' or ','));
        var mark = digits.LastIndexOfAny(['.', ',']);
        if (digits.Length == 0 || CellText.Read(digits, mark >= 0 && digits[mark] == ',' ? DecimalMark.Comma : DecimalMark.Point) is not CellText.Number { Value: not 0 and var number })
            return null;
        return (Math.Abs(fact.Value!.Value / number) * Math.Pow(10, mark < 0 ? 0 : mark + 1 - digits.Length), written[digits.Length..].Trim());
    }
}
