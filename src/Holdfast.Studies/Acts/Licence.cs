using System.Collections.Immutable;

namespace Holdfast.Studies.Acts;

/// <summary>A licence under which data may be given away. The text of each is at its address; which one may be chosen is for the author and the institute to say.</summary>
/// <param name="Id">Its identifier in the SPDX list: "CC-BY-4.0".</param>
/// <param name="Title">Its name.</param>
/// <param name="Address">Where its text is.</param>
/// <param name="Says">What it allows, in a few words that are no part of it.</param>
public sealed record Licence(string Id, string Title, string Address, string Says)
{
    /// <summary>Those that repositories of data ask for, the usual one first.</summary>
    public static ImmutableArray<Licence> All { get; } =
    [
        new("CC-BY-4.0", "Creative Commons Attribution 4.0 International", "https://creativecommons.org/licenses/by/4.0/", "anyone may use the data and must name whom they come from"),
        new("CC0-1.0", "Creative Commons Zero 1.0 Universal", "https://creativecommons.org/publicdomain/zero/1.0/", "anyone may use the data without a condition"),
        new("CC-BY-SA-4.0", "Creative Commons Attribution-ShareAlike 4.0 International", "https://creativecommons.org/licenses/by-sa/4.0/", "anyone may use the data, must name whom they come from, and must give what is made from them under the same licence"),
    ];

    /// <summary>The licence of an identifier, or null; case, spaces and the version's point may be left out: "cc by 4".</summary>
    /// <param name="words">As typed.</param>
    public static Licence? Named(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var plain = Plain(words);
        return plain.Length == 0 ? null : All.FirstOrDefault(l => Plain(l.Id) == plain) ?? All.FirstOrDefault(l => Plain(l.Id[..^2]) == plain) ?? All.FirstOrDefault(l => Plain(l.Id[..^4]) == plain);
    }

    private static string Plain(string words) => string.Concat(words.Where(char.IsAsciiLetterOrDigit)).ToUpperInvariant();
}
