using Holdfast.Claims.Analyses;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Web.Live;

/// <summary>
/// Resampling in the background, one fit at a time for all windows: it counts, can be stopped, and gives all of its result or none. A window that closes does
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

    /// <summary>Begins; nothing happens while another fit is being resampled or the study is being worked out.</summary>
    /// <param name="family">Family of curves: "kinetics".</param>
    /// <param name="series">The series.</param>
    /// <param name="count">How many resamples.</param>
    public void Begin(string family, string series, int count)
    {
        var state = open.Now;
        if (state.Dossier is not { } dossier)
            return;
        var source = new CancellationTokenSource();
        lock (gate)
        {
            if (now.IsRunning)
            {
                source.Dispose();
                return;
            }

            stop?.Dispose();
            stop = source;
            now = new(state.Daybook.Version, series, count) { IsRunning = true };
        }

        Changed?.Invoke(this, EventArgs.Empty);
        _ = Task.Run(() => Work(dossier.Evidence, family, series, count, source.Token), CancellationToken.None);
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
            var fits = CurveFamily.All.First(f => f.Name == family).OfStudy(evidence).FirstOrDefault(s => s.Series == series).Fits ?? [];
            if (fits.Where(f => f.IsFit && f.Aicc is not null).MinBy(f => f.Aicc) is not { } best)
            {
                Settle(null, $"No curve settled on {series}, so there is nothing to resample.", cancel);
                return;
            }

            var outcome = ResampledFit.Of(best, count, progress: new Share(this, clock.GetTimestamp(), cancel), cancel: cancel);
            Settle(
                outcome.Value is { } second ? ResampleTable.Of("resampled", $"Intervals of {best.Card.Name}, series {series}", [(series, second)]) : null,
                outcome.Value is null ? string.Join(" ", outcome.Findings.Select(f => f.Sentence)) : "",
                cancel);
        }
        catch (OperationCanceledException)
        {
            // Whoever stopped it has said so.
        }
    }

    private void Tell(double share, TimeSpan gone, CancellationToken cancel)
    {
        lock (gate)
        {
            if (cancel.IsCancellationRequested || !now.IsRunning)
                return;
            now = now with
            {
                Done = (int)(share * now.Count),
                SecondsLeft = share > 0 ? (int)Math.Ceiling(gone.TotalSeconds * (1 - share) / share) : null,
            };
        }

        Changed?.Invoke(this, EventArgs.Empty);
    }

    private void Settle(Table? result, string words, CancellationToken cancel)
    {
        lock (gate)
        {
            if (cancel.IsCancellationRequested)
                return;
            now = now with { IsRunning = false, Done = now.Count, Result = result, Words = words };
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

    private sealed class Share(Resampling of, long begun, CancellationToken cancel) : IProgress<double>
    {
        private readonly Lock gate = new();
        private TimeSpan due = Pause;

        public void Report(double value)
        {
            var gone = of.clock.GetElapsedTime(begun);
            lock (gate)
            {
                if (gone < due)
                    return;
                due = gone + Pause;
            }

            of.Tell(value, gone, cancel);
        }
    }
}
