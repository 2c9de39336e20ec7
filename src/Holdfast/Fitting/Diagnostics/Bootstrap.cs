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

    /// <summary>Points below which percentiles are too narrow to be given.</summary>
    public const int FewestForPercentiles = 20;

    /// <summary>Draws the readings and weights of one resample.</summary>
    /// <param name="resample">Its number, from 0.</param>
    /// <param name="y">Holds the readings; to be overwritten.</param>
    /// <param name="w">Holds the weights; to be overwritten where they change.</param>
    /// <returns>False when the resample cannot determine the curve and is skipped.</returns>
    internal delegate bool Redraw(int resample, Span<double> y, Span<double> w);

    /// <summary>Resamples a fit.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="options">How; null for 2000 studentised residual resamples with seed 0.</param>
    /// <param name="cancellation">Stops the work within a few refits; nothing half-done comes back.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 100 resamples, or no thread.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static Outcome<BootstrapResult> Of(FitResult fit, BootstrapOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(fit);
        options ??= new();
        return SideBySide([(fit, options.Scheme)], options, cancellation)[0];
    }

    /// <summary>
    /// Resamples several fits in step, a block of each before the next block of any: the share of resamples done is the share of the time, whatever one
    /// refit of each curve costs. Each gives the same bits as alone.
    /// </summary>
    /// <param name="fits">The fits, each with its scheme; that of the options is not used.</param>
    /// <param name="options">How.</param>
    /// <param name="cancellation">Stops the work within a few refits; nothing half-done comes back.</param>
    /// <returns>One outcome for each fit, in their order.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 100 resamples, or no thread.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static IReadOnlyList<Outcome<BootstrapResult>> SideBySide(
        IReadOnlyList<(FitResult Fit, Resampling Scheme)> fits, BootstrapOptions options, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(fits);
        ArgumentNullException.ThrowIfNull(options);
        if (options.Count < FewestResamples || options.Threads < 1)
        {
            throw new ArgumentOutOfRangeException(nameof(options), FormattableString.Invariant(
                $"{options.Count} resamples on {options.Threads} threads; at least {FewestResamples} resamples and one thread are needed."));
        }

        var worked = fits.Where(f => CanResample(f.Fit)).Select(f => (f.Fit, f.Scheme, Draws: new Draws(options.Count, f.Fit.P))).ToArray();
        Draw(worked, options, cancellation);
        var drawn = new Queue<(FitResult Fit, Resampling Scheme, Draws Draws)>(worked);
        return [.. fits.Select(f =>
        {
            cancellation.ThrowIfCancellationRequested();
            return CanResample(f.Fit)
                ? Summarise(f.Fit, drawn.Dequeue().Draws, f.Scheme, options.Seed)
                : Outcome<BootstrapResult>.None(Finding.Of("HF-424", Weight.Stop, $"{f.Fit.Card.Name} cannot be resampled: there is no fit with points to spare."));
        })];
    }

    private static bool CanResample(FitResult fit) => fit.IsFit && fit.Nu >= 1 && fit.Covariance is not null;

    private static void Draw((FitResult Fit, Resampling Scheme, Draws Draws)[] worked, BootstrapOptions options, CancellationToken cancellation)
    {
        var blocks = (options.Count + Block - 1) / Block;
        var (gate, done) = (new Lock(), 0L);
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = options.Threads, CancellationToken = cancellation };
        Parallel.For(0, blocks * worked.Length, parallel, turn =>
        {
            var (block, (fit, scheme, draws)) = (turn / worked.Length, worked[turn % worked.Length]);
            // A stream for each block: what is drawn does not depend on which thread draws it.
            var stream = new SeededStream(options.Seed, FormattableString.Invariant($"bootstrap {scheme} block {block}"));
            var (from, to) = (block * Block, Math.Min((block + 1) * Block, options.Count));
            Refits(fit, draws, from, to, Scheme(fit, scheme, stream), cancellation);
            // Told inside the gate: a count never falls back behind one that was told.
            lock (gate)
            {
                done += to - from;
                options.Progress?.Report((int)(done / worked.Length));
            }
        });
    }

    /// <summary>Fits a run of resamples, each from the estimate; allocates nothing for each of them.</summary>
    internal static void Refits(FitResult fit, Draws draws, int from, int to, Redraw redraw, CancellationToken cancellation = default)
    {
        var (problem, p) = (fit.Problem!, fit.P);
        double[] y = new double[fit.Points.Count], w = new double[y.Length], weights = [.. fit.Weights], readings = fit.Response;
        double[] theta = new double[p], downhill = new double[p], spread = new double[p];
        for (var resample = from; resample < to; resample++)
        {
            cancellation.ThrowIfCancellationRequested();
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
        double[] fitted = fit.Predicted, root = [.. fit.Weights.Select(Math.Sqrt)];
        switch (scheme)
        {
            case Resampling.Residual:
                var inflate = Math.Sqrt((double)fit.N / fit.Nu);
                double[] errors = [.. fit.IndependentResiduals.Select(r => r * inflate)];
                var mean = errors.Average();
                if (fit.Series is { } series)
                    return Shared(fitted, errors, mean, series.Covariance, stream);
                return (_, y, _) =>
                {
                    for (var i = 0; i < n; i++)
                        y[i] = root[i] > 0 ? fitted[i] + (errors[Index(stream, n)] - mean) / root[i] : y[i];
                    return true;
                };
            case Resampling.Wild:
                double[] sizes = [.. fit.Response.Select((y, i) => fit.Leverages[i] < 1 ? (y - fitted[i]) / (1 - fit.Leverages[i]) : 0)];
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

    // Independent errors are dealt out anew and turned back by L of the covariance, so that shared parts stay shared.
    private static Redraw Shared(double[] fitted, double[] errors, double mean, double[] covariance, SeededStream stream)
    {
        var n = fitted.Length;
        double[] triangle = [.. covariance], drawn = new double[n];
        Triangle.Factor(triangle, n);
        return (_, y, _) =>
        {
            for (var i = 0; i < n; i++)
                drawn[i] = errors[Index(stream, n)] - mean;
            for (var i = 0; i < n; i++)
            {
                y[i] = fitted[i];
                for (var k = 0; k <= i; k++)
                    y[i] += triangle[i * n + k] * drawn[k];
            }

            return true;
        };
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

    private static Outcome<BootstrapResult> Summarise(FitResult fit, Draws draws, Resampling scheme, ulong seed)
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
            parameters.Add(new(fit.Parameters[j].Symbol, mean, sd, Percentiles(sorted, fit), Studentised(fit, draws, j)));
        }

        List<Finding> findings = skipped == 0 ? [] : [Finding.Of("HF-424", Weight.Note, FormattableString.Invariant(
            $"{skipped} of {draws.Ends.Length} resamples had too few different x and were skipped."))];
        return new(new(scheme, seed, draws.Ends.Length, failed, skipped, parameters, draws), findings);
    }

    // Nominal 95 % percentiles cover 86 to 92 % at six to eight points in every scheme (reference/regression/interval-coverage.csv).
    private static Interval? Percentiles(double[] sorted, FitResult fit)
        => fit.N < FewestForPercentiles ? null : new(Quantile(sorted, (1 - fit.Confidence) / 2), Quantile(sorted, (1 + fit.Confidence) / 2), fit.Confidence);

    private static Interval? Studentised(FitResult fit, Draws draws, int j)
    {
        // The resamples know the scatter alone, so that their scale is put on the estimate too, whatever uncertainties were stated.
        if (fit.Parameters[j].StandardError * (fit.Scatter is ScatterModel.Known or ScatterModel.ByVessel ? Math.Sqrt(fit.SumOfSquares / fit.Nu) : 1) is not { } se || !(se > 0))
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
