using System.Collections.Immutable;

namespace Holdfast.Studies.Import;

/// <summary>A decision that a file needs before it can be taken in. Nothing is guessed in its place.</summary>
/// <param name="Id">What <see cref="Answers"/> name it by: "decimal", "unit:C0", "match:b-9".</param>
/// <param name="Code">One of <see cref="Codes"/>.</param>
/// <param name="Text">The question, in at most about 25 words.</param>
/// <param name="Choices">What can be answered; others where the text says so.</param>
/// <param name="Concerns">Rows, columns or samples it is about.</param>
/// <param name="Answer">The answer given or remembered; null while it is open.</param>
public sealed record Question(string Id, string Code, string Text, ImmutableArray<string> Choices, ImmutableArray<string> Concerns, string? Answer)
{
    /// <summary>True while nothing was answered: the file cannot be taken in.</summary>
    public bool IsOpen => Answer is null;
}
