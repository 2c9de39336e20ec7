namespace Holdfast.Techniques.Elements;

/// <summary>Whether names of rows are portions and places of one powder, or may be powders of their own.</summary>
internal static class PortionNames
{
    private const string Words = "essai* versuch* prova prove prueba* ensayo* ensaio* proba portion* aliquot* aliquota* einwaage* digest* aufschluss* mineral* prise* rep run wiederholung* parallel* replik* replic* repet* wdh duplicate* triplicate* toma* nazewka* nawazka*";

    /// <summary>True where the names only number what was done with one powder: "Digest 1", "2", "A" under "no.", or its own name with a number.</summary>
    /// <param name="names">Names of rows.</param>
    /// <param name="heading">What stands above them: "digest" over D1 and D2.</param>
    /// <param name="powder">The powder's name.</param>
    public static bool AreOfOne(IReadOnlyCollection<string> names, string heading, string powder)
        => names.All(n => IsPortion(n) || n.All(c => char.IsDigit(c) || char.IsPunctuation(c)))
            || (AmountWords.IsNumber(heading) && names.All(n => n.Length == 1))
            || (IsPortion(heading) && names.Select(n => n.TrimEnd([.. "0123456789"])).Distinct(StringComparer.OrdinalIgnoreCase).Count() == 1)
            || (names.Select(Stem).Distinct(StringComparer.OrdinalIgnoreCase).ToList() is [{ Length: > 1 } stem] && Key(powder).Contains(Key(stem), StringComparison.Ordinal));

    /// <summary>A name without the number or letter that counts: "ZQ-Cu" of "ZQ-Cu 2" and "ZQ-Cu b".</summary>
    /// <param name="name">The name.</param>
    public static string Stem(string name)
    {
        var parts = name.Split([' ', '_', '.', '#'], StringSplitOptions.RemoveEmptyEntries);
        return parts.Length > 1 && (parts[^1].All(char.IsDigit) || parts[^1].Length == 1) ? string.Join(' ', parts[..^1]) : name;
    }

    private static bool IsPortion(string text) => MeasuredTable.Has(text, Words) || MeasuredTable.Has(text, AmountWords.Places);

    private static string Key(string text) => string.Concat(text.Where(char.IsLetterOrDigit)).ToUpperInvariant();
}
