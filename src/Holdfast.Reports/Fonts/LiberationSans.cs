namespace Holdfast.Reports.Fonts;

/// <summary>The typeface of figures, in its four faces, inside this assembly (SIL Open Font Licence 1.1, see LICENSE-OFL.txt beside it).</summary>
public static class LiberationSans
{
    /// <summary>Names for a page, best first; the second and third have the same letter widths.</summary>
    public const string Family = "Liberation Sans, Arial, Helvetica, sans-serif";

    private static readonly Lazy<Typeface> RegularFace = new(() => Read("Regular"));
    private static readonly Lazy<Typeface> ItalicFace = new(() => Read("Italic"));
    private static readonly Lazy<Typeface> BoldFace = new(() => Read("Bold"));
    private static readonly Lazy<Typeface> BoldItalicFace = new(() => Read("BoldItalic"));

    /// <summary>The face of a style.</summary>
    /// <param name="bold">Bold or not.</param>
    /// <param name="italic">Slanted or not.</param>
    public static Typeface Face(bool bold, bool italic) => (bold, italic) switch
    {
        (false, false) => RegularFace.Value,
        (false, true) => ItalicFace.Value,
        (true, false) => BoldFace.Value,
        (true, true) => BoldItalicFace.Value,
    };

    /// <summary>The style rule that brings a face to a page under the first name of <see cref="Family"/>.</summary>
    /// <param name="bold">Bold or not.</param>
    /// <param name="italic">Slanted or not.</param>
    /// <param name="sources">Where a browser finds it, in the words of a style sheet: "url(…) format(\"truetype\")".</param>
    public static string Rule(bool bold, bool italic, string sources)
        => $"@font-face{{font-family:\"Liberation Sans\";font-weight:{(bold ? "700" : "400")};font-style:{(italic ? "italic" : "normal")};src:{sources}}}\n";

    /// <summary>The licence text.</summary>
    public static string Licence()
    {
        using var reader = new StreamReader(Open("LICENSE-OFL.txt"));
        return reader.ReadToEnd();
    }

    private static Typeface Read(string style)
    {
        using var stream = Open($"LiberationSans-{style}.ttf");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return new(bytes);
    }

    private static Stream Open(string file)
        => typeof(LiberationSans).Assembly.GetManifestResourceStream("Holdfast.Reports.Fonts." + file)
            ?? throw new InvalidOperationException($"The assembly lacks {file}.");
}
