using Holdfast.Claims.Analyses;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;
using Holdfast.Statistics;

namespace Holdfast.Reports.StudyTables;

/// <summary>Sorption and elution, cycle by cycle.</summary>
internal static class CycleTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["na"] = "the eluate of this cycle, or of one before it, was not analysed",
        ["nm"] = "the powder was not weighed in this cycle",
    };

    /// <summary>One row a cycle.</summary>
    public static Table Of(ReuseSeries series)
    {
        var first = series.Cycles[0].Vessels.Average(v => v.Uptake.Value);
        return new(
            "reuse-" + LevelTable.Id(series.Name),
            $"Sorption and elution cycles of {series.Name}",
            [
                new Column("cycle", "Cycle") { NamesRows = true },
                new Column("n", RichText.Parse("*n*")) { Spoken = "number of vessels" },
                Column.Of("q", "q", "mg/g", "uptake"),
                new Column("kept", "Kept of cycle 1") { Unit = "%" },
                new Column("eluted", "Eluted") { Unit = "mg/g" },
                new Column("efficiency", "Eluted of what was on") { Unit = "%" },
                new Column("mass", "Mass present") { Unit = "mg" },
            ],
            [.. series.Cycles.Select(c => One(series, c, first))],
            Codes)
        {
            Notes =
            [
                "Mean ± half-width of its 95 % interval by t; n counts vessels carried through. “Eluted of what was on” counts what earlier cycles left on the powder.",
            ],
        };
    }

    private static Row One(ReuseSeries series, ReuseCycle cycle, double first)
    {
        double[] uptakes = [.. cycle.Vessels.Select(v => v.Uptake.Value)];
        var mean = Summary.Of(uptakes).MeanEstimate().Value;
        var half = mean?.Interval().Half;
        return Row.Of(
            new NumberCell(cycle.Number) { Decimals = 0 },
            new NumberCell(cycle.Vessels.Length) { Decimals = 0 },
            half is { } h && double.IsFinite(h) ? new MeasuredCell(mean!.Value, h) : new NumberCell(uptakes.Average()),
            new NumberCell(100 * uptakes.Average() / first) { Decimals = 1 },
            cycle.MeanEluted is { } eluted ? new NumberCell(eluted) : new MissingCell("na"),
            series.DesorptionEfficiency(cycle.Number) is { } share ? new NumberCell(100 * share) { Decimals = 1 } : new MissingCell("na"),
            cycle.Vessels.Select(v => v.MassPresent ?? (cycle.Number == 1 ? v.Vessel.Mass?.Value : null)).OfType<double>().ToArray() is { Length: > 0 } masses
                ? new NumberCell(masses.Average())
                : new MissingCell("nm"));
    }
}
