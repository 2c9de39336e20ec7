using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Holdfast.Reports.Documents.Pdf;

/// <summary>
/// The same document gives the same bytes. The library draws tags of typefaces, names and dates of links and ids of files anew each time; each is put in order in its own
/// place, so that no address in the file moves. Streams are compressed and hold none of these words.
/// </summary>
internal static partial class PdfBytes
{
    /// <summary>The bytes with these words settled.</summary>
    /// <param name="pdf">A file as the library wrote it.</param>
    public static byte[] Settled(byte[] pdf)
    {
        var text = Encoding.Latin1.GetString(pdf);
        var tags = new Dictionary<string, string>(StringComparer.Ordinal);
        text = Tag().Replace(text, m =>
        {
            if (!tags.TryGetValue(m.Groups["tag"].Value, out var tag))
                tags[m.Groups["tag"].Value] = tag = string.Concat(Enumerable.Range(0, 6).Select(i => (char)('A' + (tags.Count / (int)Math.Pow(26, 5 - i) % 26))));
            return "/" + tag + "+";
        });
        text = Uuid().Replace(text, "uuid:00000000-0000-0000-0000-000000000000");
        var names = 0;
        text = Name().Replace(text, _ => string.Create(CultureInfo.InvariantCulture, $"/NM({++names:D36})"));
        text = Made().Replace(text, string.Create(CultureInfo.InvariantCulture, $"/M(D:{Studies.Package.SettledZip.Settling:yyyyMMddHHmmss}+00'00')"));
        text = Id().Replace(text, m => m.Value.Replace(m.Groups["first"].Value, new string('0', 32), StringComparison.Ordinal).Replace(m.Groups["second"].Value, new string('0', 32), StringComparison.Ordinal));
        // The id of a file follows from what is in it (ISO 32000-1, 14.4).
        var id = Convert.ToHexString(SHA256.HashData(Encoding.Latin1.GetBytes(text)))[..32];
        return Encoding.Latin1.GetBytes(Id().Replace(text, string.Create(CultureInfo.InvariantCulture, $"/ID[<{id}><{id}>]")));
    }

    [GeneratedRegex(@"/(?<tag>[A-Z]{6})\+", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Tag();

    [GeneratedRegex(@"uuid:[0-9a-f-]{36}", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Uuid();

    [GeneratedRegex(@"/NM\([0-9a-f-]{36}\)", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Name();

    [GeneratedRegex(@"/M\(D:\d{14}[+-]\d\d'\d\d'\)", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Made();

    [GeneratedRegex(@"/ID\[<(?<first>[0-9A-F]{32})><(?<second>[0-9A-F]{32})>\]", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Id();
}
