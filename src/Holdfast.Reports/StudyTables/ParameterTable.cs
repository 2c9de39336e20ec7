using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>Fitted curves with their parameters: one row a parameter, refused curves included with their reason.</summary>
public static class ParameterTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["nc"] = "not comparable: too few points for this many parameters",
        ["nd"] = "not determined by these data",
        ["na"] = "does not apply",
    };

    /// <summary>The fits of any number of series in one flat table for the terminal and for machines; the best curve of each series first.</summary>
    /// <param name="name">Short stable name of the table.</param>
    /// <param name="caption">What it shows.</param>
    /// <param name="fitted">Each series by its name, with its fits.</param>
    public static Table Of(string name, string caption, IEnumerable<(string Series, IReadOnlyList<FitResult> Fits)> fitted)
    {
        ArgumentNullException.ThrowIfNull(fitted);
        return new Table(
            name,
            caption,
            [
                new Column("series", "Series") { NamesRows = true },
                new Column("curve", "Curve"),
                new Column("parameter", "Parameter"),
                new Column("value", "Value"),
                new Column("unit", "Unit"),
                new Column("interval", "95 % profile interval"),
                new Column("n", "n"),
                new Column("s", "s"),
                new Column("lof", RichText.Parse("lack of fit *p*")),
                new Column("aicc", "AICc"),
                new Column("delta", "ΔAICc"),
                new Column("remark", "Remark"),
            ],
            [.. fitted.SelectMany(s => Rows(s.Series, s.Fits))],
            Codes)
        {
            Notes =
            [
                "Value ± standard error. n counts vessels. s is the residual standard deviation in the unit of what was fitted, a share of it where the error is relative.",
                "AICc counts the error variance as a parameter; differences below 2 tell nothing apart.",
            ],
        };
    }

    private static IEnumerable<Row> Rows(string series, IReadOnlyList<FitResult> fits)
    {
        var sorted = RankingTable.Sorted(fits);
        var best = sorted.Where(f => f.IsFit && f.Aicc is not null).Select(f => f.Aicc).FirstOrDefault();
        return sorted.SelectMany(f => Rows(series, f, best));
    }

    private static IEnumerable<Row> Rows(string series, FitResult fit, double? best)
    {
        if (fit.Parameters.Count == 0)
        {
            yield return Row.Of(
                series, fit.Card.Name, "", new MissingCell("nd"), "", new MissingCell("nd"), new NumberCell(fit.N) { Decimals = 0 }, new MissingCell("nd"), new MissingCell("na"),
                new MissingCell("nd"), new MissingCell("nd"), Remark(fit));
            yield break;
        }

        for (var j = 0; j < fit.Parameters.Count; j++)
        {
            var parameter = fit.Parameters[j];
            var first = j == 0;
            yield return Row.Of(
                series, fit.Card.Name,
                parameter.Symbol,
                Value(parameter),
                parameter.Unit,
                parameter.IsDetermined ? Interval(parameter) : new MissingCell("nd"),
                new NumberCell(fit.N) { Decimals = 0 },
                first && fit.ResidualSd is { } s && double.IsFinite(s) ? new NumberCell(s) : new MissingCell("na"),
                first && fit.LackOfFit is { } lof ? P(lof.Test.P) : new MissingCell("na"),
                !first ? new MissingCell("na") : fit.Aicc is { } aicc && double.IsFinite(aicc) ? new NumberCell(aicc) { Decimals = 1 } : new MissingCell("nc"),
                !first ? new MissingCell("na") : fit.Aicc - best is { } delta && double.IsFinite(delta) ? new NumberCell(delta) { Decimals = 1 } : new MissingCell("nc"),
                first ? Remark(fit) : "");
        }
    }

    /// <summary>
    /// A parameter as a number: with its standard error where both limits were found, plain where one side is open, and not at all where the data set no
    /// limit on either side.
    /// </summary>
    /// <param name="parameter">The parameter.</param>
    public static Cell Value(FittedParameter parameter)
    {
        ArgumentNullException.ThrowIfNull(parameter);
        return !parameter.IsDetermined || !double.IsFinite(parameter.Value) ? new MissingCell("nd")
            : parameter.StandardError is { } se && double.IsFinite(se) && parameter.Profile is null or { IsClosed: true } ? new MeasuredCell(parameter.Value, se)
            : new NumberCell(parameter.Value);
    }

    /// <summary>A profile interval in words; an open end is said to be open.</summary>
    /// <param name="parameter">The parameter.</param>
    public static string Interval(FittedParameter parameter)
    {
        ArgumentNullException.ThrowIfNull(parameter);
        if (parameter.Profile is not { } profile)
            return "";
        var low = profile.Lower.Value is { } l && double.IsFinite(l) ? RoundedNumber.WithoutUncertainty(l).PlusMinus : "no lower limit";
        var high = profile.Upper.Value is { } h && double.IsFinite(h) ? RoundedNumber.WithoutUncertainty(h).PlusMinus : "no upper limit";
        return $"{low} to {high}";
    }

    private static Cell P(double p) => !double.IsFinite(p) ? new MissingCell("nd") : p < 0.001 ? "< 0.001" : p.ToString("0.000", CultureInfo.InvariantCulture);

    private static string Remark(FitResult fit) => fit.Findings.Count == 0 ? "" : fit.Findings[0].Sentence;
}
