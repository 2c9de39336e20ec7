using System.Globalization;
using Holdfast.Fitting;
using Holdfast.Fitting.Diagnostics;

namespace Holdfast.Claims.Analyses;

/// <summary>
/// A second opinion on the intervals of a fitted curve: the curve is fitted again to readings drawn anew from its own scatter. It repairs neither wrong
/// weights nor a wrong curve; where it disagrees with the profile, neither interval should be leant on.
/// </summary>
/// <param name="Curve">The fitted curve.</param>
/// <param name="Resamples">What the resamples say.</param>
/// <param name="Findings">Caveats.</param>
public sealed record ResampledFit(CandidateCurve Curve, BootstrapResult Resamples, IReadOnlyList<Finding> Findings)
{
    /// <summary>Resamples drawn when nobody asks for another number.</summary>
    public const int Usual = 5000;

    /// <summary>The fewest that say anything about the ends of an interval.</summary>
    public const int Fewest = 100;

    /// <summary>The most that are drawn: more digits than any reading has.</summary>
    public const int Most = 1_000_000;

    /// <summary>The seed when nobody asks for another: the same study gives the same interval to everyone.</summary>
    public const ulong UsualSeed = 1;

    // Ends of two intervals that differ by less than this share of the wider one are one opinion (a choice of this program).
    private const double Apart = 1.0 / 3;
    private const double UnevenScatter = Confidence.Chance;

    /// <summary>
    /// Resamples fitted curves, all of them in step. What was set at the bench (times, start concentrations, doses) stays as it was, since it was chosen
    /// and not drawn; residuals are dealt out anew, or where the scatter changes with the size of the reading each keeps its place and gets a random sign.
    /// </summary>
    /// <param name="candidates">The curves.</param>
    /// <param name="options">Count, <see cref="Fewest"/> to <see cref="Most"/>, seed, threads and progress; the scheme follows from the data.</param>
    /// <param name="cancel">Stops it; nothing half-done comes back.</param>
    /// <returns>For each curve the second opinion, or none with the reason.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Too few or too many resamples.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static IReadOnlyList<Outcome<ResampledFit>> Draw(IReadOnlyList<CandidateCurve> candidates, BootstrapOptions options, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentNullException.ThrowIfNull(options);
        if (options.Count is < Fewest or > Most)
            throw new ArgumentOutOfRangeException(nameof(options), options.Count, FormattableString.Invariant($"Between {Fewest} and {Most} resamples can be drawn."));
        var outcomes = Bootstrap.SideBySide([.. candidates.Select(c => (c.Fit, Scheme(c.Fit)))], options, cancel);
        return [.. candidates.Zip(outcomes, (candidate, outcome) => outcome.Value is { } drawn
            ? new(new(candidate, drawn, outcome.Findings), outcome.Findings)
            : Outcome<ResampledFit>.None([.. outcome.Findings]))];
    }

    /// <summary>Parameters whose two intervals, both closed, have ends that lie apart by more than a third of the wider one.</summary>
    public IEnumerable<string> Differing => Curve.Fit.Parameters.Zip(Resamples.Parameters).Where(p => Differs(p.First, p.Second)).Select(p => p.First.Symbol);

    /// <summary>What a reader has to know of this curve, in sentences; none where every resample could be fitted and the two opinions agree.</summary>
    public IEnumerable<string> Remarks
    {
        get
        {
            if (Resamples.Scheme == Resampling.Wild)
                yield return $"The scatter changes with the size of the reading (Breusch and Pagan, p < {UnevenScatter.ToString(CultureInfo.InvariantCulture)}), so each residual kept its place and got a random sign.";
            if (Resamples.Failed > 0)
                yield return FormattableString.Invariant($"{Resamples.Failed} resamples could not be fitted and are left out.");
            foreach (var finding in Findings)
                yield return finding.Sentence;
            foreach (var symbol in Curve.Fit.Parameters.Where(p => p.OnBound).Select(p => p.Symbol))
                yield return $"{symbol} sits on its bound and has no resampled interval.";
            foreach (var symbol in Curve.Fit.Parameters.Where(p => p.Profile is { Lower.Kind: LimitKind.Open } or { Upper.Kind: LimitKind.Open }).Select(p => p.Symbol))
                yield return $"The data leave the interval of {symbol} open: the resampled end on that side belongs to the resamples and is no limit.";
            if (Differing.ToArray() is { Length: > 0 } differing)
            {
                yield return $"For {string.Join(", ", differing)} the two intervals differ by more than a third of their width: "
                    + (Curve.Fit.Scatter == ScatterModel.Known
                        ? "one stands on the stated uncertainties, the other on how far vessels really scatter. Quote both, and look into what was stated."
                        : "these data hold them loosely. Quote both, or measure more.");
            }
        }
    }

    private static Resampling Scheme(FitResult fit)
        => fit.IsFit && BreuschPagan.Of(fit) is { P: < UnevenScatter } ? Resampling.Wild : Resampling.Residual;

    // By profile where there is one, else by t; a missing or open end is no second opinion.
    private static bool Differs(FittedParameter parameter, ResampledParameter drawn)
    {
        var (low, high) = parameter.Profile is not { } profile ? (parameter.Wald?.Low, parameter.Wald?.High) : profile.IsClosed ? (profile.Lower.Value, profile.Upper.Value) : (null, null);
        if (drawn.Studentised is not { } second || low is not { } from || high is not { } to)
            return false;
        var width = Math.Max(to - from, second.High - second.Low);
        return Math.Abs(from - second.Low) > Apart * width || Math.Abs(to - second.High) > Apart * width;
    }
}
