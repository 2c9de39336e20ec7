using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import;

/// <summary>Words that say that a row, a label or a sheet does not count: "ignore", "do not use", "no usar".</summary>
internal static class NotToUse
{
    // Without accents, as tokens are.
    private static readonly HashSet<string> Words = new("ignore ignored discard discarded exclude excluded verworfen ausgeschlossen exclu exclure descartar descartado descartada scartare scartato pominac pominiete rinse rinsing ignorieren spulen ignorer rincage ignorar enjuague ignorare risciacquo negeren pomin ignorovat yoksay abaikan".Split(' '), StringComparer.Ordinal);

    private static readonly HashSet<string> Pairs = new(["not use", "not used", "no usar", "nicht verwenden", "nicht benutzen", "nicht verwendet", "pas utiliser", "non usare", "nao usar", "niet gebruiken", "nie uzywac", "nepouzivat", "kullanma", "jangan dipakai"], StringComparer.Ordinal);

    /// <summary>True where a text says so.</summary>
    /// <param name="text">A remark, or the name of a sheet.</param>
    public static bool Says(string text)
    {
        var tokens = Lexicon.Tokens(text);
        return tokens.Any(Words.Contains) || tokens.Zip(tokens.Skip(1), (a, b) => $"{a} {b}").Any(Pairs.Contains);
    }
}
