using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Studies.Import;

namespace Holdfast.Techniques.Elements;

/// <summary>A grid understood as amounts of elements at places of one powder, however its rows and columns are laid out.</summary>
internal interface IElementTable
{
    /// <summary>What the only amount is: mass or atomic; null where nothing says so.</summary>
    string? Kind { get; }

    /// <summary>True where mass and atomic percent are both there.</summary>
    bool HasBoth { get; }

    /// <summary>Unit of the masses: "%" or "mg/g".</summary>
    string Unit { get; }

    /// <summary>Whether nothing else is written like this.</summary>
    bool IsCertain { get; }

    /// <summary>By what it was recognised.</summary>
    string Evidence { get; }

    /// <summary>Rows of standards and empty capsules between the powders: measured, and no powder.</summary>
    ImmutableArray<GridRow> Beside => [];

    /// <summary>Lines above the table.</summary>
    ImmutableArray<GridRow> Preamble { get; }

    /// <summary>Line of the heading.</summary>
    int HeadingLine { get; }

    /// <summary>The first line of the table itself.</summary>
    int FirstRow { get; }

    /// <summary>Rows with an element.</summary>
    int RowsUsed { get; }

    /// <summary>Heading of the elements.</summary>
    string ElementHeading { get; }

    /// <summary>Heading of the places; empty where they stand elsewhere.</summary>
    string SpotHeading { get; }

    /// <summary>Heading of the names of powders; empty where they stand elsewhere.</summary>
    string PowderHeading { get; }

    /// <summary>Heading of the masses, or of the only amounts.</summary>
    string MassHeading { get; }

    /// <summary>Heading of the atomic percentages; empty for none.</summary>
    string AtomicHeading { get; }

    /// <summary>What the amounts say of the decimal mark.</summary>
    DecimalEvidence Marks();

    /// <summary>All amounts, place by place.</summary>
    /// <param name="mark">Decimal mark.</param>
    ImmutableArray<ElementLine> Lines(DecimalMark mark);

    /// <summary>Its columns for the preview.</summary>
    ImmutableArray<ColumnUnderstanding> Columns();

    /// <summary>The table of a grid; null where it is none.</summary>
    /// <param name="grid">The grid.</param>
    static IElementTable? In(Grid grid) => PlacesAcross.Of(grid) is { } across ? across : ElementPages.Of(grid) is { } pages ? pages : ElementTable.Of(grid);
}

/// <summary>One amount of one element at one place.</summary>
/// <param name="Row">Row of the file.</param>
/// <param name="Spot">Field, spot or digest; empty where only one was measured.</param>
/// <param name="Species">The element, or its oxide.</param>
/// <param name="Mass">What stands in the column of mass, or of the only amount.</param>
/// <param name="Atomic">What stands in the column of atoms.</param>
internal sealed record ElementLine(int Row, string Spot, Species Species, double? Mass, double? Atomic)
{
    /// <summary>The powder that its row or column names; null where the table is of one.</summary>
    public string? Powder { get; init; }

    /// <summary>The element, also of an oxide.</summary>
    public Composition.Element Element => Species.Element;
}
