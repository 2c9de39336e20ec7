using System.Collections.Immutable;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>Nitrogen sorption at 77 K: isotherms as AIF, CSV, text or workbook.</summary>
public sealed class NitrogenIsotherms : ITechnique
{
    /// <summary>Name kept with every measurement.</summary>
    internal const string TechniqueName = "nitrogen-sorption";

    /// <inheritdoc/>
    public string Name => TechniqueName;

    /// <inheritdoc/>
    public string Title => "nitrogen sorption at 77 K";

    /// <inheritdoc/>
    public string Reads => "isotherms: p/p0, or p and p0, against the amount adsorbed; AIF, CSV, text, XLSX";

    /// <inheritdoc/>
    public Recognition Recognise(Grid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        var tables = Tables(grid);
        if (tables.IsEmpty)
            return BareColumns.Recognise(grid);
        var (table, series) = (tables[0], tables[0].Series[0]);
        var evidence = $"headings {table.Heading.At(series.Relative ?? series.Absolute!.Value).Text} and {table.Heading.At(series.Amount).Text}";
        // A pressure alone stands over many things; beside p0 or p/p0 it is an isotherm of a vapour.
        return series.Relative is not null || series.Saturation is not null || grid.Rows.Where(r => r.Filled <= 2 || r.Number <= table.Heading.Number).Any(r => r.Cells.Any(c => SorptionWords.IsNitrogen(c.Text) || SorptionWords.Setting(c.Text.TrimStart('#', '!', ';', ' ').Split(':', '=')[0]) is "p0" or "adsorptive")) || grid.Rows.Any(r => r.Cells.Any(c => c.Text.StartsWith("_adsorp_", StringComparison.OrdinalIgnoreCase)))
            ? Recognition.Certain(evidence) : Recognition.Possible(evidence);
    }

    /// <inheritdoc/>
    public MeasurementDraft Read(MeasurementSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var blocks = Blocks(source.Grid);
        // A block is read as if it were alone in the file: a neighbour lends it nothing.
        return MergedDrafts.Of(blocks.Select(b => SorptionReading.Of(source with { Grid = b.Grid, File = [.. source.File.Select(g => ReferenceEquals(g, source.Grid) ? b.Grid : g)] }, b.Name)));
    }

    // Powders below each other or side by side, each with lines of its own above its numbers.
    private static ImmutableArray<(string? Name, Grid Grid)> Blocks(Grid grid)
    {
        var tables = Tables(grid);
        if (tables.Length == 1)
            return SideBySide.Of(grid, tables[0]);
        // A heading with nothing under it parts nothing.
        if (tables.Any(t => t.Body.IsEmpty))
            return [(null, grid)];
        var rows = grid.Rows;
        return StackedBlocks.Of(grid, [.. tables.Select(t => (rows.IndexOf(t.Heading), rows.IndexOf(t.Body.LastOrDefault(t.LooksLikeData, t.Body[^1])) + 1))], k => SorptionWords.Setting(k) == "sample");
    }

    /// <summary>True for a grid that holds an isotherm under headings.</summary>
    /// <param name="grid">The grid.</param>
    internal static bool Holds(Grid grid) => !Tables(grid).IsEmpty;

    private static ImmutableArray<SorptionTable> Tables(Grid grid)
        => [.. SorptionTable.In(grid, SorptionSettings.Of(grid.Rows.Where(r => r.At(0).Text.StartsWith("_units_pressure", StringComparison.OrdinalIgnoreCase)), null)["unit-of-pressure"]?.Written).Where(t => !t.IsDerived)];
}
