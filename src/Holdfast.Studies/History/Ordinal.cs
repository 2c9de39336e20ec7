using System.Collections.Immutable;
using System.Globalization;

namespace Holdfast.Studies.History;

/// <summary>Order and text that do not depend on the machine's language: an empty sorted dictionary compares by culture unless told.</summary>
internal static class Ordinal
{
    /// <summary>No words yet, in ordinal order.</summary>
    public static readonly ImmutableSortedDictionary<string, string> Words = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);

    /// <summary>No facts yet, in ordinal order.</summary>
    public static readonly ImmutableSortedDictionary<string, Fact> Facts = ImmutableSortedDictionary.Create<string, Fact>(StringComparer.Ordinal);

    /// <summary>A whole number as digits.</summary>
    public static string Text(long number) => number.ToString(CultureInfo.InvariantCulture);
}
