namespace Holdfast.Reports.Figures.Drawing;

/// <summary>Items that are one thing to a reader: a series, or one mark with its error bars.</summary>
/// <param name="Kind">Series or mark.</param>
/// <param name="Spoken">What it is, in words.</param>
/// <param name="Items">Its items, back to front.</param>
public sealed record SheetGroup(GroupKind Kind, string Spoken, IReadOnlyList<SheetItem> Items) : SheetItem
{
    /// <summary>The vessel or quantity a mark stands for; null when it has none.</summary>
    public string? Id { get; init; }

    /// <summary>Centre of a mark, in pt from the top left.</summary>
    public (double X, double Y) Centre { get; init; }
}
