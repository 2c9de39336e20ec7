using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.History;

namespace Holdfast.Studies.Import;

/// <summary>What a file was understood to be. Nothing is kept until it is accepted.</summary>
public sealed record Understanding
{
    /// <summary>The file's name.</summary>
    public required string FileName { get; init; }

    /// <summary>Its fingerprint, lower-case hexadecimal; empty when it was refused before it was read.</summary>
    public string Sha256 { get; init; } = "";

    /// <summary>Its length in bytes.</summary>
    public long Bytes { get; init; }

    /// <summary>What read it: "delimited text", "workbook"; null when nothing could.</summary>
    public string? Reader { get; init; }

    /// <summary>Its tables; a workbook's sheets, hidden ones included.</summary>
    public ImmutableArray<TableUnderstanding> Tables { get; init; } = [];

    /// <summary>Decisions it needs, answered ones included.</summary>
    public ImmutableArray<Question> Questions { get; init; } = [];

    /// <summary>What was noticed.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>x and y columns that belong to no sample, for a fit without a study.</summary>
    public ImmutableArray<PointsTable> Points { get; init; } = [];

    /// <summary>The layout that answers are remembered for, which were given for an earlier file; null for a new one.</summary>
    public string? RememberedLayout { get; init; }

    /// <summary>What would be taken in; null when the file holds nothing for a study, was taken in before, or cannot be read.</summary>
    public TakenIn? Proposal { get; init; }

    /// <summary>True while a question is open.</summary>
    public bool NeedsDecision => Questions.Any(q => q.IsOpen);

    /// <summary>In one sentence: "24 rows: 22 ready, 1 needs a decision, 1 blank line left out".</summary>
    public string Sentence => Tables.Where(t => t.Kind != TableKind.Unknown).ToList() switch
    {
        [] => Findings.FirstOrDefault(f => f.Weight == Weight.Stop)?.Sentence ?? Findings.FirstOrDefault(f => f.Weight == Weight.Caution)?.Sentence
            ?? "Nothing in it is understood. It stays in the tray.",
        [var one] => one.Sentence,
        var several => string.Join("; ", several.Select(t => $"{t.Sheet}: {t.Sentence}")),
    };
}

/// <summary>What one table was understood to be, for the preview.</summary>
public sealed record TableUnderstanding
{
    /// <summary>Sheet of a workbook, or null.</summary>
    public string? Sheet { get; init; }

    /// <summary>True for a sheet that the workbook hides.</summary>
    public bool IsHidden { get; init; }

    /// <summary>What it is.</summary>
    public required TableKind Kind { get; init; }

    /// <summary>Encoding of the text, or null for a workbook.</summary>
    public string? Encoding { get; init; }

    /// <summary>Separator of the cells, or null for a workbook.</summary>
    public string? Separator { get; init; }

    /// <summary>Decimal mark, or null while it must be asked about.</summary>
    public DecimalMark? Decimal { get; init; }

    /// <summary>Why that mark, in words.</summary>
    public string? DecimalReason { get; init; }

    /// <summary>Line of the heading, or null when there is none.</summary>
    public int? HeadingLine { get; init; }

    /// <summary>Line of units, or null.</summary>
    public int? UnitsLine { get; init; }

    /// <summary>What the file says about itself before the heading.</summary>
    public ImmutableSortedDictionary<string, string> Details { get; init; } = Ordinal.Words;

    /// <summary>Its columns.</summary>
    public ImmutableArray<ColumnUnderstanding> Columns { get; init; } = [];

    /// <summary>The first raw lines of the file.</summary>
    public ImmutableArray<string> RawLines { get; init; } = [];

    /// <summary>The first rows as cells, in the order of the columns.</summary>
    public ImmutableArray<GridRow> FirstRows { get; init; } = [];

    /// <summary>Its rows, by what becomes of them.</summary>
    public RowCount Rows { get; init; }

    /// <summary>How it was turned before it was read: "each column was a sample"; null for as it stands.</summary>
    public string? Turned { get; init; }

    /// <summary>Settings that lines above or below it state for all its rows: "volume 10 mL (line 2)".</summary>
    public ImmutableArray<string> Settings { get; init; } = [];

    /// <summary>Why it is left out, or null.</summary>
    public string? LeftOut { get; init; }

    /// <summary>In one sentence.</summary>
    public string Sentence => LeftOut ?? Rows.ToString();
}

/// <summary>Rows of a table by what becomes of them.</summary>
/// <param name="Ready">Rows that can be taken in.</param>
/// <param name="Undecided">Rows that need a decision.</param>
/// <param name="Blank">Blank lines between them.</param>
/// <param name="LeftOut">Rows left out: repeated headings, rows that an answer leaves out.</param>
public readonly record struct RowCount(int Ready, int Undecided, int Blank, int LeftOut)
{
    /// <summary>True where spectra are counted, each of them a column, and not rows.</summary>
    public bool OfSpectra { get; init; }

    /// <summary>All of them.</summary>
    public int All => Ready + Undecided + Blank + LeftOut;

    /// <summary>"24 rows: 22 ready, 1 needs a decision, 1 blank line left out".</summary>
    public override string ToString()
    {
        var (one, many) = OfSpectra ? ("spectrum", "spectra") : ("row", "rows");
        var text = $"{Count(All, one, many)}: {Ordinal.Text(Ready)} ready";
        if (Undecided > 0)
            text += $", {Ordinal.Text(Undecided)} {(Undecided == 1 ? "needs" : "need")} a decision";
        if (Blank > 0)
            text += $", {Count(Blank, "blank line", "blank lines")} left out";
        return LeftOut > 0 ? text + $", {Count(LeftOut, one, many)} left out" : text;
    }

    private static string Count(int n, string one, string many) => Ordinal.Text(n) + " " + (n == 1 ? one : many);
}

/// <summary>What a table is, told by its columns.</summary>
public enum TableKind
{
    /// <summary>Samples and facts about them.</summary>
    Samples,

    /// <summary>What an instrument showed, sample by sample.</summary>
    Readings,

    /// <summary>Whole spectra, a column each.</summary>
    Spectra,

    /// <summary>A measurement of the powder by one of the techniques.</summary>
    Measurement,

    /// <summary>Balances, glassware and meters.</summary>
    Apparatus,

    /// <summary>Margins fixed beforehand.</summary>
    Margins,

    /// <summary>Claims to be judged.</summary>
    Claims,

    /// <summary>Remarks of a reader.</summary>
    Remarks,

    /// <summary>Columns of numbers without samples: points for a fit.</summary>
    Points,

    /// <summary>Not understood.</summary>
    Unknown,
}

/// <summary>Columns of numbers that belong to no sample.</summary>
/// <param name="Columns">At least two, as long as each other.</param>
/// <param name="Origin">Where they were read.</param>
public sealed record PointsTable(ImmutableArray<PointsColumn> Columns, Origin Origin);

/// <summary>A column of points.</summary>
/// <param name="Heading">Heading without its unit: "Ce".</param>
/// <param name="Unit">Its unit, or null when none is stated or it is not clear.</param>
/// <param name="Values">Values in that unit; null where a row holds no number.</param>
public sealed record PointsColumn(string Heading, Unit? Unit, ImmutableArray<double?> Values);
