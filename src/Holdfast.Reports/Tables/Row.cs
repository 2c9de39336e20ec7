namespace Holdfast.Reports.Tables;

/// <summary>One row.</summary>
/// <param name="Cells">A cell for each column.</param>
public sealed record Row(IReadOnlyList<Cell> Cells)
{
    /// <summary>True when the reading was struck: still legible, with a line through.</summary>
    public bool Struck { get; init; }

    /// <summary>True when the row is in doubt, as a note of its table says: shown in grey with a dagger behind its name.</summary>
    public bool Doubtful { get; init; }

    /// <summary>A row of cells.</summary>
    /// <param name="cells">A cell for each column.</param>
    public static Row Of(params IEnumerable<Cell> cells) => new(cells.ToArray());
}
