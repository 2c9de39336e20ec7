using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents.Latex;

/// <summary>An equation in a line of text, from the tree of <see cref="FormulaMath"/>.</summary>
internal static class LatexMath
{
    /// <summary>The equation between its dollars.</summary>
    /// <param name="math">The "math" element.</param>
    public static string Of(Element math) => $"${Parts(math.Content, @"\dfrac")}$";

    // A fraction in an index or exponent is set small.
    private static string Parts(IEnumerable<Node> nodes, string fraction) => string.Concat(nodes.OfType<Element>().Select(e => Part(e, fraction)));

    private static string Part(Element element, string fraction)
    {
        var inner = element.Content;
        return element.Name switch
        {
            "mrow" => Parts(inner, fraction),
            "mfrac" => $@"{fraction}{{{Parts([inner[0]], fraction)}}}{{{Parts([inner[1]], fraction)}}}",
            "msub" => $"{{{Parts([inner[0]], fraction)}}}_{{{Parts([inner[1]], @"\frac")}}}",
            "msup" => $"{{{Parts([inner[0]], fraction)}}}^{{{Parts([inner[1]], @"\frac")}}}",
            "msqrt" => $@"\sqrt{{{Parts(inner, fraction)}}}",
            // Names of functions and words of an index are upright.
            "mi" when element.Attribute("mathvariant") == "normal" => $@"\mathop{{}}\!\mathrm{{{LatexLetters.Math(element.Words)}}}",
            "mi" or "mn" or "mo" => LatexLetters.Math(element.Words),
            _ => throw new ArgumentOutOfRangeException(nameof(element), element.Name, "No such part of an equation."),
        };
    }
}
