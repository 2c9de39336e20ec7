using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Infrared;

/// <summary>A column headed as wavenumbers that only counts the points: which wavenumbers they are is asked, with the range that the file states.</summary>
/// <param name="From">Wavenumber of the first point, cm⁻¹.</param>
/// <param name="To">Wavenumber of the last, cm⁻¹.</param>
/// <param name="Points">How many points there are.</param>
/// <param name="First">Number of the first: 0 or 1.</param>
internal readonly partial record struct PointNumbers(double From, double To, int Points, double First)
{
    /// <summary>Wavenumber of a point, cm⁻¹.</summary>
    /// <param name="number">Its number.</param>
    public double At(double number) => From + (To - From) * (number - First) / (Points - 1);

    /// <summary>Asks; null while it is open.</summary>
    /// <param name="source">The grid.</param>
    /// <param name="table">Its table.</param>
    /// <param name="column">The column.</param>
    /// <param name="points">How many points there are.</param>
    public static PointNumbers? Ask(MeasurementSource source, MeasuredTable table, int column, int points)
    {
        var (id, first) = (source.Question("range"), table.Body[0].At(column).Text == "0" ? 0.0 : 1.0);
        var stated = table.Preamble.Select(r => string.Join(' ', r.Cells.Where(c => !c.IsBlank).Select(c => c.Text))).Select(t => Range().Match(FileWords.Plain(t))).FirstOrDefault(m => m.Success);
        ImmutableArray<string> choices = stated is null ? ["4000 to 400", "400 to 4000"] : [$"{stated.Groups["a"].Value} to {stated.Groups["b"].Value}", $"{stated.Groups["b"].Value} to {stated.Groups["a"].Value}"];
        var text = string.Create(CultureInfo.InvariantCulture, $"“{table.Named(column)}” runs from {first:0} to {first + points - 1:0} in steps of one: these are the numbers of {points} points, no wavenumbers.{(stated is null ? "" : $" The file speaks of {choices[0]} cm-1.")} Which wavenumbers does it run from and to?");
        var answer = source.Talk.Ask(id, Codes.Ambiguous, text, choices, table.Named(column));
        source.Talk.Explain(id, [.. choices.Select(c => Of(c, points, first) is { } r ? string.Create(CultureInfo.InvariantCulture, $"point {first:0} is {r.From:0.##}, a step of {Math.Abs(r.To - r.From) / (points - 1):0.###} cm⁻¹") : "")]);
        return answer is null ? null : Of(answer, points, first) ?? throw Answers.Unknown(id, answer, "two wavenumbers, for example 4000 to 400");
    }

    private static PointNumbers? Of(string text, int points, double first)
        => Range().Match(FileWords.Plain(text + " cm-1")) is { Success: true } m && double.TryParse(m.Groups["a"].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var from) && double.TryParse(m.Groups["b"].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var to) && from != to
            ? new(from, to, points, first) : null;

    [GeneratedRegex(@"(^|[^\d.,])(?<a>\d{3,5}(\.\d+)?)\s*(cm-1)?\s*(-|to|bis|a|à|do|tot|\.\.+|\.\.)\s*(?<b>\d{3,5}(\.\d+)?)\s*(cm-1|1/cm)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Range();
}
