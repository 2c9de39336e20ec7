using Holdfast.Reports.Figures;

namespace Holdfast.Reports.Markup;

/// <summary>Labels as markup: italics, lowered and raised runs by their own elements.</summary>
public static class RichTextNodes
{
    /// <summary>The nodes of a label.</summary>
    /// <param name="label">The label.</param>
    public static IReadOnlyList<Node> Of(RichText label)
    {
        ArgumentNullException.ThrowIfNull(label);
        return label.Runs.Select(Of).ToArray();
    }

    private static Node Of(RichRun run)
    {
        Node inner = run.Italic ? Html.Element("i", run.Text) : run.Text;
        return run.Shift switch
        {
            Shift.Sub => Html.Element("sub", inner),
            Shift.Super => Html.Element("sup", inner),
            _ => inner,
        };
    }
}
