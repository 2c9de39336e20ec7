using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>Every claim with its verdict and all that an examiner needs to agree or object.</summary>
internal static class DefenceSection
{
    private const int MostSamples = 8;

    /// <summary>The section; null when there is nothing to judge.</summary>
    public static Section? Of(Dossier dossier)
        => dossier.Verdicts.IsEmpty ? null : new(
            "defence",
            "The defence",
            [
                Prose.Paragraph("One claim after the other, each with its verdict, the numbers that decided it, what it stands on, what an examiner would ask and what would settle it."),
                .. dossier.Verdicts.Select(One),
            ]);

    private static Element One(Verdict verdict)
    {
        var id = SummarySection.ClaimId(verdict);
        var parts = new List<Node>
        {
            Html.Element("h3", [("id", id + "-heading")], verdict.Sentence),
            Html.Element("p", [("class", "ruling " + SummarySection.Class(verdict.Ruling))], Html.Element("strong", Capital(InWords.Of(verdict.Ruling)))),
            Prose.Paragraph(verdict.Reason),
        };
        Add(parts, "Deciding numbers", verdict.Numbers.Select(n => InWords.Of(n) + (n.Note is { Length: > 0 } note ? $" – {note}" : "")));
        Add(parts, "Method", [verdict.Method]);
        Add(parts, "Scope", verdict.Scope is { Length: > 0 } scope ? [scope] : []);
        Add(parts, "Conditions", verdict.Gates.Select(g => $"{(g.Passed ? "met" : "not met")}: {g.Sentence}"));
        Add(parts, "Caveats", verdict.Warnings);
        Add(parts, "An examiner would ask", verdict.Questions.Select(q => q.Text));
        Add(parts, "What would settle it", Next(verdict));
        Add(parts, "Rests on", [verdict.Data.IsEmpty ? "no sample" : $"{InWords.Count(verdict.Data.Length, "sample")}: {InWords.Some(verdict.Data, MostSamples)}"]);
        Add(parts, "Where it comes from", [verdict.Claim.Stated ? $"stated by the author, address {verdict.Claim.Id}" : $"raised because the data invite it, address {verdict.Claim.Id}"]);
        return Html.Element("article", [("class", "claim"), ("id", id), ("aria-labelledby", id + "-heading")], parts);
    }

    private static IEnumerable<string> Next(Verdict verdict)
    {
        if (verdict.Next is not { } next)
            yield break;
        yield return next.Sentence;
        if (next.Vessels is { } vessels)
            yield return $"{InWords.Count(vessels, "vessel")}{(next.Settings.IsEmpty ? "" : " at " + InWords.Listed(next.Settings))}";
        yield return "size found by: " + next.Basis;
    }

    private static void Add(List<Node> parts, string name, IEnumerable<string> items)
    {
        var all = items.Where(i => i.Length > 0).ToArray();
        if (all.Length == 0)
            return;
        parts.Add(Prose.Subheading(name));
        parts.Add(all.Length == 1 ? Prose.Paragraph(Capital(all[0])) : Prose.List(all.Select(Capital)));
    }

    private static string Capital(string text)
        => text.Length > 1 && char.IsLower(text[0]) && (char.IsLower(text[1]) || text[1] == ' ')
            ? text[..1].ToUpper(CultureInfo.InvariantCulture) + text[1..]
            : text;
}
