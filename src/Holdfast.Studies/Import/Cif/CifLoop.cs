using System.Collections.Immutable;

namespace Holdfast.Studies.Import.Cif;

/// <summary>A table of a CIF: what follows "loop_".</summary>
/// <param name="Tags">Names of the columns in lower case, with their underline.</param>
/// <param name="Values">All cells row by row; their number divides by that of the columns.</param>
/// <param name="Line">Line of "loop_", from 1.</param>
public sealed record CifLoop(ImmutableArray<string> Tags, ImmutableArray<CifValue> Values, int Line)
{
    /// <summary>Number of rows.</summary>
    public int Rows => Values.Length / Tags.Length;

    /// <summary>Cells of one column, or null when the table does not have it.</summary>
    /// <param name="tag">Name, in any case.</param>
    public ImmutableArray<CifValue>? Column(string tag)
    {
        var at = Tags.IndexOf(tag, StringComparer.OrdinalIgnoreCase);
        return at < 0 ? null : [.. Enumerable.Range(0, Rows).Select(row => Values[row * Tags.Length + at])];
    }
}
