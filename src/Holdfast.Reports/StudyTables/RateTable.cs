using Holdfast.Claims.Analyses;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>Rate constants at several temperatures.</summary>
internal static class RateTable
{
    /// <summary>One row a temperature, one column a constant.</summary>
    public static Table Of(RateFamily family)
        => new(
            "rates-" + LevelTable.Id(family.Series[0].Name),
            $"Rate constants of {family.Name}, {family.Curve.ToLowerInvariant()} curve",
            [
                new Column("series", "Series") { NamesRows = true },
                Column.Of("temperature", "T", "K", "temperature"),
                .. family.Energies.Select((e, i) => new Column(i == 0 ? "constant" : "per_time", e.Constant) { Unit = e.Unit }),
            ],
            [.. family.Series.Select((s, row) => Row.Of(
                [s.Name, new NumberCell(family.Temperatures[row]) { Decimals = 2 }, .. family.Energies.Select(e => (Cell)MeasuredCell.Of(e.Values[row]))]))])
        {
            Notes = ["± is the standard uncertainty that the fit at that temperature gives."],
        };
}
