namespace Holdfast.Reports.Markup;

/// <summary>Characters between elements; encoded when written.</summary>
/// <param name="Value">The characters.</param>
public sealed record TextNode(string Value) : Node;
