using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.History;
using Holdfast.Studies.Import.Headings;

namespace Holdfast.Studies.Import;

/// <summary>What one table would bring.</summary>
/// <param name="Rows">Its rows, by what becomes of them.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Brings">What would be taken in, without the file itself.</param>
internal sealed record Draft(RowCount Rows, ImmutableArray<ColumnUnderstanding> Columns, TakenIn Brings)
{
    /// <summary>Points for a fit, or null.</summary>
    public PointsTable? Points { get; init; }
}

/// <summary>A table to be understood and what must be known for it.</summary>
/// <param name="Layout">The table.</param>
/// <param name="Study">The study as it would be after the files before this one.</param>
/// <param name="Talk">Where questions go.</param>
/// <param name="Sha256">Fingerprint of the file.</param>
internal sealed record TableSource(TableLayout Layout, Study Study, Dialogue Talk, string Sha256)
{
    private readonly Lazy<Dictionary<string, Sample>> known = new(() => Study.Samples.ToDictionary(s => s.Code, StringComparer.Ordinal));

    /// <summary>Samples of the study, by code.</summary>
    public IReadOnlyDictionary<string, Sample> Known => known.Value;

    /// <summary>Other names of samples, as a sheet lists them ("sent as") or a line says ("701 = S2"), with their codes; names of several samples are none.</summary>
    public IReadOnlyDictionary<string, string> Aliases => aliases.Value;

    private readonly Lazy<Dictionary<string, string>> aliases = new(() => NamedTwice.Of(Study.Samples, Layout.Notes.Lines));

    /// <summary>Where a cell is.</summary>
    public Origin At(int row, string? column) => new(Sha256, Talk.FileName, Layout.Grid.Sheet, row, column);

    /// <summary>The file's name without its ending, and the sheet where it is needed.</summary>
    public string Stem => Layout.Grid.Sheet is { } sheet && SeveralSheets ? Path.GetFileNameWithoutExtension(Talk.FileName) + "-" + sheet : Path.GetFileNameWithoutExtension(Talk.FileName);

    /// <summary>True when more than one sheet of the workbook is read.</summary>
    public bool SeveralSheets { get; init; }

    /// <summary>True where the title or the file's name says that its rows are start solutions, and nothing that they are standards.</summary>
    public bool IsOfStartSolutions => isOfStartSolutions.Value;

    private readonly Lazy<bool> isOfStartSolutions = new(() => Layout.Preamble.Where(r => r.Filled == 1).Select(r => r.Cells.First(c => !c.IsBlank).Text).Append(Path.GetFileNameWithoutExtension(Talk.FileName))
        .Select(Lexicon.Of).ToList() is var said && said.Exists(w => w.Contains(HeadingWord.Start) && w.Contains(HeadingWord.Liquid)) && !said.Exists(w => w.Contains(HeadingWord.Standard)));

    /// <summary>True where the line above the table says that its rows are standards: "[Calibration]".</summary>
    public bool IsOfStandards => Settings.TitleOf(Layout) is { } title && Lexicon.Of(title) is var said && said.Contains(HeadingWord.Standard) && !said.Contains(HeadingWord.Sample)
        && !Layout.Headings.Any(h => UnitKinds.Of(HeadingReading.Of(h).Unit) is UnitKind.Mass or UnitKind.Volume);

    /// <summary>Codes whose readings stand in other tables of the drop; see <see cref="OwnEvaluation"/>.</summary>
    public IReadOnlySet<string> ReadElsewhere { get; init; } = ImmutableHashSet<string>.Empty;

    /// <summary>How many tables of the file are read.</summary>
    public int Tables { get; init; } = 1;

    /// <summary>Runs that earlier tables of the same sheet brought, by sheet and signal: standards above and samples below are one run.</summary>
    public Dictionary<string, string> RunsHere { get; init; } = new(StringComparer.Ordinal);

    /// <summary>The decimal mark as far as all cells together tell, or null; what it is in the end may be answered.</summary>
    public DecimalMark? Mark => mark.Value;

    private readonly Lazy<DecimalMark?> mark = new(() => Talk.Answers.To("decimal")?.ToLowerInvariant() switch
    {
        "point" or "." => DecimalMark.Point,
        "comma" or "," => DecimalMark.Comma,
        _ => DecimalEvidence.Of(Layout, [.. Enumerable.Range(0, Layout.Headings.Length)]).Mark,
    });
}
