using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>Powder diffraction: scans in columns, step-counted scans, powder CIF, lists of lines, and structures to compare with.</summary>
public sealed class DiffractionFiles : ITechnique
{
    /// <summary>Name kept with every measurement.</summary>
    internal const string TechniqueName = "powder-diffraction";

    /// <inheritdoc/>
    public string Name => TechniqueName;

    /// <inheritdoc/>
    public string Title => "powder diffraction";

    /// <inheritdoc/>
    public string Reads => "scans: 2θ against counts in columns, or start, step and stop with counts in rows; lists of lines with 2θ, d, intensity, h k l; XY, CSV, text, XLSX, powder CIF; structures as CIF";

    /// <inheritdoc/>
    public Recognition Recognise(Grid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        if (CifGrid.Of(grid) is { } block)
        {
            return CifScan.IsIn(block) ? Recognition.Certain("items of a powder pattern (_pd_…)")
                : Studies.Import.Cif.CifStructure.IsIn(block) ? Recognition.Certain("a cell and places of atoms: a structure to compare with") : Recognition.None;
        }

        return BesideEachOther.Of(grid) is [var (_, alone)] ? ScanLayout.Of(alone)?.Says ?? Listed(alone)?.Says ?? Recognition.None : Recognition.Certain("scans, or a scan and a list of lines, beside each other");
    }

    /// <inheritdoc/>
    public MeasurementDraft Read(MeasurementSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        if (CifGrid.Of(source.Grid) is { } block)
            return CifScan.IsIn(block) ? CifScan.Read(source, block) : StructureReading.Read(source, block);
        return MergedDrafts.Of(BesideEachOther.Of(source.Grid).SelectMany(p => Drafts(source with { Grid = p.Grid }, p.Name)));
    }

    // Scans below each other, each under its own name, are read each as if it were alone.
    private static IEnumerable<MeasurementDraft> Drafts(MeasurementSource source, string? name)
        => ScanLayout.Of(source.Grid) is null ? [LineListReading.Read(source, Listed(source.Grid)!)]
            : ScanLayout.Apart(source.Grid).Select(b => ScanReading.Read(source with { Grid = b.Grid }, ScanLayout.Of(b.Grid)!, b.Name ?? name));

    private static LineListLayout? Listed(Grid grid) => LineListLayout.Of(grid) ?? (LinesInText.Of(grid) is { } told ? LineListLayout.Of(told) : null);
}
