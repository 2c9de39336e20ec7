using Holdfast.Claims;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Acts;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;

namespace Holdfast.Web.Live;

/// <summary>
/// The one study of this program, shared by every open page: what is kept, what follows from it, and who wants to know. Every change goes through
/// here, one after the other.
/// </summary>
public sealed class OpenStudy : IDisposable
{
    private readonly Lock gate = new();
    private readonly StudyFolder folder;
    private readonly TimeProvider clock;
    private readonly string who;
    private volatile StudyState now;
    private long done = -1;
    private bool working;

    /// <summary>Holds a study that is open for writing, and works it out.</summary>
    /// <param name="folder">The study.</param>
    /// <param name="clock">The time.</param>
    /// <param name="who">The author.</param>
    public OpenStudy(StudyFolder folder, TimeProvider clock, string who)
    {
        ArgumentNullException.ThrowIfNull(folder);
        (this.folder, this.clock, this.who) = (folder, clock, who);
        now = new StudyState(folder.Daybook, null, null, null);
        WorkOut();
    }

    /// <summary>Something changed: an entry was kept, or the study was worked out. Raised on any thread.</summary>
    public event EventHandler? Changed;

    /// <summary>How many want to know: open windows, mostly.</summary>
    public int Watching => Changed?.GetInvocationList().Length ?? 0;

    /// <summary>The present moment.</summary>
    public StudyState Now => now;

    /// <summary>The time now, with the offset of this place.</summary>
    public DateTimeOffset Time => clock.GetLocalNow();

    /// <summary>Keeps one thing that was done: a strike, work planned, a claim stated.</summary>
    /// <param name="change">What was done.</param>
    /// <returns>Null when it is kept; otherwise what was in the way.</returns>
    public string? Do(Change change) => Keep(() => folder.Append(folder.Daybook.Version, who, change));

    /// <summary>Keeps several things together, all or none: a reason and the change it is for, margins and the freeze.</summary>
    /// <param name="changes">What was done, in order.</param>
    /// <returns>Null when they are kept; otherwise what was in the way.</returns>
    public string? Do(IEnumerable<Change> changes) => Keep(() => folder.Append(folder.Daybook.Version, who, [.. changes]));

    /// <summary>Undoes the newest entry still in force.</summary>
    /// <returns>Null when it is kept; otherwise what was in the way.</returns>
    public string? Undo() => Keep(() => folder.UndoLast(who));

    /// <summary>Takes the newest undoing back.</summary>
    /// <returns>Null when it is kept; otherwise what was in the way.</returns>
    public string? Redo() => Keep(() => folder.RedoLast(who));

    /// <summary>Accepts files that were understood.</summary>
    /// <param name="files">The files.</param>
    /// <param name="answers">Answers given to their questions.</param>
    /// <returns>What came of it, and what was in the way or null.</returns>
    public (Taken? Taken, string? Trouble) Accept(IReadOnlyList<IncomingFile> files, Answers answers)
    {
        Taken? taken = null;
        var trouble = Keep(() => taken = Take.Keep(folder, Take.Understand(folder.Study, files, answers), new TakeOptions { Answers = answers }, who));
        return (taken, trouble);
    }

    /// <summary>Corrects one recorded fact, if it still is what the author saw when she began to type.</summary>
    /// <param name="edit">What, as seen, and as it should be.</param>
    /// <param name="reason">Why; a reader will see this. Not asked where nothing was recorded yet.</param>
    /// <param name="sure">True to keep a value that looks unlikely.</param>
    /// <returns>How it went.</returns>
    public EditOutcome Edit(FactEdit edit, string reason, bool sure = false)
    {
        ArgumentNullException.ThrowIfNull(edit);
        lock (gate)
        {
            var sample = folder.Study.Sample(edit.Sample);
            if (sample is null)
                return new EditOutcome(edit, null, $"{edit.Sample} is not in this study any more. What you typed is still in the cell's message: {edit.Text}.");
            var recorded = TypedFact.Shown(sample.Fact(edit.Property));
            if (!string.Equals(recorded, edit.Seen, StringComparison.Ordinal))
                return new EditOutcome(edit, recorded, $"{edit.Sample} changed in another window: {Named(recorded)}. Yours: {Named(edit.Text)}. Choose one; both stay in the Daybook.");
            if (TypedFact.Read(edit.Sample, edit.Property, edit.Text, out var trouble, folder.Study.Analyte) is not { } fact)
                return new EditOutcome(edit, null, trouble);
            if (!sure && TypedDoubt.Of(folder.Study, sample, fact) is { } doubt)
                return new EditOutcome(edit, null, $"{edit.Sample}: {edit.Property.Title} {fact.Written} is {doubt}. Is it right?") { AsksWhetherSure = true };
            if (recorded.Length > 0 && string.IsNullOrWhiteSpace(reason))
                return new EditOutcome(edit, null, $"Say why {edit.Property.Title} of {edit.Sample} is corrected. A reader will see this.") { AsksReason = true };
            var change = recorded.Length > 0
                ? (Change)new FactCorrected(edit.Sample, fact, reason.Trim())
                : new TakenIn { Samples = [sample with { Facts = sample.Facts.Clear().Add(fact.Property, fact) }] };
            return new EditOutcome(edit, null, Keep(() => folder.Append(folder.Daybook.Version, who, change)));
        }
    }

    /// <summary>Keeps a block of cells as one entry: all of them, or, when asked to, those that can be read.</summary>
    /// <param name="edits">The cells, each as it was seen and as it should be.</param>
    /// <param name="reason">Why what was recorded is corrected; not asked where nothing was.</param>
    /// <param name="leaveOut">True to leave out the cells that are refused; false to keep none when one is.</param>
    /// <param name="sure">True to keep values that look unlikely.</param>
    /// <returns>How it went.</returns>
    public BlockOutcome Edit(IReadOnlyList<FactEdit> edits, string reason, bool leaveOut, bool sure = false)
    {
        ArgumentNullException.ThrowIfNull(edits);
        lock (gate)
        {
            var samples = folder.Study.Samples.ToDictionary(s => s.Code, StringComparer.Ordinal);
            var (cells, refused, doubts, corrects) = (new List<TypedCell>(), new List<EditOutcome>(), new List<string>(), false);
            foreach (var edit in edits)
            {
                var recorded = TypedFact.Shown(samples.GetValueOrDefault(edit.Sample)?.Fact(edit.Property));
                if (!samples.ContainsKey(edit.Sample))
                {
                    refused.Add(new EditOutcome(edit, null, "is not in this study any more."));
                }
                else if (!string.Equals(recorded, edit.Seen, StringComparison.Ordinal))
                {
                    refused.Add(new EditOutcome(edit, recorded, $"changed in another window: {Named(recorded)}."));
                }
                else if (TypedFact.Read(edit.Sample, edit.Property, edit.Text, out var trouble, folder.Study.Analyte) is not { } fact)
                {
                    refused.Add(new EditOutcome(edit, null, trouble));
                }
                else if (!string.Equals(TypedFact.Shown(fact), recorded, StringComparison.Ordinal))
                {
                    cells.Add(new TypedCell(edit.Sample, fact));
                    if (!sure && TypedDoubt.Of(folder.Study, samples[edit.Sample], fact) is { } doubt)
                        doubts.Add($"{edit.Sample}: {edit.Property.Title} {fact.Written} is {doubt}");
                    corrects |= recorded.Length > 0;
                }
            }

            if ((refused.Count > 0 && !leaveOut) || cells.Count == 0)
                return new BlockOutcome(0, refused, null);
            if (doubts.Count > 0)
                return new BlockOutcome(0, [], $"{doubts[0]}{(doubts.Count > 1 ? FormattableString.Invariant($", and {doubts.Count - 1} more of the kind") : "")}. Is it right?") { AsksWhetherSure = true };
            if (corrects && string.IsNullOrWhiteSpace(reason))
                return new BlockOutcome(0, [], "Say why what was recorded is corrected. A reader will see this.") { AsksReason = true };
            var change = new BlockTyped([.. cells], corrects ? reason.Trim() : null);
            var notKept = Keep(() => folder.Append(folder.Daybook.Version, who, change));
            return new BlockOutcome(notKept is null ? cells.Count : 0, refused, notKept);
        }
    }

    /// <summary>What would follow from a strike, set beside what follows now. Nothing is kept.</summary>
    /// <param name="target">Sample code or reading id.</param>
    /// <param name="cancel">Stops it.</param>
    public Task<WorkingComparison> Compare(string target, CancellationToken cancel)
    {
        var state = now;
        return Task.Run(() => WorkingComparison.OfStrike(state.Dossier ?? Dossier.Of(state.Study), target), cancel);
    }

    /// <summary>The bytes of an original, checked against its fingerprint.</summary>
    /// <param name="sha256">Its fingerprint.</param>
    public byte[] Original(string sha256)
    {
        lock (gate)
            return folder.ReadOriginal(sha256);
    }

    /// <summary>Writes the plain copy and lets the study go.</summary>
    public void Dispose()
    {
        lock (gate)
            _ = folder.Close();
    }

    private static string Named(string value) => value.Length == 0 ? "nothing recorded" : value;

    private string? Keep(Action append)
    {
        string? trouble = null;
        lock (gate)
        {
            var before = folder.Daybook.Version;
            try
            {
                append();
            }
            catch (StudyException e)
            {
                trouble = $"{e.Code} {e.Message}";
            }
            catch (ArgumentException e)
            {
                trouble = e.Message;
            }

            if (folder.Daybook.Version == before)
            {
                now = now with { Trouble = trouble };
            }
            else
            {
                now = new StudyState(folder.Daybook, null, clock.GetLocalNow(), null);
                WorkOut();
            }
        }

        Changed?.Invoke(this, EventArgs.Empty);
        return trouble;
    }

    // In the background, one at a time: entries that come meanwhile are worked out together afterwards. A result that an entry has overtaken is
    // dropped, so that no page ever shows a number of an earlier state.
    private void WorkOut()
    {
        lock (gate)
        {
            if (working)
                return;
            working = true;
        }

        _ = Task.Run(() =>
        {
            while (Next() is { } daybook)
            {
                var (dossier, trouble) = WorkedOut(daybook.Study);
                lock (gate)
                {
                    done = daybook.Version;
                    if (now.Daybook.Version == done)
                        now = now with { Dossier = dossier, Drawn = dossier is null ? null : new Drawn(dossier), Trouble = trouble ?? now.Trouble };
                }

                Changed?.Invoke(this, EventArgs.Empty);
            }
        });
    }

    private Daybook? Next()
    {
        lock (gate)
        {
            if (now.Daybook.Version != done)
                return now.Daybook;
            working = false;
            return null;
        }
    }

    private static (Dossier? Dossier, string? Trouble) WorkedOut(Study study)
    {
        try
        {
            return (Dossier.Of(study), null);
        }
#pragma warning disable CA1031 // Whatever goes wrong in the arithmetic is ours; the page says so and the study stays as it is.
        catch (Exception fault)
#pragma warning restore CA1031
        {
            return (null, $"This is a fault in Holdfast, not in your data: {fault.GetType().Name}. Everything is kept; undo the last entry to go on.");
        }
    }
}
