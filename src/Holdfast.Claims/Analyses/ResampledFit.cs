using System.Globalization;
using Holdfast.Fitting;
using Holdfast.Fitting.Diagnostics;

namespace Holdfast.Claims.Analyses;

/// <summary>
/// A second opinion on the intervals of a fitted curve: the curve is fitted again to readings drawn anew from its own scatter. It repairs neither wrong
/// weights nor a wrong curve; where it disagrees with the profile, neither interval should be leant on.
/// </summary>
/// <param name="Fit">The fit.</param>
/// <param name="Resamples">What the resamples say.</param>
/// <param name="Findings">Caveats.</param>
public sealed record ResampledFit(FitResult Fit, BootstrapResult Resamples, IReadOnlyList<Finding> Findings)
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
    private const double UnevenScatter = 0.05;

    /// <summary>Resamples a fit; scatter that changes with the size of the reading is drawn with random signs, even scatter from all residuals.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="count">How many resamples, <see cref="Fewest"/> to <see cref="Most"/>.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="progress">Told the share that is done, 0 to 1; null for silence.</param>
    /// <param name="cancel">Stops it; nothing half-done comes back.</param>
    /// <returns>The second opinion, or none with the reason.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Too few or too many resamples.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Outcome<ResampledFit> Of(FitResult fit, int count = Usual, ulong seed = UsualSeed, IProgress<int>? progress = null, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, Fewest);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, Most);
        var uneven = fit.IsFit && BreuschPagan.Of(fit) is { P: < UnevenScatter };
        var outcome = Bootstrap.Of(
            fit,
            new BootstrapOptions { Count = count, Seed = seed, Scheme = uneven ? Resampling.Wild : Resampling.Residual, Threads = Environment.ProcessorCount, Progress = progress },
            cancel);
        return outcome.Value is { } drawn ? new(new(fit, drawn, outcome.Findings), outcome.Findings) : Outcome<ResampledFit>.None([.. outcome.Findings]);
    }

    /// <summary>What was drawn and where the two opinions differ, in sentences.</summary>
    public IEnumerable<string> Remarks
    {
        get
        {
            yield return string.Create(CultureInfo.InvariantCulture,
                $"{Resamples.Count} resamples of {Fit.Points.Count} points, seed {Resamples.Seed}; ")
                + (Resamples.Scheme == Resampling.Wild
                    ? "the scatter changes with the size of the reading (Breusch and Pagan, p < 0.05), so each residual kept its place and got a random sign."
                    : "residuals, inflated for the parameters they paid for, were dealt out anew over the fitted curve.")
                + (Resamples.Failed > 0 ? string.Create(CultureInfo.InvariantCulture, $" {Resamples.Failed} could not be fitted and are left out.") : "");
            foreach (var finding in Findings)
                yield return finding.Sentence;
            var differing = Fit.Parameters.Zip(Resamples.Parameters).Where(p => Differs(p.First, p.Second)).Select(p => p.First.Symbol).ToArray();
            yield return differing.Length == 0
                ? "Where both give an interval, they agree within a third of its width."
                : $"For {string.Join(", ", differing)} the two intervals differ by more than a third of their width: these data hold them loosely. Quote both, or measure more.";
        }
    }

    private static bool Differs(FittedParameter parameter, ResampledParameter drawn)
    {
        if (drawn.Studentised is not { } second || parameter.Profile is not { Lower.Value: { } low, Upper.Value: { } high })
            return false;
        var width = Math.Max(high - low, second.High - second.Low);
        return Math.Abs(low - second.Low) > Apart * width || Math.Abs(high - second.High) > Apart * width;
    }
}
