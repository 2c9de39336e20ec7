using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Statistics;
using Holdfast.Studies;

namespace Holdfast.Coverage;

/// <summary>How often a printed interval held the truth, over many studies of one condition.</summary>
/// <param name="Quantity">Symbol of a parameter, or what else was counted.</param>
/// <param name="Studies">Studies simulated.</param>
/// <param name="Printed">Studies that printed an interval, one side of it open or none.</param>
/// <param name="Covered">Those whose interval held the truth; an open side holds everything on it.</param>
/// <param name="Below">Those whose upper limit lies below the truth.</param>
/// <param name="Above">Those whose lower limit lies above the truth.</param>
internal sealed record Tally(string Quantity, int Studies, int Printed, int Covered, int Below, int Above)
{
    /// <summary>Concentration left in the first vessel, mean ± t·u.</summary>
    public const string Left = "Ce";

    /// <summary>A sample without metal that is called not detected: 95 of 100 by the definition of the critical value.</summary>
    public const string NotDetected = "not detected";

    /// <summary>A true curve that the lack-of-fit test does not reject at 5 %.</summary>
    public const string NoLackOfFit = "no lack of fit";

    /// <summary>Share covered among those printed, or null for none.</summary>
    public double? Share => Printed == 0 ? null : (double)Covered / Printed;

    /// <summary>Binomial standard deviation of the share.</summary>
    public double Error => Printed == 0 ? 0 : Math.Sqrt(Math.Max(Share!.Value * (1 - Share.Value), 0.25 / Printed) / Printed);

    /// <summary>Counts studies of a condition; the number of a study alone sets what is drawn in it.</summary>
    /// <param name="condition">What is simulated.</param>
    /// <param name="from">Number of the first study.</param>
    /// <param name="count">How many.</param>
    public static Tally[] Count(Condition condition, int from, int count)
    {
        Tally[] tallies = [.. condition.Model.Card.Parameters.Select(p => p.Symbol).Concat([Left, NotDetected, NoLackOfFit]).Select(q => new Tally(q, 0, 0, 0, 0, 0))];
        for (var study = from; study < from + count; study++)
        {
            var (fit, curve, first, truth) = Worked(condition, study);
            var p = condition.Truth.Length;
            for (var j = 0; j < p; j++)
                tallies[j] = tallies[j].With(Shown.Interval(fit, j), condition.Truth[j]);
            var half = first.U * StudentDistribution.TwoSided(0.95, first.DegreesOfFreedom);
            tallies[p] = tallies[p].With((first.Value - half, first.Value + half), truth);
            var stream = new SeededStream((ulong)study, condition.Name + ", nothing");
            var nothing = curve.Read("nothing", [.. Enumerable.Range(0, 3).Select(_ => HiddenStudy.Shown(condition.Noise, 0, stream))]);
            tallies[p + 1] = tallies[p + 1].With((nothing.Signed!.Value.Value < curve.Limits.Critical.Value ? double.NegativeInfinity : 1, double.PositiveInfinity), 0);
            tallies[p + 2] = tallies[p + 2].With(fit.LackOfFit is { Test.P: var misfit } ? (misfit < 0.05 ? 1 : double.NegativeInfinity, double.PositiveInfinity) : null, 0);
        }

        return tallies;
    }

    /// <summary>Both counts together.</summary>
    /// <param name="other">More studies of the same quantity.</param>
    public Tally Plus(Tally other)
        => this with
        {
            Studies = Studies + other.Studies,
            Printed = Printed + other.Printed,
            Covered = Covered + other.Covered,
            Below = Below + other.Below,
            Above = Above + other.Above,
        };

    // One simulated study through calibration and work-up, and the fit of the true curve to it.
    private static (FitResult Fit, Calibration.CalibrationCurve Curve, Amounts.Measured First, double Truth) Worked(Condition condition, int study)
    {
        var (hidden, left) = HiddenStudy.Of(condition, new SeededStream((ulong)study, condition.Name));
        var recorded = new RecordedAmounts(hidden);
        var calibrating = new Calibrating(hidden, recorded);
        var workup = new VesselWorkup(hidden, recorded, calibrating);
        Claims.Analyses.Vessel[] vessels = [.. hidden.Samples.Where(s => s.Role == SampleRole.Vessel).Select(workup.Of)];
        var series = SeriesGrouping.Of(vessels, [])[0];
        var points = condition.Start is null ? SeriesFitting.IsothermPoints(series) : SeriesFitting.KineticPoints(series);
        return (condition.Model.Series(points, new FitOptions { MostIterations = 500 }), calibrating.Runs[0].Curve!, vessels[0].End!.Value!.Value, left[vessels[0].Code]);
    }

    /// <summary>The tally with one study more.</summary>
    /// <param name="interval">The interval that was printed, or null.</param>
    /// <param name="truth">The hidden truth.</param>
    public Tally With((double Low, double High)? interval, double truth)
        => interval is not { } limits
            ? this with { Studies = Studies + 1 }
            : this with
            {
                Studies = Studies + 1,
                Printed = Printed + 1,
                Covered = Covered + (limits.Low <= truth && truth <= limits.High ? 1 : 0),
                Below = Below + (limits.High < truth ? 1 : 0),
                Above = Above + (limits.Low > truth ? 1 : 0),
            };
}

/// <summary>The interval that a reader is shown.</summary>
internal static class Shown
{
    /// <summary>Limits of a parameter, infinite where open; null when the fit prints none.</summary>
    public static (double Low, double High)? Interval(FitResult fit, int j)
        => !fit.IsFit || fit.Parameters.Count == 0 || fit.Parameters[j] is not { Profile: { } profile, IsDetermined: true }
            ? null
            : (profile.Lower.Value ?? double.NegativeInfinity, profile.Upper.Value ?? double.PositiveInfinity);
}
