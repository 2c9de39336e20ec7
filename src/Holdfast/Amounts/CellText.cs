namespace Holdfast.Amounts;

/// <summary>
/// What a cell of a table, or a typed field, turned out to hold. Nothing that is not clearly a number becomes one, and nothing is
/// taken for zero or for blank.
/// </summary>
public abstract record CellText
{
    private CellText()
    {
    }

    /// <summary>A number.</summary>
    /// <param name="Value">Its value; always finite.</param>
    /// <param name="Step">Worth of one step in the last digit written: 0.01 for "12.50", 10 for "1.2e2". It says how far the text was rounded.</param>
    public sealed record Number(double Value, double Step) : CellText;

    /// <summary>A reading outside what the instrument or method can tell: "&lt;0.05", "n.d.", "over", "****".</summary>
    /// <param name="Side">On which side of the limit the value lies.</param>
    /// <param name="Limit">The limit, where the cell gives a number; null where it only names one.</param>
    /// <param name="LimitName">The limit's name, "LOD" or "LOQ", where the cell gives one.</param>
    /// <param name="Text">As written.</param>
    public sealed record Censored(CensoredSide Side, double? Limit, string? LimitName, string Text) : CellText;

    /// <summary>Digits with several readings, such as "1,234": the user must choose.</summary>
    /// <param name="Text">As written.</param>
    /// <param name="Candidates">What it could mean.</param>
    public sealed record Ambiguous(string Text, IReadOnlyList<double> Candidates) : CellText;

    /// <summary>A text that is not a number: kept as text, shown among the odd cells, never computed with.</summary>
    /// <param name="Text">As written.</param>
    /// <param name="Kind">Why it is none.</param>
    public sealed record NotANumber(string Text, NotANumberKind Kind) : CellText;

    /// <summary>Nothing but spaces.</summary>
    public sealed record Blank : CellText;

    /// <summary>What a cell says.</summary>
    /// <param name="text">The cell's text.</param>
    /// <param name="mark">The file's decimal mark; null when it is not settled (then either is taken where only one reading is possible).</param>
    public static CellText Read(string? text, DecimalMark? mark) => CellReader.Read(text, mark);

    /// <summary>True for digits with at most one mark between them, as most cells of a long file are: they are told at one look.</summary>
    /// <param name="text">The cell's text.</param>
    public static bool IsPlainNumber(string text) => CellReader.IsPlain(text);
}

/// <summary>On which side of a limit a censored value lies.</summary>
public enum CensoredSide
{
    /// <summary>Below the limit: "&lt;0.05", "n.d.".</summary>
    Below,

    /// <summary>Above the limit: "&gt;40", "over", "****".</summary>
    Above,
}

/// <summary>Why a text is not a number.</summary>
public enum NotANumberKind
{
    /// <summary>Words, a code, or digits with something else.</summary>
    Words,

    /// <summary>An error value of a worksheet: "#DIV/0!", "#N/A".</summary>
    WorksheetError,

    /// <summary>"NaN", "Inf", "∞".</summary>
    NotFinite,

    /// <summary>Digits whose size no double can hold: "1e999".</summary>
    OutOfRange,

    /// <summary>A sign for "nothing here": "-", "n/a".</summary>
    Missing,
}
