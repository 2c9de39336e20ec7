using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;

namespace Holdfast.Reports.Tests.Documents;

/// <summary>The report of the invented demo study, and of studies with hardly anything in them.</summary>
public partial class StudyReportTests
{
    private static readonly Lazy<string> Page = new(() => StudyReport.Html(DemoStudy.Dossier));
    private static readonly Lazy<XElement> Tree = new(() => ReportPage.Read(Page.Value));

    [Fact]
    public void Html_OfTheDemo_HoldsEveryVerdictWithItsNumbersAndUnits()
    {
        var articles = Tree.Value.All("article").Where(a => ((string?)a.Attribute("class"))?.Contains("claim", StringComparison.Ordinal) == true).ToArray();
        Assert.NotEmpty(DemoStudy.Dossier.Verdicts);
        Assert.All(DemoStudy.Dossier.Verdicts, verdict =>
        {
            var place = Tree.Value.DescendantsAndSelf().Single(e => (string?)e.Attribute("id") == SummarySection.ClaimId(verdict));
            var article = place.AncestorsAndSelf("article").First();
            Assert.Contains(article, articles);
            var words = article.Value;
            Assert.Contains(InWords.Of(verdict.Ruling), words, StringComparison.OrdinalIgnoreCase);
            if (verdict.Claim.Stated)
            {
                Assert.Contains(verdict.Sentence, words, StringComparison.Ordinal);
                Assert.Contains(verdict.Reason, words, StringComparison.Ordinal);
                Assert.All(verdict.Numbers, n => Assert.Contains(n.Unit, words, StringComparison.Ordinal));
                Assert.All(verdict.Questions, q => Assert.Contains(q.Text, words, StringComparison.Ordinal));
            }
        });
    }

    [Fact]
    public void Html_OfTheDemo_CountsVerdictsAsTheyAre()
    {
        var counts = Tree.Value.All("ul").Single(u => (string?)u.Attribute("class") == "counts").Elements("li").Select(l => l.Element("b")!.Value);
        Assert.Equal(
            Enum.GetValues<Ruling>().Select(r => DemoStudy.Dossier.Verdicts.Count(v => v.Ruling == r).ToString(CultureInfo.InvariantCulture)), counts);
    }

    [Fact]
    public void Html_OfTheDemo_PrintsNoNumberThatIsNone()
    {
        Assert.DoesNotMatch(NoNumber(), Page.Value);
        Assert.DoesNotContain("∞", Tree.Value.Value, StringComparison.Ordinal);
        Assert.DoesNotContain("10^", Tree.Value.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_OfTheDemo_LoadsAndRunsNothing()
    {
        string[] refused = ["script", "link", "img", "iframe", "object", "embed", "base", "form"];
        Assert.DoesNotContain(Tree.Value.DescendantsAndSelf(), e => refused.Contains(e.Name.LocalName, StringComparer.Ordinal));
        Assert.All(Tree.Value.DescendantsAndSelf().Attributes("href"), a => Assert.StartsWith("#", a.Value, StringComparison.Ordinal));
        Assert.DoesNotContain(Tree.Value.DescendantsAndSelf().Attributes(), a => a.Name.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase));
        var style = Tree.Value.All("style").Single().Value;
        // The one thing that stands at an address is the typeface, and that address is its own bytes.
        Assert.DoesNotContain("url(", style.Replace("url(data:font/ttf;base64,", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("@import", style, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(["http://www.w3.org/2000/svg"], Address().Matches(Page.Value).Select(m => m.Value).Distinct());
    }

    // WCAG 2.2, success criteria 1.3.1, 2.4.1, 2.4.2, 3.1.1; technique G141 for the order of headings.
    [Fact]
    public void Html_OfTheDemo_CanBeReadWithoutSeeingIt()
    {
        Assert.Equal("en", (string?)Tree.Value.Attribute("lang"));
        Assert.NotEmpty(Tree.Value.All("title").First().Value);
        Assert.Equal("#report", (string?)Tree.Value.Element("body")!.Elements().First().Attribute("href"));
        Assert.All(["header", "nav", "main", "footer"], l => Assert.Single(Tree.Value.Element("body")!.Elements(l)));

        var levels = Tree.Value.DescendantsAndSelf().Where(e => Heading().IsMatch(e.Name.LocalName)).Select(e => e.Name.LocalName[1] - '0').ToArray();
        Assert.Equal(1, levels.Count(l => l == 1));
        Assert.Equal(1, levels[0]);
        Assert.All(levels.Zip(levels.Skip(1)), p => Assert.True(p.Second <= p.First + 1, string.Create(CultureInfo.InvariantCulture, $"h{p.First} is followed by h{p.Second}.")));

        var tables = Tree.Value.All("table").ToArray();
        Assert.NotEmpty(tables);
        Assert.All(tables, t =>
        {
            Assert.NotEmpty(t.Element("caption")!.Value);
            Assert.All(t.Descendants("th"), h => Assert.True((string?)h.Attribute("scope") is "col" or "row"));
            Assert.NotEmpty(t.Element("thead")!.Descendants("th"));
        });
        XNamespace svg = "http://www.w3.org/2000/svg";
        Assert.All(Tree.Value.Descendants(svg + "svg"), s =>
        {
            Assert.NotEmpty(s.Element(svg + "title")!.Value);
            Assert.NotEmpty(s.Element(svg + "desc")!.Value);
        });
    }

    [Fact]
    public void Html_OfTheDemo_HasEveryIdOnceAndNoLinkToNowhere()
    {
        var ids = Tree.Value.DescendantsAndSelf().Attributes("id").Select(a => a.Value).ToArray();
        Assert.Empty(ids.GroupBy(i => i, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key));
        Assert.All(Tree.Value.DescendantsAndSelf().Attributes("href"), a => Assert.Contains(a.Value[1..], ids));
        Assert.All(Tree.Value.DescendantsAndSelf().Attributes("aria-labelledby").SelectMany(a => a.Value.Split(' ')), i => Assert.Contains(i, ids));
    }

    [Fact]
    public void Html_InAnotherCulture_IsTheSameToTheByte()
    {
        var (culture, ui) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = new CultureInfo("de-DE");
            Assert.Equal(Page.Value, StudyReport.Html(DemoStudy.Dossier));
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (culture, ui);
        }
    }

    [Fact]
    public void Html_OfInventedData_SaysSoOnEveryPage()
    {
        Assert.Contains("Invented", Tree.Value.Element("body")!.Element("header")!.Elements().First().Value, StringComparison.Ordinal);
        Assert.Contains("Invented", Tree.Value.Element("body")!.Element("footer")!.Value, StringComparison.Ordinal);
        Assert.Contains("Invented", Tree.Value.All("title").First().Value, StringComparison.Ordinal);
        Assert.Contains("@bottom-left { content: \"Invented", Tree.Value.All("style").Single().Value, StringComparison.Ordinal);
        var real = ReportPage.Read(StudyReport.Html(Dossier.Of(SmallStudy.Of(5))));
        Assert.DoesNotContain("nvented", real.Element("body")!.Value, StringComparison.Ordinal);
        Assert.DoesNotContain("Invented demo data", real.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_OfTheDemo_LeavesOutWordsThatPromiseTooMuch()
        => Assert.DoesNotMatch(Boast(), string.Join(' ', Tree.Value.All("section").Where(s => (string?)s.Attribute("id") != "section-defence").Select(s => s.Words())));

    [Fact]
    public void Html_OfTheDemo_LeadsFromANumberToFileAndRow()
    {
        var notes = Tree.Value.All("article").Where(a => (string?)a.Attribute("class") == "trail").ToArray();
        Assert.NotEmpty(notes);

        // Row 27 of aas-run1.csv as it stands in samples/demo: the first vessel of the isotherm.
        var first = notes.Single(n => n.Value.Contains("q:ISO-02-1", StringComparison.Ordinal)).Value;
        Assert.Contains("q = (C0 − Ce)·V/m", first, StringComparison.Ordinal);
        Assert.Contains("0,0118673249279 in aas-run1.csv, row 27, column Abs 1", first, StringComparison.Ordinal);
        Assert.All(notes, n => Assert.NotEmpty(n.Descendants("td")));
    }

    [Theory, InlineData("light"), InlineData("dark")]
    public void Style_TextOnItsGround_HasContrast(string theme)
    {
        var css = ReportStyle.Css(invented: true);
        var roots = Variables().Matches(css).Select(m => m.Value).ToArray();
        var rules = theme == "light" ? roots[0] : roots[1];
        Assert.All(new[] { ("ink", "paper"), ("soft", "paper"), ("link", "paper"), ("ink", "tint"), ("link", "tint"), ("soft", "tint"), ("mark-ink", "mark") },
            pair => Assert.True(Contrast(Colour(rules, pair.Item1), Colour(rules, pair.Item2)) >= 4.5, $"{pair.Item1} on {pair.Item2}"));
    }

    // WCAG 2.2, definitions of relative luminance and contrast ratio.
    private static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string hex)
    {
        double Part(int at) => (int.Parse(hex.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0) is var c && c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
        return 0.2126 * Part(1) + 0.7152 * Part(3) + 0.0722 * Part(5);
    }

    private static string Colour(string rules, string name) => Regex.Match(rules, $"--{name}: (#[0-9a-f]{{6}})", RegexOptions.None, TimeSpan.FromSeconds(1)).Groups[1].Value;

    [GeneratedRegex(@"\bNaN\b|Infinity", RegexOptions.None, 5000)]
    private static partial Regex NoNumber();

    [GeneratedRegex(@"https?://[^\s""<]*", RegexOptions.None, 5000)]
    private static partial Regex Address();

    [GeneratedRegex("^h[1-6]$", RegexOptions.None, 5000)]
    private static partial Regex Heading();

    // What methods and results text keeps out.
    [GeneratedRegex(@"\b(proves?|proven|clearly|excellent|perfect(ly)?|obvious(ly)?)\b", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Boast();

    [GeneratedRegex(@":root \{[^}]*--paper[^}]*\}", RegexOptions.None, 5000)]
    private static partial Regex Variables();
}
