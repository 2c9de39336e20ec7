using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>The curve with the lowest AICc of each series with its parameters; every other curve stands in the table of its series.</summary>
internal static class BestCurveTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["open"] = "the data set no limit on this side",
        ["nd"] = "not determined by these data",
        ["nt"] = "not tested",
    };

    /// <summary>One row a parameter.</summary>
    /// <param name="id">Short stable name of the table.</param>
    /// <param name="caption">What it shows.</param>
    /// <param name="fitted">Series with a best curve.</param>
    public static Table Of(string id, string caption, IEnumerable<FittedSeries> fitted)
        => new(
            id,
            caption,
            [
                new Column("series", "Series") { NamesRows = true },
                new Column("curve", "Curve"),
                new Column("others", "Not told apart from it"),
                new Column("n", RichText.Parse("*n*")) { Spoken = "number of vessels" },
                new Column("lof", RichText.Parse("Lack of fit *p*")),
                new Column("parameter", "Parameter"),
                new Column("estimate", "Estimate"),
                new Column("interval", "95 % interval"),
                new Column("unit", "Unit"),
            ],
            [.. fitted.SelectMany(Rows)],
            Codes)
        {
            Notes = ["Estimate ± standard error; intervals by profile likelihood; n counts vessels. Curves within 2 units of AICc are not told apart."],
        };

    private static IEnumerable<Row> Rows(FittedSeries fitted)
    {
        var best = fitted.Best!;
        var others = fitted.Undistinguished.Count(f => f.Card.Name != best.Card.Name);
        for (var i = 0; i < best.Parameters.Count; i++)
        {
            var parameter = best.Parameters[i];
            yield return Row.Of(
                i == 0 ? fitted.Series.Name : "",
                i == 0 ? best.Card.Name : "",
                i > 0 ? "" : others == 0 ? "none" : InWords.Count(others, "curve"),
                i == 0 ? new NumberCell(best.N) { Decimals = 0 } : "",
                i > 0 ? "" : best.LackOfFit is not { Test.P: var p } || !double.IsFinite(p) ? new MissingCell("nt") : p < 0.001 ? "< 0.001" : new NumberCell(p) { Decimals = 3 },
                new TextCell(Symbol(parameter.Symbol)),
                ParameterTable.Value(parameter),
                parameter.IsDetermined ? Interval(parameter) : new MissingCell("nd"),
                UnitWords.Of(parameter.Unit));
        }
    }

    // Both ends to the digits that the width of the interval carries; an open end is said to be open.
    private static string Interval(FittedParameter parameter)
        => parameter.Profile is { Lower.Value: { } low, Upper.Value: { } high } && double.IsFinite(low) && double.IsFinite(high) && low < high
            ? RoundedNumber.Interval(low, high) : ParameterTable.Interval(parameter);

    // The first letter is the symbol; what follows is lowered.
    private static RichText Symbol(string symbol)
        => new(symbol.Length == 1 ? [new RichRun(symbol, Italic: true)] : [new RichRun(symbol[..1], Italic: true), new RichRun(symbol[1..], Shift: Shift.Sub)]);
}
