namespace Holdfast.Amounts;

/// <summary>A quantity as it is typed: "40 mg/L", "50mL", "1.2×10⁻³ mol/L", "5 %".</summary>
public static class QuantityText
{
    /// <summary>Reads a value and its unit. A missing or unclear unit and an unclear number come back as findings, never as a guess.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="mark">Decimal mark; null takes either where only one reading is possible.</param>
    public static Outcome<Quantity> Read(string? text, DecimalMark? mark = null)
    {
        var written = (text ?? "").Trim();

        // The number is the longest beginning that reads as one; what follows is the unit. A digit may not follow: "1,234,5 mg" is no 1,234.
        for (var end = written.Length; end > 0; end--)
        {
            if (end < written.Length && (char.IsDigit(written[end]) || written[end] is '.' or ','))
                continue;
            switch (CellText.Read(written[..end], mark))
            {
                case CellText.Ambiguous:
                    return None("HF-498", $"'{written}' can be read in two ways. Write the number without grouping.");
                case CellText.Number number:
                    return Unit.Read(written[end..]) switch
                    {
                        UnitText.Known known => new(new Quantity(number.Value, known.Unit, Basis: known.Basis), []),
                        UnitText.Ambiguous ambiguous => None("HF-497", $"The unit is not clear. {ambiguous.Question}"),
                        UnitText.Absent => None("HF-497", $"'{written}' has no unit. Write one after the number; 1 stands for a plain number."),
                        _ => None("HF-497", $"'{written[end..].Trim()}' is no unit that is known here."),
                    };
                default:
                    continue;
            }
        }

        return None("HF-497", $"'{written}' does not begin with a number.");
    }

    private static Outcome<Quantity> None(string code, string sentence) => Outcome<Quantity>.None(Finding.Of(code, Weight.Stop, sentence));
}
