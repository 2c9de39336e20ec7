using System.Globalization;
using Holdfast.Claims;
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
        if (verdicts.IsEmpty)
            return new("summary", "How the claims stand", [Prose.Paragraph("No claim was stated and the data invite none. Take in readings, or state what is to be shown.")]);
        var content = new List<Node>
        {
            Html.Element("ul", [("class", "counts")], Enum.GetValues<Ruling>().Select(r => Count(r, verdicts.Count(v => v.Ruling == r)))),
            Prose.Paragraph(Sentence(dossier)),
            Table(dossier, numbering),
        };
        return new("summary", "How the claims stand", content);
    }

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
        var stated = dossier.Verdicts.Count(v => v.Claim.Stated);
        var raised = dossier.Verdicts.Length - stated;
        var text = stated == 0 ? "The author stated no claim; " : $"The author stated {InWords.Count(stated, "claim")}; ";
        text += raised == 0 ? "the data invite no other." : $"{InWords.Count(raised, "more", "more")} {(raised == 1 ? "is" : "are")} raised because the data invite {(raised == 1 ? "it" : "them")}.";
        return text + " A claim that holds, holds within the scope given in the defence and nowhere else. “Not shown yet” is no judgement on the truth of a claim: these data do not decide.";
    }

    private static Element Count(Ruling ruling, int count)
        => Html.Element("li", [("class", Class(ruling))],
            Html.Element("b", count.ToString(CultureInfo.InvariantCulture)), " ", Html.Element("span", InWords.Of(ruling)));

    private static Element Table(Dossier dossier, Numbering numbering)
    {
        var caption = numbering.NextTable() + "Claims, verdicts, deciding numbers and what comes next";
        var head = Html.Element("tr", new[] { "Claim", "Verdict", "Deciding numbers", "Next" }.Select(h => (Node)Html.Element("th", [("scope", "col")], h)));
        var grid = Html.Element("table", [("id", "verdicts")],
            Html.Element("caption", caption), Html.Element("thead", head), Html.Element("tbody", dossier.Verdicts.Select(Row)));
        return Numbering.Scrolling(Html.Element("div", [("class", "table-block")], grid), caption);
    }

    private static Node Row(Verdict verdict)
    {
        var numbers = verdict.Numbers.Take(MostNumbers).Select(InWords.Of).ToList();
        if (verdict.Numbers.Length > MostNumbers)
            numbers.Add(string.Create(CultureInfo.InvariantCulture, $"{verdict.Numbers.Length - MostNumbers} more in the defence"));
        return Html.Element("tr",
            Html.Element("th", [("scope", "row"), ("class", "text")], Html.Element("a", [("href", "#" + ClaimId(verdict))], verdict.Sentence)),
            Html.Element("td", [("class", "text ruling " + Class(verdict.Ruling))], InWords.Of(verdict.Ruling)),
            Html.Element("td", [("class", "text")], numbers.Count == 0 ? ["none"] : numbers.SelectMany((n, i) => i == 0 ? new Node[] { n } : [Html.Element("br"), n])),
            Html.Element("td", [("class", "text")], verdict.Next?.Sentence ?? (verdict.Ruling == Ruling.Holds ? "nothing within its scope" : "see the defence")));
    }
}
