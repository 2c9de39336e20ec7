using System.Collections.Immutable;
using Holdfast.Calibration;
using Holdfast.Claims.Analyses;
using Holdfast.Statistics;
using Holdfast.Studies;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "The calibration is linear to {to}": a quadratic term gains nothing and each level reads back close to what it is. The correlation
/// coefficient takes no part: it measures spread against scatter.
/// </summary>
/// <remarks>
/// Mandel's F at 99 % over single readings (ISO 8466-1, from memory). A bend that costs less than 1 % at every level is too small to matter:
/// it is not called linear, and it contradicts nothing; what it surely costs (lower end of the 95 % interval) must exceed that. A test that could not see a bend shows none: the one-sided 95 % bound of what a quadratic term takes from each level
/// must stay below half of what reading back tolerates there.
/// </remarks>
public sealed class LinearCalibration : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest levels.</summary>
        public const int Levels = 5;

        /// <summary>Error of a level read back up to which a bend is too small to matter, %.</summary>
        public const double Matters = 1;

        /// <summary>Share of what reading back tolerates that a hidden bend may take; no unit.</summary>
        public const double HalfOfReadBack = 0.5;
    }

    /// <summary>The rule's id, for claims that stand on it.</summary>
    internal const string RuleId = "linear-calibration";


    /// <inheritdoc/>
    public string Id => RuleId;

    /// <inheritdoc/>
    public string Wording => "The calibration of {run} is linear to {to}.";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => evidence.Runs.Where(r => r.Standards.Length > 0).Select(OverTheRangeInUse).OfType<Claim>();

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        var run = CalibrationRun.Of(claim, evidence);
        var used = run is null ? [] : CalibrationRun.UpTo(run, claim.In("to", "mg/L"));
        var highest = used.IsEmpty ? 0 : used.Max(s => s.Level);
        var sentence = Phrase.Sentence(
            claim, Wording, ("run", run?.Run.Id ?? claim.Words("run") ?? "the run"), ("to", claim.Words("to") ?? Phrase.With(highest, "mg/L")));
        var decision = run is null ? Decision.Missing("No calibrated run was found. Read five standards or more, three times each.")
            : claim.In("to", "mg/L") is { } to && !Tolerances.Reaches(highest, to)
                ? Decision.Missing($"The highest standard of {run.Run.Id} is {Phrase.With(highest, "mg/L")}: nothing is known up to {Phrase.With(to, "mg/L")}.")
            : Decide(used, run.Run.Id);
        return decision.On(claim, sentence, used.IsEmpty ? null : $"run {run!.Run.Id}, {Phrase.Span(used.Min(s => s.Level), highest, "mg/L")}, {Phrase.Count(used.Length, "reading")}", []);
    }

    /// <summary>Judges standards.</summary>
    /// <param name="standards">Single readings of the standards within the range.</param>
    /// <param name="run">Name of the run.</param>
    /// <param name="unit">Unit of the levels.</param>
    /// <param name="detection">Detection limit, in that unit: a level below it cannot be read back. 0 to read every level back.</param>
    public static Decision Decide(IReadOnlyList<StandardReading> standards, string run, string unit = "mg/L", double detection = 0)
    {
        ArgumentNullException.ThrowIfNull(standards);
        double[] levels = [.. standards.Select(s => s.Level).Distinct().Order()];
        if (levels.Length < 3 || Linearity.Of(standards) is not { Mandel: { } mandel } found || found.Line.SlopeAt(0) == 0)
            return Decision.Missing($"{run} has {Phrase.Count(levels.Length, "level")} and {Phrase.Count(standards.Count, "reading")}: five levels with replicates are needed to see a bend.", Between(levels, unit));

        var critical = FisherDistribution.Quantile(1 - Linearity.MandelAlpha, mandel.Above, mandel.Below);
        BackCalculated[] readBack = [.. found.BackCalculated.Where(b => b.Level >= detection).Select((b, i) => b with { IsLowest = i == 0 })];
        var worst = readBack.MaxBy(b => Math.Abs(b.ErrorPercent));
        var bends = mandel.F > critical;
        var hidden = Hidden(standards, found, mandel, readBack);
        var bias = Math.Abs(worst?.ErrorPercent ?? 0);
        var passes = readBack.Length > 0 && Array.TrueForAll(readBack, b => b.Passes);
        var ruling = bends && SureCost(standards, found, mandel, readBack) > Limits.Matters ? Ruling.Contradicted : !bends && passes ? Ruling.Holds : Ruling.NotShownYet;
        return new Decision(
            ruling,
            $"Mandel F is {Phrase.Number(mandel.F)} against {Phrase.Number(critical)} at 99 % ({Phrase.P(mandel.P)}); the level that reads back worst, {Phrase.With(worst?.Level ?? 0, unit)}, is off by {Phrase.With(worst?.ErrorPercent ?? 0, "%")}; "
                + $"n = {Phrase.Count(standards.Count, "reading")} of {Phrase.Count(levels.Length, "level")}.",
            "Mandel's test for a quadratic term, 99 %; standards read back")
        {
            Numbers =
            [
                Deciding.Plain("Mandel F", mandel.F, "", $"1 and {Phrase.Number(mandel.Below)} degrees of freedom, {Phrase.P(mandel.P)}"),
                Deciding.Plain("critical F, 99 %", critical),
                Deciding.Plain("worst level read back", worst?.ErrorPercent ?? 0, "%", $"at {Phrase.With(worst?.Level ?? 0, unit)}"),
                .. found.LackOfFit is { } lack ? [Deciding.Plain("lack of fit of the line, p", lack.P)] : Array.Empty<Deciding>(),
            ],
            Gates =
            [
                new("levels", levels.Length >= Limits.Levels, $"{Phrase.Count(levels.Length, "level")} were read; {Limits.Levels} are needed"),
                new("bend that could hide", hidden is not { Share: > 1 }, hidden is { } h
                    ? $"a bend of {Phrase.With(h.Percent, "%")} could hide at {Phrase.With(h.Level, unit)}; {Phrase.With(h.Percent / h.Share, "%")} is tolerated"
                    : "no level can be read back"),
                new("degrees of freedom", mandel.Below >= 2, $"{standards.Count} readings leave {Phrase.Number(mandel.Below)} degrees of freedom; 2 are needed"),
            ],
            Warnings = Caveats(found, bends && bias <= Limits.Matters, [.. found.BackCalculated.Where(b => b.Level < detection).Select(b => Phrase.With(b.Level, unit))]),
            Questions = bends ? [new("Q47", $"Show me the residuals ({found.ResidualSigns} from low to high): why do they bend?")] : [],
            Next = Between(levels, unit),
        };
    }

    // What the bend costs at the worst level, less what chance may have added to it (lower end of the 95 % interval), %.
    private static double SureCost(IReadOnlyList<StandardReading> standards, Linearity found, FTest mandel, BackCalculated[] levels)
    {
        var parabola = PolynomialFit.Of([.. standards.Select(s => s.Level)], [.. standards.Select(s => s.Signal)], 2);
        var cost = levels.Select(b => Cost(parabola, found, b.Level)).DefaultIfEmpty(0).Max();
        return cost * (1 - StudentDistribution.Quantile(0.975, mandel.Below) / Math.Sqrt(mandel.F));
    }

    // Error of a level read back on the line where the parabola is the truth, %.
    private static double Cost(PolynomialFit parabola, Linearity found, double level)
        => Math.Abs(100 * (parabola.At(level) - found.Line.At(level)) / (found.Line.SlopeAt(level) * level));

    // The parabola's distance from the line grows with its quadratic term alone, whose standard error is its size over the root of F.
    private static (double Level, double Percent, double Share)? Hidden(IReadOnlyList<StandardReading> standards, Linearity found, FTest mandel, BackCalculated[] levels)
    {
        var parabola = PolynomialFit.Of([.. standards.Select(s => s.Level)], [.. standards.Select(s => s.Signal)], 2);
        var wider = mandel.F > 0 ? 1 + StudentDistribution.Quantile(Confidence.Level, mandel.Below) / Math.Sqrt(mandel.F) : 1;
        return levels.Length == 0 ? null : levels
            .Select(b => (b.Level, Percent: Cost(parabola, found, b.Level) * wider, b.LargestErrorPercent))
            .Select(b => (b.Level, b.Percent, Share: b.Percent / (Limits.HalfOfReadBack * b.LargestErrorPercent)))
            .MaxBy(b => b.Share);
    }

    /// <summary>The claim that a run's line is straight over the range in use, for claims that stand on it; null for a curve meant to bend.</summary>
    /// <param name="run">The run with the standards.</param>
    internal static Claim? OverTheRangeInUse(CalibratedRun run)
        => run.Curve is { Kind: CurveKind.Quadratic }
            ? null
            : Claim.Raised(RuleId, ("run", run.Run.Id), ("to", run.Curve is { } curve ? Phrase.Plain(curve.Top, "mg/L") : null));

    private static ImmutableArray<string> Caveats(Linearity found, bool bendIsSmall, string[] undetected)
    {
        var caveats = ImmutableArray.CreateBuilder<string>();
        if (undetected.Length > 0)
            caveats.Add($"{Phrase.Listed(undetected)} lies below the detection limit and is not read back.");
        if (bendIsSmall)
            caveats.Add($"The bend is real and costs less than {Phrase.With(Limits.Matters, "%")} at every level.");
        if (found.LackOfFit is { } lack && lack.P < Linearity.LackOfFitAlpha)
            caveats.Add($"Level means scatter about the line more than replicates do (lack of fit {Phrase.P(lack.P)}).");
        return caveats.ToImmutable();
    }

    private static NextExperiment Between(double[] levels, string unit)
    {
        var top = levels.Length == 0 ? 0 : levels[^1];
        string[] added = top > 0 ? [Phrase.With(0.5 * top, unit), Phrase.With(0.75 * top, unit)] : [];
        return new(
            top > 0 ? $"Add standards at {Phrase.Listed(added)}, 3 readings each; if the bend stays, shorten the range or fit the quadratic." : "Read five standards or more, 3 readings each.",
            null, [.. added], "levels at 0.5 and 0.75 of the top, where a bend shows (common practice)");
    }
}
