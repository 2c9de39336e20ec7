using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;

namespace Holdfast.Reports.Trails;

/// <summary>
/// Parameters of the curves fitted to uptake over time ("k2:KIN-05@pseudo-second-order"), uptake over concentration ("qm:ISO-298@langmuir") and the signal
/// over quencher ("Ksv:FLUOR@stern-volmer").
/// </summary>
internal sealed class FittedNumbers : IDerivedNumbers
{
    /// <inheritdoc/>
    public IEnumerable<NumberTrail> Of(Evidence evidence)
    {
        foreach (var fitted in evidence.Isotherms)
        {
            foreach (var trail in Parameters(evidence, fitted.Series.Name, fitted.Fits, "isotherm:", "Ce", "q", id => "q:" + id))
                yield return trail;
        }

        foreach (var fitted in evidence.Kinetics)
        {
            foreach (var trail in Parameters(evidence, fitted.Series.Name, fitted.Fits, "rate:", "t", "q", id => "q:" + id))
                yield return trail;
        }

        foreach (var series in Sensing.Of(evidence).Series)
        {
            foreach (var trail in Parameters(evidence, series.Name, series.Fits, "law:", "quencher", "F", id => "F:" + id))
                yield return trail;
        }
    }

    /// <summary>Address of a fitted parameter.</summary>
    /// <param name="symbol">Its symbol on the card of the curve.</param>
    /// <param name="series">Name of the series.</param>
    /// <param name="curve">Name of the curve.</param>
    public static string Address(string symbol, string series, string curve) => $"{symbol}:{series}@{DerivedTrails.Short(curve)}";

    /// <summary>The parameters of a fit as inputs of a number derived from it.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="parameters">Its parameters with their uncertainties.</param>
    /// <param name="series">Name of the series it was fitted to.</param>
    public static IEnumerable<TrailInput> Inputs(FitResult fit, IReadOnlyList<Measured> parameters, string series)
        => parameters.Select((p, j) => new TrailInput(fit.Parameters[j].Symbol, p, fit.Parameters[j].Unit, $"{fit.Card.Name} fit of {series}", Address(fit.Parameters[j].Symbol, series, fit.Card.Name)));

    private static IEnumerable<NumberTrail> Parameters(
        Evidence evidence, string series, IEnumerable<FitResult> fits, string kind, string x, string y, Func<string, string?> trail)
    {
        ImmutableArray<Reading>? readings = null;
        foreach (var fit in fits.Where(f => f.IsFit))
        {
            var end = DerivedTrails.Fit(fit, x, y, trail);
            readings ??= DerivedTrails.Readings(evidence, fit.Points.Ids);
            var measured = fit.MeasuredParameters(kind + series, $"{fit.Card.Name} fit of {series}");
            foreach (var (parameter, j) in fit.Parameters.Select((p, j) => (p, j)).Where(p => double.IsFinite(p.p.Value)))
            {
                var interval = ParameterTable.Interval(parameter);
                yield return new(
                    Address(parameter.Symbol, series, fit.Card.Name), $"{parameter.Definition.Meaning}, {fit.Card.Name} fit of {series}", measured.Count > j ? measured[j] : parameter.Value,
                    parameter.Unit, fit.Card.Formula, [], readings.Value)
                {
                    Samples = [.. fit.Points.Ids],
                    Fit = end with { How = end.How + (interval.Length == 0 ? "" : $"; 95 % by profile likelihood {interval}") + (parameter.OnBound ? "; it ended on a bound of the curve" : "") },
                };
            }
        }
    }
}
