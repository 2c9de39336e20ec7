using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Studies;

namespace Holdfast.Reports.Tests.Documents;

/// <summary>What is handed in of the invented demo study, and of studies that hold little.</summary>
public partial class StudyChapterTests
{
    private const int MostAlike = 3;

    private static readonly Lazy<WrittenDocument> Chapter = new(() => StudyChapter.Of(DemoStudy.Dossier));
    private static readonly Lazy<XElement> Page = new(() => ReportPage.Read(Chapter.Value.Html()));

    // Order of a chapter: write-up handbook, section 1, with the summary in front.
    [Fact]
    public void Chapter_OfTheDemo_HasItsPartsInOrder()
    {
        Assert.Equal(
            ["1. The study at a glance", "2. Question", "3. Materials and methods", "4. Results", "5. What is shown and what is not", "6. Limits of the study", "7. Data availability"],
            Page.Value.All("main").Single().Descendants("h2").Select(h => h.Value));
        Assert.Contains("Invented", Page.Value.Element("body")!.Element("header")!.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Chapter_OfTheDemo_JudgesEveryStatedClaimOnceAndNamesEveryOther()
    {
        var stated = DemoStudy.Dossier.Verdicts.Where(v => v.Claim.Stated).ToArray();
        var results = Paragraphs("section-results");
        Assert.All(stated.Select((v, i) => (Verdict: v, Number: i + 1)), c =>
        {
            var standing = c.Verdict.Ruling switch { Ruling.Holds => "holds", Ruling.Contradicted => "is contradicted", _ => "is not shown yet" };
            var said = new Regex(string.Create(CultureInfo.InvariantCulture, $@"Claim {c.Number} {standing}( \(Figure \d+\))?\. {Regex.Escape(Plain($"{c.Verdict.Sentence} {c.Verdict.Reason}"))}"), RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5));
            Assert.Single(said.Matches(results));
        });
        var table = Page.Value.All("table").Single(t => (string?)t.Attribute("id") == "claims");
        var raised = DemoStudy.Dossier.Verdicts.Where(v => !v.Claim.Stated && v.Ruling != Ruling.Holds).ToArray();
        Assert.Equal(raised.GroupBy(v => (v.Claim.Rule, v.Ruling)).Count(), table.Element("tbody")!.Elements("tr").Count());
        var lines = Plain(table.Words());
        Assert.All(raised.Select(v => v.Claim.Words("series")).OfType<string>().Where(s => !s.Contains(',', StringComparison.Ordinal)), s => Assert.Contains(s, lines, StringComparison.Ordinal));
    }

    // Each stated claim stands once among the numbers of its ruling: "3, 5 to 9 and 12".
    [Fact]
    public void Chapter_OfTheDemo_SaysAtAGlanceHowEachStatedClaimStands()
    {
        var stated = DemoStudy.Dossier.Verdicts.Where(v => v.Claim.Stated).ToArray();
        var rows = Page.Value.All("table").Single(t => (string?)t.Attribute("id") == "standing").Element("tbody")!.Elements("tr").Select(r => r.Elements().Skip(1).Select(c => Plain(c.Value)).ToArray()).ToArray();
        foreach (var (ruling, column) in new[] { (Ruling.Holds, 0), (Ruling.NotShownYet, 1), (Ruling.Contradicted, 2) })
        {
            var told = rows.Select(r => r[column]).SelectMany(c => Span().Matches(c)).SelectMany(m => Numbers(m)).Order();
            Assert.Equal(stated.Select((v, i) => (v.Ruling, Number: i + 1)).Where(p => p.Ruling == ruling).Select(p => p.Number), told);
        }

        static IEnumerable<int> Numbers(Match span)
        {
            var from = int.Parse(span.Groups["from"].Value, CultureInfo.InvariantCulture);
            return Enumerable.Range(from, (span.Groups["to"].Success ? int.Parse(span.Groups["to"].Value, CultureInfo.InvariantCulture) : from) - from + 1);
        }
    }

    // A claim is told whole where it is judged: what would settle it stands there, and nowhere else.
    [Fact]
    public void Chapter_OfTheDemo_NamesTheNextExperimentWithTheClaimThatIsNotShown()
    {
        var results = Paragraphs("section-results");
        Assert.All(
            DemoStudy.Dossier.Verdicts.Where(v => v is { Claim.Stated: true, Ruling: Ruling.NotShownYet, Next: not null }),
            v => Assert.Contains(Plain("Next: " + v.Next!.Sentence), results, StringComparison.Ordinal));
    }

    [Fact]
    public void Chapter_OfTheDemo_SaysNoSentenceMoreThanThreeTimes()
    {
        var often = Blocks().SelectMany(b => Ends().Split(b)).Select(s => s.Trim()).Where(s => s.Split(' ').Length > 2 && s.EndsWith('.'))
            .CountBy(s => s, StringComparer.Ordinal).Where(c => c.Value > MostAlike).Select(c => $"{c.Value} times: {c.Key}").ToArray();
        Assert.Empty(often);
        Assert.DoesNotContain(Defence.StandsOn, Page.Value.Value, StringComparison.Ordinal);
    }

    // Every figure of the text is one that the study, its fits or its verdicts hold, at the digits printed.
    [Fact]
    public void Chapter_OfTheDemo_PrintsNoNumberThatTheDossierDoesNotHold()
    {
        var known = new DossierNumbers(DemoStudy.Dossier);
        var tokens = Blocks().SelectMany(DossierNumbers.In).ToArray();
        Assert.True(tokens.Length > 800, string.Create(CultureInfo.InvariantCulture, $"{tokens.Length} numbers were found in the chapter."));
        Assert.Empty(tokens.Where(t => !known.Has(t)).Distinct(StringComparer.Ordinal));

        // The check has to be able to fail: a last digit that is off by one is found where the number has four figures.
        var changed = tokens.Where(t => t.SkipWhile(c => c is '0' or '.' or '−').Count(char.IsAsciiDigit) >= 4 && char.IsAsciiDigit(t[^1])).Distinct(StringComparer.Ordinal).Select(t => t[..^1] + (char)('0' + ((t[^1] - '0' + 1) % 10))).ToArray();
        Assert.True(changed.Count(t => !known.Has(t)) > 0.85 * changed.Length, string.Create(CultureInfo.InvariantCulture, $"{changed.Count(known.Has)} of {changed.Length} changed numbers pass."));
    }

    [Fact]
    public void Chapter_OfTheDemo_MarksNoGapInlineAndListsEachOnceWithItsPlace()
    {
        Assert.DoesNotContain(Prose.NotRecorded, Page.Value.Value, StringComparison.Ordinal);
        var methods = Page.Value.All("section").Single(s => (string?)s.Attribute("id") == "section-methods");
        var list = methods.Elements("h3").Single(h => h.Value == "To fill in").ElementsAfterSelf("ul").First();
        Assert.All(MethodsGap.Of(DemoStudy.Dossier), g => Assert.Contains(list.Elements("li"), l => l.Value.Contains(g.What, StringComparison.Ordinal) && l.Value.Contains("holdfast ", StringComparison.Ordinal)));
    }

    // Twelve pages of A4 hold at most this much beside figures of this height: seen in a word processor.
    [Fact]
    public void Chapter_OfTheDemo_IsNoLongerThanTwelvePages()
    {
        Assert.InRange(Chapter.Value.Figures.Count, 8, 15);
        Assert.InRange(Blocks().Sum(b => b.Split(' ').Length), 3000, 7300);
    }

    [Fact]
    public void Chapter_OfTheDemo_LeadsNowhereThatIsNot()
    {
        var ids = Page.Value.DescendantsAndSelf().Attributes("id").Select(a => a.Value).ToArray();
        Assert.Empty(ids.GroupBy(i => i, StringComparer.Ordinal).Where(g => g.Count() > 1).Select(g => g.Key));
        Assert.All(Page.Value.DescendantsAndSelf().Attributes("href"), a => Assert.Contains(a.Value[1..], ids));
    }

    [Fact]
    public void Chapter_OfTheSameStudy_IsTheSameToTheByte()
        => Assert.Equal(Chapter.Value.Html(), StudyChapter.Of(DemoStudy.Dossier).Html());

    [Fact]
    public void Chapter_OfLittle_SaysWhatIsMissing()
    {
        var empty = Body(new Study { Title = "" });
        Assert.Contains("Untitled study", empty, StringComparison.Ordinal);
        Assert.Contains("No vessel was recorded.", empty, StringComparison.Ordinal);
        Assert.DoesNotContain("nvented", empty, StringComparison.Ordinal);
        var small = Body(SmallStudy.Of(5, 5.2, 4.9));
        Assert.Contains("3 vessels of 25 mL holding 50 mg of sorbent were shaken for 60 min.", small, StringComparison.Ordinal);
        Assert.DoesNotContain(Prose.NotRecorded, small, StringComparison.Ordinal);
    }

    private static string Body(Study study) => Plain(ReportPage.Read(StudyChapter.Of(Dossier.Of(study)).Html()).Element("body")!.Words());

    private static string Paragraphs(string section) => string.Join("\n", Page.Value.All("section").Single(s => (string?)s.Attribute("id") == section).Descendants("p").Select(p => Plain(p.Value)));

    private static string Plain(string words) => Blank().Replace(words.Replace('\u00A0', ' '), " ");

    // What a reader reads, block by block; figures draw their numbers from the same facts and are tested elsewhere.
    private static IEnumerable<string> Blocks()
        => Page.Value.Element("body")!.DescendantsAndSelf().Where(e => e.Name.LocalName is "p" or "li" or "td" or "th" or "caption" or "figcaption" && !e.Ancestors().Any(a => a.Name.LocalName is "details" or "nav"))
            .Select(e => Plain(Content(e)));

    private static string Content(XElement element) => string.Concat(element.Nodes().Select(n => n switch
    {
        XText text => text.Value,
        XElement { Name.LocalName: "math" } => "",
        XElement inner => Content(inner),
        _ => "",
    }));

    [GeneratedRegex(@"(?<from>\d+)( to (?<to>\d+))?", RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Span();

    [GeneratedRegex(@"(?<=\.)\s+(?=\p{Lu}|“)", RegexOptions.None, 5000)]
    private static partial Regex Ends();

    [GeneratedRegex(@"\s+", RegexOptions.None, 5000)]
    private static partial Regex Blank();
}
