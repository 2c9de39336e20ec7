using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.StudyTables;

/// <summary>First quantities that follow from files on their way in, worked out on the study as it would be. Nothing is kept.</summary>
/// <param name="Rows">The vessels that the files bring or complete, in their order.</param>
/// <param name="Fits">What the first fits say, a sentence for each series that allows one.</param>
public sealed record WhatFollows(ImmutableArray<WhatFollowsRow> Rows, ImmutableArray<string> Fits)
{
    // More than a student runs in a series, few enough that the fits of noise do not keep her waiting.
    private const int MostWorkedOut = 100;
    private static readonly ImmutableArray<SampleRole> ServeAll = [SampleRole.Standard, SampleRole.CheckStandard, SampleRole.Blank, SampleRole.StartSolution];

    /// <summary>Vessels of a very long file that are left for later: the first ones tell whether it was understood.</summary>
    public int Later { get; private init; }

    /// <summary>The first table of each area of work that measurements of powders feed, where the files bring some.</summary>
    public ImmutableArray<Tables.Table> Characterised { get; init; } = [];

    /// <summary>Works it out.</summary>
    /// <param name="study">The study before.</param>
    /// <param name="understood">What the files were understood to be, against this study.</param>
    public static WhatFollows Of(Study study, IReadOnlyList<IncomingUnderstood> understood)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(understood);
        var proposals = understood.Where(u => u.Understanding.Proposal is not null).OrderBy(u => u.Turn).Select(u => u.Understanding.Proposal!).ToList();
        var after = proposals.Aggregate(study, (s, p) => Fold.After(s, p, s.Version, default, ""));
        return Of(after, proposals, Waiting(after, understood));
    }

    /// <summary>What followed from files that were taken in.</summary>
    /// <param name="study">The study with them.</param>
    /// <param name="taken">The entry that keeps them.</param>
    public static WhatFollows Of(Study study, TakenIn taken) => Of(study, [taken], []);

    private static WhatFollows Of(Study whole, IReadOnlyList<TakenIn> brought, HashSet<string> waiting)
    {
        var (study, later) = First(whole, brought);
        var evidence = Evidence.Of(study);
        var codes = brought.SelectMany(b => b.Samples.Select(s => s.Code).Concat(b.Readings.Select(r => r.Sample))).ToHashSet(StringComparer.Ordinal);
        // Standards serve every vessel of their run, so a run on its own brings those that it calibrates.
        var runs = brought.SelectMany(b => b.Runs).Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        codes.UnionWith(evidence.Study.Readings.Where(r => runs.Contains(r.Run)).Select(r => r.Sample));
        var rows = evidence.Vessels.Where(v => codes.Contains(v.Code) && !v.IsStruck && v.Sample.Role is SampleRole.Vessel or SampleRole.Control)
            .Select(v => waiting.Contains(v.Code) ? WhatFollowsRow.Waiting(v) : new WhatFollowsRow(v, Why(v, evidence)));
        var fits = evidence.Kinetics.Concat(evidence.Isotherms).Where(f => f.Series.Vessels.Any(v => codes.Contains(v.Code)) && !f.Series.Vessels.Any(v => waiting.Contains(v.Code)));
        return new WhatFollows([.. rows], [.. fits.Select(Says).OfType<string>()])
        {
            Later = later,
            Characterised = brought.Any(b => b.Measurements is not null) ? [.. ReportTables.OfAreas(evidence).Where(a => a.Tables.Length > 0).Select(a => a.Tables[0])] : [],
        };
    }

    // The study without what a very long file brings beyond its first vessels, and how many those are.
    private static (Study Study, int Later) First(Study whole, IReadOnlyList<TakenIn> brought)
    {
        var fresh = brought.SelectMany(b => b.Samples.Select(s => s.Code).Concat(b.Readings.Select(r => r.Sample))).ToHashSet(StringComparer.Ordinal);
        var late = whole.Samples.Where(s => s.Role == SampleRole.Vessel && fresh.Contains(s.Code)).Skip(MostWorkedOut).Select(s => s.Code).ToHashSet(StringComparer.Ordinal);
        return late.Count == 0 ? (whole, 0)
            : (whole with { Samples = whole.Samples.RemoveAll(s => late.Contains(s.Code)), Readings = whole.Readings.RemoveAll(r => late.Contains(r.Sample)) }, late.Count);
    }

    // A question about a standard or a start solution concerns every vessel of its file.
    private static HashSet<string> Waiting(Study after, IReadOnlyList<IncomingUnderstood> understood)
    {
        var waiting = new HashSet<string>(StringComparer.Ordinal);
        foreach (var file in understood.Select(u => u.Understanding).Where(u => u.NeedsDecision && u.Proposal is not null))
        {
            var concerned = file.Questions.Where(q => q.IsOpen).SelectMany(q => q.Concerns).ToHashSet(StringComparer.Ordinal);
            waiting.UnionWith(concerned);
            if (after.Samples.Any(s => concerned.Contains(s.Code) && ServeAll.Contains(s.Role)))
                waiting.UnionWith(file.Proposal!.Readings.Select(r => r.Sample));
        }

        return waiting;
    }

    private static string? Says(FittedSeries fitted)
    {
        var what = fitted.Series.Varied == BatchProperties.ContactTime ? "uptake over time" : "isotherm";
        return fitted.Undistinguished switch
        {
            [] => null,
            [var one] => $"{fitted.Series.Name}, {what}: {one.Card.Name} fits best.",
            var several => $"{fitted.Series.Name}, {what}: the data cannot tell {InWords.Listed(several.Select(f => f.Card.Name))} apart.",
        };
    }

    private static string? Why(Vessel vessel, Evidence evidence)
    {
        if (vessel.Uptake is not null || (vessel.Sample.Role == SampleRole.Control && vessel.Removal is not null))
            return null;
        var lacking = new List<string>();
        if (vessel.Start is null)
            lacking.Add("no start concentration");
        if (vessel.End is null)
            lacking.Add(Unread(vessel.Code, evidence));
        else if (vessel.End.IsOnlyBelow)
            lacking.Add("what is left is only known to lie below a limit");
        else if (vessel.End.Value is null)
            lacking.Add("the reading is below or outside what can be read");
        if (vessel.Volume is null)
            lacking.Add("no volume");
        if (vessel.Mass is null && vessel.Sample.Role != SampleRole.Control)
            lacking.Add("no mass of powder");
        return lacking.Count > 0 ? string.Join(", ", lacking) : vessel.Findings.FirstOrDefault(f => f.Weight != Weight.Note)?.Sentence ?? "it cannot be worked out";
    }

    private static string Unread(string code, Evidence evidence)
    {
        var read = evidence.Study.Readings.Where(r => string.Equals(r.Sample, code, StringComparison.Ordinal)).Select(r => r.Run).Distinct(StringComparer.Ordinal).ToList();
        var uncalibrated = evidence.Runs.FirstOrDefault(r => r.Curve is null && read.Contains(r.Run.Id));
        return read.Count == 0 ? "no reading" : uncalibrated is { } run ? $"run {run.Run.Id} has no calibration" : "the reading gives no number";
    }
}

/// <summary>One vessel with its first quantities.</summary>
/// <param name="Vessel">The vessel.</param>
/// <param name="Why">Why its uptake (for a control: its removal) is missing, in a few words; null where it is there.</param>
public sealed record WhatFollowsRow(Vessel Vessel, string? Why)
{
    /// <summary>True while a question is open that its numbers depend on: none is shown then.</summary>
    public bool Waits { get; private init; }

    /// <summary>Concentration at the start in mg/L, as shown; empty for none.</summary>
    public string Start => Shown(Vessel.Start);

    /// <summary>Concentration after contact in mg/L, as shown; empty for none.</summary>
    public string End => Vessel.End is { IsBelowDetection: true, DetectionLimit: { } limit } end && !Waits
        ? RoundedNumber.Censored(CensoredSide.Below, limit, end.IsOnlyBelow ? null : "LOD") : Shown(Vessel.End?.Value);

    /// <summary>Removal in per cent, as shown; empty for none.</summary>
    public string Removal => Shown(Vessel.Removal);

    /// <summary>Uptake in mg/g, as shown; empty for none.</summary>
    public string Uptake => Shown(Vessel.Uptake);

    /// <summary>A vessel that an open question is about.</summary>
    internal static WhatFollowsRow Waiting(Vessel vessel) => new(vessel, "waits for your answer") { Waits = true };

    private string Shown(Measured? value) => value is { } known && !Waits ? InWords.PlusMinus(known) : "";
}
