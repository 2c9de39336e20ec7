using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Holdfast.Reports.Tests.Documents;

/// <summary>A report read back by an XML parser: void elements are closed first, nothing else is mended.</summary>
internal static partial class ReportPage
{
    public static XElement Read(string html)
        => XDocument.Parse(Void().Replace(html["<!DOCTYPE html>\n".Length..], "<${name}${rest}/>")).Root!;

    /// <summary>All elements of a name; those inside pictures have the name space of SVG and are not among them.</summary>
    public static IEnumerable<XElement> All(this XElement root, string name) => root.Descendants(name);

    /// <summary>The words of an element, with one space where markup or line ends were.</summary>
    public static string Words(this XElement element) => Blank().Replace(string.Concat(element.DescendantNodes().OfType<XText>().Select(t => t.Value + (t.Parent!.Name.LocalName is "sup" or "sub" or "i" or "b" or "a" or "span" ? "" : " "))), " ").Trim();

    [GeneratedRegex("<(?<name>meta|br)(?<rest>(?: [^>]*)?)>", RegexOptions.None, 5000)]
    private static partial Regex Void();

    [GeneratedRegex(@"\s+", RegexOptions.None, 5000)]
    private static partial Regex Blank();
}
