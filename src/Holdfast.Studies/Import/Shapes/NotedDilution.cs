using System.Text.RegularExpressions;
using Holdfast.Amounts;
using Holdfast.Studies.Import.Headings;
using W = Holdfast.Studies.Import.Headings.HeadingWord;

namespace Holdfast.Studies.Import.Shapes;

/// <summary>What a line of text says of a dilution: "all filtrates were diluted 1 mL to 10 mL", "results are not corrected for the dilution".</summary>
/// <param name="Applied">True where results hold the dilution already, false where they do not, null where that is not said.</param>
/// <param name="Factor">The factor stated, or null.</param>
/// <param name="Written">The line.</param>
internal sealed partial record NotedDilution(bool? Applied, double? Factor, string Written)
{
    private static readonly string[] Denials = ["not ", "nicht", "non ", "no ", "without", "ohne", "before dilution", "sans", "uncorrected", "sin ", "sem "];
    private static readonly string[] Products = ["x dilution", "× dilution", "* dilution"];

    /// <summary>What a line says, or null where it speaks of no dilution, or of it without telling anything.</summary>
    /// <param name="line">The line.</param>
    public static NotedDilution? In(string line)
    {
        var words = Lexicon.Of(line);
        if (!words.Contains(W.Dilution))
            return null;
        var isDenied = Holds(line, Denials);
        bool? applied = words.Contains(W.Corrected) || Holds(line, Products) ? !isDenied
            // That something was diluted says nothing of what was written down.
            : Lexicon.Of(Lexicon.Tokens(line).Where(t => t is not "diluted")).Contains(W.AsRead) || isDenied ? false : null;
        var factor = FactorNoted().Match(line) is { Success: true } m
            ? Number(m, "factor") ?? (Number(m, "all") / (Number(m, "one") ?? 1)) : null;
        return applied is null && factor is null ? null : new(applied, factor, line);
    }

    private static bool Holds(string line, string[] words) => Array.Exists(words, w => line.Contains(w, StringComparison.OrdinalIgnoreCase));

    private static double? Number(Match m, string group) => m.Groups[group].Success ? (CellText.Read(m.Groups[group].Value, null) as CellText.Number)?.Value : null;

    [GeneratedRegex(@"(factor|faktor|facteur|fator|fattore)\s*(of\s*)?(?<factor>\d+([.,]\d+)?)|(?<one>\d+([.,]\d+)?)\s*(mL|ml|µL|uL)?\s*(to|in|auf|à|en|a)\s*(?<all>\d+([.,]\d+)?)\s*(mL|ml)|\b(?<one>1)\s*:\s*(?<all>\d+)\b|(?<factor>\d+)\s*(-?fold|x\b|times)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking | RegexOptions.IgnoreCase)]
    private static partial Regex FactorNoted();
}
