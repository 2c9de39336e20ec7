using System.Collections.Immutable;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.History;

/// <summary>The present state of a study, worked out from its entries. Pure: the same entries give the same study.</summary>
public static class Fold
{
    /// <summary>The study after all of these entries.</summary>
    /// <param name="entries">Entries in order, the first of them a <see cref="StudyBegun"/>.</param>
    public static Study Of(ImmutableArray<Entry> entries)
    {
        if (entries.IsDefaultOrEmpty || entries[0].Change is not StudyBegun begun)
            throw new ArgumentException("A history begins with the entry that began the study.", nameof(entries));
        var study = new Study { Title = begun.Title, Analyte = begun.Analyte, Invented = begun.Invented, Details = begun.Details };
        var undone = UndoOrder.Of(entries).Undone;
        var (readingsEver, measurementsEver, plannedEver) = (0, 0, 0);
        foreach (var entry in entries)
        {
            // Readings that an undo took away keep their ids for themselves.
            if (entry.Change is TakenIn taken)
                (readingsEver, measurementsEver) = (readingsEver + taken.Readings.Length, measurementsEver + (taken.Measurements?.Length ?? 0));
            if (entry.Change is SeriesDesigned designed)
                plannedEver += designed.Vessels.Length;
            if (!undone.Contains(entry.Number))
                study = After(study, entry.Change, entry.Number, entry.When, entry.Who);
        }
        return study with { ReadingsEver = readingsEver, MeasurementsEver = measurementsEver, PlannedEver = plannedEver, Version = entries[^1].Number, Fingerprint = entries[^1].Hash };
    }

    /// <summary>The study after one more change that is not an undo or a redo; also used to rehearse one that is not kept.</summary>
    /// <param name="study">Before.</param>
    /// <param name="change">What was done.</param>
    /// <param name="number">Number of the entry.</param>
    /// <param name="when">When.</param>
    /// <param name="who">Who.</param>
    public static Study After(Study study, Change change, long number, DateTimeOffset when, string who)
    {
        ArgumentNullException.ThrowIfNull(study);
        return change switch
        {
            TakenIn taken => TakeIn(study, taken, number, when),
            LayoutForgotten f => study with { Layouts = study.Layouts.Remove(f.Layout) },
            Struck s => study with { Strikes = study.Strikes.Add(new Strike(s.Target, s.Reason, number, when, who)) },
            Restored r => study with { Strikes = study.Strikes.RemoveAll(s => string.Equals(s.Target, r.Target, StringComparison.Ordinal)) },
            FactCorrected f => study with { Samples = Correct(study.Samples, f) },
            ClaimStated c => State(study, c, number, when),
            ClaimWithdrawn w => study with { Claims = study.Claims.RemoveAll(c => string.Equals(c.Id, w.Id, StringComparison.Ordinal)) },
            MarginFixed m => FixMargin(Amend(study, m), m, number),
            ApparatusRecorded a => Record(study, a.Instrument),
            DetailSet d => SetDetail(study, d),
            WorkPlanned p => study with { Plan = study.Plan.Add(new PlannedWork(p.Work, p.Claim, p.Vessels, p.Settings.IsDefault ? [] : p.Settings, number, when, who)) },
            WorkDone d => study with { Plan = [.. study.Plan.Select(p => string.Equals(p.Id, d.Id, StringComparison.Ordinal) ? p with { Done = when } : p)] },
            WorkWithdrawn w => study with { Plan = study.Plan.RemoveAll(p => string.Equals(p.Id, w.Id, StringComparison.Ordinal)) },
            SeriesDesigned { Vessels.IsDefaultOrEmpty: false } d => Design(Amend(study, d), d, number, when, who),
            PlanFrozen f => study with { PlanFrozen = new(f.Sha256, number, when, who), Designs = [.. study.Designs.Select(d => Answered(d, f.Answers))] },
            Amended a => study with
            {
                PlanAmendments = study.PlanFrozen is null ? study.PlanAmendments : study.PlanAmendments.Add(new(a.Reason, "", when, who)),
                Amendments = study.SealedBy is null ? study.Amendments : study.Amendments.Add(new(number, a.Reason, when, who)),
            },
            BlockTyped { Cells.IsDefaultOrEmpty: false } b => study with { Samples = Merge(study.Samples, Typed(study, b.Cells)) },
            StudyDescribed d => d.Details.Aggregate(study, (s, one) => SetDetail(s, new DetailSet(one.Key, one.Value.Length == 0 ? null : one.Value))),
            RunsDescribed { Details.IsDefaultOrEmpty: false } d => study with { Runs = [.. study.Runs.Select(r => Describe(r, d.Details))] },
            CalibrationChosen c => study with { Calibrations = c.From is null ? study.Calibrations.Remove(c.Run) : study.Calibrations.SetItem(c.Run, c.From) },
            RolesGiven { Roles.IsDefaultOrEmpty: false } g => GiveRoles(study, g),
            PictureMarked { Points.IsDefault: false } m => study with { Marks = study.Marks.Add(new PictureMark(m.Measurement, m.Mark, m.Points, m.Written ?? "", m.Repeats, number, who)) },
            TextWritten t => study with { Texts = t.Text.Length == 0 ? study.Texts.Remove(t.Place) : study.Texts.SetItem(t.Place, new(t.Place, t.Text, number, when, who)) },
            SentenceReworded r => study with { Rewordings = r.Text.Length == 0 ? study.Rewordings.Remove(r.Was) : study.Rewordings.SetItem(r.Was, r.Text) },
            RemarkAnswered a => Remarked(study, a.Remark, r => r with { Answer = new(a.Words, who, when) }),
            RemarkClosed c => Remarked(study, c.Remark, r => r with { Closed = when }),
            // A later seal covers the amendments before it.
            Sealed => study with { SealedBy = number, Amendments = [] },
            _ => study,
        };
    }

    // What was changed stands with the reason that was given just before it.
    private static Study Amend(Study study, Change change)
    {
        if (study.PlanFrozen is null || study.PlanAmendments.IsEmpty)
            return study;
        var last = study.PlanAmendments[^1];
        return study with { PlanAmendments = study.PlanAmendments.SetItem(study.PlanAmendments.Length - 1, last with { What = last.What.Length == 0 ? change.Says() : last.What + "; " + change.Says() }) };
    }

    private static Study Design(Study study, SeriesDesigned d, long number, DateTimeOffset when, string who) => study with
    {
        PlannedEver = study.PlannedEver + d.Vessels.Length,
        Designs = study.Designs.Add(new DesignedPlan(d.Questions, d.Seed, d.Basis, d.Vessels, d.Warnings, number, when, who)),
        Samples = Merge(study.Samples, [.. d.Vessels.Select(v => new Sample(v.Code, v.Role, Ordinal.Facts
            .Add(SampleProperties.Series.Name, FromPlan(SampleProperties.Series, v.Series))
            .AddRange(v.Batch is { } batch ? [KeyValuePair.Create(SampleProperties.Batch.Name, FromPlan(SampleProperties.Batch, batch))] : [])))]),
    };

    private static Fact FromPlan(Property property, string words)
        => new(property.Name, null, null, null, words, words, new Origin(null, PlannedVessel.Source, null, 0, null));

    private static DesignedPlan Answered(DesignedPlan plan, ImmutableArray<PlanWarning> answers) => plan with
    {
        Warnings = [.. plan.Warnings.Select(w => answers.FirstOrDefault(a => string.Equals(a.Name, w.Name, StringComparison.Ordinal)) is { } a ? w with { Answer = a.Answer } : w)],
    };

    private static Study TakeIn(Study study, TakenIn taken, long number, DateTimeOffset when)
    {
        study = study with
        {
            Originals = study.Originals.AddRange(taken.Files.Select(f => new Original(f.Sha256, f.FileName, f.Bytes, number, when))),
            Samples = Merge(study.Samples, taken.Samples),
            Runs = study.Runs.AddRange(taken.Runs),
            Readings = study.Readings.AddRange(taken.Readings),
            ReadingsEver = study.ReadingsEver + taken.Readings.Length,
            Measurements = study.Measurements.AddRange(taken.Measurements ?? []),
            MeasurementsEver = study.MeasurementsEver + (taken.Measurements?.Length ?? 0),
            Layouts = Remember(study.Layouts, taken.Layouts),
            Remarks = taken.Reviews is { } reviews ? study.Remarks.AddRange(reviews.SelectMany(r => r.Remarks.Select(p => (Review: r, Pin: p))).Select((r, i) => new Remark(r.Pin, r.Review.By, r.Review.On, number, i + 1))) : study.Remarks,
        };
        foreach (var claim in taken.Claims)
            study = State(study, claim, number, when);
        foreach (var margin in taken.Margins)
            study = FixMargin(study, margin, number);
        foreach (var instrument in taken.Apparatus)
            study = Record(study, instrument);
        return study;
    }

    private static ImmutableArray<Sample> Merge(ImmutableArray<Sample> samples, ImmutableArray<Sample> more)
    {
        if (more.IsEmpty)
            return samples;
        var merged = samples.ToBuilder();
        var place = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < merged.Count; i++)
            place[merged[i].Code] = i;
        foreach (var sample in more)
        {
            if (place.TryGetValue(sample.Code, out var i))
            {
                merged[i] = merged[i] with { Facts = merged[i].Facts.SetItems(sample.Facts) };
            }
            else
            {
                place[sample.Code] = merged.Count;
                merged.Add(sample with { Facts = Ordinal.Facts.SetItems(sample.Facts) });
            }
        }
        return merged.ToImmutable();
    }

    private static ImmutableArray<Sample> Correct(ImmutableArray<Sample> samples, FactCorrected correction)
        => [.. samples.Select(s => string.Equals(s.Code, correction.Sample, StringComparison.Ordinal)
            ? s with { Facts = s.Facts.SetItem(correction.Fact.Property, correction.Fact) }
            : s)];

    private static ImmutableArray<Sample> Typed(Study study, ImmutableArray<TypedCell> cells)
    {
        var known = study.Samples.ToDictionary(s => s.Code, StringComparer.Ordinal);
        return [.. cells.GroupBy(c => c.Sample, StringComparer.Ordinal).Where(g => known.ContainsKey(g.Key)).Select(g =>
            known[g.Key] with { Facts = Ordinal.Facts.SetItems(g.Select(c => KeyValuePair.Create(c.Fact.Property, c.Fact))) })];
    }

    // A key is the same key whatever its case: the file's spelling stays.
    private static Run Describe(Run run, ImmutableArray<RunDetail> details)
        => details.Where(d => string.Equals(d.Run, run.Id, StringComparison.Ordinal)).Aggregate(run, (r, d) => r with
        {
            Details = r.Details.SetItem(r.Details.Keys.FirstOrDefault(k => string.Equals(k.Trim(), d.Key, StringComparison.OrdinalIgnoreCase)) ?? d.Key, d.Value),
        });

    private static Study GiveRoles(Study study, RolesGiven given)
    {
        var roles = given.Roles.GroupBy(r => r.Sample, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Last().Role, StringComparer.Ordinal);
        study = study with { Samples = [.. study.Samples.Select(s => roles.TryGetValue(s.Code, out var role) ? s with { Role = role } : s)] };
        return given.Cells.IsDefaultOrEmpty ? study : study with { Samples = Merge(study.Samples, Typed(study, given.Cells)) };
    }

    private static Study Remarked(Study study, string id, Func<Remark, Remark> changed)
        => study with { Remarks = [.. study.Remarks.Select(r => string.Equals(r.Id, id, StringComparison.Ordinal) ? changed(r) : r)] };

    private static Study State(Study study, ClaimStated c, long number, DateTimeOffset when)
        => study with { Claims = Put(study.Claims, new StatedClaim(c.Id, c.Rule, c.Parameters, c.Wording, number, when), x => x.Id) };

    private static Study FixMargin(Study study, MarginFixed m, long number)
        => study with { Margins = Put(study.Margins, new Margin(m.Name, m.Low, m.High, m.Unit, number), x => x.Name) };

    private static Study Record(Study study, Instrument instrument)
        => study with { Apparatus = Put(study.Apparatus, instrument, x => x.Id) };

    // The later one of the same name stands where the earlier one stood.
    private static ImmutableArray<T> Put<T>(ImmutableArray<T> list, T item, Func<T, string> name)
    {
        for (var i = 0; i < list.Length; i++)
        {
            if (string.Equals(name(list[i]), name(item), StringComparison.Ordinal))
                return list.SetItem(i, item);
        }
        return list.Add(item);
    }

    private static Study SetDetail(Study study, DetailSet d) => d.Key switch
    {
        "title" when d.Value is not null => study with { Title = d.Value },
        "analyte" => study with { Analyte = d.Value },
        _ => study with { Details = d.Value is null ? study.Details.Remove(d.Key) : study.Details.SetItem(d.Key, d.Value) },
    };

    private static ImmutableSortedDictionary<string, ImmutableSortedDictionary<string, string>> Remember(
        ImmutableSortedDictionary<string, ImmutableSortedDictionary<string, string>> layouts, ImmutableArray<LayoutAnswer> answers)
    {
        foreach (var answer in answers)
        {
            var known = layouts.GetValueOrDefault(answer.Layout, Ordinal.Words);
            layouts = layouts.SetItem(answer.Layout, known.SetItem(answer.Question, answer.Answer));
        }
        return layouts;
    }
}
