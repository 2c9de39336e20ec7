using System.Collections.Immutable;
using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Studies.Import;

/// <summary>Taking files in: the one path that every door uses. Understood first; kept only when nothing is left to decide.</summary>
public static class Take
{
    /// <summary>Understands files and, unless it is a rehearsal or something is left to decide, keeps them as one entry.</summary>
    /// <param name="folder">The study, open for writing (for reading is enough for a rehearsal).</param>
    /// <param name="paths">Files and folders; a folder brings every file in it.</param>
    /// <param name="options">Answers and whether it is a rehearsal.</param>
    /// <param name="who">Who takes them in.</param>
    /// <param name="cancel">Stops it; nothing is kept then.</param>
    /// <exception cref="StudyException">The drop is past a limit (HF-407), a path does not exist (HF-406), or the disk is in the way (HF-43x).</exception>
    public static Taken Files(StudyFolder folder, IReadOnlyList<string> paths, TakeOptions options, string who, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(options);
        var files = Drop.Read(paths, cancel);
        return Keep(folder, Understand(folder.Study, files, options.Answers, cancel), options, who);
    }

    /// <summary>Reads files and folders into memory, for a door that asks before it keeps.</summary>
    /// <param name="paths">Files and folders; a folder brings every file in it.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="StudyException">The drop is past a limit (HF-407), or a path does not exist (HF-406).</exception>
    public static IReadOnlyList<IncomingFile> Read(IReadOnlyList<string> paths, CancellationToken cancel = default) => Drop.Read(paths, cancel);

    /// <summary>Understands files that are in memory already: an upload, a pasted block. Nothing is kept.</summary>
    /// <param name="study">The study.</param>
    /// <param name="files">The files; samples are understood before readings, whatever the order.</param>
    /// <param name="answers">Answers to questions.</param>
    /// <param name="cancel">Stops it.</param>
    /// <returns>What each was understood to be, in the order of <paramref name="files"/>.</returns>
    public static ImmutableArray<IncomingUnderstood> Understand(Study study, IReadOnlyList<IncomingFile> files, Answers answers, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(files);
        var understood = new IncomingUnderstood[files.Count];
        var before = study;
        var read = new List<(IncomingFile File, int Place, FileUnderstanding Understanding)>();
        foreach (var (place, file) in files.Index())
        {
            var outcome = Room.Of(file.Name, () => file.Refusal is { } refusal ? FileUnderstanding.Unopened(file.Name, refusal) : FileUnderstanding.Of(file.Name, file.Bytes, answers, before.Analyte, cancel), file.Name);
            if (outcome.Value is { } one)
                read.Add((file, place, one));
            else
                understood[place] = new IncomingUnderstood(file, FileUnderstanding.Fallen(file, outcome.Findings[0]), int.MaxValue);
        }

        var calibrated = read.Exists(r => r.Understanding.HasStandards);
        var codesRead = read.SelectMany(r => r.Understanding.CodesRead(before.Analyte, calibrated)).ToHashSet(StringComparer.Ordinal);
        // Notes speak of the vessels; where no sheet describes these, of those that were read.
        var notes = read.Where(r => r.Understanding.IsNotes).Select(r => r.Understanding).ToList();
        var described = read.Exists(r => r.Understanding.HasSamples);
        bool UsesNotes(FileUnderstanding one) => described ? one.HasSamples : one.HasReadings;
        var isUsed = read.Exists(r => UsesNotes(r.Understanding));
        var said = notes.Aggregate(Shapes.Notes.None, (all, n) => all.And(n.Said(before.Analyte)));
        var taken = new Dictionary<string, string>(StringComparer.Ordinal);
        var turn = 0;
        foreach (var (file, place, one) in read.OrderBy(r => r.Understanding.Rank).ThenBy(r => r.File.Name, StringComparer.Ordinal).ThenBy(r => r.Place))
        {
            cancel.ThrowIfCancellationRequested();
            var now = study;
            var outcome = Room.Of(file.Name, () => Against(one, file, now, taken, UsesNotes(one) ? said : one.HasReadings ? said.OfReadings() : Shapes.Notes.None, isUsed && one.IsNotes, codesRead), file.Name);
            var understanding = outcome.Value ?? FileUnderstanding.Fallen(file, outcome.Findings[0]);
            understood[place] = new IncomingUnderstood(file, understanding, turn++);
            if (understanding.Proposal is not { } proposal)
                continue;
            taken.TryAdd(understanding.Sha256, file.Name);
            study = Fold.After(study, proposal with { Files = [] }, study.Version, default, "");
        }
        Sense.PhysicalSense.Review(before, study, understood, answers);
        Sense.WhatIsMissing.Say(before, study, understood);
        return [.. understood];
    }

    /// <summary>Keeps what was understood as one entry, when nothing is left to decide.</summary>
    /// <param name="folder">The study, open for writing.</param>
    /// <param name="understood">What <see cref="Understand"/> gave for this very state of the study.</param>
    /// <param name="options">Answers and whether it is a rehearsal.</param>
    /// <param name="who">Who takes them in.</param>
    public static Taken Keep(StudyFolder folder, ImmutableArray<IncomingUnderstood> understood, TakeOptions options, string who)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(options);
        ImmutableArray<Understanding> understandings = [.. understood.Select(u => u.Understanding)];
        var accepted = understood.Where(u => u.Understanding.Proposal is not null).OrderBy(u => u.Turn).ToList();
        if (options.Rehearse || accepted.Count == 0 || understandings.Any(u => u.NeedsDecision) || (!options.SkipRefused && understandings.Any(IsRefused)))
            return new Taken(understandings, null);
        foreach (var one in accepted)
            folder.KeepOriginal(one.File.Bytes);
        var entry = folder.Append(folder.Daybook.Version, who, Together([.. accepted.Select(a => a.Understanding.Proposal!)]) with
        {
            Files = [.. understandings.Where(u => u.Proposal is not null).SelectMany(u => u.Proposal!.Files)],
        })[0];
        return new Taken(understandings, entry);
    }

    // An answer that cannot be one is the file's affair: it is refused by name and the others are understood all the same.
    private static Understanding Against(FileUnderstanding one, IncomingFile file, Study study, Dictionary<string, string> taken, Shapes.Notes beside, bool servesOthers, IReadOnlySet<string> codesRead)
    {
        try
        {
            return one.Against(study, taken, beside, servesOthers, codesRead);
        }
        catch (StudyException e)
        {
            return FileUnderstanding.Fallen(file, FileUnderstanding.AsFinding(e, file.Name));
        }
    }

    private static bool IsRefused(Understanding understanding) => understanding.Findings.Any(f => f.Weight == Weight.Stop);

    private static TakenIn Together(List<TakenIn> all)
    {
        return new TakenIn
        {
            Samples = [.. all.SelectMany(p => p.Samples)],
            Runs = [.. all.SelectMany(p => p.Runs)],
            Readings = [.. all.SelectMany(p => p.Readings)],
            Measurements = all.Exists(p => p.Measurements is not null) ? [.. all.SelectMany(p => p.Measurements ?? [])] : null,
            Reviews = all.Exists(p => p.Reviews is not null) ? [.. all.SelectMany(p => p.Reviews ?? [])] : null,
            Claims = [.. all.SelectMany(p => p.Claims)],
            Margins = [.. all.SelectMany(p => p.Margins)],
            Apparatus = [.. all.SelectMany(p => p.Apparatus)],
            Layouts = [.. all.SelectMany(p => p.Layouts)],
        };
    }
}

/// <summary>How files are taken in.</summary>
public sealed record TakeOptions
{
    /// <summary>Answers to the questions that the files raise.</summary>
    public Answers Answers { get; init; } = Answers.None;

    /// <summary>True to show what would be taken in and keep nothing.</summary>
    public bool Rehearse { get; init; }

    /// <summary>True to take in the rest when some files cannot be read; false keeps nothing then.</summary>
    public bool SkipRefused { get; init; }
}

/// <summary>A file on its way in.</summary>
/// <param name="Name">Its name without folders.</param>
/// <param name="Bytes">All of it.</param>
public sealed record IncomingFile(string Name, byte[] Bytes)
{
    /// <summary>Why it could not be opened, or null.</summary>
    public StudyException? Refusal { get; init; }
}

/// <summary>A file and what it was understood to be.</summary>
/// <param name="File">The file.</param>
/// <param name="Understanding">What it was understood to be.</param>
/// <param name="Turn">When it was understood, from 0: samples come before readings, and readings are numbered in this order.</param>
public sealed record IncomingUnderstood(IncomingFile File, Understanding Understanding, int Turn);

/// <summary>What came of taking files in.</summary>
/// <param name="Understandings">What each file was understood to be, in the order given.</param>
/// <param name="Entry">The entry that keeps them; null when nothing was kept.</param>
public sealed record Taken(ImmutableArray<Understanding> Understandings, Entry? Entry)
{
    /// <summary>Questions that keep it from being kept.</summary>
    public ImmutableArray<Question> Open => [.. Understandings.SelectMany(u => u.Questions).Where(q => q.IsOpen)];
}
