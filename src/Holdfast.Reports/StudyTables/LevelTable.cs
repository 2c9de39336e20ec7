using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;
using Holdfast.Statistics;
using Holdfast.Studies;

namespace Holdfast.Reports.StudyTables;

/// <summary>The levels of a series: means over separate vessels, with what the scatter among them says.</summary>
public static class LevelTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["bl"] = "no mean, because a vessel of the level is only known to lie below a limit",
        ["nw"] = "not worked out, because something it needs is missing",
    };

    /// <summary>One row a level.</summary>
    /// <param name="series">The series.</param>
    /// <param name="extra">A recorded setting to show beside the varied one, for example the end pH; null for none.</param>
    /// <param name="forFiles">True for standard errors instead of 95 % half-widths, as data files want.</param>
    public static Table Of(Series series, Property? extra = null, bool forFiles = false)
    {
        ArgumentNullException.ThrowIfNull(series);
        var hasUptake = series.Vessels.Any(v => v.Uptake is not null);
        var withExtra = extra is not null && series.Vessels.Any(v => v.Sample.Number(extra) is not null);
        var columns = new List<Column>();
        if (series.Varied is { } varied)
            columns.Add(Column.Of("setting", Symbol(varied), Unit(varied), varied.Title) with { NamesRows = true });
        if (withExtra)
            columns.Add(Column.Of("beside", Symbol(extra!), Unit(extra!), extra!.Title));
        columns.Add(new Column("n", RichText.Parse("*n*")) { Spoken = "number of vessels" });
        columns.Add(Column.Of("ce", "C_e", "mg/L", "concentration left"));
        columns.Add(Column.Of("removal", "R", "%", "removal"));
        if (hasUptake)
        {
            columns.Add(Column.Of("q", "q", "mg/g", "uptake"));
            columns.Add(new Column("one", RichText.Parse("*u*(*q*) of one vessel")) { Unit = "mg/g", Spoken = "standard uncertainty of the uptake of one vessel" });
        }

        return new Table(
            "levels-" + Id(series.Name),
            $"Level means of series {series.Name}",
            columns,
            [.. series.Levels.Select(l => new Row(Cells(series, l, withExtra ? extra : null, hasUptake, forFiles)))],
            Codes)
        {
            Notes =
            [
                forFiles
                    ? "Mean ± its standard error; n counts separate vessels, and a level with one vessel has none."
                    : "Mean ± half-width of its 95 % interval by t; n counts separate vessels, and a level with one vessel has no interval.",
                .. hasUptake ? new RichText[] { "The last column is propagated from weighing, volume, dilution and calibration; what all vessels share is in it and not in the scatter among them." } : [],
                .. series.Vessels.Any(v => v.End is { IsBelowDetection: true, IsOnlyBelow: false }) ? new RichText[] { "Where some vessels lie below the detection limit, their signed values are in the mean." } : [],
            ],
        };
    }

    private static List<Cell> Cells(Series series, Level level, Property? extra, bool hasUptake, bool forFiles)
    {
        var cells = new List<Cell>();
        if (series.Varied is not null)
            cells.Add(new NumberCell(level.X));
        if (extra is not null)
            cells.Add(Mean([.. level.Vessels.Select(v => v.Sample.Number(extra)).OfType<double>()], forFiles));
        cells.Add(new NumberCell(level.Vessels.Length) { Decimals = 0 });
        // A vessel that is only known to lie below a limit has no value to take into a mean; a mean of the others would be too high.
        if (level.Vessels.Any(v => v.End?.IsOnlyBelow == true))
        {
            cells.AddRange(Enumerable.Repeat<Cell>(new MissingCell("bl"), hasUptake ? 4 : 2));
            return cells;
        }

        var read = level.Vessels.Where(v => v.End?.Value is not null).ToArray();
        var limit = read.Length > 0 && Array.TrueForAll(read, v => v.End!.IsBelowDetection) ? read.Max(v => v.End!.DetectionLimit) : null;
        cells.Add(limit is { } below ? new CensoredCell(CensoredSide.Below, below, "LOD") : Mean(level.EndConcentrations, forFiles));
        cells.Add(limit is null ? Mean(level.Removals, forFiles) : AtLeast(read, v => v.Start is { } c0 ? 100 * (c0.Value - limit.Value) / c0.Value : null));
        if (!hasUptake)
            return cells;
        cells.Add(limit is null ? Mean(level.Uptakes, forFiles) : AtLeast(read, v => v is { Start: { } c0, Dose: { } dose } ? (c0.Value - limit.Value) / dose.Value : null));
        var own = level.Vessels.Where(v => v.Uptake is { U: > 0 }).Select(v => v.Uptake!.Value.U).Order().ToArray();
        cells.Add(own.Length == 0 ? new MissingCell("nw") : new NumberCell(own[own.Length / 2]) { Decimals = Math.Max(0, RoundedNumber.DecimalsFor(own[own.Length / 2])) });
        return cells;
    }

    // Below the detection limit the signed value says nothing; the limit bounds what was removed from below.
    private static Cell AtLeast(Vessel[] vessels, Func<Vessel, double?> bound)
        => vessels.Select(bound).OfType<double>().DefaultIfEmpty(double.NaN).Min() is var least && double.IsFinite(least)
            ? new CensoredCell(CensoredSide.Above, least)
            : new MissingCell("nw");

    private static Cell Mean(IReadOnlyList<double> values, bool forFiles)
    {
        if (values.Count == 0)
            return new MissingCell("nw");
        var summary = Summary.Of(values);
        return summary.MeanEstimate().Value is { StandardError: > 0 } mean && mean.Interval().Half is var half && double.IsFinite(half)
            ? new MeasuredCell(mean.Value, forFiles ? mean.StandardError : half)
            : new NumberCell(summary.Mean);
    }

    /// <summary>A name as part of an id: letters, digits and hyphens.</summary>
    /// <param name="name">The name.</param>
    public static string Id(string name)
        => new string([.. name.ToLower(CultureInfo.InvariantCulture).Select(c => char.IsLetterOrDigit(c) ? c : '-')]).Trim('-');

    // "C0" and "pHe" as markup: what follows the symbol is lowered.
    private static string Symbol(Property property)
        => property.Symbol is not { } symbol ? property.Title : symbol.Length < 2 ? symbol : symbol[..^1] + "_" + symbol[^1];

    private static string? Unit(Property property) => property.Unit.Length == 0 ? null : property.Unit;
}
