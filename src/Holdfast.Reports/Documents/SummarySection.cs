using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>How the claims stand: three counts and one row a claim.</summary>
internal static class SummarySection
{
    private const int MostNumbers = 2;

    /// <summary>The section.</summary>
    public static Section Of(Dossier dossier, Numbering numbering)
    {
        var verdicts = dossier.Verdicts;
        var first = Impossible(dossier);
        if (verdicts.IsEmpty)
            return new("summary", "How the claims stand", [.. first, Prose.Paragraph("No claim was stated and the data invite none. Take in readings, or state what is to be shown.")]);
        var content = new List<Node>(first)
        {
            Html.Element("ul", [("class", "counts")], Enum.GetValues<Ruling>().Select(r => Count(r, verdicts.Count(v => v.Ruling == r)))),
            Prose.Paragraph(Sentence(dossier)),
            Table(dossier, numbering),
        };
        return new("summary", "How the claims stand", content);
    }

    /// <summary>What is likely a slip, before any verdict, since verdicts follow the numbers as they stand; nothing where nothing is impossible.</summary>
    /// <param name="dossier">The study worked out.</param>
    public static Node[] Impossible(Dossier dossier)
        => dossier.Evidence.Findings.Where(f => f.Code == ImpossibleResults.Code).ToArray() is { Length: > 0 } odd
            ? [Prose.Paragraph(Html.Element("strong", "Look at this first.")), Prose.List(odd.Select(f => $"{f.Sentence} ({f.Code})"))]
            : [];

    /// <summary>Name of a ruling in style sheets.</summary>
    public static string Class(Ruling ruling) => ruling switch
    {
        Ruling.Holds => "holds",
        Ruling.Contradicted => "contradicted",
        _ => "open",
    };

    /// <summary>Address of a claim in the page.</summary>
    public static string ClaimId(Verdict verdict) => "claim-" + LevelTable.Id(verdict.Claim.Id);

    private static string Sentence(Dossier dossier)
    {
        var stated = dossier.Verdicts.Where(v => v.Claim.Stated).ToArray();
        var raised = dossier.Verdicts.Length - stated.Length;
        var text = stated.Length == 0
            ? "The author stated no claim; "
            : $"Of the {InWords.Count(stated.Length, "claim")} that the author stated, {InWords.Split([.. stated.Select(v => v.Ruling)], each: true)}; ";
        text += raised == 0 ? "the data raise no other." : $"{InWords.Count(raised, "more was", "more were")} raised because the data invite {(raised == 1 ? "it" : "them")} or a claim stands on {(raised == 1 ? "it" : "them")}.";
        return text + " A claim that holds, holds within the scope given in the defence and nowhere else. “Not shown yet” is no judgement on the truth of a claim: these data do not decide.";
    }

    private static Element Count(Ruling ruling, int count)
        => Html.Element("li", [("class", Class(ruling))],
            Html.Element("b", count.ToString(CultureInfo.InvariantCulture)), " ", Html.Element("span", InWords.Of(ruling, count)));

    private static Element Table(Dossier dossier, Numbering numbering)
    {
        var caption = numbering.NextTable() + "Claims, verdicts, deciding numbers and what comes next";
        var head = Html.Element("tr", new[] { "Claim", "Verdict", "Deciding numbers", "Next" }.Select(h => (Node)Html.Element("th", [("scope", "col")], h)));
        var grid = Html.Element("table", [("id", "verdicts")],
            Html.Element("caption", caption),
            Html.Element("thead", head),
            Html.Element("tbody", Alike.Of(dossier.Verdicts, v => v.Next?.Sentence ?? "").Select(Row)));
        return Numbering.Scrolling(Html.Element("div", [("class", "table-block")], grid), caption);
    }

    private static Node Row(Alike entry)
    {
        var verdict = entry.First;
        return Html.Element("tr",
            Html.Element("th", [("scope", "row"), ("class", "text")], Named(entry)),
            Html.Element("td", [("class", "text ruling " + Class(verdict.Ruling))], InWords.Of(verdict.Ruling)),
            Html.Element("td", [("class", "text")], Numbers(entry)),
            Html.Element("td", [("class", "text")], verdict.Next?.Sentence ?? (verdict.Ruling == Ruling.Holds ? "nothing within its scope" : "see the defence")));
    }

    private static IEnumerable<Node> Named(Alike entry)
    {
        yield return Link(entry.First, entry.First.Sentence);
        if (entry.Others.IsEmpty)
            yield break;
        yield return " Likewise: ";
        for (var i = 0; i < entry.Others.Length; i++)
        {
            yield return Link(entry.Others[i], Alike.Name(entry.Others[i]));
            yield return i == entry.Others.Length - 1 ? "." : ", ";
        }
    }

    private static IEnumerable<Node> Numbers(Alike entry)
    {
        var all = entry.First.Numbers;
        if (all.IsEmpty)
            return ["none"];
        if (!entry.Others.IsEmpty)
            return ["see the defence"];
        var lines = all.Take(MostNumbers).Select(InWords.Of).ToList();
        if (all.Length > MostNumbers)
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"{all.Length - MostNumbers} more in the defence"));
        return lines.SelectMany((n, i) => i == 0 ? new Node[] { n } : [Html.Element("br"), n]);
    }

    private static Element Link(Verdict verdict, string words) => Html.Element("a", [("href", "#" + ClaimId(verdict))], words);
}
