using System.Collections.Immutable;

namespace Holdfast.Studies.Import;

/// <summary>A table as a file holds it, before anything is understood.</summary>
/// <param name="Sheet">Sheet of a workbook, or null for a text file.</param>
/// <param name="Rows">Rows with at least their numbers; blank ones included.</param>
public sealed record Grid(string? Sheet, ImmutableArray<GridRow> Rows)
{
    /// <summary>True for a sheet that the workbook hides.</summary>
    public bool IsHidden { get; init; }

    /// <summary>How the text was encoded: "UTF-8", "UTF-16", "Windows-1252"; null for a workbook.</summary>
    public string? Encoding { get; init; }

    /// <summary>What separates the cells: ";", ",", "|", "tab", "spaces"; null for a workbook.</summary>
    public string? Separator { get; init; }

    /// <summary>The first raw lines, for the preview.</summary>
    public ImmutableArray<string> RawLines { get; init; } = [];

    /// <summary>What was noticed while reading: an open quotation mark, merged cells, formulas.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];
}

/// <summary>One row.</summary>
/// <param name="Number">Line of the text file, or row of the sheet, as a person counts.</param>
/// <param name="Cells">Its cells.</param>
public sealed record GridRow(int Number, ImmutableArray<Cell> Cells)
{
    /// <summary>True when no cell holds anything.</summary>
    public bool IsBlank => Cells.All(c => c.IsBlank) || IsRule;

    // A line of dashes is drawn, not written.
    private bool IsRule => Cells.All(c => c.IsBlank || (c.Kind == CellKind.Text && c.Text.Length >= 3 && c.Text.AsSpan().IndexOfAnyExcept(Drawn) < 0));

    private static readonly System.Buffers.SearchValues<char> Drawn = System.Buffers.SearchValues.Create("-=_+| ");

    /// <summary>How many cells hold something.</summary>
    public int Filled
    {
        get
        {
            var filled = 0;
            foreach (var cell in Cells)
                filled += cell.IsBlank ? 0 : 1;
            return filled;
        }
    }

    /// <summary>The cell at a place, blank past the end.</summary>
    /// <param name="index">Column, from 0.</param>
    public Cell At(int index) => index < Cells.Length ? Cells[index] : default;
}

/// <summary>One cell.</summary>
/// <param name="Content">Its text, or null for an empty one.</param>
/// <param name="Kind">What the file says that it is.</param>
public readonly record struct Cell(string? Content, CellKind Kind = CellKind.Text)
{
    /// <summary>Its text without spaces at the ends; empty for an empty one.</summary>
    public string Text => Content?.Trim() ?? "";

    /// <summary>True when it holds nothing but spaces.</summary>
    public bool IsBlank => string.IsNullOrWhiteSpace(Content);
}

/// <summary>What a file says that a cell is.</summary>
public enum CellKind
{
    /// <summary>Text, to be understood.</summary>
    Text,

    /// <summary>A number, written with a point whatever the file's language.</summary>
    Number,

    /// <summary>A date, written as ISO 8601.</summary>
    Date,

    /// <summary>An error value of a worksheet.</summary>
    Error,

    /// <summary>A formula whose result the file does not hold.</summary>
    FormulaWithoutValue,
}
