using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>Every claim with its verdict and all that an examiner needs to agree or object.</summary>
internal static class DefenceSection
{
    private const int MostSamples = 8;

    /// <summary>The claims of the author; null when she stated none.</summary>
    public static Section? Stated(Dossier dossier)
    {
        var stated = dossier.Verdicts.Where(v => v.Claim.Stated).ToArray();
        return stated.Length == 0 ? null : new(
            "defence",
            "The defence",
            [
                Prose.Paragraph("One claim after the other, each with its verdict, the numbers that decided it, what it stands on, what an examiner would ask and what would settle it."),
                .. stated.Select(v => One(new(v, []), "claim")),
            ]);
    }

    /// <summary>Claims that nobody stated; null when the data raise none.</summary>
    public static Section? Raised(Dossier dossier)
    {
        var raised = dossier.Verdicts.Where(v => !v.Claim.Stated).ToArray();
        return raised.Length == 0 ? null : new(
            "raised",
            "What else the data raise",
            [
                Prose.Paragraph("Nobody stated these claims. They are raised because the data invite them or because stated claims stand on them; an examiner may raise them too."),
                .. Alike.Of(raised, v => v.Reason).Select(e => One(e, "claim raised")),
            ]);
    }

    private static Element One(Alike entry, string kind)
    {
        var verdict = entry.First;
        var id = SummarySection.ClaimId(verdict);
        var parts = new List<Node>
        {
            Html.Element("h3", [("id", id + "-heading")], verdict.Sentence),
            Html.Element("p", [("class", "ruling " + SummarySection.Class(verdict.Ruling))], Html.Element("strong", Capital(InWords.Of(verdict.Ruling)))),
        };
        if (!entry.Others.IsEmpty)
        {
            parts.Add(Prose.Paragraph([
                "Likewise for ",
                .. entry.Others.SelectMany((v, i) => new Node[]
                {
                    i == 0 ? "" : i == entry.Others.Length - 1 ? " and " : ", ",
                    Html.Element("span", [("id", SummarySection.ClaimId(v))], Alike.Name(v)),
                }),
                ".",
            ]));
        }

        parts.Add(Prose.Paragraph(verdict.Reason));
        Add(parts, "Deciding numbers", verdict.Numbers.Select(n => InWords.Of(n) + (n.Note is { Length: > 0 } note ? $" – {note}" : "")));
        Add(parts, "Method", [verdict.Method]);
        Add(parts, "Scope", verdict.Scope is { Length: > 0 } scope ? [scope] : []);
        Add(parts, "Conditions", verdict.Gates.Select(g => $"{(g.Passed ? "met" : "not met")}: {g.Sentence}"));
        Add(parts, "Caveats", verdict.Warnings);
        Add(parts, "An examiner would ask", verdict.Questions.Select(q => q.Text));
        Add(parts, "What would settle it", Next(verdict));
        string[] data = [.. entry.Others.Prepend(verdict).SelectMany(v => v.Data).Distinct(StringComparer.Ordinal)];
        Add(parts, "Rests on", data.Length == 0 ? [] : [$"{InWords.Count(data.Length, "sample")}: {InWords.Some(data, MostSamples)}"]);
        parts.AddRange([Prose.Subheading("Address"), Prose.Paragraph(verdict.Claim.Id)]);
        return Html.Element("article", [("class", kind), ("id", id), ("aria-labelledby", id + "-heading")], parts);
    }

    private static IEnumerable<string> Next(Verdict verdict)
    {
        if (verdict.Next is not { } next)
            yield break;
        yield return next.Sentence;
        if (next.Vessels is { } vessels)
            yield return $"{InWords.Count(vessels, "vessel")}{(next.Settings.IsEmpty ? "" : ": " + InWords.Listed(next.Settings))}";
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
        => text.Length > 1 && char.IsLower(text[0]) && char.IsLower(text[1]) ? text[..1].ToUpper(CultureInfo.InvariantCulture) + text[1..] : text;
}
