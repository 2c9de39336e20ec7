using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>What fitted curves predict, with intervals: one row a number, withheld ones with their reason.</summary>
public static class PredictionTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal) { ["wh"] = "withheld, for the reason in the remark" };

    /// <summary>The usual predictions of one series, for its own start concentration and dose; null where no curve predicts.</summary>
    /// <param name="id">Short stable name of the table.</param>
    /// <param name="fitted">The series.</param>
    internal static Table? Of(string id, FittedSeries fitted)
        => Predictions.Of(fitted.Fits, PredictionQuestion.For(fitted.Series)) is { IsEmpty: false } predicted
            ? Of(id, $"What the curves of {fitted.Series.Name} predict", [(fitted.Series.Name, predicted)]) : null;

    /// <summary>The predictions of any number of series in one table.</summary>
    /// <param name="id">Short stable name of the table.</param>
    /// <param name="caption">What it shows.</param>
    /// <param name="predicted">Each series by its name, with what its curves predict.</param>
    public static Table Of(string id, string caption, IEnumerable<(string Series, IReadOnlyList<Prediction> Predictions)> predicted)
    {
        ArgumentNullException.ThrowIfNull(predicted);
        return new(
            id,
            caption,
            [
                new Column("series", "Series") { NamesRows = true },
                new Column("curve", "Curve"),
                new Column("quantity", "Predicted"),
                new Column("at", "At"),
                new Column("for", "For"),
                new Column("value", "Value"),
                new Column("low", "95 % from"),
                new Column("high", "to"),
                new Column("unit", "Unit"),
                new Column("remark", "Remark"),
            ],
            [.. predicted.SelectMany(s => s.Predictions.Select(p => One(s.Series, p)))],
            Codes)
        {
            Notes =
            [
                "Value ± standard error. Start concentration and dose are taken as exact; a new vessel carries the scatter from vessel to vessel on top of the curve's own uncertainty.",
                "Only inside what was measured. Where several curves follow the data alike, each predicts for itself: their differences belong to the uncertainty.",
            ],
        };
    }

    private static Row One(string series, Prediction p) => Row.Of(
        series,
        p.Curve,
        p.Quantity,
        p is { Start: { } start, Dose: { } dose } ? $"{InWords.Setting(start, "mg/L")}, {InWords.Setting(dose, "g/L")}" : "",
        p.OfWords,
        p.Value is { } value ? new MeasuredCell(value.Value, value.StandardError) : new MissingCell("wh"),
        End(p.Value?.Lower, p.Value),
        End(p.Value?.Upper, p.Value),
        UnitWords.Of(p.Unit),
        p.Why ?? "");

    // A limit is shown to the digits that the interval carries.
    private static Cell End(double? limit, Predicted? value)
        => limit is not { } end || value is null ? new MissingCell("wh")
            : value.Upper > value.Lower && RoundedNumber.DecimalsFor((value.Upper - value.Lower) / 2) is >= 0 and <= 5 and var decimals
                ? new NumberCell(end) { Decimals = decimals }
                : new NumberCell(end);
}
