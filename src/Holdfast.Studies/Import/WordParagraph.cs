using System.Collections.Immutable;

namespace Holdfast.Studies.Import;

/// <summary>A paragraph of a DOCX.</summary>
/// <param name="Text">Its words on one line, tracked insertions included and deletions left out.</param>
/// <param name="Style">Id of its style; empty for none.</param>
/// <param name="Bookmarks">Names of the bookmarks that begin in it.</param>
public sealed record WordParagraph(string Text, string Style, ImmutableArray<string> Bookmarks)
{
    /// <summary>True for a heading.</summary>
    public bool IsHeading => Style.StartsWith("Heading", StringComparison.OrdinalIgnoreCase) || Style == "Title";
}
