using System.Collections.Immutable;
using System.Globalization;
using Holdfast.Composition;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.Elements;

/// <summary>Elements that a file speaks of and that X-rays under an electron beam do not show: what is missing to 100 % is none of them.</summary>
internal static class UnseenElements
{
    // Hydrogen and helium have no line, those of lithium and beryllium do not leave the usual window of a detector (common practice).
    private const int HeaviestUnseen = 4;
    private const string Beams = "edx eds xeds edxs eds-x sem rem meb tem xrf rfa fluorescence epma microsonde mikrosonde microprobe";

    /// <summary>Says so where a line of the file, or its name, has such an element and the table has none of it.</summary>
    /// <param name="source">The grid and where it is said.</param>
    /// <param name="lines">Its amounts.</param>
    public static void Caution(MeasurementSource source, ImmutableArray<ElementLine> lines)
    {
        var said = source.Grid.Rows.SelectMany(r => r.Cells.Where(c => !c.IsBlank).Select(c => (r.Number, c.Text))).ToList();
        if (!said.Select(s => s.Text).Append(source.Talk.FileName.Replace('_', ' ')).Append(source.Grid.Sheet ?? "").Any(t => MeasuredTable.Has(t, Beams)))
            return;
        var unseen = said.SelectMany(s => Named(s.Text).Select(e => (s.Number, Element: e))).Where(u => lines.All(l => l.Element.Number != u.Element.Number)).DistinctBy(u => u.Element.Number).ToList();
        foreach (var (row, element) in unseen)
        {
            source.Talk.Note(Codes.MeaningLost, Weight.Caution,
                $"{element.Symbol} ({element.Name}, line {row.ToString(CultureInfo.InvariantCulture)}) is not seen by X-rays under an electron beam: no share of it follows from this table, and what is missing to 100 % is no measurement of it. Have a digest measured by flame or plasma.", element.Symbol);
        }
    }

    // By its name, as "Li" alone, or in a formula; "He", "Be" and "H" alone are words.
    private static IEnumerable<Element> Named(string text)
        => text.Split([' ', ',', ';', ':', '(', ')', '/', '+', '-', '.', '"'], StringSplitOptions.RemoveEmptyEntries).SelectMany(Of).Where(e => e.Number <= HeaviestUnseen);

    private static IEnumerable<Element> Of(string word)
    {
        if (word.Length > 3 && word.Any(char.IsDigit))
            return Formula.Read(word).Value is { } formula ? formula.Parts.Select(p => p.Key).Where(e => e.Symbol != "H") : [];
        return (word == "Li" ? Element.Find(word) : word.Length > 3 ? ElementNames.Find(word) : null) is { } element ? [element] : [];
    }
}
