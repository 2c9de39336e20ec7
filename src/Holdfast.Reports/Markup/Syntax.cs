namespace Holdfast.Reports.Markup;

/// <summary>How a tree is spelled.</summary>
internal enum Syntax
{
    /// <summary>HTML: void elements stand alone, all others are closed by name.</summary>
    Html,

    /// <summary>XML: an element without content closes itself.</summary>
    Xml,
}
