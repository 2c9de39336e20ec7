using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Fitting.Diagnostics;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>The parameters of fitted curves with their intervals by profile and by resampling, side by side.</summary>
public static class ResampleTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["open"] = "the data set no limit on this side",
        ["nd"] = "not determined by these data",
    };

    /// <summary>One row a parameter.</summary>
    /// <param name="id">Short stable name of the table.</param>
    /// <param name="caption">What it shows.</param>
    /// <param name="fits">Each series with its resampled fit.</param>
    public static Table Of(string id, string caption, IReadOnlyList<(string Series, ResampledFit Second)> fits)
    {
        ArgumentNullException.ThrowIfNull(fits);
        return new(
            id,
            caption,
            [
                new Column("series", "Series") { NamesRows = true },
                new Column("curve", "Curve"),
                new Column("parameter", "Parameter"),
                new Column("estimate", "Estimate"),
                new Column("profile_low", "95 % by profile from"),
                new Column("profile_high", "to"),
                new Column("resampled_low", "95 % by resampling from"),
                new Column("resampled_high", "to "),
                new Column("unit", "Unit"),
            ],
            [.. fits.SelectMany(f => f.Second.Fit.Parameters.Zip(f.Second.Resamples.Parameters, (p, r) => One(f.Series, f.Second.Fit, p, r)))],
            Codes)
        {
            Notes =
            [
                "Estimate ± standard error. By resampling: ends from the resamples' own (b* − b)/se*, which hold where few points make plain percentiles too narrow.",
                .. fits.SelectMany(f => f.Second.Remarks.Select(r => (RichText)$"{f.Series}: {r}")),
            ],
        };
    }

    private static Row One(string series, FitResult fit, FittedParameter parameter, ResampledParameter drawn)
    {
        var decimals = drawn.Studentised is { } second && second.High > second.Low ? RoundedNumber.DecimalsFor((second.High - second.Low) / 2) : (int?)null;
        Cell End(double? value, string missing)
            => value is not { } known || !double.IsFinite(known) ? new MissingCell(missing)
                : decimals is >= 0 and <= 5 ? new NumberCell(known) { Decimals = decimals } : new NumberCell(known);
        return Row.Of(
            series,
            fit.Card.Name,
            parameter.Symbol,
            parameter.StandardError is { } se && double.IsFinite(se) ? new MeasuredCell(parameter.Value, se) : End(parameter.Value, "nd"),
            End(parameter.Profile?.Lower.Value, "open"),
            End(parameter.Profile?.Upper.Value, "open"),
            End(drawn.Studentised?.Low, "nd"),
            End(drawn.Studentised?.High, "nd"),
            UnitWords.Of(parameter.Unit));
    }
}
