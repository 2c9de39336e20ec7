using System.Globalization;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Acts;

/// <summary>What undoing an entry takes back: a large import is asked about first.</summary>
public static class TakenBack
{
    /// <summary>Up to so many samples and readings together go back without a question.</summary>
    public const int WithoutAsking = 20;

    /// <summary>True when the entry brought more than <see cref="WithoutAsking"/> samples or readings.</summary>
    /// <param name="entry">The entry, or null.</param>
    public static bool IsLarge(Entry? entry) => entry?.Change is TakenIn taken && (taken.Samples.Length > WithoutAsking || taken.Readings.Length > WithoutAsking);

    /// <summary>What it brought, in words: "63 samples and 214 readings"; "" for an entry that is no import.</summary>
    /// <param name="entry">The entry.</param>
    public static string Words(Entry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        if (entry.Change is not TakenIn taken)
            return "";
        string[] all = [.. new[] { Count(taken.Samples.Length, "sample"), Count(taken.Readings.Length, "reading"), Count(taken.Claims.Length, "claim"), Count(taken.Margins.Length, "margin") }.OfType<string>()];
        return all.Length < 2 ? string.Concat(all) : string.Join(", ", all[..^1]) + " and " + all[^1];
    }

    private static string? Count(int count, string what)
        => count == 0 ? null : string.Create(CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? "" : "s")}");
}
