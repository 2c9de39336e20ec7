using Holdfast.Reports.Markup;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace Holdfast.Web.Parts;

/// <summary>
/// A figure or table of the reports in a page. It comes as a tree of our own whose writer encodes every word; text of a study never reaches the
/// page in any other way.
/// </summary>
public sealed class NodeView : ComponentBase
{
    /// <summary>The tree.</summary>
    [Parameter, EditorRequired]
    public Node Tree { get; set; } = default!;

    /// <inheritdoc/>
    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        builder.AddMarkupContent(0, Tree.ToHtml());
    }
}
