using System.Globalization;
using System.Text;
using QRCoder;

namespace Holdfast.Reports.Markup;

/// <summary>A text as a QR code (ISO/IEC 18004), drawn as one path of squares or as lines of characters.</summary>
/// <param name="Size">Modules on a side, the quiet zone included.</param>
/// <param name="Path">SVG path of the dark modules, one unit a module.</param>
/// <param name="Lines">The code in a terminal with light letters on dark: two modules above each other in one character.</param>
public sealed record SquareCode(int Size, string Path, IReadOnlyList<string> Lines)
{
    /// <summary>Draws a code.</summary>
    /// <param name="text">The text.</param>
    public static SquareCode Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        // Level M bears a smudge over a seventh of the code.
        using var data = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var (size, path, lines) = (data.ModuleMatrix.Count, new StringBuilder(), new List<string>());
        for (var y = 0; y < size; y++)
        {
            for (var x = 0; x < size; x++)
            {
                if (data.ModuleMatrix[y][x])
                    path.Append(CultureInfo.InvariantCulture, $"M{x} {y}h1v1h-1z");
            }
        }

        for (var y = 0; y < size; y += 2)
            lines.Add(string.Concat(Enumerable.Range(0, size).Select(x => (Light(x, y), Light(x, y + 1)) switch { (true, true) => '█', (true, false) => '▀', (false, true) => '▄', _ => ' ' })));
        return new(size, path.ToString(), lines);

        bool Light(int x, int y) => y >= size || !data.ModuleMatrix[y][x];
    }

    /// <summary>The code as a picture of its own.</summary>
    /// <param name="title">What it is, for who does not see it.</param>
    public string Svg(string title) => Html.Element(
        "svg",
        [("xmlns", "http://www.w3.org/2000/svg"), ("viewBox", FormattableString.Invariant($"0 0 {Size} {Size}")), ("width", "40mm"), ("height", "40mm"), ("role", "img")],
        Html.Element("title", title),
        Html.Element("rect", [("width", Size.ToString(CultureInfo.InvariantCulture)), ("height", Size.ToString(CultureInfo.InvariantCulture)), ("fill", "#FFFFFF")]),
        Html.Element("path", [("d", Path), ("fill", "#000000")])).ToXml() + "\n";
}
