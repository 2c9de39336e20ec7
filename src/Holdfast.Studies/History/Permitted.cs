using System.Collections.Immutable;
using System.Globalization;

namespace Holdfast.Studies.History;

/// <summary>What may follow what: checked before a change is kept, so that every kept history makes sense.</summary>
public static class Permitted
{
    /// <summary>Throws when the change cannot follow.</summary>
    /// <param name="daybook">What there is.</param>
    /// <param name="change">What would follow.</param>
    /// <param name="amending">True when an <see cref="Amended"/> entry stands before it in the same append.</param>
    /// <exception cref="StudyException">The study has no such thing (HF-404), is sealed (HF-421), or nothing would change (HF-425).</exception>
    /// <exception cref="ArgumentException">A reason, id or name is missing, or a second beginning.</exception>
    public static void Check(Daybook daybook, Change change, bool amending)
    {
        ArgumentNullException.ThrowIfNull(daybook);
        ArgumentNullException.ThrowIfNull(change);
        if (daybook.Entries.IsEmpty != change is StudyBegun)
            throw new ArgumentException("A history begins with the entry that began the study, and has only one.", nameof(change));
        if (change is StudyBegun begun)
        {
            Say(begun.Title, "title");
            return;
        }
        var study = daybook.Study;
        if (study.SealedBy is not null && change is not Amended && !amending)
            throw new StudyException(Codes.Sealed, "The study is sealed, so this is not kept. Amend it with a reason to change it.");
        if (study.PlanFrozen is { } frozen && !amending && ChangesPlan(daybook, change, frozen))
        {
            throw new StudyException(Codes.PlanFrozen,
                $"Plan and margins were frozen on {frozen.When.ToString("d MMM yyyy", CultureInfo.InvariantCulture)}, so this is not kept. Amend the plan: give a reason.");
        }
        switch (change)
        {
            case SeriesDesigned d:
                Design(study, d);
                break;
            case PlanFrozen f:
                Freeze(study, f);
                break;
            case Struck s:
                Say(s.Reason, "reason");
                Exists(study, s.Target);
                if (IsStruck(study, s.Target))
                    throw new StudyException(Codes.NothingChanges, $"{s.Target} is struck already.");
                break;
            case Restored r:
                Exists(study, r.Target);
                if (!IsStruck(study, r.Target))
                    throw new StudyException(Codes.NothingChanges, $"{r.Target} is not struck, so there is nothing to restore.");
                break;
            case FactCorrected f:
                Say(f.Reason, "reason");
                if (study.Sample(f.Sample) is null)
                    throw Unknown("sample", f.Sample);
                if (Property.Named(f.Fact.Property) is null)
                    throw new ArgumentException($"There is no property named {f.Fact.Property}.", nameof(change));
                break;
            case LayoutForgotten f when !study.Layouts.ContainsKey(f.Layout):
                throw new StudyException(Codes.NothingChanges, "Nothing is remembered for such a layout, so there is nothing to forget.");
            case ClaimStated c:
                Say(c.Id, "id");
                Say(c.Rule, "rule");
                break;
            case ClaimWithdrawn w when !study.Claims.Any(c => string.Equals(c.Id, w.Id, StringComparison.Ordinal)):
                throw Unknown("claim", w.Id);
            case DetailSet d:
                Say(d.Key, "key");
                break;
            case WorkPlanned p:
                Say(p.Work, "work");
                if (study.Plan.FirstOrDefault(o => o.Done is null && o.Claim == p.Claim && string.Equals(o.Work, p.Work, StringComparison.Ordinal)) is { } there)
                    throw new StudyException(Codes.NothingChanges, $"That stands in the Plan already, as {there.Id}.");
                break;
            case WorkDone d:
                if (Planned(study, d.Id).Done is not null)
                    throw new StudyException(Codes.NothingChanges, $"{d.Id} is noted as done already.");
                break;
            case WorkWithdrawn w:
                _ = Planned(study, w.Id);
                break;
            case Marked m:
                Say(m.Name, "name of the mark");
                break;
            case BlockTyped b:
                Block(study, b.Cells, b.Reason);
                break;
            case StudyDescribed d:
                Describe(study, d);
                break;
            case RunsDescribed d:
                if (d.Details.IsDefaultOrEmpty)
                    throw new StudyException(Codes.NothingChanges, "Nothing is said of any run.");
                foreach (var detail in d.Details)
                {
                    Say(detail.Key, "key");
                    Say(detail.Value, "value");
                    if (RunNamed(study, detail.Run).Detail(detail.Key) is not null)
                        Say(d.Reason ?? "", "reason");
                }
                break;
            case CalibrationChosen c:
                Calibrate(study, c);
                break;
            case RolesGiven g:
                Roles(study, g);
                break;
            case PictureMarked m:
                Say(m.Mark, "kind of the mark");
                if (study.Measurement(m.Measurement) is null)
                    throw Unknown("measurement", m.Measurement);
                if (m.Repeats is { } repeated && study.Mark(repeated)?.Measurement != m.Measurement)
                    throw Unknown("mark", repeated);
                if (m.Points.IsDefault || m.Points.Length % 2 != 0 || !m.Points.All(double.IsFinite))
                    throw new ArgumentException("A point of a mark has two numbers, across and down.", nameof(change));
                break;
            case TextWritten t:
                if (!OwnText.Places.Contains(t.Place))
                    throw new StudyException(Codes.UnknownSample, $"The chapter has no section {t.Place}. Sections: {string.Join(", ", OwnText.Places)}.");
                if (t.Text.Length > OwnText.Longest)
                    throw new StudyException(Codes.LimitExceeded, $"The text has more than {Ordinal.Text(OwnText.Longest)} signs, so it is not kept. Put a part of it elsewhere.");
                if (string.Equals(study.Texts.GetValueOrDefault(t.Place)?.Text ?? "", t.Text, StringComparison.Ordinal))
                    throw new StudyException(Codes.NothingChanges, "These words stand there already.");
                break;
            case SentenceReworded r:
                Say(r.Was, "sentence");
                if (string.Equals(study.Rewordings.GetValueOrDefault(r.Was, ""), r.Text, StringComparison.Ordinal))
                    throw new StudyException(Codes.NothingChanges, "That sentence is said so already.");
                break;
            case TakenIn { Reviews: { } reviews }:
                foreach (var review in reviews)
                    Reviewed(daybook, review);
                break;
            case RemarkAnswered a:
                Say(a.Words, "answer");
                _ = RemarkNamed(study, a.Remark);
                break;
            case RemarkClosed c:
                if (RemarkNamed(study, c.Remark).Closed is not null)
                    throw new StudyException(Codes.NothingChanges, $"{c.Remark} is closed already.");
                break;
            case Undone u when daybook.Undo.Next?.Number != u.Entry:
                throw new StudyException(Codes.NothingChanges, "There is nothing like that to undo.");
            case Redone r when daybook.Undo.Back?.Number != r.Entry:
                throw new StudyException(Codes.NothingChanges, "There is nothing like that to redo.");
            case Sealed s:
                Say(s.Note, "note");
                break;
            case Amended a:
                Say(a.Reason, "reason");
                break;
        }
    }

    private static void Say(string words, string name)
    {
        if (string.IsNullOrWhiteSpace(words))
            throw new ArgumentException($"The {name} is missing. A reader will look for it.", name);
    }

    private static bool ChangesPlan(Daybook daybook, Change change, PlanFreeze frozen) => change switch
    {
        SeriesDesigned or MarginFixed => true,
        TakenIn taken => !taken.Margins.IsDefaultOrEmpty,
        Undone => daybook.Undo.Next is { } next && next.Number < frozen.Entry && ChangesPlan(daybook, next.Change, frozen),
        _ => false,
    };

    private static void Design(Study study, SeriesDesigned designed)
    {
        if (designed.Vessels.IsDefaultOrEmpty)
            throw new StudyException(Codes.NothingChanges, "The plan holds no vessel, so there is nothing to keep.");
        if (designed.Vessels.GroupBy(v => v.Code, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1 || study.Sample(g.Key) is not null) is { } twice)
            throw new StudyException(Codes.NothingChanges, $"The study has a sample {twice.Key} already. Work the plan out once more: codes are never given twice.");
    }

    private static void Freeze(Study study, PlanFrozen freezing)
    {
        Say(freezing.Sha256, "fingerprint");
        if (study.Designs.IsEmpty)
            throw new StudyException(Codes.NothingChanges, "There is no designed plan to freeze. Design a series first.");
        if (study.PlanFrozen is { } frozen)
            throw new StudyException(Codes.NothingChanges, $"The plan was frozen already, by entry {Ordinal.Text(frozen.Entry)}. Later changes are amendments with a reason.");
        var open = study.Designs.SelectMany(d => d.Warnings)
            .Where(w => w.Answer is null && !freezing.Answers.Any(a => a.Name == w.Name && !string.IsNullOrWhiteSpace(a.Answer))).ToArray();
        if (open.Length > 0)
            throw new StudyException(Codes.PlanFrozen, $"Warnings are not answered: {string.Join(", ", open.Select(w => w.Name).Distinct())}. Change the plan, or accept each with a reason.");
    }

    private static PlannedWork Planned(Study study, string id)
        => study.Plan.FirstOrDefault(p => string.Equals(p.Id, id, StringComparison.Ordinal)) ?? throw Unknown("planned work", id);

    private static void Block(Study study, ImmutableArray<TypedCell> cells, string? reason)
    {
        if (cells.IsDefaultOrEmpty)
            throw new StudyException(Codes.NothingChanges, "The block holds no cell that differs from what is recorded.");
        var samples = study.Samples.ToDictionary(s => s.Code, StringComparer.Ordinal);
        foreach (var cell in cells)
        {
            if (!samples.TryGetValue(cell.Sample, out var sample))
                throw Unknown("sample", cell.Sample);
            if (Property.Named(cell.Fact.Property) is null)
                throw new ArgumentException($"There is no property named {cell.Fact.Property}.", nameof(cells));
            if (sample.Facts.ContainsKey(cell.Fact.Property))
                Say(reason ?? "", "reason");
        }
    }

    private static void Describe(Study study, StudyDescribed described)
    {
        foreach (var (key, value) in described.Details)
        {
            Say(key, "key");
            if (key == "title")
                Say(value, "title");
        }
        if (described.Details.All(d => string.Equals(Said(d.Key), d.Value, StringComparison.Ordinal)))
            throw new StudyException(Codes.NothingChanges, "The study says that already.");

        string Said(string key) => key switch
        {
            "title" => study.Title,
            "analyte" => study.Analyte ?? "",
            _ => study.Details.GetValueOrDefault(key, ""),
        };
    }

    private static void Calibrate(Study study, CalibrationChosen chosen)
    {
        _ = RunNamed(study, chosen.Run);
        if (chosen.From is { } from)
        {
            _ = RunNamed(study, from);
            if (string.Equals(from, chosen.Run, StringComparison.Ordinal))
                throw new StudyException(Codes.NothingChanges, $"{from} is that run itself. Choose another run.");
        }
        if (string.Equals(study.Calibrations.GetValueOrDefault(chosen.Run), chosen.From, StringComparison.Ordinal))
            throw new StudyException(Codes.NothingChanges, chosen.From is null ? $"No calibration was chosen for {chosen.Run}." : $"{chosen.Run} uses the calibration of {chosen.From} already.");
    }

    private static void Roles(Study study, RolesGiven given)
    {
        if (given.Roles.IsDefaultOrEmpty)
            throw new StudyException(Codes.NothingChanges, "No sample is given another role.");
        foreach (var role in given.Roles)
        {
            if (study.Sample(role.Sample) is null)
                throw Unknown("sample", role.Sample);
        }
        if (!given.Cells.IsDefaultOrEmpty)
            Block(study, given.Cells, given.Reason);
    }

    private static Run RunNamed(Study study, string id)
        => study.Runs.FirstOrDefault(r => string.Equals(r.Id, id, StringComparison.Ordinal)) ?? throw Unknown("run", id);

    private static Remark RemarkNamed(Study study, string id)
        => study.Remarks.FirstOrDefault(r => string.Equals(r.Id, id, StringComparison.Ordinal)) ?? throw Unknown("remark", id);

    // A reader had one moment of this very study before her.
    private static void Reviewed(Daybook daybook, ReviewTaken review)
    {
        if (review.On < 1 || review.On > daybook.Version || !string.Equals(daybook.Entries[(int)review.On - 1].Hash, review.Fingerprint, StringComparison.Ordinal))
            throw new StudyException(Codes.Unreadable, "These remarks were made on another study, or on entries that this one does not have. Nothing is taken in. Check which copy was sent to review.");
    }

    private static void Exists(Study study, string target)
    {
        if (!study.Has(target))
            throw Unknown("sample, reading, measurement or mark", target);
    }

    private static bool IsStruck(Study study, string target) => study.Strikes.Any(s => string.Equals(s.Target, target, StringComparison.Ordinal));

    private static StudyException Unknown(string what, string name)
        => new(Codes.UnknownSample, $"There is no {what} {name} in this study, so nothing is kept. Check the spelling.");
}
