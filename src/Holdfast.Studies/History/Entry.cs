using System.Collections.Immutable;

namespace Holdfast.Studies.History;

/// <summary>One line of the daybook: what was done, by whom, when, chained to the line before.</summary>
/// <param name="Number">Its number, from 1; order goes by it, not by the clock.</param>
/// <param name="When">When, with the offset from UTC.</param>
/// <param name="Who">Who.</param>
/// <param name="Change">What was done.</param>
/// <param name="Bytes">Its canonical bytes, exactly as kept.</param>
/// <param name="Hash">SHA-256 of the hash before it followed by <paramref name="Bytes"/>, lower-case hexadecimal.</param>
public sealed record Entry(long Number, DateTimeOffset When, string Who, Change Change, ImmutableArray<byte> Bytes, string Hash);
