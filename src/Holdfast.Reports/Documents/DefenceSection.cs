using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.NextExperiments;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>Every claim with its verdict and all that an examiner needs to agree or object.</summary>
internal static class DefenceSection
{
    private const int MostSamples = 8;

    /// <summary>The gaps that claims share, each told once; null where every ground holds.</summary>
    public static Section? Gaps(Dossier dossier)
    {
        var gaps = SharedGap.Of(dossier.Verdicts);
        return gaps.Length == 0 ? null : new(
            "gaps",
            "Gaps that claims share",
            [
                Prose.Paragraph("Claims stand on these grounds, and the data do not show them. Each claim names its gaps by their numbers."),
                Html.Element("ul", gaps.Select((g, i) => (Node)Html.Element("li", [("id", GapId(i))],
                    Html.Element("b", GapName(i)),
                    $" {g.Sentence} {InWords.Count(g.Claims.Length, "claim")} {(g.Claims.Length == 1 ? "stands" : "stand")} on it. ",
                    g.Grounds.Select(v => v.Next?.Sentence).OfType<string>().FirstOrDefault() is { } next ? $"What would close it: {next}" : ""))),
                .. CombinedExperiment.Of(dossier.Verdicts) is { Length: > 0 } combined
                    ? [Prose.Heading("Experiments that serve several claims"), Prose.List(combined.Select(c => c.Sentence))] : Array.Empty<Node>(),
            ]);
    }

    /// <summary>The claims of the author; null when she stated none.</summary>
    public static Section? Stated(Dossier dossier)
    {
        var stated = dossier.Verdicts.Where(v => v.Claim.Stated).ToArray();
        return stated.Length == 0 ? null : new(
            "defence",
            "The defence",
            [
                Prose.Paragraph("One claim after the other, each with its verdict, the numbers that decided it, what it stands on, what an examiner would ask and what would settle it."),
                .. stated.Select(v => One(new(v, []), "claim", SharedGap.Of(dossier.Verdicts))),
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
                .. Alike.Of(raised, v => v.Reason).Select(e => One(e, "claim raised", SharedGap.Of(dossier.Verdicts))),
            ]);
    }

    private static Element One(Alike entry, string kind, IReadOnlyList<SharedGap> gaps)
    {
        var verdict = entry.First;
        var id = SummarySection.ClaimId(verdict);
        var parts = new List<Node>
        {
            Html.Element("h3", [("id", id + "-heading")], verdict.Sentence),
            Html.Element("p", [("class", "ruling " + SummarySection.Class(verdict.Ruling))], Html.Element("strong", SentenceCase.Of(InWords.Of(verdict.Ruling)))),
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
        Add(parts, "Caveats", verdict.Warnings.Where(w => !w.StartsWith(Defence.StandsOn, StringComparison.Ordinal)));
        int[] open = [.. Enumerable.Range(0, gaps.Count).Where(i => verdict.OpenGrounds.Any(g => g.Claim.Rule == gaps[i].Rule))];
        if (open.Length > 0)
        {
            parts.Add(Prose.Subheading("Stands on"));
            parts.Add(Prose.Paragraph(open.SelectMany((g, i) => (Node[])[i == 0 ? "" : i == open.Length - 1 ? " and " : ", ", Html.Element("a", [("href", "#" + GapId(g))], GapName(g))])));
        }

        Add(parts, "An examiner would ask", verdict.Questions.Select(q => q.Text));
        Add(parts, "What would settle it", Next(verdict));
        string[] data = [.. entry.Others.Prepend(verdict).SelectMany(v => v.Data).Distinct(StringComparer.Ordinal)];
        Add(parts, "Rests on", data.Length == 0 ? [] : [$"{InWords.Count(data.Length, "sample")}: {InWords.Some(data, MostSamples)}"]);
        parts.AddRange([Prose.Subheading("Address"), Prose.Paragraph(verdict.Claim.Id)]);
        return Html.Element("article", [("class", kind), ("id", id), ("aria-labelledby", id + "-heading")], parts);
    }

    private static string GapId(int index) => string.Create(CultureInfo.InvariantCulture, $"gap-{index + 1}");

    private static string GapName(int index) => string.Create(CultureInfo.InvariantCulture, $"Gap {index + 1}");

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
        parts.Add(all.Length == 1 ? Prose.Paragraph(SentenceCase.Of(all[0])) : Prose.List(all.Select(SentenceCase.Of)));
    }
}
