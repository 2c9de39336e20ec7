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
    private static readonly string[] Before = ["before dilution", "uncorrected"];
    private static readonly string[] Products = ["x dilution", "× dilution", "* dilution"];

    /// <summary>What a line says, or null where it speaks of no dilution, or of it without telling anything.</summary>
    /// <param name="line">The line.</param>
    public static NotedDilution? In(string line)
    {
        var words = Lexicon.Of(line);
        if (!words.Contains(W.Dilution))
            return null;
        var isDenied = Holds(line, Before) || Lexicon.Tokens(line).Any(Lexicon.Denials.Contains);
        bool? applied = words.Contains(W.Corrected) || Holds(line, Products) ? !isDenied
            // That something was diluted says nothing of what was written down.
            : Lexicon.Of(Lexicon.Tokens(line).Where(t => t is not "diluted")).Contains(W.AsRead) || isDenied ? false : null;
        var factor = FactorOf(FactorNoted().Match(line));
        return applied is null && factor is null ? null : new(applied, factor, line);
    }

    /// <summary>True for a line that asks itself: "did I enter the dilution? I do not remember".</summary>
    /// <param name="line">The line.</param>
    public static bool IsDoubt(string line) => Lexicon.Of(line).Contains(W.Dilution) && Doubted().IsMatch(line);

    /// <summary>True for "1 mL made up to 5 mL": two volumes of a dilution, none of them a vessel's.</summary>
    /// <param name="clause">Part of a line.</param>
    public static bool IsOfVolumes(string clause) => FactorNoted().Matches(clause).Any(m => m.Value.EndsWith("mL", StringComparison.OrdinalIgnoreCase));

    /// <summary>The factor of two volumes in a text, "1 mL auf 50 mL aufgefüllt"; null for none.</summary>
    /// <param name="text">The text.</param>
    public static double? FactorIn(string text) => FactorNoted().Matches(text) is [{ } only] && IsOfVolumes(only.Value) ? FactorOf(only) : null;

    private static double? FactorOf(Match m) => m.Success ? Number(m, "factor") ?? (Number(m, "all") / (Number(m, "one") ?? 1)) : null;

    private static bool Holds(string line, string[] words) => Array.Exists(words, w => line.Contains(w, StringComparison.OrdinalIgnoreCase));

    private static double? Number(Match m, string group) => m.Groups[group].Success ? (CellText.Read(m.Groups[group].Value, null) as CellText.Number)?.Value : null;

    [GeneratedRegex(@"\?|perhaps|maybe|possibly|vielleicht|evtl|eventuell|peut-(ê|e)tre|quiz(á|a)s|tal vez|talvez|forse|misschien|mo(ż|z)e|remember|not sure|unsure|no idea|wei(ß|ss) (ich )?nicht|erinner|unsicher|souviens|pas s(û|u)re?|recuerdo|lembro|ricordo|pami(ę|e)tam|hat(ı|i)rlam|herinner|husker|minns|nie wiem|non so\b|no sé\b|n(ã|a)o sei", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking | RegexOptions.IgnoreCase)]
    private static partial Regex Doubted();

    [GeneratedRegex(@"(factor|faktor|facteur|fator|fattore)\s*(of\s*)?(?<factor>\d+([.,]\d+)?)|(?<one>\d+([.,]\d+)?)\s*(mL|ml|µL|uL)?\s*(made up |brought |filled |topped up |diluted |verdünnt |aufgefüllt |dilué |aforado |diluido |rozcieńczone )?(to|in|auf|à|en|a|do)\s*(?<all>\d+([.,]\d+)?)\s*(mL|ml)|\b(?<one>1)\s*(:|in)\s*(?<all>\d+)\b|(?<factor>\d+)\s*(-?fold|x\b|times)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking | RegexOptions.IgnoreCase)]
    private static partial Regex FactorNoted();
}
