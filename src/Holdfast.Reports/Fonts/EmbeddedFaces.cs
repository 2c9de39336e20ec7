using System.Text;

namespace Holdfast.Reports.Fonts;

/// <summary>
/// The typeface inside a document, cut down to the letters it shows: labels then fill the room that was measured for them on every computer, and text stays
/// text.
/// </summary>
internal static class EmbeddedFaces
{
    /// <summary>Style rules that bring the faces, each as a data address; the name is the first of <see cref="LiberationSans.Family"/>.</summary>
    /// <param name="texts">Each text with the style it is set in.</param>
    public static string Css(IEnumerable<(bool Bold, bool Italic, string Text)> texts)
    {
        var css = new StringBuilder();
        foreach (var face in texts.GroupBy(t => (t.Bold, t.Italic), t => t.Text).OrderBy(f => f.Key))
        {
            var file = TypefaceSubset.Of(LiberationSans.Face(face.Key.Bold, face.Key.Italic), face.SelectMany(t => t.EnumerateRunes()).ToHashSet());
            css.Append(LiberationSans.Rule(face.Key.Bold, face.Key.Italic, $"url(data:font/ttf;base64,{Convert.ToBase64String(file)}) format(\"truetype\")"));
        }

        return css.ToString();
    }
}
