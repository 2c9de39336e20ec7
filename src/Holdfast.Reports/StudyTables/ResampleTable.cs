using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Fitting.Diagnostics;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>The parameters of fitted curves with their intervals by t, by profile and by resampling, side by side.</summary>
public static class ResampleTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["open"] = "the data set no limit on this side",
        ["nd"] = "not determined by these data",
        ["na"] = "not worked out for this curve",
        ["few"] = FormattableString.Invariant($"withheld: percentiles of fewer than {Bootstrap.FewestForPercentiles} points are too narrow"),
    };

    /// <summary>One row a parameter.</summary>
    /// <param name="id">Short stable name of the table.</param>
    /// <param name="caption">What it shows.</param>
    /// <param name="fits">The resampled curves.</param>
    public static Table Of(string id, string caption, IReadOnlyList<ResampledFit> fits)
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
                new Column("unit", "Unit"),
                new Column("t_low", RichText.Parse("95 % by *t* from")),
                new Column("t_high", "to") { Spoken = "95 % by t to" },
                new Column("profile_low", "95 % by profile from"),
                new Column("profile_high", "to") { Spoken = "95 % by profile to" },
                new Column("resampled_low", "95 % by resampling from"),
                new Column("resampled_high", "to") { Spoken = "95 % by resampling to" },
                new Column("percentile_low", "95 % of the resamples from"),
                new Column("percentile_high", "to") { Spoken = "95 % of the resamples to" },
            ],
            [.. fits.SelectMany(f => f.Curve.Fit.Parameters.Zip(f.Resamples.Parameters, (p, r) => One(f.Curve, p, r)))],
            Codes)
        {
            Notes =
            [
                "Estimate ± standard error. By resampling: ends from the resamples' own (b* − b)/se*, which hold where few points make plain percentiles too narrow.",
                .. fits.Take(1).Select(f => (RichText)(FormattableString.Invariant($"{f.Resamples.Count} resamples of each curve, seed {f.Resamples.Seed}: residuals, inflated for the ")
                    + "parameters they paid for, dealt out anew over the fitted curve. Of an isotherm they are residuals of Ce, and each q follows its Ce.")),
                .. fits.Select(f => (f.Curve, Said: string.Join(" ", f.Remarks))).Where(f => f.Said.Length > 0).Select(f => (RichText)$"{f.Curve.Series}, {f.Curve.Name}: {f.Said}"),
                "Where nothing is said of a curve, every resample could be fitted, and its intervals by profile (else by t) and by resampling agree within a third of the wider one.",
            ],
        };
    }

    private static Row One(CandidateCurve curve, FittedParameter parameter, ResampledParameter drawn)
    {
        var decimals = drawn.Studentised is { } second && second.High > second.Low ? RoundedNumber.DecimalsFor((second.High - second.Low) / 2) : (int?)null;
        Cell End(double? value, string missing)
            => value is not { } known || !double.IsFinite(known) ? new MissingCell(missing)
                : decimals is >= 0 and <= 5 ? new NumberCell(known) { Decimals = decimals } : new NumberCell(known);
        var noProfile = parameter.Profile is null ? "na" : "open";
        var noPercentile = curve.Fit.N < Bootstrap.FewestForPercentiles ? "few" : "nd";
        return Row.Of(
            curve.Series,
            curve.Name,
            parameter.Symbol,
            parameter.StandardError is { } se && double.IsFinite(se) ? new MeasuredCell(parameter.Value, se) : End(parameter.Value, "nd"),
            UnitWords.Of(parameter.Unit),
            End(parameter.Wald?.Low, "nd"),
            End(parameter.Wald?.High, "nd"),
            End(parameter.Profile?.Lower.Value, noProfile),
            End(parameter.Profile?.Upper.Value, noProfile),
            End(drawn.Studentised?.Low, "nd"),
            End(drawn.Studentised?.High, "nd"),
            End(drawn.Percentile?.Low, noPercentile),
            End(drawn.Percentile?.High, noPercentile));
    }
}
