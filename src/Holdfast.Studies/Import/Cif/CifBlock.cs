using System.Collections.Immutable;

namespace Holdfast.Studies.Import.Cif;

/// <summary>A data block of a CIF: everything after "data_name", items nobody here knows included.</summary>
/// <param name="Name">Name as written, without "data_".</param>
/// <param name="Line">Line of its heading, from 1.</param>
/// <param name="Items">Single values by tag; tags ignore case.</param>
/// <param name="Loops">Tables, in the order of the file.</param>
public sealed record CifBlock(string Name, int Line, ImmutableDictionary<string, CifValue> Items, ImmutableArray<CifLoop> Loops)
{
    /// <summary>The first of some tags that says something: its words, or null. A table of one row counts as single values.</summary>
    /// <param name="tags">Names of one meaning, the preferred first.</param>
    public CifValue? Said(params ReadOnlySpan<string> tags)
    {
        foreach (var tag in tags)
        {
            if (Items.TryGetValue(tag, out var value) && value.IsSaid)
                return value;
            if (Table(tag) is { Rows: 1 } row && row.Column(tag) is [{ IsSaid: true } only])
                return only;
        }

        return null;
    }

    /// <summary>The table that has one of some columns, or null.</summary>
    /// <param name="tags">Names of one meaning, the preferred first.</param>
    public CifLoop? Table(params ReadOnlySpan<string> tags)
    {
        foreach (var tag in tags)
        {
            foreach (var loop in Loops)
            {
                if (loop.Tags.Contains(tag, StringComparer.OrdinalIgnoreCase))
                    return loop;
            }
        }

        return null;
    }
}
