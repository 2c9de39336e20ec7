using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Statistics;
using Holdfast.Studies;

namespace Holdfast.Claims.Comparisons;

/// <summary>
/// The uptake of one series at the point of a comparison, with the conditions it stood at. It is read between the series' own points and never outside them: from the curve of
/// least AICc, with half the distance to the other curves that the points do not tell apart in its uncertainty; without a curve, between two neighbouring levels.
/// </summary>
/// <param name="Study">Name of the study, or of a published sorbent.</param>
/// <param name="Series">The series.</param>
/// <param name="Analyte">Symbol of the metal; null when the study does not say.</param>
/// <param name="Left">Concentration left, mg/L.</param>
/// <param name="Uptake">Uptake, mg/g.</param>
/// <param name="U">Standard uncertainty, mg/g; null when it is not known.</param>
/// <param name="Freedom">Its degrees of freedom; infinite when it is taken as known.</param>
/// <param name="How">How it was found.</param>
/// <param name="At">The conditions there: those of the levels next to it, in proportion.</param>
public sealed record ComparedUptake(string Study, SeriesLine Series, string? Analyte, double Left, double Uptake, double? U, double Freedom, string How, LevelLine At)
{
    /// <summary>Shares of the whole width that a standard deviation of an even distribution is (JCGM 100, 4.3.7): half-width over the root of three.</summary>
    private static readonly double Even = 1 / Math.Sqrt(3);

    /// <summary>Study and series, with the material where one is recorded.</summary>
    public string Name => Series.Source is not null ? Study : $"{Study}, {Series.Name}";

    /// <summary>The uptake as a number with one source of its own.</summary>
    internal Measured Measured => Measured.From(Uptake, new Source($"{Name}/{Series.Source}", Name, U ?? 0, Freedom, Evaluation.OtherKnowledge));

    /// <summary>The uptake of a series at a point, or null when the point lies outside what was measured.</summary>
    /// <param name="line">The study.</param>
    /// <param name="series">One of its series.</param>
    /// <param name="point">Where.</param>
    public static ComparedUptake? Of(StudyLine line, SeriesLine series, ComparisonPoint point)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(point);
        return point is { Start: { } start, Dose: { } dose } ? OfVessel(line, series, start, dose) : OfLeft(line, series, point.Left!.Value);
    }

    private static ComparedUptake? OfLeft(StudyLine line, SeriesLine series, double left)
    {
        var levels = series.Levels;
        if (levels[0].Left <= left && left <= levels[^1].Left && !series.Curves.IsEmpty)
            return OnCurves(line, series, left, c => c.At(left), 1);
        if (levels.Where(l => Tolerances.SameStart(l.Left, left)).MinBy(l => Math.Abs(l.Left - left)) is { } same)
            return Near(line, series, same, left);
        var above = levels.IndexOf(levels.FirstOrDefault(l => l.Left > left)!);
        return above > 0 && Neighbours(levels[above - 1], levels[above]) ? Between(line, series, levels[above - 1], levels[above], left) : null;
    }

    private static ComparedUptake? OfVessel(StudyLine line, SeriesLine series, double start, double dose)
    {
        if (series.Levels.FirstOrDefault(l => l is { Start: { } s, Dose: { } d } && Tolerances.SameStart(start, s) && Tolerances.SameDose(dose, d)) is { } same)
            return new(line.Study, series, line.Analyte, same.Left, same.Uptake, same.U, same.Freedom ?? double.PositiveInfinity, Vessels(same), same);
        if (series.Curves.IsEmpty)
            return null;
        var left = series.Curves[0].Left(start, dose).Value;
        return left >= series.Levels[0].Left && left <= series.Levels[^1].Left
            ? OnCurves(line, series, left, c => c.Left(start, dose) is var e ? e with { Value = (start - e.Value) / dose } : e, 1 / dose) is { } found
                ? found with { At = found.At with { Start = start, Dose = dose } } : null
            : null;
    }

    // The value is that of the best curve; that another could have been the best is part of what is not known.
    private static ComparedUptake? OnCurves(StudyLine line, SeriesLine series, double left, Func<CurveLine, Estimate> at, double scale)
    {
        Estimate[] all = [.. series.Curves.Select(at)];
        var best = all[0];
        var spread = all.Max(e => Math.Abs(e.Value - best.Value)) * Even;
        var u = scale * best.StandardError;
        if (!(best.Value > 0) || !double.IsFinite(best.Value) || !(u > 0) || !double.IsFinite(u))
            return null;
        var whole = Combined(best.Value, (u, best.DegreesOfFreedom), (spread, double.PositiveInfinity));
        var how = all.Length == 1 ? $"{best.Method} curve" : $"{best.Method} curve; {Phrase.Listed(series.Curves.Skip(1).Select(c => c.Curve))} within its uncertainty";
        return new(line.Study, series, line.Analyte, left, best.Value, whole.U, whole.DegreesOfFreedom, how, Conditions(series.Levels, left));
    }

    // Between the origin and a level, uptake changes at most in proportion to the concentration (a curve that bends down): that bounds what a small step can do.
    private static ComparedUptake Near(StudyLine line, SeriesLine series, LevelLine level, double left)
    {
        var step = level.Uptake * Math.Abs(left - level.Left) / level.Left * Even;
        var whole = level.U is { } u ? Combined(level.Uptake, (u, level.Freedom ?? double.PositiveInfinity), (step, double.PositiveInfinity)) : (Measured?)null;
        return new(line.Study, series, line.Analyte, level.Left, level.Uptake, whole?.U, whole?.DegreesOfFreedom ?? double.PositiveInfinity, Vessels(level), level);
    }

    /// <summary>
    /// Between two levels: a curve that rises and bends down lies above the chord, below the upper level, and below the line from the origin through the lower level. The middle of
    /// that gap is taken, and the gap is part of the uncertainty.
    /// </summary>
    private static ComparedUptake Between(StudyLine line, SeriesLine series, LevelLine low, LevelLine high, double left)
    {
        var share = (left - low.Left) / (high.Left - low.Left);
        var chord = low.Uptake + share * (high.Uptake - low.Uptake);
        var roof = Math.Max(chord, Math.Min(high.Uptake, low.Uptake * left / low.Left));
        var value = (chord + roof) / 2;
        var gap = (roof - chord) / 2 * Even;
        // Levels share flask, pipette and calibration: their errors are added as if they were one.
        var whole = low.U is { } a && high.U is { } b
            ? Combined(value, ((1 - share) * a + share * b, Math.Min(low.Freedom ?? double.PositiveInfinity, high.Freedom ?? double.PositiveInfinity)), (gap, double.PositiveInfinity))
            : (Measured?)null;
        return new(
            line.Study, series, line.Analyte, left, value, whole?.U, whole?.DegreesOfFreedom ?? double.PositiveInfinity,
            $"between the levels at {Phrase.Number(low.Left)} and {Phrase.With(high.Left, "mg/L")}", Mixed(low, high, share));
    }

    private static Measured Combined(double value, params ReadOnlySpan<(double U, double Freedom)> parts)
    {
        Measured sum = value;
        for (var i = 0; i < parts.Length; i++)
        {
            if (parts[i].U > 0)
                sum += Measured.From(0, new Source(FormattableString.Invariant($"part/{i}"), "part", parts[i].U, parts[i].Freedom, Evaluation.OtherKnowledge));
        }

        return sum;
    }

    private static string Vessels(LevelLine level) => $"mean of {Phrase.Count(level.Vessels, "vessel")}";

    private static bool Neighbours(LevelLine low, LevelLine high)
        => low is { Dose: { } a } && high is { Dose: { } b } && Tolerances.SameDose(a, b) && high.Uptake >= low.Uptake;

    private static LevelLine Conditions(ImmutableArray<LevelLine> levels, double left)
    {
        var above = Enumerable.Range(0, levels.Length).FirstOrDefault(i => levels[i].Left >= left, levels.Length - 1);
        return above == 0 ? levels[0] : Mixed(levels[above - 1], levels[above], (left - levels[above - 1].Left) / (levels[above].Left - levels[above - 1].Left));
    }

    private static LevelLine Mixed(LevelLine low, LevelLine high, double share)
    {
        return low with
        {
            Start = Mix(low.Start, high.Start),
            Dose = Mix(low.Dose, high.Dose),
            StartPh = Mix(low.StartPh, high.StartPh),
            EndPh = Mix(low.EndPh, high.EndPh),
            Temperature = Mix(low.Temperature, high.Temperature),
            Time = Mix(low.Time, high.Time),
        };

        // Settings that are the same stay so to the last digit.
        double? Mix(double? a, double? b) => a is { } x && b is { } y ? x.Equals(y) ? x : x + share * (y - x) : null;
    }
}
