using System.Text;

namespace Holdfast.Reports.Markup;

/// <summary>Writes a tree. Every text and every attribute value is encoded here and nowhere else.</summary>
internal static class NodeWriter
{
    private static readonly HashSet<string> Void = new(StringComparer.Ordinal)
    {
        "area", "br", "col", "hr", "img", "input", "link", "meta", "source", "track", "wbr",
    };

    /// <summary>The tree as text.</summary>
    public static string Write(Node node, Syntax syntax)
    {
        var to = new StringBuilder();
        Write(node, syntax, to);
        return to.ToString();
    }

    private static void Write(Node node, Syntax syntax, StringBuilder to)
    {
        switch (node)
        {
            case TextNode text:
                Encode(text.Value, quoted: false, to);
                break;
            case Stylesheet sheet:
                to.Append("<style>").Append(sheet.Css).Append("</style>");
                break;
            case Script script:
                to.Append("<script>").Append(script.Code).Append("</script>");
                break;
            case Element element:
                Write(element, syntax, to);
                break;
        }
    }

    private static void Write(Element element, Syntax syntax, StringBuilder to)
    {
        to.Append('<').Append(element.Name);
        foreach (var (name, value) in element.Attributes)
        {
            to.Append(' ').Append(name).Append("=\"");
            Encode(value, quoted: true, to);
            to.Append('"');
        }

        var isVoid = syntax == Syntax.Html && Void.Contains(element.Name);
        if (syntax == Syntax.Xml && element.Content.Count == 0)
        {
            to.Append("/>");
            return;
        }

        to.Append('>');
        if (isVoid)
            return;
        foreach (var child in element.Content)
            Write(child, syntax, to);
        to.Append("</").Append(element.Name).Append('>');
    }

    private static void Encode(string value, bool quoted, StringBuilder to)
    {
        foreach (var c in value)
        {
            switch (c)
            {
                case '&':
                    to.Append("&amp;");
                    break;
                case '<':
                    to.Append("&lt;");
                    break;
                case '>':
                    to.Append("&gt;");
                    break;
                case '"' when quoted:
                    to.Append("&quot;");
                    break;
                case '\t' or '\n' or '\r':
                    to.Append(c);
                    break;
                case < ' ' or '\uFFFE' or '\uFFFF':
                    // Not allowed in XML at all; shown as the mark for "no such character".
                    to.Append('\uFFFD');
                    break;
                default:
                    to.Append(c);
                    break;
            }
        }
    }
}
