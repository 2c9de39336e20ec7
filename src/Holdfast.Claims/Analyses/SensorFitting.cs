using System.Collections.Immutable;
using Holdfast.Calibration;
using Holdfast.Fitting;
using Holdfast.Fluorescence;
using Holdfast.Statistics;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Analyses;

/// <summary>Fits the quenching laws to a series and reads its line.</summary>
internal static class SensorFitting
{
    private const int MostSteps = 500;

    /// <summary>A series with its laws, line, plots and findings.</summary>
    /// <param name="series">The series as gathered.</param>
    /// <param name="signalUnit">Unit of the signal.</param>
    public static SensorSeries Work(SensorSeries series, string signalUnit)
    {
        var findings = series.Findings.ToBuilder();
        var q = Array.ConvertAll([.. series.Samples], s => s.Quencher);
        var f = Array.ConvertAll([.. series.Samples], s => s.Signal.Value);
        var codes = Array.ConvertAll([.. series.Samples], s => s.Code);
        var points = Quenching.PointsOf(q, f, "µmol/L", signalUnit, codes);
        findings.AddRange(points.Findings);
        if (points.Value is { } over)
        {
            var fits = Quenching.All.Select(law => law.FitInRoom(over, WithProfiles)).ToImmutableArray();
            if (Sites(series) is { } sites)
            {
                var scaled = Quenching.PointsOf([.. q.Select(v => v / sites)], f, "", signalUnit, codes).Value!;
                fits = fits.AddRange(Quenching.OverSiteConcentration.Select(law => law.FitInRoom(scaled, WithProfiles)));
            }

            series = series with { Fits = fits, Ranking = Quenching.Compare(fits) };
        }

        if (series.F0 is not { } f0)
            return series with { Findings = findings.ToImmutable() };
        var ratios = series.Ratios();
        if (series.Levels.Length > 1 && ratios.Count == q.Length)
        {
            ImmutableArray<QuenchingLine?> plots = [QuenchingPlots.Ratio(q, f, f0).Value, QuenchingPlots.DoubleReciprocal(q, f, f0).Value, QuenchingPlots.DoubleLogarithmic(q, f, f0).Value];
            var range = LinearRange.Of(ratios);
            if (range.Longest is { } straight)
                findings.AddRange(QuenchingPlots.Ratio([.. straight.Standards.Select(r => r.Level)], [.. straight.Standards.Select(r => f0 / r.Signal)], f0).Findings);
            series = series with
            {
                Range = range,
                TwoLines = JoinedLines.Of(q, [.. ratios.Select(r => r.Signal)]).Value,
                Plots = [.. plots.OfType<QuenchingLine>()],
            };
        }

        if (series.Limit() is { } limit)
            findings.AddRange(SensorLimits.Says(limit, series.Blanks.Length, series.Levels.Where(l => l > 0).Select(l => (double?)l).Min(), "µmol/L"));
        return series with { Findings = findings.ToImmutable() };
    }

    /// <summary>Stern–Volmer constant of some vessels, one over µmol/L.</summary>
    /// <param name="samples">Vessels.</param>
    /// <param name="of">What was read, in words.</param>
    public static Estimate? Constant(IReadOnlyList<SensorSample> samples, string of)
    {
        if (samples.Select(s => s.Quencher).Distinct().Count() < 2
            || Quenching.PointsOf([.. samples.Select(s => s.Quencher)], [.. samples.Select(s => s.Signal.Value)], "µmol/L", "").Value is not { } points)
            return null;
        var fit = Fit.Of<SternVolmer>(points, Options);
        return fit.IsFit && fit["K"].StandardError is { } se and > 0 ? new($"Stern-Volmer fit of {of}", fit["K"].Value, se, fit.Nu, fit.N) : null;
    }

    private static FitOptions WithProfiles => Options with { Profiles = true };

    private static FitOptions Options => new() { Profiles = false, MostIterations = MostSteps };

    // One preparation is read at one concentration of sites; where it changes, no law over Q/H0 applies.
    private static double? Sites(SensorSeries series)
        => series.Samples.Select(s => s.Sample.Number(FluorescenceProperties.Sites)).Distinct().ToArray() is [{ } one and > 0] ? one : null;
}
