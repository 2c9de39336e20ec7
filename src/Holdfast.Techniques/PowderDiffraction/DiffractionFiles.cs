using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Powder diffraction: scans in columns, step-counted scans, powder CIF, and structures to compare with.</summary>
public sealed class DiffractionFiles : ITechnique
{
    /// <summary>Name kept with every measurement.</summary>
    internal const string TechniqueName = "powder-diffraction";

    /// <inheritdoc/>
    public string Name => TechniqueName;

    /// <inheritdoc/>
    public string Title => "powder diffraction";

    /// <inheritdoc/>
    public string Reads => "scans: 2θ against counts in columns, or start, step and stop with counts in rows; XY, CSV, text, XLSX, powder CIF; structures as CIF";

    /// <inheritdoc/>
    public Recognition Recognise(Grid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        if (CifGrid.Of(grid) is { } block)
        {
            return CifScan.IsIn(block) ? Recognition.Certain("items of a powder pattern (_pd_…)")
                : Studies.Import.Cif.CifStructure.IsIn(block) ? Recognition.Certain("a cell and places of atoms: a structure to compare with") : Recognition.None;
        }

        return ScanLayout.Of(grid) is { } layout ? layout.Says : Recognition.None;
    }

    /// <inheritdoc/>
    public MeasurementDraft Read(MeasurementSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        if (CifGrid.Of(source.Grid) is { } block)
            return CifScan.IsIn(block) ? CifScan.Read(source, block) : StructureReading.Read(source, block);
        // Scans below each other, each under its own name, are read each as if it were alone.
        return MergedDrafts.Of(ScanLayout.Apart(source.Grid).Select(b => ScanReading.Read(source with { Grid = b.Grid }, ScanLayout.Of(b.Grid)!, b.Name)));
    }
}
