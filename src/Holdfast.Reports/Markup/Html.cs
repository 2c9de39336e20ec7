namespace Holdfast.Reports.Markup;

/// <summary>Short forms for building a tree.</summary>
public static class Html
{
    /// <summary>An element without attributes.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="content">What it holds.</param>
    public static Element Element(string name, params IEnumerable<Node> content) => new(name, [], content);

    /// <summary>An element with attributes.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="attributes">Its attributes; those with a null value are left out.</param>
    /// <param name="content">What it holds.</param>
    public static Element Element(string name, IEnumerable<(string Name, string? Value)> attributes, params IEnumerable<Node> content)
        => new(name, attributes, content);

    /// <summary>A whole page: the document type and the tree.</summary>
    /// <param name="html">The root element.</param>
    /// <exception cref="ArgumentException">The root is not "html".</exception>
    public static string Page(Element html)
    {
        ArgumentNullException.ThrowIfNull(html);
        return html.Name == "html" ? "<!DOCTYPE html>\n" + html.ToHtml() + "\n" : throw new ArgumentException("The root of a page is 'html'.", nameof(html));
    }
}
