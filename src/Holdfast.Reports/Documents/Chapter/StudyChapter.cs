using Holdfast.Claims;
using Holdfast.Reports.Documents.Chapter;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Markup;
using Holdfast.Reports.Words;

namespace Holdfast.Reports.Documents;

/// <summary>
/// The chapter of a study: what is handed in, in about ten pages, with every number as the dossier has it. Each fact stands once; trails, vessels and the defence in full
/// stand in the record, see <see cref="StudyReport"/>.
/// </summary>
public static class StudyChapter
{
    // A4 with margins of 20 mm: a narrow figure stands beside another, one of several panels takes the width of the text. Widths as publishers ask: about 85 mm a
    // column, 174 mm at most.
    private static readonly FigureFormat Narrow = new(83) { PlotHeightMm = 34 };
    private static readonly FigureFormat Wide = new(165) { PlotHeightMm = 36, Columns = 2 };

    /// <summary>The chapter.</summary>
    /// <param name="dossier">The study worked out; an empty one gives a chapter that says so.</param>
    /// <param name="options">What the chapter says of itself; null for the defaults.</param>
    public static WrittenDocument Of(Dossier dossier, ReportOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(dossier);
        var study = dossier.Evidence.Study;
        var title = study.Title.Length == 0 ? "Untitled study" : study.Title;
        var numbering = new Numbering(dossier, size: f => IsWide(f) ? Wide : Narrow, saysOnce: true);
        var claims = new ClaimList(dossier.Verdicts);
        var topics = new Lazy<IReadOnlyList<Topic>>(() => Topics.Of(dossier));
        var use = options ?? new();
        Section?[] sections =
        [
            StudyReport.InRoom("Summary", () => GlanceSection.Of(dossier, topics.Value, claims, numbering)),
            StudyReport.InRoom("Question", () => QuestionSection.Of(dossier, topics.Value, numbering)),
            StudyReport.InRoom("Methods", () => ChapterMethods.Of(dossier)),
            StudyReport.InRoom("Plan and deviations", () => PlanSection.Of(dossier, numbering, inFull: false)),
            StudyReport.InRoom("Results", () => ChapterResults.Of(dossier, topics.Value, claims, numbering)),
            StudyReport.InRoom("Discussion", () => DiscussionSection.Of(claims, numbering)),
            StudyReport.InRoom("Limits", () => LimitSection.Of(dossier)),
            StudyReport.InRoom("Data", () => AvailabilitySection.Of(dossier, use)),
        ];
        return new("chapter", title, numbering, Head(study, title, use), sections.OfType<Section>().Select(s => OwnWords.In(s, dossier.Evidence)), Opening.Foot(study, use))
        {
            Author = study.Details.GetValueOrDefault("author") ?? "",
            Notice = study.Invented ? ReportOptions.Invented : "",
            Fingerprint = study.Fingerprint,
            IsNumbered = true,
        };
    }

    /// <summary>True for a figure that takes the width of the text.</summary>
    /// <param name="figure">The figure.</param>
    internal static bool IsWide(Figure figure) => figure.Panels.Count > 1;

    private static Element Head(Studies.Study study, string title, ReportOptions options)
    {
        string?[] by = [study.Details.GetValueOrDefault("author"), options.Date?.ToString("d MMMM yyyy", System.Globalization.CultureInfo.InvariantCulture)];
        var line = string.Join(", ", by.Where(b => b is { Length: > 0 }));
        return Html.Element(
            "header",
            [
                .. study.Invented ? [Html.Element("p", [("class", "invented"), ("role", "note")], ReportOptions.Invented)] : Array.Empty<Node>(),
                Html.Element("h1", title),
                .. line.Length > 0 ? [Prose.Paragraph(line)] : Array.Empty<Node>(),
            ]);
    }
}
