namespace Holdfast.Reports.Workbooks;

/// <summary>A cell of a workbook. What a person typed is always words, whatever it begins with: only <see cref="FormulaCell"/> is worked out, and its text is never anybody's.</summary>
internal abstract record BookCell
{
    /// <summary>Words.</summary>
    /// <param name="text">The words.</param>
    public static BookCell Of(string text) => new WordsCell(text);

    /// <summary>A number, or nothing where there is none.</summary>
    /// <param name="value">The number.</param>
    /// <param name="decimals">Decimal places shown; null to leave that to the program.</param>
    public static BookCell Of(double? value, int? decimals = null) => value is { } known && double.IsFinite(known) ? new FigureCell(known, decimals) : new WordsCell("");
}

/// <summary>Words.</summary>
/// <param name="Text">The words.</param>
internal sealed record WordsCell(string Text) : BookCell;

/// <summary>A number.</summary>
/// <param name="Value">The number; finite.</param>
/// <param name="Decimals">Decimal places shown; null to leave that to the program.</param>
internal sealed record FigureCell(double Value, int? Decimals) : BookCell;

/// <summary>A formula with what it gives, so that the number stands there before anything is worked out.</summary>
/// <param name="Formula">The formula, without the sign of equality: cell addresses, names and signs only.</param>
/// <param name="Value">What it gives; finite.</param>
/// <param name="Decimals">Decimal places shown; null to leave that to the program.</param>
internal sealed record FormulaCell(string Formula, double Value, int? Decimals) : BookCell;

/// <summary>A sheet: headings, a row of units, rows.</summary>
/// <param name="Name">Its name; at most 31 characters, none of : \ / ? * [ ].</param>
/// <param name="Caption">What it shows.</param>
/// <param name="Headings">The headings.</param>
/// <param name="Units">The unit of each column; "" for none.</param>
/// <param name="Rows">The rows.</param>
internal sealed record BookSheet(string Name, string Caption, IReadOnlyList<string> Headings, IReadOnlyList<string> Units, IReadOnlyList<IReadOnlyList<BookCell>> Rows)
{
    /// <summary>Row of the first values: above it stand headings and units.</summary>
    public const int FirstRow = 3;
}

/// <summary>A name for a cell or a range.</summary>
/// <param name="Name">Letters, digits and underscores.</param>
/// <param name="Sheet">The sheet.</param>
/// <param name="From">Address of the first cell: "C3".</param>
/// <param name="To">Address of the last; null for one cell.</param>
internal sealed record BookName(string Name, string Sheet, string From, string? To = null);
