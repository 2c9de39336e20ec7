using System.Collections.Immutable;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Import;

namespace Holdfast.Web.Live;

/// <summary>Files and pasted blocks that wait for a decision. Nothing in here counts; accepting is one entry, which undo takes back whole.</summary>
public sealed class Tray : IDisposable
{
    private readonly Lock gate = new();
    private readonly OpenStudy study;
    private readonly Dictionary<string, Question> asked = new(StringComparer.Ordinal);
    private ImmutableArray<IncomingFile> files = [];
    private ImmutableDictionary<string, string> given = ImmutableDictionary.Create<string, string>(StringComparer.OrdinalIgnoreCase);
    private (ImmutableArray<IncomingFile> Files, ImmutableDictionary<string, string> Given) settled;
    private ImmutableArray<IncomingUnderstood> understood = [];
    private CancellationTokenSource reading = new();
    private int pasted;
    private int turn;
    private long readAt;

    /// <summary>An empty tray.</summary>
    /// <param name="study">The study it belongs to.</param>
    public Tray(OpenStudy study)
    {
        this.study = study;
        settled = (files, given);
        study.Changed += StudyChanged;
    }

    /// <summary>Something came, went, was answered or understood. Raised on any thread.</summary>
    public event EventHandler? Changed;

    /// <summary>What the files are understood to be, in the order they came; while they are read anew, what they were last understood to be.</summary>
    public ImmutableArray<Understanding> Understood => [.. understood.Select(u => u.Understanding)];

    /// <summary>True while files are read.</summary>
    public bool IsReading { get; private set; }

    /// <summary>
    /// First quantities that would follow; null where there is nothing to keep. While they are worked out anew the last ones stand, so that nothing under
    /// them jumps: <see cref="IsFollowing"/>.
    /// </summary>
    public WhatFollows? Follows { get; private set; }

    /// <summary>True while the first quantities are worked out.</summary>
    public bool IsFollowing { get; private set; }

    /// <summary>How many files wait.</summary>
    public int Count => files.Length;

    /// <summary>What came of the last attempt to accept, in words; null for none.</summary>
    public string? Said { get; private set; }

    /// <summary>What of the files that were kept last is not used, counted and named.</summary>
    public ImmutableArray<string> NotUsed { get; private set; } = [];

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
            Say(null);
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
        {
            files = files.RemoveAll(f => string.Equals(f.Name, name, StringComparison.Ordinal));
            understood = understood.RemoveAll(u => string.Equals(u.File.Name, name, StringComparison.Ordinal));
        }

        Read();
    }

    /// <summary>Answers a question of one file; an empty answer takes the one given back.</summary>
    /// <param name="file">Name of the file.</param>
    /// <param name="question">Id of the question.</param>
    /// <param name="answer">The answer.</param>
    public void Answer(string file, string question, string answer) => Answer(file, [question], answer);

    /// <summary>Answers several questions of one file alike.</summary>
    /// <param name="file">Name of the file.</param>
    /// <param name="questions">Ids of the questions.</param>
    /// <param name="answer">The answer; empty takes those given back.</param>
    public void Answer(string file, IEnumerable<string> questions, string answer)
    {
        ArgumentNullException.ThrowIfNull(questions);
        lock (gate)
        {
            Say(null);
            foreach (var id in questions.Select(q => file + "|" + q))
                given = answer.Length == 0 ? given.Remove(id) : given.SetItem(id, answer);
        }

        Read();
    }

    /// <summary>The answer that was given here, or null.</summary>
    /// <param name="file">Name of the file.</param>
    /// <param name="question">Id of the question.</param>
    public string? Answered(string file, string question) => given.GetValueOrDefault(file + "|" + question);

    /// <summary>A question with all the choices it had when it was first put: an answered one knows only its answer.</summary>
    /// <param name="file">Name of the file.</param>
    /// <param name="question">The question as it is now.</param>
    public Question Whole(string file, Question question)
    {
        ArgumentNullException.ThrowIfNull(question);
        lock (gate)
        {
            return question.Answer is not null && asked.TryGetValue(file + "|" + question.Id, out var first) && first.Choices.Length > question.Choices.Length
                ? first with { Answer = question.Answer, IsRemembered = question.IsRemembered }
                : question;
        }
    }

    /// <summary>Samples of a file that an answer leaves out; no proposal holds them any more.</summary>
    /// <param name="file">Name of the file.</param>
    public IEnumerable<string> LeftOut(string file)
    {
        var start = file + "|role-of:";
        return given.Where(g => g.Value == "leave-out" && g.Key.StartsWith(start, StringComparison.Ordinal)).Select(g => g.Key[start.Length..]).Order(StringComparer.Ordinal);
    }

    /// <summary>Keeps everything that is ready, as one entry.</summary>
    public void Accept()
    {
        ImmutableArray<IncomingUnderstood> ready;
        Answers answers;
        lock (gate)
        {
            ready = [.. understood.Where(u => IsReady(u.Understanding))];
            answers = Of(given);
        }

        var (taken, trouble) = study.Accept([.. ready.Select(r => r.File)], answers);
        lock (gate)
        {
            if (taken?.Entry is { } entry)
            {
                var kept = ready.Select(r => r.File.Name).ToHashSet(StringComparer.Ordinal);
                files = files.RemoveAll(f => kept.Contains(f.Name));
                understood = understood.RemoveAll(u => kept.Contains(u.File.Name));
                Say(FormattableString.Invariant($"Kept as entry {entry.Number}: {entry.Change.Says()}. Undo takes all of it back."));
                NotUsed = [.. taken.Understandings.SelectMany(u => NotTaken.Of(u).Select(line => taken.Understandings.Length > 1 ? $"{u.FileName}: {line}" : line))];
            }
            else
            {
                Say(trouble ?? "Nothing was kept: " + (taken?.Open.FirstOrDefault()?.Text ?? "something is left to decide."));
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

    /// <summary>Stops the reading: what was brought or answered last, and is not understood yet, is out of the tray again.</summary>
    public void Stop()
    {
        lock (gate)
        {
            if (!IsReading)
                return;
            (files, given) = settled;
            Say("Stopped. What was brought last is not in the tray; the study is as it was.");
        }

        Read();
    }

    /// <summary>Stops reading for good.</summary>
    public void Dispose()
    {
        study.Changed -= StudyChanged;
        reading.Cancel();
        reading.Dispose();
    }

    private static Answers Of(ImmutableDictionary<string, string> given) => given.Aggregate(Answers.None, (all, one) => all.With(one.Key, one.Value));

    private void Say(string? words) => (Said, NotUsed) = (words, []);

    // What a file means depends on what the study holds: an undo, a sample added, answers forgotten.
    private void StudyChanged(object? sender, EventArgs e)
    {
        if (!files.IsEmpty && study.Now.Daybook.Version != readAt)
            Read();
    }

    private void Read()
    {
        var mine = Interlocked.Increment(ref turn);
        ImmutableArray<IncomingFile> waiting;
        ImmutableDictionary<string, string> answers;
        CancellationToken cancel;
        lock (gate)
        {
            (waiting, answers, readAt) = (files, given, study.Now.Daybook.Version);
            (IsReading, IsFollowing) = (!waiting.IsEmpty, !waiting.IsEmpty);
            if (waiting.IsEmpty)
                (understood, Follows) = ([], null);
            reading.Cancel();
            reading.Dispose();
            reading = new CancellationTokenSource();
            cancel = reading.Token;
        }

        Changed?.Invoke(this, EventArgs.Empty);
        if (!waiting.IsEmpty)
            _ = Task.Run(() => Read(mine, waiting, answers, cancel), CancellationToken.None);
    }

    private void Read(int mine, ImmutableArray<IncomingFile> waiting, ImmutableDictionary<string, string> answers, CancellationToken cancel)
    {
        var now = study.Now.Study;
        if (Understand(now, waiting, answers, cancel) is not { } result)
            return;
        lock (gate)
        {
            if (mine != Volatile.Read(ref turn))
                return;
            (files, given, understood, IsReading) = (result.Files, result.Given, result.Understood, false);
            settled = (files, given);
            if (result.Trouble is not null)
                Say(result.Trouble);
            foreach (var one in understood.Select(u => u.Understanding))
            {
                foreach (var question in one.Questions.Where(q => q.Answer is null))
                    asked[one.FileName + "|" + question.Id] = question;
            }
        }

        Changed?.Invoke(this, EventArgs.Empty);
        var follows = Follow(now, result.Understood);
        lock (gate)
        {
            if (mine != Volatile.Read(ref turn))
                return;
            (Follows, IsFollowing) = (follows, false);
        }

        Changed?.Invoke(this, EventArgs.Empty);
    }

    // Null when it was stopped. An answer that means nothing is named and taken back. A file that the reader falls over is named and refused; the
    // others are read all the same.
    private Reading? Understand(Study now, ImmutableArray<IncomingFile> waiting, ImmutableDictionary<string, string> answers, CancellationToken cancel)
    {
        try
        {
            return new(waiting, answers, Take.Understand(now, waiting, Of(answers), cancel), null);
        }
        catch (OperationCanceledException)
        {
            return null;
        }
        catch (StudyException e) when (!answers.Equals(settled.Given))
        {
            return Understand(now, waiting, settled.Given, cancel) is { } before ? before with { Trouble = e.Message } : null;
        }
#pragma warning disable CA1031 // A fault in a reader is ours; it may not leave the tray reading for ever.
        catch (Exception)
#pragma warning restore CA1031
        {
            ImmutableArray<IncomingFile> named = [.. waiting.Select(f => Falls(f) ? f with { Refusal = Fault(f.Name) } : f)];
            // Should only several files together bring it down, none is read.
            if (named.SequenceEqual(waiting))
                named = [.. waiting.Select(f => f with { Refusal = Fault(f.Name) })];
            return new(named, answers, Take.Understand(now, named, Of(answers), CancellationToken.None), null);
        }

        bool Falls(IncomingFile file)
        {
            try
            {
                Take.Understand(now, [file], Of(answers), CancellationToken.None);
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

    private static WhatFollows? Follow(Study now, ImmutableArray<IncomingUnderstood> understood)
    {
        try
        {
            return understood.Any(u => u.Understanding.Proposal is not null) ? WhatFollows.Of(now, understood) : null;
        }
#pragma warning disable CA1031 // A fault in the arithmetic is ours; the files can be decided on all the same, and the study page says it once they are kept.
        catch (Exception)
#pragma warning restore CA1031
        {
            return new WhatFollows([], []);
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

    private sealed record Reading(ImmutableArray<IncomingFile> Files, ImmutableDictionary<string, string> Given, ImmutableArray<IncomingUnderstood> Understood, string? Trouble);
}
