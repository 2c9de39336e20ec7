using System.Collections.Immutable;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Shapes;

namespace Holdfast.Techniques.Particles;

/// <summary>Rows that close a list of particles with its mean, scatter and number: they are no particles.</summary>
internal static class ClosingRows
{
    /// <summary>The table without them. Words where every row above has a number or nothing close a list, whatever their language; elsewhere the word must be known.</summary>
    /// <param name="table">The table.</param>
    public static MeasuredTable Without(MeasuredTable table)
    {
        var end = table.Body.Length;
        while (end > 2 && Closes(table.Body, end - 1))
            end--;
        return end == table.Body.Length ? table : table with { Body = table.Body[..end], Below = [.. table.Body[end..], .. table.Below] };
    }

    private static bool Closes(ImmutableArray<GridRow> body, int at)
    {
        var first = Array.FindIndex([.. body[at].Cells], c => !c.IsBlank);
        var label = body[at].At(first);
        if (label.Kind != CellKind.Text || TableLayout.IsNumberLike(label) || !char.IsLetter(label.Text[0]))
            return false;

        // Rows that close the list may stand above this one too, so the first half tells what the column holds.
        return Footer.IsSummary(label.Text) || body[..((at + 1) / 2)].All(r => r.At(first).IsBlank || TableLayout.IsNumberLike(r.At(first)));
    }
}
