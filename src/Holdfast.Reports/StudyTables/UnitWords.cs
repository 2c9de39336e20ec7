using System.Globalization;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>Units of fitted parameters in a column: whole powers as the trade writes them, others as they stand with their exponents raised.</summary>
internal static class UnitWords
{
    /// <summary>The cell; "none" for a number without unit.</summary>
    /// <param name="unit">The unit: "mg/g", "mg/g/min^0.5", "(mg/L)^(-g)".</param>
    public static TextCell Of(string unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        if (unit.Length == 0)
            return new("none");
        return new(WholePowers(unit) ? RichText.Unit(unit) : new(Raised(unit)));
    }

    private static bool WholePowers(string unit)
        => !unit.Contains(")^", StringComparison.Ordinal)
        && unit.Split('^').Skip(1).All(rest => int.TryParse(rest.Split('/', ' ', '·', ')')[0], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _));

    // The exponent is what follows "^": one bracketed expression, or everything up to the next sign of a product, a quotient or the end of a bracket.
    private static List<RichRun> Raised(string unit)
    {
        var runs = new List<RichRun>();
        var rest = unit;
        for (var at = rest.IndexOf('^', StringComparison.Ordinal); at >= 0; at = rest.IndexOf('^', StringComparison.Ordinal))
        {
            runs.Add(new(rest[..at]));
            rest = rest[(at + 1)..];
            var end = rest.StartsWith('(') ? rest.IndexOf(')', StringComparison.Ordinal) + 1 : rest.IndexOfAny(['/', '·', ' ', ')']);
            end = end <= 0 ? rest.Length : end;
            runs.Add(new(rest[..end].Trim('(', ')').Replace('-', '−'), Shift: Shift.Super));
            rest = rest[end..];
        }

        if (rest.Length > 0)
            runs.Add(new(rest));
        return runs;
    }
}
