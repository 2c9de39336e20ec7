namespace Holdfast.Reports.Tables;

/// <summary>One cell of a table. What it is stays known until it is written: a number is never a string here.</summary>
public abstract record Cell
{
    private protected Cell()
    {
    }

    /// <summary>Address behind the cell, usually its trail; null for none.</summary>
    public string? Address { get; init; }

    /// <summary>Words.</summary>
    /// <param name="text">The words.</param>
    public static implicit operator Cell(string text) => new TextCell(text);
}
