using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents.Pdf;

/// <summary>An equation set in a line of text, from the tree of <see cref="FormulaMath"/>.</summary>
internal static class PdfMath
{
    // Height of the bar of a fraction, the middle of a minus sign; and the room around signs, bars and roots, as shares of the size.
    private const double Axis = 0.27;
    private const double Around = 0.22;
    private const double Clear = 0.14;
    private const double Smaller = 0.85;
    private const double Index = 0.7;

    /// <summary>The equation.</summary>
    /// <param name="math">The "math" element.</param>
    /// <param name="size">Size of the text, in pt.</param>
    public static Atom Of(Element math, double size) => Row(math.Content, size);

    private static Built Row(IEnumerable<Node> nodes, double size)
    {
        var (parts, x) = (new List<(Atom, double, double)>(), 0.0);
        foreach (var element in nodes.OfType<Element>())
        {
            var space = element.Name == "mo" && element.Words is "=" or "+" or "−" ? Around * size : 0;
            var atom = Part(element, size);
            parts.Add((atom, x + space, 0));
            x += atom.Width + (2 * space);
        }

        return new(parts, [], x);
    }

    private static Atom Part(Element element, double size)
    {
        var inner = element.Content;
        return element.Name switch
        {
            "mrow" => Row(inner, size),
            "mfrac" => Fraction(Row([inner[0]], Smaller * size), Row([inner[1]], Smaller * size), size),
            "msub" => Shifted(Row([inner[0]], size), Row([inner[1]], Index * size), 0.22 * size),
            "msup" => Shifted(Row([inner[0]], size), Row([inner[1]], Index * size), -Row([inner[0]], size).Above + (0.35 * size)),
            "msqrt" => Root(Row(inner, size), size),
            "mi" or "mn" or "mo" => new Letters(element.Words, new(size, Italic: element.Name == "mi" && element.Attribute("mathvariant") != "normal" && element.Words.All(char.IsLetter))),
            _ => throw new ArgumentOutOfRangeException(nameof(element), element.Name, "No such part of an equation."),
        };
    }

    private static Built Fraction(Built above, Built below, double size)
    {
        var width = Math.Max(above.Width, below.Width) + (Clear * size);
        var axis = -Axis * size;
        return new(
            [(above, (width - above.Width) / 2, axis - (Clear * size) - above.Below), (below, (width - below.Width) / 2, axis + (Clear * size) + below.Above)],
            [(0, axis, width, axis)], width);
    }

    private static Built Shifted(Built at, Built index, double drop)
    {
        // A tall exponent stands with its foot where a low one does.
        var y = drop < 0 ? Math.Min(drop, drop - (index.Below - (0.22 * index.Parts.Select(p => p.Atom.Below).DefaultIfEmpty(0).Min()))) : drop;
        return new([(at, 0, 0), (index, at.Width + 0.3, y)], [], at.Width + index.Width + 0.6);
    }

    private static Built Root(Built of, double size)
    {
        var (left, top) = (0.55 * size, -of.Above - (Clear * size));
        return new([(of, left, 0)], [(0, -0.3 * size, 0.2 * size, of.Below), (0.2 * size, of.Below, left - 1, top), (left - 1, top, left + of.Width, top)], left + of.Width + 1);
    }
}
