using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>A calibration line given as an equation: "E = 0,1924 * c + 0,0031 (c in mg/L)".</summary>
/// <param name="Slope">Signal per unit of concentration.</param>
/// <param name="Intercept">Signal at zero.</param>
/// <param name="Unit">Unit of the concentration as the line states it; null where it does not.</param>
/// <param name="Written">The equation as written.</param>
/// <param name="Row">Row of the line, as a person counts.</param>
internal sealed partial record StatedLine(double Slope, double Intercept, Unit? Unit, string Written, int Row)
{
    /// <summary>The equation in a line of text, or null.</summary>
    /// <param name="line">The line.</param>
    /// <param name="row">Its row.</param>
    public static StatedLine? In(string line, int row)
    {
        if (Equation().Match(line) is not { Success: true } m || Number(m.Groups["slope"].Value) is not { } slope || slope == 0)
            return null;
        var intercept = m.Groups["intercept"].Success ? Number(m.Groups["intercept"].Value) * (m.Groups["sign"].Value is "+" ? 1 : -1) : 0;
        return intercept is null ? null : new(slope, intercept.Value, UnitIn(line[(m.Index + m.Length)..]) ?? UnitIn(line[..m.Index]), m.Value.Trim(), row);
    }

    private static double? Number(string text) => CellText.Read(text, text.Contains(',', StringComparison.Ordinal) ? DecimalMark.Comma : DecimalMark.Point) is CellText.Number number ? number.Value : null;

    private static Unit? UnitIn(string text)
        => text.Split([' ', '(', ')', ',', ';', '[', ']', ':'], StringSplitOptions.RemoveEmptyEntries).Select(p => HeadingReading.UnitOf(p)).OfType<UnitText.Known>().FirstOrDefault(u => UnitKinds.Of(u) == UnitKind.Concentration)?.Unit;

    [GeneratedRegex(@"\b(y|Y|A|E|[Aa]bs\.?|[Aa]bsorban[a-z]*|[Ee]xt\.?|[Ee]xtinktion|[Ss]ignal)\s*=\s*(?<slope>\d+([.,]\d+)?)\s*[*·×]?\s*(x|X|c|C|[Cc]onc\.?|[Kk]onz\.?|[Cc]oncentration|\[[A-Za-z]+\])\s*((?<sign>[+\-−–])\s*(?<intercept>\d+([.,]\d+)?))?", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Equation();
}
