using Holdfast.Amounts;
using Holdfast.Fitting;
using Holdfast.Reports.Tables;
using Holdfast.Reports.Trails;

namespace Holdfast.Reports.StudyTables;

/// <summary>The parameters of fitted curves with their intervals, one row a parameter.</summary>
public static class EstimateTable
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["open"] = "the data set no limit on this side",
        ["nd"] = "not determined by these data",
    };

    /// <summary>One row a parameter; curves without parameters are left to the ranking, which has their reason.</summary>
    /// <param name="id">Short stable name of the table.</param>
    /// <param name="caption">What it shows.</param>
    /// <param name="fits">The fits.</param>
    /// <param name="series">Name of the series they were fitted to, for the trails of the parameters; null for none.</param>
    public static Table Of(string id, string caption, IEnumerable<FitResult> fits, string? series = null)
        => new(
            id,
            caption,
            [
                new Column("curve", "Curve") { NamesRows = true },
                new Column("parameter", "Parameter"),
                new Column("meaning", "Meaning"),
                new Column("estimate", "Estimate"),
                new Column("low", "95 % from"),
                new Column("high", "to"),
                new Column("unit", "Unit"),
            ],
            [.. RankingTable.Sorted(fits).SelectMany(f => f.Parameters.Select(p => One(f, p, series)))],
            Codes)
        {
            Notes = ["Estimate ± standard error; where none is given, the parameter ended on a bound or nothing was left over to judge by.", "Intervals by profile likelihood; one that reaches a bound of its curve ends there."],
        };

    private static Row One(FitResult fit, FittedParameter parameter, string? series)
    {
        var limits = parameter.Profile;
        return Row.Of(
            fit.Card.Name,
            parameter.Symbol,
            parameter.Definition.Meaning,
            Estimate(parameter) with { Address = series is null || !fit.IsFit ? null : FittedNumbers.Address(parameter.Symbol, series, fit.Card.Name) },
            limits is null ? new MissingCell("nd") : End(limits.Lower, limits, parameter.StandardError),
            limits is null ? new MissingCell("nd") : End(limits.Upper, limits, parameter.StandardError),
            UnitWords.Of(parameter.Unit));
    }

    /// <summary>An estimate as a cell: with its standard error, alone where nothing was left over to judge by, and none where the data do not determine it.</summary>
    /// <param name="parameter">The parameter.</param>
    internal static Cell Estimate(FittedParameter parameter) => parameter switch
    {
        { Value: var value } when !double.IsFinite(value) => new MissingCell("nd"),
        { StandardError: null } => new NumberCell(parameter.Value),
        { StandardError: { } se } when double.IsFinite(se) => new MeasuredCell(parameter.Value, se),
        _ => new MissingCell("nd"),
    };

    private static Cell End(ProfileLimit limit, ProfileInterval interval, double? error)
    {
        if (limit.Value is not { } value || !double.IsFinite(value))
            return new MissingCell("open");
        var half = interval is { Lower.Value: { } low, Upper.Value: { } high } && high > low ? (high - low) / 2 : error;
        return half > 0 && RoundedNumber.DecimalsFor(half.Value) is >= 0 and <= 5 and var decimals
            ? new NumberCell(value) { Decimals = decimals }
            : new NumberCell(value);
    }
}
