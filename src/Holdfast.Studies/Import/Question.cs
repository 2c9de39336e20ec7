using System.Collections.Immutable;

namespace Holdfast.Studies.Import;

/// <summary>A decision about a file. Where a plausible reading may be wrong it must be answered; where one reading is far likelier it is assumed, shown, and can be changed.</summary>
/// <param name="Id">What <see cref="Answers"/> name it by: "decimal", "unit:C0", "match:b-9".</param>
/// <param name="Code">One of <see cref="Codes"/>.</param>
/// <param name="Text">The question, in at most about 25 words.</param>
/// <param name="Choices">What can be answered, the likeliest first; others where the text says so.</param>
/// <param name="Concerns">Rows, columns or samples it is about.</param>
/// <param name="Answer">The answer given or remembered; null while there is none.</param>
public sealed record Question(string Id, string Code, string Text, ImmutableArray<string> Choices, ImmutableArray<string> Concerns, string? Answer)
{
    /// <summary>The reading that is used while nobody answers; null where an answer is needed.</summary>
    public string? Assumed { get; init; }

    /// <summary>What follows from each choice, in the order of <see cref="Choices"/>: "× 20: 29.7 mg/L"; empty where nothing can be said.</summary>
    public ImmutableArray<string> Consequences { get; init; } = [];

    /// <summary>True when the answer was given for an earlier file of this layout, and not now.</summary>
    public bool IsRemembered { get; init; }

    /// <summary>True while an answer is needed: the file cannot be taken in.</summary>
    public bool IsOpen => Answer is null && Assumed is null;
}
