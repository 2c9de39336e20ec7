using System.Text;
using System.Text.RegularExpressions;

namespace Holdfast.Studies.Import;

/// <summary>Text of unknown encoding: byte order mark first, then the pattern of zero bytes, then whether it is flawless UTF-8.</summary>
internal static partial class TextDecoding
{
    private const int Looked = 64 << 10;

    /// <summary>The text and the name of its encoding, or null when the bytes are no text.</summary>
    /// <param name="bytes">The whole file.</param>
    public static (string Text, string Encoding)? Decode(byte[] bytes)
    {
        var (encoding, name, skip) = Guess(bytes);
        string text;
        try
        {
            text = encoding.GetString(bytes, skip, bytes.Length - skip);
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
        return LooksLikeText(text) ? (text, name) : null;
    }

    private static (Encoding Encoding, string Name, int Skip) Guess(byte[] b)
    {
        if (b is [0xEF, 0xBB, 0xBF, ..])
            return (Encoding.UTF8, "UTF-8", 3);
        if (b is [0xFF, 0xFE, 0, 0, ..])
            return (Encoding.UTF32, "UTF-32", 4);
        if (b is [0xFF, 0xFE, ..])
            return (Encoding.Unicode, "UTF-16", 2);
        if (b is [0xFE, 0xFF, ..])
            return (Encoding.BigEndianUnicode, "UTF-16", 2);
        var head = b.AsSpan(0, Math.Min(b.Length, Looked) & ~1);
        int even = 0, odd = 0;
        for (var i = 0; i < head.Length; i += 2)
        {
            even += head[i] == 0 ? 1 : 0;
            odd += head[i + 1] == 0 ? 1 : 0;
        }
        // Latin letters in UTF-16 have every second byte zero; plain text has none.
        if (head.Length >= 4 && odd > head.Length / 4 && even <= head.Length / 100)
            return (Encoding.Unicode, "UTF-16", 0);
        if (head.Length >= 4 && even > head.Length / 4 && odd <= head.Length / 100)
            return (Encoding.BigEndianUnicode, "UTF-16", 0);
        if (System.Text.Unicode.Utf8.IsValid(b))
            return (Encoding.UTF8, "UTF-8", 0);
        var western = CodePagesEncodingProvider.Instance.GetEncoding(1252)!;
        return Eastern().IsMatch(western.GetString(b, 0, Math.Min(b.Length, Looked)))
            ? (CodePagesEncodingProvider.Instance.GetEncoding(1250)!, "Windows-1250", 0)
            : (western, "Windows-1252", 0);
    }

    // Letters of central Europe as the western page shows them, where no western word has them: "stê¿enie", "objêtoœæ", "Œrednia", "ca³kowity", "Ÿród³o". The only letters
    // that follow œ in French are d, i, n, s, t and u; ¿ begins a Spanish question; ³ behind m is a cubic metre.
    [GeneratedRegex(@"[\p{L}-[mM]][¹³¿]\p{Ll}|[^\p{L}]£\p{Ll}|[Œœ][æcklmprw]|[^\p{L}]Ÿ\p{Ll}", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Eastern();

    // A file that an instrument writes has no zero characters and hardly any control characters.
    private static bool LooksLikeText(string text)
    {
        var odd = 0;
        var looked = Math.Min(text.Length, Looked);
        for (var i = 0; i < looked; i++)
        {
            var c = text[i];
            if (c == '\0')
                return false;
            odd += (char.IsControl(c) && c is not ('\t' or '\r' or '\n' or '\f')) || c == '\uFFFD' ? 1 : 0;
        }
        return odd <= looked / 100;
    }
}
