using System.Collections.Immutable;

namespace Holdfast.Studies;

/// <summary>Words of the author's own for a section of the chapter: Markdown of paragraphs, lists, *emphasis*, and numbers by their addresses, "{q:V-12}", which are set in anew each time.</summary>
/// <param name="Place">Section of the chapter.</param>
/// <param name="Text">The text.</param>
/// <param name="Entry">Number of the entry that wrote it.</param>
/// <param name="When">When.</param>
/// <param name="Who">Who.</param>
public sealed record OwnText(string Place, string Text, long Entry, DateTimeOffset When, string Who)
{
    /// <summary>Sections of the chapter that can begin with words of the author's own, in their order.</summary>
    public static ImmutableArray<string> Places { get; } = ["glance", "question", "methods", "results", "discussion", "limits", "availability"];

    /// <summary>Longest text, in signs.</summary>
    public const int Longest = 100_000;
}
