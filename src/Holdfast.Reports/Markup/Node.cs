namespace Holdfast.Reports.Markup;

/// <summary>A piece of a page: an element, a text, or a style sheet of ours. There is no raw markup, so nothing a user types can become markup.</summary>
public abstract record Node
{
    private protected Node()
    {
    }

    /// <summary>A string is a text node; it is encoded when written.</summary>
    /// <param name="text">The characters.</param>
    public static implicit operator Node(string text) => new TextNode(text);

    /// <summary>Its words, one after the other, without markup.</summary>
    public string Words => this switch
    {
        TextNode text => text.Value,
        Element element => string.Concat(element.Content.Select(c => c.Words)),
        _ => "",
    };

    /// <summary>This node as HTML text.</summary>
    public string ToHtml() => NodeWriter.Write(this, Syntax.Html);

    /// <summary>This node as XML text, as a file of SVG needs it.</summary>
    public string ToXml() => NodeWriter.Write(this, Syntax.Xml);
}
