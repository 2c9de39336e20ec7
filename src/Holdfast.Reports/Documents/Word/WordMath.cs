using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Math;
using Holdfast.Reports.Markup;
using Holdfast.Reports.Office;

namespace Holdfast.Reports.Documents.Word;

/// <summary>An equation as word processors hold their own (ECMA-376 part 1, 22.1), from the tree of <see cref="FormulaMath"/>.</summary>
internal static class WordMath
{
    /// <summary>The equation in a line of text.</summary>
    /// <param name="math">The "math" element.</param>
    public static OfficeMath Of(Element math) => new(Parts(math.Content));

    private static IEnumerable<OpenXmlElement> Parts(IEnumerable<Node> nodes) => nodes.OfType<Element>().SelectMany(Part);

    private static IEnumerable<OpenXmlElement> Part(Element element)
    {
        var inner = element.Content;
        return element.Name switch
        {
            "mrow" => Parts(inner),
            "mfrac" => [new Fraction(new Numerator(Parts([inner[0]])), new Denominator(Parts([inner[1]])))],
            "msub" => [new Subscript(new Base(Parts([inner[0]])), new SubArgument(Parts([inner[1]])))],
            "msup" => [new Superscript(new Base(Parts([inner[0]])), new SuperArgument(Parts([inner[1]])))],
            "msqrt" => [new Radical(new RadicalProperties(new HideDegree { Val = BooleanValues.One }), new Degree(), new Base(Parts(inner)))],
            "mi" or "mn" or "mo" => [Run(element)],
            _ => throw new ArgumentOutOfRangeException(nameof(element), element.Name, "No such part of an equation."),
        };
    }

    private static Run Run(Element element)
    {
        var run = new Run();
        if (element.Attribute("mathvariant") == "normal" || element.Name == "mn")
            run.Append(new RunProperties(new Style { Val = StyleValues.Plain }));
        run.Append(new Text(OfficeZip.Sound(element.Words)));
        return run;
    }
}
