using Holdfast.Fitting.Solving;
using Holdfast.Statistics;

namespace Holdfast.Fitting.Diagnostics;

/// <summary>
/// Intervals by fitting resamples: a second opinion beside the profile. At the few points of a thesis plain percentiles of raw residuals are far too
/// narrow; here residuals are inflated and the interval is studentised.
/// </summary>
/// <remarks>B. Efron, Ann. Statist. 7 (1979) 1; A. C. Davison and D. V. Hinkley, Bootstrap Methods and their Application, 1997, chapter 6 (from memory).</remarks>
public static class Bootstrap
{
    private const int Block = 250;
    private const int FewestResamples = 100;
    private const double MostFailures = 0.01;

    /// <summary>Draws the readings and weights of one resample.</summary>
    /// <param name="resample">Its number, from 0.</param>
    /// <param name="y">Holds the readings; to be overwritten.</param>
    /// <param name="w">Holds the weights; to be overwritten where they change.</param>
    /// <returns>False when the resample cannot determine the curve and is skipped.</returns>
    internal delegate bool Redraw(int resample, Span<double> y, Span<double> w);

    /// <summary>Resamples a fit.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="options">How; null for 2000 studentised residual resamples with seed 0.</param>
    /// <param name="cancellation">Stops the work between blocks.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 100 resamples, or no thread.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Outcome<BootstrapResult> Of(FitResult fit, BootstrapOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(fit);
        options ??= new();
        if (options.Count < FewestResamples || options.Threads < 1)
        {
            throw new ArgumentOutOfRangeException(nameof(options), FormattableString.Invariant(
                $"{options.Count} resamples on {options.Threads} threads; at least {FewestResamples} resamples and one thread are needed."));
        }

        if (!fit.IsFit || fit.Nu < 1 || fit.Covariance is null)
        {
            return Outcome<BootstrapResult>.None(Finding.Of("HF-424", Weight.Stop,
                $"{fit.Card.Name} cannot be resampled: there is no fit with points to spare."));
        }

        var draws = new Draws(options.Count, fit.P);
        var blocks = (options.Count + Block - 1) / Block;
        var done = 0;
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = options.Threads, CancellationToken = cancellation };
        Parallel.For(0, blocks, parallel, block =>
        {
            // A stream for each block: what is drawn does not depend on which thread draws it.
            var stream = new SeededStream(options.Seed, FormattableString.Invariant($"bootstrap {options.Scheme} block {block}"));
            var from = block * Block;
            Refits(fit, draws, from, Math.Min(from + Block, options.Count), Scheme(fit, options.Scheme, stream));
            options.Progress?.Report((double)Interlocked.Increment(ref done) / blocks);
        });
        return Summarise(fit, draws, options);
    }

    /// <summary>Fits a run of resamples, each from the estimate; allocates nothing for each of them.</summary>
    internal static void Refits(FitResult fit, Draws draws, int from, int to, Redraw redraw)
    {
        var (problem, p) = (fit.Problem!, fit.P);
        double[] y = new double[fit.Points.Count], w = new double[y.Length], weights = [.. fit.Weights], readings = fit.Points.YValues;
        double[] theta = new double[p], downhill = new double[p], spread = new double[p];
        for (var resample = from; resample < to; resample++)
        {
            readings.CopyTo(y, 0);
            weights.CopyTo(w, 0);
            if (!redraw(resample, y, w))
            {
                draws.Ends[resample] = DrawEnd.Skipped;
                continue;
            }

            fit.Theta.CopyTo(theta, 0);
            var end = problem.Refit(y, w, theta, 0, Damping.Warm, downhill, spread);
            draws.Ends[resample] = end.Settled && double.IsFinite(end.S) ? DrawEnd.Settled : DrawEnd.Failed;
            for (var j = 0; j < p; j++)
            {
                draws.Values[resample * p + j] = problem.Coordinates.ToNatural(j, theta[j]);
                draws.Errors[resample * p + j] = Math.Sqrt(spread[j] * end.S / fit.Nu);
            }
        }
    }

    private static Redraw Scheme(FitResult fit, Resampling scheme, SeededStream stream)
    {
        var n = fit.Points.Count;
        double[] fitted = [.. fit.Fitted], root = [.. fit.Weights.Select(Math.Sqrt)];
        switch (scheme)
        {
            case Resampling.Residual:
                var inflate = Math.Sqrt((double)fit.N / fit.Nu);
                double[] errors = [.. fit.Residuals.Select((r, i) => r * root[i] * inflate)];
                var mean = errors.Average();
                return (_, y, _) =>
                {
                    for (var i = 0; i < n; i++)
                        y[i] = root[i] > 0 ? fitted[i] + (errors[Index(stream, n)] - mean) / root[i] : y[i];
                    return true;
                };
            case Resampling.Wild:
                double[] sizes = [.. fit.Residuals.Select((r, i) => fit.Leverages[i] < 1 ? r / (1 - fit.Leverages[i]) : 0)];
                return (_, y, _) =>
                {
                    for (var i = 0; i < n; i++)
                        y[i] = fitted[i] + ((stream.NextBits() >> 63) == 0 ? sizes[i] : -sizes[i]);
                    return true;
                };
            case Resampling.Case:
                double[] x = [.. fit.Points.X];
                var counts = new int[n];
                return (_, _, w) =>
                {
                    Array.Clear(counts);
                    for (var i = 0; i < n; i++)
                        counts[Index(stream, n)]++;
                    return Recount(counts, x, w, fit.P + 1);
                };
            default:
                throw new ArgumentOutOfRangeException(nameof(scheme), scheme, "Not a way of resampling.");
        }
    }

    /// <summary>Weights from how often each point was drawn; false when fewer distinct x than needed were drawn.</summary>
    internal static bool Recount(ReadOnlySpan<int> counts, ReadOnlySpan<double> x, Span<double> w, int needed)
    {
        var distinct = 0;
        for (var i = 0; i < counts.Length; i++)
        {
            w[i] *= counts[i];
            var first = counts[i] > 0;
            for (var k = 0; first && k < i; k++)
                first = counts[k] == 0 || x[k] != x[i];
            if (first)
                distinct++;
        }

        return distinct >= needed;
    }

    // Multiply-shift on 64 bits: uneven by less than n/2⁶⁴.
    private static int Index(SeededStream stream, int n) => (int)Math.BigMul(stream.NextBits(), (ulong)n, out _);

    private static Outcome<BootstrapResult> Summarise(FitResult fit, Draws draws, BootstrapOptions options)
    {
        var settled = draws.Ends.Count(e => e == DrawEnd.Settled);
        var failed = draws.Ends.Count(e => e == DrawEnd.Failed);
        var skipped = draws.Ends.Length - settled - failed;
        if (failed > MostFailures * draws.Ends.Length || settled < FewestResamples / 2)
        {
            return Outcome<BootstrapResult>.None(Finding.Of("HF-424", Weight.Stop, FormattableString.Invariant(
                $"{failed} of {draws.Ends.Length} resamples of {fit.Card.Name} could not be fitted: their intervals are void. Rely on the profile, or measure more.")));
        }

        var parameters = new List<ResampledParameter>();
        for (var j = 0; j < fit.P; j++)
        {
            var sorted = draws.Column(j).Order().ToArray();
            var mean = sorted.Average();
            var sd = Math.Sqrt(sorted.Sum(v => (v - mean) * (v - mean)) / (sorted.Length - 1));
            parameters.Add(new(fit.Parameters[j].Symbol, mean, sd, Percentiles(sorted, fit, options), Studentised(fit, draws, j)));
        }

        List<Finding> findings = skipped == 0 ? [] : [Finding.Of("HF-424", Weight.Note, FormattableString.Invariant(
            $"{skipped} of {draws.Ends.Length} resamples had too few different x and were skipped."))];
        return new(new(options.Scheme, options.Seed, draws.Ends.Length, failed, skipped, parameters, draws), findings);
    }

    // Percentiles of residual resamples are too narrow below twenty points whatever is done to the residuals.
    private static Interval? Percentiles(double[] sorted, FitResult fit, BootstrapOptions options)
        => options.Scheme == Resampling.Residual && fit.N < 20
            ? null
            : new(Quantile(sorted, (1 - fit.Confidence) / 2), Quantile(sorted, (1 + fit.Confidence) / 2), fit.Confidence);

    private static Interval? Studentised(FitResult fit, Draws draws, int j)
    {
        if (fit.Parameters[j].StandardError is not { } se || !(se > 0))
            return null;
        var (value, p) = (fit.Parameters[j].Value, fit.P);
        var t = Enumerable.Range(0, draws.Ends.Length)
            .Where(k => draws.Ends[k] == DrawEnd.Settled && draws.Errors[k * p + j] > 0)
            .Select(k => (draws.Values[k * p + j] - value) / draws.Errors[k * p + j]).Order().ToArray();
        return t.Length < FewestResamples / 2
            ? null
            : new(value - se * Quantile(t, (1 + fit.Confidence) / 2), value - se * Quantile(t, (1 - fit.Confidence) / 2), fit.Confidence);
    }

    /// <summary>Quantile by linear interpolation at position (B − 1)·q.</summary>
    internal static double Quantile(double[] sorted, double q)
    {
        var position = (sorted.Length - 1) * q;
        var low = (int)position;
        return low + 1 < sorted.Length ? sorted[low] + (position - low) * (sorted[low + 1] - sorted[low]) : sorted[^1];
    }
}
