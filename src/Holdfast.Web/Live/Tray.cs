using System.Collections.Immutable;
using Holdfast.Studies.Import;

namespace Holdfast.Web.Live;

/// <summary>Files and pasted blocks that wait for a decision. Nothing in here counts; accepting is one entry, which undo takes back whole.</summary>
public sealed class Tray
{
    private readonly Lock gate = new();
    private readonly OpenStudy study;
    private ImmutableArray<IncomingFile> files = [];
    private Answers answers = Answers.None;
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

    /// <summary>Puts files in.</summary>
    /// <param name="more">The files.</param>
    public void Put(IEnumerable<IncomingFile> more)
    {
        lock (gate)
        {
            files = [.. files, .. more];
            Said = null;
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

    private void Read()
    {
        var mine = Interlocked.Increment(ref turn);
        ImmutableArray<IncomingFile> waiting;
        Answers given;
        lock (gate)
        {
            (waiting, given) = (files, answers);
            Understood = waiting.IsEmpty ? [] : null;
        }

        Changed?.Invoke(this, EventArgs.Empty);
        if (waiting.IsEmpty)
            return;
        _ = Task.Run(() =>
        {
            var understood = Take.Understand(study.Now.Study, waiting, given).Select(u => u.Understanding).ToImmutableArray();
            lock (gate)
            {
                if (mine != Volatile.Read(ref turn))
                    return;
                Understood = understood;
            }

            Changed?.Invoke(this, EventArgs.Empty);
        });
    }
}
