namespace Holdfast.Techniques;

/// <summary>Headings that number what was done again with one powder and name no powder: "1. Lauf", "run 2", "scan B".</summary>
internal static class RepeatWords
{
    private const string Runs = "run* scan* pass passes repeat* repetition* replicate* rep lauf* durchlauf* durchgang* wiederholung* aufnahme* messung* passage* mesure* balayage* essai* barrido* pasada* medida* repeticion* varredura* passagem medicao* corsa* passata* passaggi* misura* scansion* ripetizion* przebieg* pomiar* skan* meting* doorgang* herhaling* koring* matning* maling* mereni* olcum*";
    private const string Portions = "pellet* tablet* tablett* pressling* presling* pastill* pastiglia* pastiglie pastilha* pastylk* tableta* tabletk* disc disk disque* portion* aliquot* aliquota* prise* toma* spot* stelle* place point* punkt* punto* ponto* punti";

    /// <summary>True for words of repeating beside a number, and none of anything else but what was measured.</summary>
    /// <param name="heading">A heading.</param>
    /// <param name="isMeasured">True for a word that says what was measured: "counts".</param>
    public static bool OnlyNumber(string heading, Func<string, bool> isMeasured)
    {
        string[] words = [.. MeasuredTable.WordsOf(heading)];
        return words.Any(IsRepeat) && (heading.Any(char.IsDigit) || words.Any(IsLetter)) && words.All(w => IsRepeat(w) || IsLetter(w) || isMeasured(w));
    }

    /// <summary>True for headings that differ in their number or letter alone, two or more.</summary>
    /// <param name="headings">Headings of columns.</param>
    /// <param name="isMeasured">True for a word that says what was measured.</param>
    public static bool AreOfOne(IReadOnlyCollection<string> headings, Func<string, bool> isMeasured)
        => headings.Count > 1 && headings.All(h => OnlyNumber(h, isMeasured)) && headings.Select(h => string.Join(' ', MeasuredTable.WordsOf(h).Where(w => !IsLetter(w)))).Distinct(StringComparer.Ordinal).Count() == 1;

    private static bool IsLetter(string word) => word.Length == 1;

    private static bool IsRepeat(string word) => MeasuredTable.Has(word, Runs) || MeasuredTable.Has(word, Portions);
}
