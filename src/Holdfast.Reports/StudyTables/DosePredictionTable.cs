using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.Tables;
using Holdfast.Statistics;

namespace Holdfast.Reports.StudyTables;

/// <summary>A dose series beside what the isotherm predicts for it.</summary>
internal static class DosePredictionTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal) { ["nw"] = "no vessel of this dose has a removal" };

    /// <summary>One row a dose.</summary>
    public static Table Of(Series series, DosePrediction prediction)
        => new(
            "dose-predicted-" + LevelTable.Id(series.Name),
            $"Removal and uptake of {series.Name} as predicted from the {prediction.Curve} isotherm of {prediction.From}",
            [
                Column.Of("dose", "D", "g/L", "dose") with { NamesRows = true },
                new Column("removal", "Removal, predicted") { Unit = "%" },
                new Column("measured", "Removal, mean measured") { Unit = "%" },
                new Column("uptake", "Uptake, predicted") { Unit = "mg/g" },
            ],
            [.. series.Levels.Select(l => One(l, prediction.At(l.X)))],
            Codes)
        {
            Notes = ["± is the 95 % uncertainty: of the prediction from the parameters of the isotherm and the start concentration, of the mean from the scatter of vessels by t."],
        };

    private static Row One(Level level, (Measured Removal, Measured Uptake) at) => Row.Of(
        new NumberCell(level.X),
        Wide(at.Removal),
        level.Removals.IsEmpty ? new MissingCell("nw")
            : Summary.Of(level.Removals).MeanEstimate().Value is { StandardError: > 0 } mean && double.IsFinite(mean.Interval().Half) ? new MeasuredCell(mean.Value, mean.Interval().Half)
            : new NumberCell(level.Removals.Average()),
        Wide(at.Uptake));

    private static Cell Wide(Measured value)
    {
        if (value.U > 0)
            return new MeasuredCell(value.Value, ExpandedUncertainty.Of(value).U);
        return new NumberCell(value.Value);
    }
}
