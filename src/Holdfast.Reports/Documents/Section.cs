using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Documents;

/// <summary>One section of a report.</summary>
/// <param name="Id">Its address in the page.</param>
/// <param name="Title">Its heading.</param>
/// <param name="Content">What it holds.</param>
internal sealed record Section(string Id, string Title, IReadOnlyList<Node> Content);
