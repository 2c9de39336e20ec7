using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <content>Titrations of a sensor: light read after each addition of the metal, and no powder that was weighed.</content>
internal sealed partial class Columns
{
    // "[Cu] (µM) | F 616 nm | F0/F": what was added quenches, and is no concentration left in a vessel; what the pipette gave is no vessel's volume.
    private void Titration(Column[] columns)
    {
        if (!columns.Any(c => c is { Use: ColumnUse.Signal } && c.Property == FluorescenceProperties.Intensity) || columns.Any(c => c.Property == BatchProperties.Mass || c.Property == BatchProperties.Dose || c.Property == FluorescenceProperties.Quencher))
            return;
        foreach (var column in columns.Where(c => !IsAnswered(c.Index)).ToList())
        {
            if (column is { Use: ColumnUse.Signal or ColumnUse.Fact } && (column.Property == SpectrometryProperties.ReportedConcentration || column.Property == SpectrometryProperties.StandardConcentration || column.Property == BatchProperties.InitialConcentration))
                columns[column.Index] = UnitKinds.Of(headings[column.Index].Unit) != UnitKind.Concentration ? column.Become(ColumnUse.LeftOut, null, "Not used: the number of an addition.")
                    : Settle(column.Index, headings[column.Index], ColumnUse.Fact, FluorescenceProperties.Quencher, "the metal in the cuvette beside the light that was read");
            else if (column.Property == BatchProperties.Volume)
                columns[column.Index] = column.Become(ColumnUse.LeftOut, null, "Not used: a volume of titrant, no vessel's.");
        }
    }
}
