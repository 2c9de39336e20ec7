using System.Collections.Immutable;
using Holdfast.Composition;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>Tables of one file whose titles name their metals: "Lead, 25 mL", "Cadmium, 50 mL". The study is of one of them.</summary>
internal static class OtherMetals
{
    private static readonly char[] BetweenWords = [' ', ',', ';', ':', '(', ')', '[', ']', '/', '-', '_', '.', '='];

    /// <summary>Those of another metal, each with the metal's symbol; none where no title names the study's own.</summary>
    /// <param name="tables">Tables that are read.</param>
    /// <param name="analyte">The study's element, or null.</param>
    public static Dictionary<TableLayout, string> In(ImmutableArray<TableLayout> tables, string? analyte)
    {
        var titled = tables.Select(t => (Table: t, Metals: NamedIn(Settings.TitleOf(t) ?? ""))).ToList();
        return analyte is null || !titled.Exists(t => t.Metals.Contains(analyte)) ? []
            : titled.Where(t => t.Metals is [var only] && only != analyte).ToDictionary(t => t.Table, t => t.Metals[0]);
    }

    // A symbol of one letter, and "In" or "As", are words and symbols of other things.
    private static ImmutableArray<string> NamedIn(string title)
        => [.. title.Split(BetweenWords, StringSplitOptions.RemoveEmptyEntries).Where(w => w.Length > 1 && char.IsUpper(w[0]) && w is not ("In" or "As" or "At" or "No" or "Co" or "He"))
            .Select(ElementNames.SymbolOf).OfType<string>().Distinct()];
}
