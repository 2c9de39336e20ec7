using Holdfast.Claims.Analyses;
using Holdfast.Fitting.Diagnostics;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Web.Live;

/// <summary>
/// Resampling in the background, one series at a time for all windows: it counts, can be stopped, and gives all of its result or none. A window that closes does
/// not stop it; an entry that changes the study does, since the numbers would be of an earlier state.
/// </summary>
public sealed class Resampling : IDisposable
{
    // Readers of progress need no more than this.
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(250);

    private readonly Lock gate = new();
    private readonly OpenStudy open;
    private readonly TimeProvider clock;
    private CancellationTokenSource? stop;
    private volatile ResamplingState now = ResamplingState.Idle;

    /// <summary>Watches a study.</summary>
    /// <param name="open">The study.</param>
    /// <param name="clock">The time.</param>
    public Resampling(OpenStudy open, TimeProvider clock)
    {
        ArgumentNullException.ThrowIfNull(open);
        (this.open, this.clock) = (open, clock);
        open.Changed += Overtaken;
    }

    /// <summary>Something changed: a share is done, it ended, or it was stopped. Raised on any thread.</summary>
    public event EventHandler? Changed;

    /// <summary>How it stands.</summary>
    public ResamplingState Now => now;

    /// <summary>Begins.</summary>
    /// <param name="family">Family of curves: "kinetics".</param>
    /// <param name="series">The series.</param>
    /// <param name="count">How many resamples.</param>
    /// <returns>Null when it has begun; otherwise what is in the way.</returns>
    public string? Begin(string family, string series, int count)
    {
        var state = open.Now;
        if (state.Dossier is not { } dossier)
            return "The study is being worked out. Ask again in a moment.";
        var source = new CancellationTokenSource();
        lock (gate)
        {
            if (now.IsRunning)
            {
                source.Dispose();
                return $"{now.Series} is being resampled, and one series is done at a time. Wait for it, or stop it.";
            }

            stop?.Dispose();
            stop = source;
            now = new(state.Daybook.Version, series, new(0, count, TimeSpan.Zero)) { IsRunning = true };
        }

        Changed?.Invoke(this, EventArgs.Empty);
        _ = Task.Run(() => Work(dossier.Evidence, family, series, count, source.Token), CancellationToken.None);
        return null;
    }

    /// <summary>Stops it; the study is as it was and no number is shown.</summary>
    public void Stop() => End("Stopped. The study is as it was.");

    /// <inheritdoc/>
    public void Dispose()
    {
        open.Changed -= Overtaken;
        End("");
        stop?.Dispose();
    }

    private void Work(Evidence evidence, string family, string series, int count, CancellationToken cancel)
    {
        try
        {
            var of = CurveFamily.All.First(f => f.Name == family);
            var candidates = CandidateCurve.Among(series, of.OfStudy(evidence).FirstOrDefault(s => s.Series == series).Fits ?? []);
            if (candidates.Count == 0)
            {
                Settle(null, $"No curve settled on {series}, so there is nothing to resample.", cancel);
                return;
            }

            // One processor is left to the windows.
            var options = new BootstrapOptions
            {
                Count = count,
                Seed = ResampledFit.UsualSeed,
                Threads = Math.Max(1, Environment.ProcessorCount - 1),
                Progress = new Share(this, count, clock.GetTimestamp(), cancel),
            };
            var outcomes = ResampledFit.Draw(candidates, options, cancel);
            ResampledFit[] drawn = [.. outcomes.Select(o => o.Value).OfType<ResampledFit>()];
            string[] refused = [.. outcomes.Where(o => !o.HasValue).SelectMany(o => o.Findings).Select(f => $"{f.Code} {f.Sentence}")];
            Settle(
                drawn.Length == 0 ? null : ResampleTable.Of("resampled", $"Intervals of {InWords.Listed(drawn.Select(d => d.Curve.Name))}, series {series}", drawn),
                string.Join(" ", refused),
                cancel);
        }
        catch (OperationCanceledException)
        {
            // Whoever stopped it has said so.
        }
#pragma warning disable CA1031 // A fault in the arithmetic is ours; it may not leave this running for ever.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            Settle(null, $"This is a fault in Holdfast, not in your data: {fault.GetType().Name}. The study is as it was.", cancel);
        }
    }

    private void Tell(Counting counting, CancellationToken cancel)
    {
        lock (gate)
        {
            if (cancel.IsCancellationRequested || !now.IsRunning)
                return;
            now = now with { Counting = counting };
        }

        Changed?.Invoke(this, EventArgs.Empty);
    }

    private void Settle(Table? result, string words, CancellationToken cancel)
    {
        lock (gate)
        {
            if (cancel.IsCancellationRequested)
                return;
            now = now with { IsRunning = false, Result = result, Words = words };
        }

        Changed?.Invoke(this, EventArgs.Empty);
    }

    private void End(string words)
    {
        lock (gate)
        {
            if (!now.IsRunning && now.Result is null)
                return;
            stop?.Cancel();
            now = now with { IsRunning = false, Result = null, Words = words };
        }

        Changed?.Invoke(this, EventArgs.Empty);
    }

    // A result belongs to the entries it was worked out from.
    private void Overtaken(object? sender, EventArgs e)
    {
        if (now.Version != open.Now.Daybook.Version)
            End("The study changed meanwhile: what was resampled belonged to an earlier state and is gone. Ask again.");
    }

    private sealed class Share(Resampling of, int all, long begun, CancellationToken cancel) : IProgress<int>
    {
        private TimeSpan due = Pause;

        public void Report(int value)
        {
            var counting = new Counting(value, all, of.clock.GetElapsedTime(begun));
            if (counting.Gone < due)
                return;
            due = counting.Gone + Pause;
            of.Tell(counting, cancel);
        }
    }
}
