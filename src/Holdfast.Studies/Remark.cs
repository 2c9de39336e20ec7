using System.Globalization;

namespace Holdfast.Studies;

/// <summary>A remark of a reader, pinned to one place of what was sent to review, with what became of it.</summary>
/// <param name="Pin">To what it is pinned, in which words.</param>
/// <param name="By">Who made it.</param>
/// <param name="On">Number of the entry that the reader had before her.</param>
/// <param name="Entry">Number of the entry that took it in.</param>
/// <param name="Place">Its place among the remarks of that entry, from 1.</param>
public sealed record Remark(PinnedRemark Pin, string By, long On, long Entry, int Place)
{
    /// <summary>Its address, which follows from the entry that took it in: "RM-12.3".</summary>
    public string Id => string.Create(CultureInfo.InvariantCulture, $"RM-{Entry}.{Place}");

    /// <summary>What was answered last; null while it is open.</summary>
    public RemarkAnswer? Answer { get; init; }

    /// <summary>When it was closed; null while it stands.</summary>
    public DateTimeOffset? Closed { get; init; }
}

/// <summary>What a reader wrote, and to what she pinned it.</summary>
/// <param name="Kind">"number", "figure", "claim" or "sentence".</param>
/// <param name="Target">Address of the place: "claim-equilibrium-120", "main-numbers/capacity, ISO-298/Value (interval)".</param>
/// <param name="Quote">The words or the number as she saw them.</param>
/// <param name="Words">The remark.</param>
/// <param name="Made">When she wrote it, by her computer's clock.</param>
public sealed record PinnedRemark(string Kind, string Target, string Quote, string Words, DateTimeOffset Made);

/// <summary>An answer to a remark.</summary>
/// <param name="Words">What is answered.</param>
/// <param name="Who">Who.</param>
/// <param name="When">When.</param>
public sealed record RemarkAnswer(string Words, string Who, DateTimeOffset When);
