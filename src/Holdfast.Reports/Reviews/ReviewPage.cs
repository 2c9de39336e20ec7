using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Fonts;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;
using Holdfast.Studies;
using Holdfast.Studies.History;

namespace Holdfast.Reports.Reviews;

/// <summary>
/// The chapter as one page for a reader who remarks on it: it needs no network and asks for none, keeps her remarks with their pins, and gives them back as a small file. What changed
/// since she last looked stands first, with numbers old and new; her earlier remarks with their answers follow.
/// </summary>
public static class ReviewPage
{
    private static readonly JsonSerializerOptions Relaxed = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    // Longer lists are no help to a reader with twenty minutes.
    private const int MostChanges = 200;

    /// <summary>The text of the page.</summary>
    /// <param name="daybook">The study's history.</param>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="since">Number of the entry that the reader last had before her; null for the one that her last remarks were made on, where there are any.</param>
    public static string Of(Daybook daybook, Dossier dossier, long? since = null)
    {
        ArgumentNullException.ThrowIfNull(daybook);
        ArgumentNullException.ThrowIfNull(dossier);
        var study = daybook.Study;
        var chapter = StudyChapter.Of(dossier);
        var pins = new ReviewPins();
        List<Section> sections = [.. chapter.Sections.Select(pins.Pinned), new("review-claims", "Each claim", Claims(dossier, pins))];
        var from = since ?? (study.Remarks.IsEmpty ? null : study.Remarks.Max(r => r.On));
        List<Section> first = [];
        if (from is { } entry && entry >= 1 && entry <= daybook.Version)
            first.Add(Changes(daybook, dossier, entry, pins));
        if (!study.Remarks.IsEmpty)
            first.Add(new("remarks", "Earlier remarks and what became of them", [Remarks(study, pins)]));
        var css = Resource("review.css");
        var script = Script.Of("review.js");
        var body = Html.Element(
            "body",
            [("class", "chapter review"), ("data-review", About(daybook))],
            [
                Html.Element("a", [("class", "skip"), ("href", "#report")], "Skip to the text"),
                chapter.Opening,
                Guide(),
                Html.Element("main", [("id", "report")],
                    first.Select(s => Written(s, s.Title)).Concat(sections.Select((s, i) => Written(s, i < chapter.Sections.Length ? chapter.Heading(i) : s.Title)))),
                Panel(),
                Pen(),
                chapter.Foot,
            ]);
        var letters = string.Concat((body.Words + css + script.Code).EnumerateRunes().Distinct().Order());
        var style = new Stylesheet(EmbeddedFaces.Css(from bold in new[] { false, true } from italic in new[] { false, true } select (bold, italic, letters)) + ReportStyle.Css(study.Invented) + css);
        // Nothing may be asked for: what the page holds is all there is.
        var policy = $"default-src 'none'; script-src 'sha256-{Hash(script.Code)}'; style-src 'sha256-{Hash(style.Css)}'; font-src data:; img-src data:; base-uri 'none'; form-action 'none'";
        return Html.Page(Html.Element(
            "html",
            [("lang", "en")],
            Html.Element(
                "head",
                Html.Element("meta", [("charset", "utf-8")]),
                Html.Element("meta", [("http-equiv", "Content-Security-Policy"), ("content", policy)]),
                Html.Element("meta", [("name", "viewport"), ("content", "width=device-width, initial-scale=1")]),
                Html.Element("meta", [("name", "color-scheme"), ("content", "light dark")]),
                Html.Element("title", $"{(study.Invented ? "Invented demo data: " : "")}Review of {chapter.Title}"),
                style),
            Html.Element("body", body.Attributes.Select(a => (a.Name, (string?)a.Value)), [.. body.Content, script])));
    }

    private static string Hash(string text) => Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static string Resource(string name)
    {
        using var reader = new StreamReader(typeof(ReviewPage).Assembly.GetManifestResourceStream("Holdfast.Reports." + name)!);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    private static string About(Daybook daybook) => JsonSerializer.Serialize(
        new { schema = Studies.Import.ReviewFile.Schema, study = daybook.Study.Title, entry = daybook.Version, fingerprint = daybook.Fingerprint },
        Relaxed);

    private static Element Written(Section section, string heading) => Html.Element(
        "section",
        [("id", "section-" + section.Id), ("aria-labelledby", section.Id + "-heading")],
        [Html.Element("h2", [("id", section.Id + "-heading")], heading), .. section.Content]);

    private static Element Guide() => Html.Element(
        "section",
        [("class", "guide"), ("aria-label", "How to remark")],
        Prose.Paragraph("Select a word, or choose a sentence, a number, a figure or a claim, with the mouse or with Tab and Enter, and write your remark. Then save your remarks as a file and send that file back. Nothing leaves this computer otherwise; the page works without a network."));

    private static IReadOnlyList<Node> Claims(Dossier dossier, ReviewPins pins)
    {
        Verdict[] stated = [.. dossier.Verdicts.Where(v => v.Claim.Stated)];
        if (stated.Length == 0)
            return [Prose.Paragraph("No claim was stated.")];
        return
        [
            Html.Element("ul", stated.Select(v => (Node)pins.Pin(
                Html.Element("li", [("id", "claim-" + v.Claim.Id)], Html.Element("b", v.Sentence.TrimEnd('.') + ": " + InWords.Of(v.Ruling) + "."), " " + v.Reason + (v.Next is { } next && v.Ruling != Ruling.Holds ? " Next: " + next.Sentence : "")),
                "claim", v.Claim.Id))),
        ];
    }

    private static Section Changes(Daybook daybook, Dossier dossier, long entry, ReviewPins now)
    {
        var then = Dossier.Of(daybook.At(entry).Study);
        var earlier = new ReviewPins();
        foreach (var section in StudyChapter.Of(then).Sections)
            earlier.Pinned(section);
        var numbers = ReviewPins.Changed(earlier, now);
        var compared = WorkingComparison.Of(then, dossier);
        // Remarks and answers stand by themselves below.
        var since = daybook.Entries.Where(e => e.Number > entry && e.Change is not (RemarkAnswered or RemarkClosed or TakenIn { Reviews: not null })).ToArray();
        var content = new List<Node>
        {
            Prose.Paragraph(string.Create(CultureInfo.InvariantCulture, $"You last had entry {entry} before you, of {daybook.Entries[(int)entry - 1].When:d MMM yyyy}. ")
                + (since.Length == 0 ? "Nothing was entered since." : $"{InWords.Count(since.Length, "entry", "entries")} since: {string.Join("; ", since.Take(20).Select(e => e.Change.Says()))}{(since.Length > 20 ? "; …" : "")}.")),
        };
        if (!compared.IsEmpty)
            content.Add(Numbering.Scrolling(TableHtml.Of(compared.AsTable("then", "now")), "What changes"));
        if (!numbers.IsEmpty)
        {
            content.Add(Numbering.Scrolling(TableHtml.Of(new(
                "changed-numbers", "Numbers of the text that are others now",
                [new Column("place", "Place") { NamesRows = true }, new Column("was", "Then"), new Column("now", "Now")],
                [.. numbers.Take(MostChanges).Select(c => Row.Of(ReviewPins.InWords(c.Place), c.Was.Length == 0 ? "not there" : c.Was, c.Is.Length == 0 ? "gone" : c.Is))])), "Changed numbers"));
            if (numbers.Length > MostChanges)
                content.Add(Prose.Paragraph($"And {InWords.Plain(numbers.Length - MostChanges)} more."));
        }

        if (compared.IsEmpty && numbers.IsEmpty)
            content.Add(Prose.Paragraph("No claim, finding, mean or number of the text is different now."));
        return new("changed", "Changed since you looked", content);
    }

    private static Element Remarks(Study study, ReviewPins now) => Html.Element(
        "ul",
        [("class", "earlier")],
        study.Remarks.Select(r => (Node)Html.Element("li", [("id", r.Id)],
            Html.Element("b", $"{r.Id}, {r.By}: "), r.Pin.Words, " ", Html.Element("small", $"On {r.Pin.Kind} “{r.Pin.Quote}”.{Now(r, now)}"), Html.Element("br"),
            r.Answer is { } answer ? $"Answer of {answer.Who}: {answer.Words}" : "Not answered yet.", r.Closed is null ? "" : " Closed.")));

    private static string Now(Remark remark, ReviewPins now)
    {
        var pin = $"{remark.Pin.Kind}:{remark.Pin.Target}";
        if (!now.Texts.TryGetValue(pin, out var text))
            return now.Texts.Values.Any(t => t.Contains(remark.Pin.Quote, StringComparison.Ordinal)) ? "" : " That place is gone.";
        return text.Contains(remark.Pin.Quote, StringComparison.Ordinal) ? "" : remark.Pin.Kind == "number" ? $" It is {text} now." : " Its words are others now.";
    }

    private static Element Panel() => Html.Element(
        "aside",
        [("class", "panel"), ("aria-labelledby", "panel-heading")],
        Html.Element("h2", [("id", "panel-heading")], "Your remarks"),
        Html.Element("label", "Your name ", Html.Element("input", [("id", "reader"), ("autocomplete", "name")])),
        Html.Element("p", [("id", "count"), ("role", "status")], "No remark yet."),
        Html.Element("ol", [("id", "list")]),
        Html.Element("p",
            Html.Element("button", [("type", "button"), ("id", "save")], "Save the remarks as a file"), " ",
            Html.Element("label", "or go on with a saved file ", Html.Element("input", [("type", "file"), ("id", "again"), ("accept", ".json")]))));

    private static Element Pen() => Html.Element(
        "dialog",
        [("id", "pen"), ("aria-labelledby", "pen-heading")],
        Html.Element("h2", [("id", "pen-heading")], "Remark"),
        Html.Element("p", [("id", "what")]),
        Html.Element("label", "On ", Html.Element("select", [("id", "quote")])),
        Html.Element("label", "Your remark ", Html.Element("textarea", [("id", "words"), ("rows", "5"), ("maxlength", "10000")])),
        Html.Element("p",
            Html.Element("button", [("type", "button"), ("id", "keep")], "Keep"), " ",
            Html.Element("button", [("type", "button"), ("id", "leave")], "Cancel")));
}
