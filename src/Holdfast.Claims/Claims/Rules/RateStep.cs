using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Kinetics;
using Holdfast.Statistics;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "Diffusion inside the particles controls the rate": the rate goes with the inverse square of the size, stirring leaves it within 10 %, and uptake on the
/// square root of time starts at 0. A straight line on √t alone is no evidence: many mechanisms give one.
/// </summary>
/// <remarks>
/// 95 % interval of the size exponent, which must hold 2 and not 1; two one-sided tests on the ratio of rates at the highest and the lowest speed;
/// 95 % interval of uptake at √t = 0, with the term that bends the line (see <see cref="RateControl.Intercept"/>), widened over the series.
/// </remarks>
public sealed class RateStep : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Half-width of the margin within which stirring counts as no effect; no unit.</summary>
        public const double Margin = 0.10;
    }

    /// <inheritdoc/>
    public string Id => "rate-step";

    /// <inheritdoc/>
    public string Wording => "Diffusion inside the particles controls the rate.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["series"];

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own => [new("breaks", "times at which the line on √t was cut", "20 min, 60 min", null)];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => Compared(null, evidence) is var found && found.Select(DiameterOf).OfType<double>().Distinct().Count() > 1 && found.Select(SpeedOf).OfType<double>().Distinct().Count() > 1
            ? [Claim.Raised(Id)] : [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        return Compared(claim.Words("series"), evidence).SelectMany(f => Grounds.OfSorption(evidence, f.Series));
    }

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var found = Compared(claim.Words("series"), evidence);
        var vessels = found.SelectMany(f => f.Series.Vessels).ToArray();
        var (rates, plateaus) = Rates(found);
        var intercepts = found.Zip(plateaus).Select(p => Intercept(p.First, p.Second)).OfType<Estimate>().ToImmutableArray();
        var decision = found.Count == 0
            ? Decision.Missing("No series of contact times could be fitted, so there is no rate to speak of.", Factorial(null), new Question("Q27", "What does your rate do when you halve the particle size?"))
            : Decide(new(RateControl.SizeExponent(rates), RateControl.StirringRatio(rates), intercepts, Typical(rates)), claim.Words("breaks"));
        return decision.On(claim, Phrase.Sentence(claim, Wording), Scope.Of(vessels) + Range(found), vessels.Select(v => v.Code));
    }

    /// <summary>Judges which step is slow.</summary>
    /// <param name="found">What changes the rate.</param>
    /// <param name="breaks">Where the author cut the line on √t, in her words; null where she did not.</param>
    public static Decision Decide(RateStepEvidence found, string? breaks = null)
    {
        ArgumentNullException.ThrowIfNull(found);
        var (size, stirring) = (found.SizeExponent, found.StirringRatio);
        // Uptake at the start of each series and the effect of stirring: any one of them contradicts, so each is held to its share of the 5 %.
        var looks = Math.Max(1, found.Intercepts.Length + (stirring is null ? 0 : 1));
        var off = found.Intercepts.Where(i => !i.Interval(1 - Confidence.Chance / looks).Contains(0)).ToArray();
        var stirred = stirring is null ? Ruling.NotShownYet : IntervalRuling.Within(stirring, 1 - Limits.Margin, 1 + Limits.Margin, looks);
        var bySize = size is not null && size.Interval(Confidence.Level) is var interval && interval.Contains(RateControl.Inside) && !interval.Contains(RateControl.ThroughFilm);
        var ruling = off.Length > 0 || stirred == Ruling.Contradicted ? Ruling.Contradicted
            : bySize && stirred == Ruling.Holds ? Ruling.Holds
            : Ruling.NotShownYet;
        var ofSize = size is null ? "No two sizes were run at one stirring speed." : $"The rate goes with size to the power −{Phrase.Number(size.Value)} ({Phrase.Interval(size.Interval(Confidence.Level), "")}; 2 inside, 1 through a film).";
        var ofStirring = stirring is null ? "No size was run at two speeds." : $"Faster stirring multiplies it by {Phrase.Number(stirring.Value)} ({Phrase.Interval(stirring.Interval(0.90), "")}).";
        var shown = off.Length > 0 ? off.MaxBy(i => Math.Abs(i.T(0))) : found.Intercepts.FirstOrDefault();
        var ofIntercept = shown is null ? "Where the curve on √t begins is not known." : $"At √t = 0 uptake is {Phrase.With(shown.Value, "mg/g")} ({Phrase.Interval(shown.Interval(1 - Confidence.Chance / looks), "mg/g")}), n = {Phrase.Count(shown.N, "vessel")}.";
        return new Decision(
            ruling, $"{ofSize} {ofStirring} {ofIntercept}",
            "95 % interval of the size exponent; two one-sided tests on the effect of stirring; 95 % interval of uptake at √t = 0")
        {
            Numbers =
            [
                .. size is null ? Array.Empty<Deciding>() : [Deciding.Of("exponent of the size", size, Confidence.Level, "")],
                .. stirring is null ? Array.Empty<Deciding>() : [Deciding.Of("rate at the highest over that at the lowest speed", stirring, 0.90, "")],
                .. found.Intercepts.Select(i => Deciding.Of(i.Method, i, 1 - Confidence.Chance / looks, "mg/g")),
            ],
            Gates =
            [
                new("sizes", size is not null, size is null ? "one size only was run at any speed; two are needed" : "two sizes or more at one speed"),
                new("stirring", stirring is not null, stirring is null ? "one speed only was run at any size; two are needed" : "two speeds or more at one size"),
                new("early uptake", found.Intercepts.Length > 0, found.Intercepts.Length > 0 ? "five vessels or more at three early times" : "five vessels at three times on the rise are needed for it"),
            ],
            Questions =
            [
                .. size is null ? [new Question("Q27", "What does your rate do when you halve the particle size?")] : Array.Empty<Question>(),
                .. breaks is null ? Array.Empty<Question>() : [new Question("Q28", $"Who chose the break points ({breaks}), and what is the interval of their position?")],
            ],
            Next = Factorial(found.Rate),
        };
    }

    private static NextExperiment Factorial(double? rate)
    {
        string[] times = rate is { } k ? [Phrase.With(0.3 / k, "min"), Phrase.With(1 / k, "min")] : ["0.3/k", "1/k"];
        return new(
            $"Run two size fractions at two stirring speeds, 3 vessels each at {times[0]} and {times[1]}.", 24,
            ["2 sizes", "2 stirring speeds", .. times], "2 × 2 factorial of size and speed, two times on the rise, 3 vessels (common practice)");
    }

    // Series of one start concentration and temperature; the named one and its like, else the largest family.
    private static IReadOnlyList<FittedSeries> Compared(string? named, Evidence evidence)
    {
        var families = RateStudy.Alike(evidence.Kinetics);
        return (named is null ? families.MaxBy(f => f.Count) : families.FirstOrDefault(f => f.Any(s => string.Equals(s.Series.Name, named, StringComparison.OrdinalIgnoreCase)))) ?? [];
    }

    private static double? DiameterOf(FittedSeries series) => One(series, v => v.Sample.Number(BatchProperties.ParticleDiameter));

    private static double? SpeedOf(FittedSeries series) => One(series, v => v.Sample.Number(BatchProperties.StirringSpeed));

    private static double? One(FittedSeries series, Func<Vessel, double?> of)
        => series.Series.Vessels.Select(of).Distinct().ToArray() is [{ } only and > 0] ? only : null;

    // One curve for all, so that like constants are compared: k1, k2·qe or B of spheres, each one over time.
    private static (ImmutableArray<RateAt> Rates, ImmutableArray<double?> Plateaus) Rates(IReadOnlyList<FittedSeries> found)
    {
        if (RateStudy.CommonCurve(found, PseudoFirstOrder.Card.Name, PseudoSecondOrder.Card.Name, SphereDiffusion.Card.Name) is not { } curve)
            return ([], [.. found.Select(_ => (double?)null)]);
        var rates = ImmutableArray.CreateBuilder<RateAt>();
        foreach (var (series, fit) in found.Zip(curve.Fits))
        {
            var parameters = fit.MeasuredParameters("rate:" + series.Series.Name, series.Series.Name);
            var rate = curve.IsSecondOrder ? parameters[0] * parameters[1] : parameters[1];
            if (DiameterOf(series) is { } d && SpeedOf(series) is { } s && rate is { Value: > 0, U: > 0 })
                rates.Add(new(d, s, rate.Value, rate.U, fit.Nu));
        }

        return (rates.ToImmutable(), [.. curve.Fits.Select(f => (double?)f.Values[0])]);
    }

    private static Estimate? Intercept(FittedSeries series, double? plateau)
    {
        if (!(plateau > 0))
            return null;
        var read = series.Series.Levels.SelectMany(l => l.Vessels.Where(v => v.Uptake is not null).Select(v => (Time: l.X, v.Uptake!.Value.Value))).ToArray();
        return RateControl.Intercept([.. read.Select(r => r.Time)], [.. read.Select(r => r.Value)], plateau.Value) is { } c ? c with { Method = $"uptake at √t = 0, {series.Series.Name}" } : null;
    }

    private static double? Typical(ImmutableArray<RateAt> rates)
        => rates.IsEmpty ? null : Math.Exp(rates.Average(r => Math.Log(r.Rate)));

    private static string Range(IReadOnlyList<FittedSeries> found)
    {
        double[] sizes = [.. found.Select(DiameterOf).OfType<double>()], speeds = [.. found.Select(SpeedOf).OfType<double>()];
        return sizes.Length == 0 || speeds.Length == 0 ? "" : $", particles {Phrase.Span(sizes.Min(), sizes.Max(), "µm")}, stirring {Phrase.Span(speeds.Min(), speeds.Max(), "1/min")}";
    }
}

/// <summary>What changes the rate of uptake.</summary>
/// <param name="SizeExponent">n in k ∝ d^−n, no unit; null where no two sizes were run at one speed.</param>
/// <param name="StirringRatio">Rate at the highest over that at the lowest speed, no unit; null where no size was run at two.</param>
/// <param name="Intercepts">Intercepts of early uptake on √t, mg/g, one for each series that has them.</param>
/// <param name="Rate">Typical rate constant, 1/min, to choose times by; null where none is known.</param>
public sealed record RateStepEvidence(Estimate? SizeExponent, Estimate? StirringRatio, ImmutableArray<Estimate> Intercepts, double? Rate);
