using System.Collections.Immutable;

namespace Holdfast.Studies.Import;

/// <summary>What one column was understood to be, for the preview.</summary>
/// <param name="Index">Place in the table, from 0.</param>
/// <param name="Heading">Heading as written.</param>
/// <param name="Use">What becomes of it.</param>
/// <param name="Property">Name of the property, or null.</param>
/// <param name="Unit">Unit it is read in, as understood; null where none is needed or known.</param>
/// <param name="Stored">Unit its values are kept in, or null.</param>
/// <param name="Remark">What a person should know about it, or null: why it feeds nothing, how it is converted.</param>
/// <param name="Examples">The first three cells that hold something.</param>
/// <param name="Odd">Cells that are not what the column holds.</param>
public sealed record ColumnUnderstanding(
    int Index, string Heading, ColumnUse Use, string? Property, string? Unit, string? Stored, string? Remark, ImmutableArray<string> Examples, ImmutableArray<OddCell> Odd)
{
    /// <summary>Why it is taken for that, in words, or null: "'weight of NPs' with mg: a mass".</summary>
    public string? Evidence { get; init; }

    /// <summary>What it holds in a measurement, in words: "relative pressure p/p0, adsorption"; null elsewhere.</summary>
    public string? Measures { get; init; }

    /// <summary>What it holds, in words of the bench: "mass of sorbent", "uncertainty of volume", "not used".</summary>
    public string Meaning => Use switch
    {
        ColumnUse.Measured => Measures ?? "read as it stands",
        ColumnUse.Code => "sample code",
        ColumnUse.Role => "what the sample is for",
        ColumnUse.Uncertainty => "uncertainty of " + Title,
        ColumnUse.Dilution => "dilution",
        ColumnUse.Portion => "which portion",
        ColumnUse.Position => "running number, replicate",
        ColumnUse.DilutedFrom => "volume taken to be diluted",
        ColumnUse.DilutedTo => "volume it was made up to",
        ColumnUse.Titre => "titrant used",
        ColumnUse.BuretteStart => "burette before",
        ColumnUse.BuretteEnd => "burette after",
        ColumnUse.Aliquot => "volume titrated",
        ColumnUse.WeighedFull => "weighing with the powder",
        ColumnUse.TakenOut => "concentration taken out of the water",
        ColumnUse.WeighedFilled => "weighing with powder and solution",
        ColumnUse.WeighedEmpty => "weighing without the powder",
        ColumnUse.ClockStart => "time of day, start",
        ColumnUse.ClockEnd => "time of day, end",
        ColumnUse.NotUnderstood or ColumnUse.LeftOut => "not used",
        _ => Title ?? "read as it stands",
    };

    private string? Title => Property is { } name ? Studies.Property.Named(name)?.Title ?? name : null;

    /// <summary>What an answer about it is called: "column:weight of NPs".</summary>
    public string Question => "column:" + Headings.HeadingReading.Of(Heading).Name;

    /// <summary>What an answer about its unit is called: "unit:weight of NPs".</summary>
    public string UnitQuestion => "unit:" + Headings.HeadingReading.Of(Heading).Name;

    /// <summary>Usual units for what it holds, the one it is kept in first; empty where none is needed.</summary>
    public ImmutableArray<string> Units => Property is { } name && Studies.Property.Named(name) is { Unit.Length: > 0 } property ? ColumnChoices.UnitsFor(property, []) : [];
}

/// <summary>A cell that is not what its column holds: kept as written, never computed with.</summary>
/// <param name="Row">Its row, as a person counts.</param>
/// <param name="Text">As written.</param>
/// <param name="Why">Why it is odd, in words.</param>
public sealed record OddCell(int Row, string Text, string Why);
