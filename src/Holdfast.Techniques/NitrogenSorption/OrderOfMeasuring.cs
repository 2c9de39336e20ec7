using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>Rows that were sorted by pressure for a graph, set back into the order in which they were measured: without it the branches are one.</summary>
internal static partial class OrderOfMeasuring
{
    // Fewer rows make no isotherm with two branches.
    private const int FewestRows = 8;

    /// <summary>The rows by their time or running number where that is in disorder; as they stand elsewhere.</summary>
    /// <param name="source">Where it is said.</param>
    /// <param name="table">The table.</param>
    /// <param name="number">Reads a number.</param>
    public static ImmutableArray<GridRow> Of(MeasurementSource source, SorptionTable table, Func<Cell, double?> number)
    {
        for (var c = 0; c < table.Meanings.Length; c++)
        {
            var heading = table.Heading.At(c).Text;
            if (table.Meanings[c] is not SorptionColumn.Other || !Running().IsMatch(FileWords.Plain(heading)))
                continue;
            var at = table.Body.Where(r => !r.IsBlank).Select(r => (Row: r, Turn: Minutes(r.At(c).Text) ?? number(r.At(c)))).ToArray();
            if (at.Length < FewestRows || at.Any(a => a.Turn is null) || at.Select(a => a.Turn).Distinct().Count() < at.Length)
                continue;
            if (Enumerable.Range(1, at.Length - 1).All(i => at[i].Turn > at[i - 1].Turn) || Enumerable.Range(1, at.Length - 1).All(i => at[i].Turn < at[i - 1].Turn))
                return table.Body;
            const string ByTurn = "in the order of measuring", AsTheyStand = "as they stand";
            return source.Talk.Assume(source.Question("order"), Codes.Ambiguous, $"The rows are sorted by pressure; “{heading}” gives the order in which they were measured, and with it the two branches.", [ByTurn, AsTheyStand], heading) == ByTurn
                ? [.. at.OrderBy(a => a.Turn).Select(a => a.Row)] : table.Body;
        }

        return table.Body;
    }

    // "10:46", hours and minutes or minutes and seconds: the order is the same.
    private static double? Minutes(string text)
        => Clock().Match(text.Trim()) is { Success: true } m ? 60 * double.Parse(m.Groups["a"].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) + double.Parse(m.Groups["b"].ValueSpan, System.Globalization.CultureInfo.InvariantCulture)
            + (m.Groups["c"].Success ? double.Parse(m.Groups["c"].ValueSpan, System.Globalization.CultureInfo.InvariantCulture) / 60 : 0) : null;

    [GeneratedRegex(@"^\W*(elapsed|time|zeit|dauer|laufzeit|duree|temps|heure|tiempo|duracion|tempo|duracao|durata|ora|czas|sure|zaman|tid|tijd|cas|nr|no|pkt|point|punkt|punto|ponto|#|n)([^a-z]|$)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Running();

    [GeneratedRegex(@"^(?<a>\d{1,3}):(?<b>\d{2})(:(?<c>\d{2}))?$", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Clock();
}
