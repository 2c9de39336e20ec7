using Holdfast.Studies;

namespace Holdfast.Web.Live;

/// <summary>One cell that was typed over.</summary>
/// <param name="Sample">Code of the sample.</param>
/// <param name="Property">Which fact.</param>
/// <param name="Seen">What the cell showed when the typing began.</param>
/// <param name="Text">What was typed.</param>
public sealed record FactEdit(string Sample, Property Property, string Seen, string Text);

/// <summary>How an edit went.</summary>
/// <param name="Edit">The edit.</param>
/// <param name="Theirs">What stands there now, when somebody else changed it meanwhile; otherwise null.</param>
/// <param name="Trouble">What was in the way; null when it is kept.</param>
public sealed record EditOutcome(FactEdit Edit, string? Theirs, string? Trouble)
{
    /// <summary>True when it is kept.</summary>
    public bool IsKept => Trouble is null;

    /// <summary>True when only the reason is missing.</summary>
    public bool AsksReason { get; init; }

    /// <summary>True when it looks unlikely and is kept once its author says that it is so.</summary>
    public bool AsksWhetherSure { get; init; }
}

/// <summary>How a block of edits went.</summary>
/// <param name="Kept">How many cells were kept, as one entry; 0 for none.</param>
/// <param name="Refused">Cells that cannot be kept, each with what is in the way.</param>
/// <param name="Trouble">What was in the way of the whole block; null for nothing.</param>
public sealed record BlockOutcome(int Kept, IReadOnlyList<EditOutcome> Refused, string? Trouble)
{
    /// <summary>True when only the reason is missing.</summary>
    public bool AsksReason { get; init; }

    /// <summary>True when values look unlikely and are kept once their author says that they are so.</summary>
    public bool AsksWhetherSure { get; init; }
}
