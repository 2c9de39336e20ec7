using System.Collections.Immutable;
using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Finds the column that names the rows.</summary>
internal static class CodeColumns
{
    private const int RowsSeen = 300;
    private const double OwnName = 0.5;
    private static readonly HashSet<string> OfTheClient = new("client customer kunde kunden cliente clientes klient klienta klant auftraggeber your".Split(' '), StringComparer.Ordinal);
    private static readonly HashSet<string> OfTheLaboratory = new("lab labor laboratory laboratoire laboratorio laboratorium internal intern interne interno lims".Split(' '), StringComparer.Ordinal);

    /// <summary>Its place, or −1 where no column names the rows.</summary>
    /// <param name="layout">The table.</param>
    /// <param name="headings">Its headings.</param>
    /// <param name="known">Codes that the study has already.</param>
    /// <param name="aliases">Other names of these samples, "lab no 401".</param>
    public static int Of(TableLayout layout, ImmutableArray<HeadingReading> headings, IEnumerable<string>? known = null, IEnumerable<string>? aliases = null)
    {
        var best = (Place: -1, Score: 0.0);
        if (aliases?.ToHashSet(StringComparer.OrdinalIgnoreCase) is { Count: > 0 } others)
        {
            var named = Enumerable.Range(0, headings.Length).Where(i => UnitKinds.Of(headings[i].Unit) is UnitKind.None && layout.Body.Take(RowsSeen).Select(r => r.At(i).Text).Where(t => t.Length > 0).ToList() is { Count: > 0 } cells && cells.Count(others.Contains) * 2 > cells.Count).ToList();
            if (named is [var only])
                return only;
        }

        var codes = known is null ? null : new CodeIndex(known);
        for (var i = 0; i < headings.Length; i++)
        {
            var score = Score(layout, headings[i], i, codes);
            if (score > best.Score)
                best = (i, score);
        }

        return best.Place;
    }

    private static double Score(TableLayout layout, HeadingReading h, int index, CodeIndex? known)
    {
        if (UnitKinds.Of(h.Unit) is not UnitKind.None)
            return 0;
        var cells = layout.Body.Take(RowsSeen).Select(r => r.At(index)).Where(c => !c.IsBlank).ToList();
        if (cells.Count == 0)
            return 0;
        if (cells.Count(c => CellParts.IsClock(c.Text)) * 2 > cells.Count)
            return 0;
        var listed = SampleProperties.Code.Headings.IndexOf(h.Key);
        var properties = HeadingWords.Properties(h.Key);
        // "Cycle 1", "Cycle 2": names that say which use it is.
        var isCycle = properties.Contains(RegenerationProperties.Cycle) && cells.TrueForAll(c => c.Text.Any(char.IsLetter));
        // What the file lists as something else is no code, whatever its cells look like.
        if (listed < 0 && !properties.IsEmpty && !isCycle && !h.Has(HeadingWord.Sample) && !(h.Has(HeadingWord.Standard) && cells.TrueForAll(c => c.Text.Any(char.IsLetter))))
            return 0;
        var distinct = cells.Select(c => c.Text).Distinct(StringComparer.Ordinal).Count() / (double)cells.Count;
        var words = cells.Count(c => c.Text.Any(char.IsLetter) || c.Kind == CellKind.Date) / (double)cells.Count;
        var score = listed >= 0 ? 10 - (listed * 0.1)
            : h.Has(HeadingWord.Sample) && !h.HasAny(HeadingWord.Role, HeadingWord.Concentration, HeadingWord.Mass, HeadingWord.Volume, HeadingWord.Date, HeadingWord.Remark) ? 8
            : h.Has(HeadingWord.Standard) && cells.TrueForAll(c => c.Text.Any(char.IsLetter)) ? 6
            : h.Has(HeadingWord.Position) && distinct > 0.99 ? 2
            : isCycle ? 3
            // "level" over "P-05", "P-10": names of levels, none of them a number.
            : h.Words.Count == 1 && h.Has(HeadingWord.Concentration) && index == 0 && distinct > 0.99 && cells.TrueForAll(c => c.Text.Any(char.IsLetter) && !TableLayout.IsNumberLike(c)) ? 4
            : (h.Words.IsEmpty || (h.Words.Count == 1 && h.Has(HeadingWord.Liquid))) && index == 0 && distinct > 0.6 && words > 0.5 ? 4
            : 0;
        if (score == 0)
            return 0;
        if (h.Has(HeadingWord.Position) && listed < 0)
            score -= 5;
        if (score <= 0)
            return distinct > 0.99 ? 0.5 : 0;
        var recognised = known is null ? 0 : cells.Count(c => known.Find(c.Text).Count == 1) / (double)cells.Count;
        // "Lab ID | Client ID": the laboratory's own number is not what the vessel is called.
        score += h.Tokens.Any(OfTheClient.Contains) ? OwnName : h.Tokens.Any(OfTheLaboratory.Contains) ? -OwnName : 0;
        return score + (3 * recognised) + words + (distinct > 0.3 ? distinct : -3);
    }
}
