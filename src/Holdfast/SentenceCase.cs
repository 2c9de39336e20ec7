namespace Holdfast;

/// <summary>Words as a sentence begins with them.</summary>
public static class SentenceCase
{
    /// <summary>The words with a capital in front: "contact time" becomes "Contact time". Symbols keep their letters: "pH", "dV/dlog d".</summary>
    /// <param name="words">Any words; none stay none.</param>
    public static string Of(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        return words.Length > 1 && char.IsLower(words[0]) && !char.IsUpper(words[1]) ? char.ToUpperInvariant(words[0]) + words[1..] : words;
    }
}
