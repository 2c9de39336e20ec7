using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Markup;
using Holdfast.Studies;

namespace Holdfast.Reports.Documents;

/// <summary>Head and foot of a report: what it is about and what made it.</summary>
internal static class Opening
{
    /// <summary>Title and what this is.</summary>
    public static Element Of(Dossier dossier, string title, ReportOptions options)
    {
        var study = dossier.Evidence.Study;
        var facts = new List<(string Name, string Value)>
        {
            ("Metal", study.Analyte ?? Prose.Gap("analyte")),
            ("Material", Detail(study, "material")),
            ("Author", Detail(study, "author")),
        };
        if (options.Date is { } date)
            facts.Add(("Date", date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)));
        facts.Add(("State", string.Create(CultureInfo.InvariantCulture, $"entry {study.Version} of the daybook{(study.SealedBy is { } seal ? $", sealed by entry {seal}" : ", not sealed")}") + Amended(study)));
        facts.Add(("Fingerprint", study.Fingerprint.Length == 0 ? "none: nothing was entered yet" : study.Fingerprint));
        facts.Add(("Made by", options.MadeBy));
        return Html.Element(
            "header",
            [
                .. study.Invented ? [Html.Element("p", [("class", "invented"), ("role", "note")], ReportOptions.Invented)] : Array.Empty<Node>(),
                Html.Element("h1", title),
                Prose.Paragraph("What the data show, what they do not show yet, and what they speak against, with the trail of each number."),
                Html.Element("dl", [("class", "facts")], facts.SelectMany(f => new Node[] { Html.Element("dt", f.Name), Html.Element("dd", Prose.Marked(f.Value)) })),
            ]);
    }

    /// <summary>The foot of the page on a screen and at the end of the print.</summary>
    public static Element Foot(Study study, ReportOptions options)
        => Html.Element(
            "footer",
            [
                .. study.Invented ? [Html.Element("p", [("class", "invented")], ReportOptions.Invented)] : Array.Empty<Node>(),
                Prose.Paragraph(string.Create(CultureInfo.InvariantCulture,
                    $"Made by {options.MadeBy} from entry {study.Version} of this study. Numbers are rounded for reading; the tables for data files hold every digit.")),
            ]);

    /// <summary>What was amended after the seal, to stand behind the state of the study; empty for nothing.</summary>
    /// <param name="study">The study.</param>
    internal static string Amended(Study study)
        => study.Amendments.IsEmpty ? "" : $"; amended since: {string.Join("; ", study.Amendments.Select(a => string.Create(CultureInfo.InvariantCulture, $"entry {a.Entry}, {a.When:d MMM yyyy}, {a.Reason.TrimEnd('.')}")))}";

    private static string Detail(Study study, string key) => study.Details.GetValueOrDefault(key) is { Length: > 0 } said ? said : Prose.Gap(key);
}
