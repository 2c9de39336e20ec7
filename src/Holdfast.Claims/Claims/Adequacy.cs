using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Statistics;

namespace Holdfast.Claims;

/// <summary>
/// Can these data speak? Asked before any best curve, bend, capacity or mechanism: vessels whose uptake was measured at all, a trend, a scatter that leaves something to
/// describe, and parameters that the data fix. Where one fails neither "holds" nor "contradicted" is said: noise contradicts nothing.
/// </summary>
/// <remarks>
/// A vessel is usable when its concentration after contact lies above the detection limit and its removal above 1.645 of its standard uncertainty (L. A. Currie's critical
/// value, from memory). The trend is Jonckheere–Terpstra's over the levels. The limits of scatter and of points for a curve are set by simulation (docs/verdicts.md).
/// </remarks>
public static class Adequacy
{
    /// <summary>The limits of the gates.</summary>
    public static class Limits
    {
        /// <summary>Points beyond the parameters of a curve before AICc may decide about it.</summary>
        public const int PointsBeyondParameters = 5;

        /// <summary>Largest p of the rising trend of uptake; no unit.</summary>
        public const double TrendP = 0.01;

        /// <summary>Largest relative standard deviation of the uptake of vessels at one setting; no unit.</summary>
        public const double Scatter = 0.25;

        /// <summary>Standard uncertainties by which a removal exceeds 0 when something was removed (one-sided 95 %).</summary>
        public const double Removed = 1.645;

        /// <summary>Smallest share of a series' vessels that are usable; no unit.</summary>
        public const double UsableShare = 0.5;
    }

    /// <summary>Whether a curve of so many parameters may be judged by AICc on so many points.</summary>
    /// <param name="n">Points.</param>
    /// <param name="parameters">Parameters of the curve.</param>
    public static bool Comparable(int n, int parameters) => n >= parameters + Limits.PointsBeyondParameters;

    /// <summary>What must be so before anything is said of the shape of a series, and of one curve in it.</summary>
    /// <param name="fitted">The series with its fits.</param>
    /// <param name="fit">The curve that the claim is about, or null for none.</param>
    public static ImmutableArray<Gate> Of(FittedSeries fitted, FitResult? fit)
    {
        ArgumentNullException.ThrowIfNull(fitted);
        ImmutableArray<Setting> levels = Setting.Of(fitted.Series, v => v.Uptake);
        return
        [
            Usable(fitted.Series, fit?.P ?? 0),
            Trend(levels),
            Scattered(levels, fitted.Best),
            .. fit is null ? [] : new[] { Fixed(fit) },
        ];
    }

    /// <summary>Enough vessels whose uptake was measured at all.</summary>
    /// <param name="series">The series.</param>
    /// <param name="parameters">Parameters of the curve in question; 0 for none.</param>
    public static Gate Usable(Series series, int parameters = 0)
    {
        ArgumentNullException.ThrowIfNull(series);
        Vessel[] vessels = [.. series.Vessels];
        return Usable(vessels.Count(IsUsable), vessels.Length, parameters);
    }

    /// <summary>Enough vessels whose uptake was measured at all, from their number.</summary>
    /// <param name="usable">Usable vessels.</param>
    /// <param name="vessels">Vessels of the series.</param>
    /// <param name="parameters">Parameters of the curve in question; 0 for none.</param>
    public static Gate Usable(int usable, int vessels, int parameters)
    {
        var needed = Math.Max(parameters == 0 ? 1 : parameters + Limits.PointsBeyondParameters, (int)Math.Ceiling(Limits.UsableShare * vessels));
        return Mute("usable vessels", usable >= needed, $"{Phrase.Count(usable, "vessel")} of {Phrase.Number(vessels)} lie above the detection limit with a removal above its uncertainty; {Phrase.Number(needed)} are needed");
    }

    /// <summary>Uptake rises over the levels.</summary>
    /// <param name="levels">Uptakes in mg/g at each level, in rising order.</param>
    public static Gate Trend(ImmutableArray<Setting> levels)
    {
        var p = levels.Length < 2 ? null : JonckheereTerpstra.Of([.. levels.Select(l => l.Group(""))]).Value?.PIncreasing;
        return Mute("trend", p <= Limits.TrendP, p is { } known
            ? $"uptake shows no rise over the {Phrase.Number(levels.Length)} levels (Jonckheere–Terpstra, {Phrase.P(known)}; {Phrase.Number(Limits.TrendP)} is needed)"
            : "the levels give no trend to judge");
    }

    /// <summary>Vessels at one setting agree well enough for a curve to mean something; without replicates the distances from the best curve stand in.</summary>
    /// <param name="levels">Uptakes in mg/g at each level.</param>
    /// <param name="best">The best curve of the series, or null.</param>
    public static Gate Scattered(ImmutableArray<Setting> levels, FitResult? best)
        => Scattered(Scatter(levels) ?? Distance(best), levels.Any(l => l.Values.Length > 1));

    /// <summary>The same from the scatter itself.</summary>
    /// <param name="scatter">Relative standard deviation of one vessel's uptake; no unit; null when not known.</param>
    /// <param name="replicated">Whether it comes from vessels at one setting.</param>
    public static Gate Scattered(double? scatter, bool replicated)
        => Mute("scatter", scatter <= Limits.Scatter, scatter is { } s && double.IsFinite(s)
            ? $"{(replicated ? "vessels at one setting scatter" : "the points scatter about the best curve")} by {Phrase.With(100 * s, "%")} of the uptake; at most {Phrase.With(100 * Limits.Scatter, "%")} leave a curve to be seen"
            : "the scatter of the vessels is not known");

    /// <summary>The data fix each parameter of the curve: away from its bounds, with an interval that has two ends and leaves out 0.</summary>
    /// <param name="fit">The curve.</param>
    public static Gate Fixed(FitResult fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        string[] open = [.. fit.Parameters.Where(p => !IsFixed(p)).Select(p => p.Symbol)];
        return Mute("parameters", open.Length == 0 && fit.Parameters.Count > 0, $"the data set no limits to {(open.Length == 0 ? "the parameters" : Phrase.Listed(open))} of {fit.Card.Name}");
    }

    /// <summary>Whether a vessel's uptake was measured at all.</summary>
    /// <param name="vessel">The vessel.</param>
    public static bool IsUsable(Vessel vessel)
        => vessel is { Uptake: not null, Removal: { } removal, End: { Value: { } left } end }
            && left.Value > Math.Max(0, end.DetectionLimit ?? 0)
            && removal.Value > Limits.Removed * removal.U;

    private static Gate Mute(string name, bool passed, string sentence) => new(name, passed, sentence) { Silences = true };

    private static bool IsFixed(FittedParameter parameter)
        => !parameter.OnBound && (parameter.Profile is { } profile
            ? profile is { Lower.Kind: LimitKind.Closed, Upper.Kind: LimitKind.Closed }
            : parameter.Wald is { } wald && !wald.Contains(0));

    // Pooled over the levels with replicates, each by its own mean: a vessel's scatter is in proportion to what it took up.
    private static double? Scatter(ImmutableArray<Setting> levels)
    {
        double sum = 0, freedom = 0;
        foreach (var level in levels.Where(l => l.Values.Length > 1))
        {
            if (!(level.Mean > 0))
                return double.PositiveInfinity;
            sum += level.Values.Sum(v => (v - level.Mean) * (v - level.Mean)) / (level.Mean * level.Mean);
            freedom += level.Values.Length - 1;
        }

        return freedom > 0 ? Math.Sqrt(sum / freedom) : null;
    }

    private static double? Distance(FitResult? best)
        => best is { Nu: > 0 } && best.Fitted.All(f => f > 0)
            ? Math.Sqrt(best.Residuals.Zip(best.Fitted, (r, f) => r / f * (r / f)).Sum() / best.Nu)
            : null;
}
