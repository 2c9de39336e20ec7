using System.Collections.Immutable;

namespace Holdfast.Studies.Import.Techniques;

/// <summary>
/// One technique of characterisation of the powder, as far as its files go: how they are recognised, read and asked about. Techniques are found by
/// <see cref="Catalogue"/> and need a constructor without parameters. Analysis, claims, section, figures and numbers of a technique lie in the same
/// folder and namespace; each is found by its own interface.
/// </summary>
public interface ITechnique
{
    /// <summary>Stable name, kept with every measurement: "nitrogen-sorption".</summary>
    string Name { get; }

    /// <summary>Name in words: "nitrogen sorption at 77 K".</summary>
    string Title { get; }

    /// <summary>What it reads, in words: "isotherms: p/p0 against amount, as AIF, CSV or XLSX".</summary>
    string Reads { get; }

    /// <summary>Whether a whole grid, a text file, a sheet or a block of a file, is a measurement of this kind.</summary>
    /// <param name="grid">The grid.</param>
    Recognition Recognise(Grid grid);

    /// <summary>Reads a grid of this kind: every column and row is used, or listed with a reason or a question.</summary>
    /// <param name="source">The grid and what must be known for it.</param>
    MeasurementDraft Read(MeasurementSource source);
}

/// <summary>What a technique says of a grid.</summary>
/// <param name="Evidence">By what it is recognised: "headings p/p0 and volume adsorbed"; null for what it is not.</param>
/// <param name="IsCertain">True where nothing else writes such a grid; false where it must be asked about.</param>
public readonly record struct Recognition(string? Evidence, bool IsCertain)
{
    /// <summary>It is none.</summary>
    public static Recognition None => default;

    /// <summary>Nothing else is written like this.</summary>
    /// <param name="evidence">By what it is recognised.</param>
    public static Recognition Certain(string evidence) => new(evidence, true);

    /// <summary>It may be one: asked, and only where the grid is nothing else.</summary>
    /// <param name="evidence">What speaks for it.</param>
    public static Recognition Possible(string evidence) => new(evidence, false);
}

/// <summary>A grid to be read as a measurement, and what must be known for it.</summary>
/// <param name="Grid">The grid.</param>
/// <param name="File">Every grid of the file, this one included: settings may stand on a sheet of their own.</param>
/// <param name="Study">The study as it would be after the files before this one.</param>
/// <param name="Talk">Where questions go.</param>
/// <param name="Sha256">Fingerprint of the file.</param>
public sealed record MeasurementSource(Grid Grid, ImmutableArray<Grid> File, Study Study, Dialogue Talk, string Sha256)
{
    /// <summary>Where a cell is.</summary>
    /// <param name="row">Row as a person counts; 0 for the grid as a whole.</param>
    /// <param name="column">Heading of its column, or null.</param>
    public Origin At(int row, string? column) => new(Sha256, Talk.FileName, Grid.Sheet, row, column);

    /// <summary>Id of a question about this grid: the plain name in a file with one grid, "name:sheet" elsewhere.</summary>
    /// <param name="name">Name of the question: "powder".</param>
    public string Question(string name) => Grid.Sheet is { } sheet && File.Length > 1 ? name + ":" + sheet : name;
}

/// <summary>What a grid would bring.</summary>
/// <param name="Rows">Its rows, by what becomes of them.</param>
/// <param name="Columns">Its columns, each with its meaning or why it is not used.</param>
/// <param name="Measurements">What would be taken in; the frame gives the ids. Empty while something needed is not answered.</param>
public sealed record MeasurementDraft(RowCount Rows, ImmutableArray<ColumnUnderstanding> Columns, ImmutableArray<Measurement> Measurements)
{
    /// <summary>Row of the heading, or null.</summary>
    public int? HeadingLine { get; init; }

    /// <summary>Row of units under it, or null.</summary>
    public int? UnitsLine { get; init; }

    /// <summary>Decimal mark, or null where none is needed or it is asked about.</summary>
    public Amounts.DecimalMark? Decimal { get; init; }

    /// <summary>Why that mark, in words.</summary>
    public string? DecimalReason { get; init; }

    /// <summary>Settings as understood, for the preview: "mass 0.1032 g (line 3)".</summary>
    public ImmutableArray<string> Settings { get; init; } = [];

    /// <summary>The first rows of its table, for the preview; empty for the rows after the heading line.</summary>
    public ImmutableArray<GridRow> FirstRows { get; init; } = [];
}
