using System.Collections.Immutable;

namespace Holdfast.Testing;

/// <summary>What became of a case.</summary>
internal sealed record IntakeOutcome(
    string Name, string Human, int Right, int Expected, ImmutableArray<string> Wrong, ImmutableArray<string> Missing, ImmutableArray<string> Open, ImmutableArray<string> Said, string Class)
{
    /// <summary>True when a careful reader would have done the same.</summary>
    public bool Meets => Class == (Human == "understands" ? "RIGHT" : "ASKED") || (AskingIsFine && Class == "ASKED");

    /// <summary>True where a careful reader understands, and a question is no fault all the same.</summary>
    public bool AskingIsFine { get; init; }

    /// <summary>Choices that a page would show by their bare names: "other-vessels".</summary>
    public ImmutableArray<string> Unworded { get; init; } = [];

    /// <summary>In one line.</summary>
    public override string ToString()
        => $"{Class,-26}{(Meets ? "ok" : "  "),-4}{Human,-12}{Right,3}/{Expected,-4}{Name,-34}{(Wrong.Length > 0 ? Wrong[0] : Meets ? "" : Open.Length > 0 ? Open[0] : Missing.Length > 0 ? $"{Missing.Length} missing: {Missing[0]} {(Said.Length > 0 ? Said[0] : "")}" : string.Join(" ", Said))}";
}
