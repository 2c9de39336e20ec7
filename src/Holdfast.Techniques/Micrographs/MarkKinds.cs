using System.Collections.Immutable;

namespace Holdfast.Techniques.Micrographs;

/// <summary>Kinds of marks on a micrograph.</summary>
public static class MarkKinds
{
    /// <summary>The scale bar: two ends, with the length that stands beside it.</summary>
    public const string Bar = "bar";

    /// <summary>A length: two ends.</summary>
    public const string Line = "line";

    /// <summary>An outline: three points or more.</summary>
    public const string Outline = "outline";

    /// <summary>The field that is measured on, without the strip of text: two corners.</summary>
    public const string Field = "field";

    /// <summary>Cells of the field: said, "4 x 3".</summary>
    public const string Cells = "cells";

    /// <summary>A cell that is counted: a point in it.</summary>
    public const string Counted = "counted cell";

    /// <summary>Which scale holds where bar and file differ: said, with the reason: "bar: …" or "file: …".</summary>
    public const string Settled = "scale";

    /// <summary>First word of <see cref="Settled"/>: the bar holds.</summary>
    public const string ByBar = "bar";

    /// <summary>First word of <see cref="Settled"/>: the file holds.</summary>
    public const string ByFile = "file";

    /// <summary>Fewest points of each kind that is drawn.</summary>
    public static readonly ImmutableSortedDictionary<string, int> Points = ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal,
        [KeyValuePair.Create(Bar, 2), KeyValuePair.Create(Line, 2), KeyValuePair.Create(Outline, 3), KeyValuePair.Create(Field, 2), KeyValuePair.Create(Counted, 1)]);
}
