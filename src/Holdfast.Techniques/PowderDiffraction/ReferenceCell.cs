using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Diffraction;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>A cell that the user states for a pattern: "8.3142" for a cubic one, or six lengths and angles.</summary>
internal static class ReferenceCell
{
    private const string None = "none";

    /// <summary>States that no cell is given, which an answer changes; the setting to keep, if one is given.</summary>
    /// <param name="source">The grid.</param>
    public static ImmutableArray<MeasuredSetting> Ask(MeasurementSource source)
    {
        var answer = source.Talk.Assume(source.Question("unit:cell"), Codes.Ambiguous,
            "No cell is stated for this pattern: lines are matched with structures of the study, or with a cubic cell if one fits. The answer unit:cell gives one: a, or a b c α β γ, in Å and degrees.", [None]);
        if (answer == None)
            return [];
        return Of(answer) is not null ? [new(ScanNames.Cell, answer, null, "Å", 0)]
            : throw new StudyException(Codes.Ambiguous, $"{answer} is no cell. Write a for a cubic one, or a b c α β γ with points as decimal marks, in ångström and degrees.");
    }

    /// <summary>The cell a text gives, or null.</summary>
    /// <param name="text">One, two (a c, all angles 90°), three or six numbers.</param>
    public static UnitCell? Of(string text)
    {
        var numbers = new List<double>();
        foreach (var word in text.Split([' ', ';', '\t'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (!double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var number))
                return null;
            numbers.Add(number);
        }

        var cell = numbers switch
        {
            [var a] => new UnitCell(a, a, a, 90, 90, 90),
            [var a, var c] => new UnitCell(a, a, c, 90, 90, 90),
            [var a, var b, var c] => new UnitCell(a, b, c, 90, 90, 90),
            [var a, var b, var c, var alpha, var beta, var gamma] => new UnitCell(a, b, c, alpha, beta, gamma),
            _ => null,
        };
        return cell is { IsSound: true } && Math.Max(cell.A, Math.Max(cell.B, cell.C)) <= 60 && Math.Min(cell.A, Math.Min(cell.B, cell.C)) >= 2 ? cell : null;
    }
}
