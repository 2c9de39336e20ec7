using System.Collections.Immutable;
using Holdfast.Calibration;
using Holdfast.Claims.Analyses;
using Holdfast.Fluorescence;
using Holdfast.Statistics;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "The sensor responds": F0/F rises with the analyte, and at the lowest level claimed the signal lost is more than blanks lose by chance
/// after what a vessel without analyte lost in the same time is taken off.
/// </summary>
/// <remarks>Slope by least squares, 95 % interval with n − 2 degrees of freedom; critical value t(0.95) s0 √(1 + 1/n0) of the blanks (L. A. Currie 1995, from memory).</remarks>
public sealed class SensorResponds : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest levels.</summary>
        public const int Levels = 5;

        /// <summary>Fewest independent blanks.</summary>
        public const int Blanks = 7;

        /// <summary>Fewest vessels by which a response may be denied.</summary>
        public const int EnoughToDeny = 8;
    }

    /// <summary>The rule's id, for claims that stand on it.</summary>
    internal const string RuleId = "sensor-responds";


    /// <inheritdoc/>
    public string Id => RuleId;

    /// <inheritdoc/>
    public string Wording => "The sensor of {series} responds to the analyte.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own => [new("at", "lowest level claimed", "5 µmol/L", null)];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => Sensing.Of(evidence).Series.Select(s => Claim.Raised(RuleId, ("series", s.Name)));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var sensing = Sensing.Of(evidence);
        var series = sensing.SeriesNamed(claim.Words("series"));
        var decision = series is null || Response(series, sensing, SensorAmount.In(claim, "at", evidence)) is not { } response
            ? Decision.Missing("No quenching series with blanks or a level without quencher was found. Read five levels, three vessels each, and ten blanks.", Plan)
            : Decide(response);
        if (series?.TakenUp is { } taken)
        {
            decision = decision with
            {
                Warnings = decision.Warnings.Add(taken.Sentence),
                Questions = decision.Questions.Add(new("Q44", "Is the axis the added or the free concentration?")),
            };
        }

        return decision.On(claim, Phrase.Sentence(claim, Wording, ("series", series?.Name ?? claim.Words("series") ?? "the sensor")), SensorScope.Of(series), SensorScope.Codes(series));
    }

    /// <summary>Judges a response.</summary>
    /// <param name="response">What decides.</param>
    public static Decision Decide(SensorResponse response)
    {
        ArgumentNullException.ThrowIfNull(response);
        var slope = response.Slope.Interval(Confidence.Level);
        // The drift was read as often as a blank: the difference of the two scatters by the root of 2 more than either.
        var net = response.Response - Math.Abs(response.Drift ?? 0);
        var ruling = (slope.Contains(0) && response.Slope.N >= Limits.EnoughToDeny) || Math.Abs(response.Drift ?? 0) >= response.TopResponse ? Ruling.Contradicted
            : slope.Low > 0 && response.Drift is not null && net > Math.Sqrt(2) * response.Critical ? Ruling.Holds
            : Ruling.NotShownYet;
        var critical = response.Critical is { } c ? Phrase.With(100 * c, "%") : "not known, for lack of blanks";
        var drift = response.Drift is { } d ? Phrase.With(100 * Math.Abs(d), "%") : "not known";
        return new Decision(
            ruling,
            $"F0/F rises by {Phrase.With(response.Slope.Value, "L/µmol")} ({Phrase.Interval(slope, "L/µmol")}). At {Phrase.With(response.Level, SensorAmount.Unit)} {Phrase.With(100 * response.Response, "%")} of the signal is lost; "
                + $"drift over the series is {drift}, and blanks lose {critical} by chance; n = {Phrase.Count(response.Slope.N, "vessel")}.",
            "slope of F0/F, 95 % interval; signal lost against the critical value of the blanks")
        {
            Numbers =
            [
                Deciding.Of("slope of F0/F", response.Slope, Confidence.Level, "L/µmol"),
                Deciding.Plain($"signal lost at {Phrase.With(response.Level, SensorAmount.Unit)}", 100 * response.Response, "%"),
                .. response.Drift is { } lost ? [Deciding.Plain("drift over the series", 100 * lost, "%")] : Array.Empty<Deciding>(),
                .. response.Critical is { } chance ? [Deciding.Plain("critical loss of the blanks", 100 * chance, "%")] : Array.Empty<Deciding>(),
            ],
            Gates =
            [
                new("levels", response.Levels >= Limits.Levels, $"{Phrase.Count(response.Levels, "level")} were read; {Limits.Levels} are needed"),
                new("blanks", response.Blanks >= Limits.Blanks, $"{Phrase.Count(response.Blanks, "separate blank")} were read; {Limits.Blanks} are needed"),
            ],
            Warnings = response.Rising ? ["The levels were read in rising order: level and time go together."] : [],
            Questions = response is { Rising: true, Drift: null } ? [new("Q43", "Levels rose with time and no drift vessel was read: how do you tell analyte from time?")] : [],
            Next = Plan,
        };
    }

    private static NextExperiment Plan { get; } = new(
        "Read 10 blanks between the levels, the levels in random order from 3 separate dispersions, and one vessel without analyte over the same time.", 3, [],
        "three dispersions, ten blanks, one drift vessel (common practice)");

    private static SensorResponse? Response(SensorSeries series, Sensing sensing, double? at)
    {
        if (series.F0 is not { } f0 || series.LineTo() is not { } line || line.Line.Coefficient(1) is not { StandardError: > 0 } slope)
            return null;
        double Lost(double level) => 1 - series.Samples.Where(s => s.Quencher.Equals(level)).Average(s => s.Signal.Value) / f0;
        var detection = series.Limit()?.Value ?? 0;
        double[] levels = [.. series.Levels.Where(l => l > 0)];
        if (levels.Length == 0)
            return null;
        var level = at is { } named ? levels.MinBy(l => Math.Abs(l - named)) : levels.Where(l => l >= detection).DefaultIfEmpty(levels[^1]).First();

        // With a constant of 1 the critical value of the blanks is a share of the signal.
        var critical = series.Blanks.Length > 1 && series.Blanks.All(b => b.Signal.Value > 0)
            ? SensorLimits.OfConstant([.. series.Blanks.Select(b => b.Signal.Value)], 1).FirstOrDefault(l => l.Definition == LimitDefinition.CriticalOfBlanks)?.Value
            : null;
        return new(
            slope, level, Lost(level), Lost(levels[^1]), critical, sensing.Drifts.Select(d => (double?)d.Control.LossBy(d.Control.Longest).Value).MaxBy(d => Math.Abs(d ?? 0)),
            series.Levels.Length, series.Blanks.Length, series.IsInRisingOrder);
    }
}

/// <summary>What decides whether a sensor responds.</summary>
/// <param name="Slope">Slope of F0/F, one over µmol/L.</param>
/// <param name="Level">Lowest level claimed, µmol/L.</param>
/// <param name="Response">Share of the signal lost there; no unit.</param>
/// <param name="TopResponse">Share lost at the highest level; no unit.</param>
/// <param name="Critical">Share that the blanks lose by chance once in twenty; null without blanks; no unit.</param>
/// <param name="Drift">Share that a vessel without analyte lost over the series; null when none was read; no unit.</param>
/// <param name="Levels">Different levels read.</param>
/// <param name="Blanks">Separate blanks.</param>
/// <param name="Rising">True when the levels were read in rising order.</param>
public sealed record SensorResponse(
    Estimate Slope, double Level, double Response, double TopResponse, double? Critical, double? Drift, int Levels, int Blanks, bool Rising);
