namespace Holdfast.Studies.History;

/// <summary>Words of the author's own were written for a section of the chapter; they stand for those before.</summary>
/// <param name="Place">Section, one of <see cref="OwnText.Places"/>.</param>
/// <param name="Text">The text; empty to write none there.</param>
public sealed record TextWritten(string Place, string Text) : Change
{
    /// <inheritdoc/>
    public override string Says() => (Text.Length == 0 ? "drop own words for " : "write own words for ") + Place;
}

/// <summary>A sentence that the program writes is said in the author's words from now on, with the study's numbers in them.</summary>
/// <param name="Was">The sentence of the program with "#" for each number: the same sentence with other numbers is the same one.</param>
/// <param name="Text">Her words, with "{#2}" for the second number of the sentence; empty to go back to the program's words.</param>
public sealed record SentenceReworded(string Was, string Text) : Change
{
    /// <inheritdoc/>
    public override string Says() => Text.Length == 0 ? "take a rewording back" : "reword a sentence";
}
