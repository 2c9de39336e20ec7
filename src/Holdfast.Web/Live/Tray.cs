using System.Collections.Immutable;
using Holdfast.Studies;
using Holdfast.Studies.Import;

namespace Holdfast.Web.Live;

/// <summary>Files and pasted blocks that wait for a decision. Nothing in here counts; accepting is one entry, which undo takes back whole.</summary>
public sealed class Tray : IDisposable
{
    private readonly Lock gate = new();
    private readonly OpenStudy study;
    private ImmutableArray<IncomingFile> files = [];
    private Answers answers = Answers.None;
    private ImmutableArray<IncomingFile> settled = [];
    private CancellationTokenSource reading = new();
    private int pasted;
    private int turn;

    /// <summary>An empty tray.</summary>
    /// <param name="study">The study it belongs to.</param>
    public Tray(OpenStudy study) => this.study = study;

    /// <summary>Something came, went, was answered or understood. Raised on any thread.</summary>
    public event EventHandler? Changed;

    /// <summary>What the files are understood to be, in the order they came; null while they are read.</summary>
    public ImmutableArray<Understanding>? Understood { get; private set; } = [];

    /// <summary>How many files wait.</summary>
    public int Count => files.Length;

    /// <summary>What came of the last attempt to accept, in words; null for none.</summary>
    public string? Said { get; private set; }

    /// <summary>
    /// Puts files in. Instruments and folders reuse names: one that is taken gets a number, so that each file can be told from the others; the very same
    /// file once more is left out.
    /// </summary>
    /// <param name="more">The files.</param>
    public void Put(IEnumerable<IncomingFile> more)
    {
        ArgumentNullException.ThrowIfNull(more);
        lock (gate)
        {
            Said = null;
            foreach (var file in more)
            {
                if (Free(file) is { } name)
                    files = files.Add(file with { Name = name });
            }
        }

        Read();
    }

    /// <summary>Puts a pasted block in, as a file of its own.</summary>
    /// <param name="text">The block.</param>
    public void Paste(string text)
    {
        var number = Interlocked.Increment(ref pasted);
        Put([new IncomingFile(FormattableString.Invariant($"pasted-{number}.txt"), System.Text.Encoding.UTF8.GetBytes(text))]);
    }

    /// <summary>Takes one file out again.</summary>
    /// <param name="name">Its name.</param>
    public void Remove(string name)
    {
        lock (gate)
            files = files.RemoveAll(f => string.Equals(f.Name, name, StringComparison.Ordinal));
        Read();
    }

    /// <summary>Answers a question of one file.</summary>
    /// <param name="file">Name of the file.</param>
    /// <param name="question">Id of the question.</param>
    /// <param name="answer">The answer.</param>
    public void Answer(string file, string question, string answer)
    {
        lock (gate)
            answers = answers.With(file + "|" + question, answer);
        Read();
    }

    /// <summary>Accepts everything that is ready.</summary>
    /// <param name="only">Name of the one file to accept, or null for all that are ready.</param>
    public void Accept(string? only = null)
    {
        ImmutableArray<IncomingFile> ready;
        Answers given;
        lock (gate)
        {
            var understood = Understood ?? [];
            ready = [.. files.Where((f, i) => i < understood.Length && IsReady(understood[i]) && (only is null || f.Name == only))];
            given = answers;
        }

        var (taken, trouble) = study.Accept(ready, given);
        lock (gate)
        {
            if (taken?.Entry is { } entry)
            {
                files = files.RemoveRange(ready);
                Said = FormattableString.Invariant($"Kept as entry {entry.Number}: {entry.Change.Says()}. Undo takes all of it back.");
            }
            else
            {
                Said = trouble ?? "Nothing was kept: something is left to decide.";
            }
        }

        Read();
    }

    /// <summary>True when a file can be accepted as it is.</summary>
    /// <param name="understanding">What it is understood to be.</param>
    public static bool IsReady(Understanding understanding)
    {
        ArgumentNullException.ThrowIfNull(understanding);
        return understanding is { Proposal: not null, NeedsDecision: false } && understanding.Findings.All(f => f.Weight != Weight.Stop);
    }

    /// <summary>Stops the reading: what was brought last, and is not understood yet, is out of the tray again.</summary>
    public void Stop()
    {
        lock (gate)
        {
            if (Understood is not null)
                return;
            files = settled;
            Said = "Stopped. What was brought last is not in the tray; the study is as it was.";
        }

        Read();
    }

    /// <summary>Stops reading for good.</summary>
    public void Dispose()
    {
        reading.Cancel();
        reading.Dispose();
    }

    private void Read()
    {
        var mine = Interlocked.Increment(ref turn);
        ImmutableArray<IncomingFile> waiting;
        Answers given;
        CancellationToken cancel;
        lock (gate)
        {
            (waiting, given) = (files, answers);
            Understood = waiting.IsEmpty ? [] : null;
            reading.Cancel();
            reading.Dispose();
            reading = new CancellationTokenSource();
            cancel = reading.Token;
        }

        Changed?.Invoke(this, EventArgs.Empty);
        if (waiting.IsEmpty)
            return;
        _ = Task.Run(
            () =>
            {
                var readable = Understand(waiting, given, cancel);
                if (readable is not { } result)
                    return;
                lock (gate)
                {
                    if (mine != Volatile.Read(ref turn))
                        return;
                    (files, settled, Understood) = (result.Files, result.Files, result.Understood);
                }

                Changed?.Invoke(this, EventArgs.Empty);
            },
            CancellationToken.None);
    }

    // A file that the reader falls over is named and refused; the others are read all the same. Null when it was stopped.
    private (ImmutableArray<IncomingFile> Files, ImmutableArray<Understanding> Understood)? Understand(
        ImmutableArray<IncomingFile> waiting, Answers given, CancellationToken cancel)
    {
        var now = study.Now.Study;
        try
        {
            return (waiting, [.. Take.Understand(now, waiting, given, cancel).Select(u => u.Understanding)]);
        }
        catch (OperationCanceledException)
        {
            return null;
        }
#pragma warning disable CA1031 // A fault in a reader is ours; it may not leave the tray reading for ever.
        catch (Exception)
#pragma warning restore CA1031
        {
            ImmutableArray<IncomingFile> named = [.. waiting.Select(f => Falls(f) ? f with { Refusal = Fault(f.Name) } : f)];
            // Should only several files together bring it down, none is read.
            if (named.SequenceEqual(waiting))
                named = [.. waiting.Select(f => f with { Refusal = Fault(f.Name) })];
            return (named, [.. Take.Understand(now, named, given, CancellationToken.None).Select(u => u.Understanding)]);
        }

        bool Falls(IncomingFile file)
        {
            try
            {
                Take.Understand(now, [file], given, CancellationToken.None);
                return false;
            }
#pragma warning disable CA1031 // As above: which file it is.
            catch (Exception)
#pragma warning restore CA1031
            {
                return true;
            }
        }
    }

    // Null when the file that has the name already is the very same.
    private string? Free(IncomingFile file)
    {
        var name = file.Name;
        for (var n = 2; files.FirstOrDefault(f => string.Equals(f.Name, name, StringComparison.OrdinalIgnoreCase)) is { } holder; n++)
        {
            if (holder.Bytes.AsSpan().SequenceEqual(file.Bytes))
                return null;
            name = FormattableString.Invariant($"{Path.GetFileNameWithoutExtension(file.Name)}, {n}{Path.GetExtension(file.Name)}");
        }

        return name;
    }

    private static StudyException Fault(string name)
        => new(Codes.Unreadable, $"Holdfast fell over {name}: a fault in Holdfast, not in your file. Nothing of it was taken; please report it.");
}
