using Holdfast.Claims;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>
/// The record of a study: every claim with its defence, every vessel, curve and trail. It is recomputed from the study each time, so that no number in it can be
/// stale. What is handed in is the <see cref="StudyChapter"/>; this stands behind it.
/// </summary>
public static class StudyReport
{
    /// <summary>The record.</summary>
    /// <param name="dossier">The study worked out; an empty one gives a record that says so.</param>
    /// <param name="options">What the record says of itself; null for the defaults.</param>
    public static WrittenDocument Of(Dossier dossier, ReportOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(dossier);
        var use = options ?? new();
        var numbering = new Numbering(dossier);
        Section[] sections = [.. Sections(dossier, numbering, use).OfType<Section>()];
        var study = dossier.Evidence.Study;
        var title = study.Title.Length == 0 ? "Untitled study" : study.Title;
        return new("record", title, numbering, Opening.Of(dossier, title, use), sections, Opening.Foot(study, use))
        {
            Author = study.Details.GetValueOrDefault("author") ?? "",
            Notice = study.Invented ? ReportOptions.Invented : "",
            Fingerprint = study.Fingerprint,
            IsNumbered = true,
        };
    }

    /// <summary>The record as one self-contained page.</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="options">What the record says of itself; null for the defaults.</param>
    public static string Html(Dossier dossier, ReportOptions? options = null) => Of(dossier, options).Html();

    private static IEnumerable<Section?> Sections(Dossier dossier, Numbering numbering, ReportOptions options)
    {
        yield return InRoom("Summary", () => SummarySection.Of(dossier, numbering));
        foreach (var kind in ResultSections.Kinds)
            yield return ResultSections.InRoom(kind, dossier, numbering);
        yield return InRoom("Gaps", () => DefenceSection.Gaps(dossier));
        yield return InRoom("Defence", () => DefenceSection.Stated(dossier));
        yield return InRoom("Further claims", () => DefenceSection.Raised(dossier));
        yield return InRoom("Methods", () => MethodsSection.Of(dossier));
        yield return InRoom("Plan and deviations", () => PlanSection.Of(dossier, numbering, inFull: true));
        yield return InRoom("Strikes", () => StrikeSection.Of(dossier, numbering));
        yield return InRoom("Findings", () => FindingSection.Of(dossier));
        yield return InRoom("Limits", () => LimitSection.Of(dossier));
        yield return InRoom("Safety", () => SafetySection.Of(dossier.Evidence.Study));
        yield return InRoom("Reproducibility", () => ReproducibilitySection.Of(dossier, numbering, options));
        yield return InRoom("Appendix", () => AppendixSection.Of(dossier, numbering));
        yield return InRoom("Trails", () => TrailSection.Of(numbering));
    }

    /// <summary>A section in a room of its own: should it fall, it stands as its finding.</summary>
    /// <param name="name">What a reader knows it as.</param>
    /// <param name="make">Makes it; null where the study holds nothing for it.</param>
    internal static Section? InRoom(string name, Func<Section?> make)
    {
        var outcome = Room.Of<Made>($"the section {name}", () => new(make()));
        return outcome.Value is { } made ? made.Section : new(LevelTable.Id(name), name, [FindingSection.Grouped(outcome.Findings)]);
    }

    private sealed record Made(Section? Section);
}
