using System.Text.RegularExpressions;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Documents.Pdf;
using Holdfast.Reports.Markup;
using Holdfast.Studies;
using PdfSharp.Pdf;
using PdfSharp.Pdf.IO;

namespace Holdfast.Reports.Tests.Documents;

/// <summary>Documents as PDF (ISO 32000-1): read back with their structure, and their words by an independent program where one is installed.</summary>
public partial class PdfFileTests
{
    private static readonly Lazy<WrittenDocument> Chapter = new(() => StudyChapter.Of(DemoStudy.Dossier));
    private static readonly Lazy<byte[]> Bytes = new(() => Chapter.Value.Pdf());

    [Fact]
    public void Chapter_OfTheSameStudy_IsTheSameToTheByte() => Assert.Equal(Convert.ToHexString(Bytes.Value), Convert.ToHexString(StudyChapter.Of(DemoStudy.Dossier).Pdf()));

    // ISO 216: A4 is 210 mm by 297 mm, 595.3 by 841.9 points.
    [Fact]
    public void Chapter_IsTwelvePagesOfA4AtMost_WithItsHeadingsAsBookmarks()
    {
        using var file = Open(Bytes.Value);
        Assert.InRange(file.PageCount, 5, 12);
        Assert.All(file.Pages.Cast<PdfPage>(), p => Assert.Equal(1, Math.Min(p.Width.Point, p.Height.Point) / 595.28, 0.001));
        Assert.Equal(Enumerable.Range(0, Chapter.Value.Sections.Length).Select(Chapter.Value.Heading), file.Outlines.Select(o => o.Title));
        Assert.Contains(file.Outlines, o => o.Outlines.Count > 2);
        Assert.Equal((Chapter.Value.Title, "Holdfast"), (file.Info.Title, file.Info.Creator));
        Assert.Equal("en-GB", file.Language);
    }

    [Fact]
    public void Typefaces_AreInside()
    {
        using var file = Open(Bytes.Value);
        var described = file.Internals.GetAllObjects().OfType<PdfDictionary>().Where(d => d.Elements.GetName("/Type") == "/FontDescriptor").ToArray();
        Assert.NotEmpty(described);
        Assert.All(described, d => Assert.True(d.Elements.ContainsKey("/FontFile2") || d.Elements.ContainsKey("/FontFile3") || d.Elements.ContainsKey("/FontFile"), d.Elements.GetName("/FontName")));
    }

    // ISO 32000-1, 14.7 and 14.8: a tree of what the file means, its language, and words for each figure.
    [Fact]
    public void Chapter_IsTagged_WithWordsForEachFigure()
    {
        using var file = Open(Bytes.Value);
        Assert.True(file.Internals.Catalog.Elements.GetDictionary("/MarkInfo")!.Elements.GetBoolean("/Marked"));
        var parts = file.Internals.GetAllObjects().OfType<PdfDictionary>().Where(d => d.Elements.GetName("/Type") == "/StructElem" || d.Elements.ContainsKey("/S") && d.Elements.ContainsKey("/P")).ToArray();
        var kinds = parts.CountBy(p => p.Elements.GetName("/S"), StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
        Assert.Equal((1, Chapter.Value.Sections.Length), (kinds["/H1"], kinds["/H2"]));
        Assert.Equal(Chapter.Value.Figures.Values.Select(f => f.Alt).Order(StringComparer.Ordinal), parts.Where(p => p.Elements.GetName("/S") == "/Figure").Select(p => p.Elements.GetString("/Alt")).Order(StringComparer.Ordinal));
        Assert.All(new[] { "/P", "/L", "/LI", "/LBody", "/Table", "/TR", "/TH", "/TD" }, k => Assert.True(kinds.GetValueOrDefault(k) > 0, k));
    }

    // Read aloud, words stay apart, at the end of a line too. Read by poppler's pdfinfo.
    [Fact]
    public void Chapter_ReadByItsTree_KeepsWordsApart()
    {
        var program = Installed("pdfinfo");
        Assert.SkipUnless(program is not null, "No pdfinfo is installed.");
        var read = Blank().Replace(Raw(program!, Bytes.Value, "-struct-text"), " ");
        var claim = DemoStudy.Dossier.Verdicts.First(v => v.Claim.Stated && v.Reason.Length > 150);
        Assert.Contains(claim.Reason.Replace('\u00A0', ' '), read, StringComparison.Ordinal);
    }

    [Fact]
    public void Links_LeadToPages()
    {
        using var file = Open(Bytes.Value);
        var links = file.Pages.Cast<PdfPage>().SelectMany(p => Enumerable.Range(0, p.Annotations.Count).Select(i => p.Annotations[i])).ToArray();
        Assert.NotEmpty(links);
        Assert.All(links, l => Assert.InRange(l.Rectangle.X1, 0, 842));
    }

    // Numbers in all formats are one. The words are read by poppler's pdftotext, which shares nothing with what wrote them.
    [Fact]
    public void Chapter_HasTheNumbersOfThePage()
    {
        var program = Installed("pdftotext");
        Assert.SkipUnless(program is not null, "No pdftotext is installed.");
        var text = Text(program!, Bytes.Value);
        var page = ReportPage.Read(Chapter.Value.Html());
        page.Descendants().Where(e => e.Name.LocalName is "details" or "nav" or "svg" or "math" || (string?)e.Attribute("class") == "invented").ToList().ForEach(e => e.Remove());
        string[] Of(string words) => [.. DossierNumbers.In(Blank().Replace(words, " "))];
        var shown = text.CountBy(n => n, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
        var blocks = page.Element("body")!.Descendants().Where(e => e.Name.LocalName is "h1" or "h2" or "h3" or "p" or "li" or "td" or "th" or "caption" or "figcaption");
        // Raised powers come out as digits on the line, and ticks of figures are numbers too: each number of the page is there at least as often.
        var lost = blocks.SelectMany(b => Of(b.Value)).Where(n => !n.Contains('×', StringComparison.Ordinal)).CountBy(n => n, StringComparer.Ordinal).Where(n => shown.GetValueOrDefault(n.Key) < n.Value).Select(n => $"{n.Key}: {n.Value} on the page, {shown.GetValueOrDefault(n.Key)} in the file").ToArray();
        Assert.True(lost.Length == 0, string.Join("\n", lost));
    }

    [Fact]
    public void Invented_StandsOnEveryPage()
    {
        var program = Installed("pdftotext");
        Assert.SkipUnless(program is not null, "No pdftotext is installed.");
        var pages = Raw(program!, Bytes.Value).TrimEnd('\f').Split('\f');
        Assert.All(pages, p => Assert.Contains("Invented demo data", p, StringComparison.Ordinal));
        Assert.All(pages.Select((p, i) => (p, i)), p => Assert.Contains($"{p.i + 1} of {pages.Length}", p.p, StringComparison.Ordinal));
        Assert.DoesNotContain("nvented", Raw(program!, StudyChapter.Of(Dossier.Of(SmallStudy.Of(5))).Pdf()), StringComparison.Ordinal);
    }

    // WrittenTable: the head of a table stands again on each page that it runs over.
    [Fact]
    public void Heads_StandAgainOnEachPage()
    {
        var program = Installed("pdftotext");
        Assert.SkipUnless(program is not null, "No pdftotext is installed.");
        var pages = Raw(program!, StudyReport.Of(DemoStudy.Dossier).Pdf()).Split('\f');
        Assert.InRange(pages.Count(p => p.Contains("Deciding numbers", StringComparison.Ordinal) && p.Contains("Verdict", StringComparison.Ordinal)), 2, 60);
    }

    [Fact]
    public void Documents_OfLittle_AreWritten()
    {
        foreach (var study in new[] { new Study { Title = "" }, SmallStudy.Of(5, 5.2, 4.9), new Study { Title = "\u0001 (\\) 镍 𝛼 " + new string('W', 400) } })
        {
            var dossier = Dossier.Of(study);
            using var chapter = Open(StudyChapter.Of(dossier).Pdf());
            using var record = Open(StudyReport.Of(dossier).Pdf());
            Assert.True(chapter.PageCount > 0 && record.PageCount > 0);
        }
    }

    [Fact]
    public void Lines_KeepWithinTheirWidth_AndLoseNothing()
    {
        Node[] words = ["A rate of ", Html.Element("i", "k"), Html.Element("sub", "2"), " with a hash ", new string('f', 64), " and pseudo-second-order in 10⁻³ mol/L."];
        foreach (var width in new[] { 30.0, 61.5, 120, 400 })
        {
            var lines = PdfText.Lines(PdfText.Atoms(words, new(9)), width);
            Assert.All(lines, l => Assert.True(l.Sum(a => a.Width) <= width + 1e-9));
            Assert.Equal(
                string.Concat(Tree.Text(words).Where(c => c != ' ')).Replace("⁻³", "−3", StringComparison.Ordinal),
                string.Concat(lines.SelectMany(l => l).OfType<Letters>().Select(a => a.Text)));
        }
    }

    private static PdfDocument Open(byte[] bytes) => PdfReader.Open(new MemoryStream(bytes, writable: false), PdfDocumentOpenMode.Import);

    private static string? Installed(string name) => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(p => Path.Combine(p, name)).FirstOrDefault(File.Exists);

    private static IEnumerable<string> Text(string program, byte[] pdf) => DossierNumbers.In(Blank().Replace(Raw(program, pdf), " "));

    private static string Raw(string program, byte[] pdf, string? option = null)
    {
        var folder = Directory.CreateTempSubdirectory("holdfast-pdf-").FullName;
        var path = Path.Combine(folder, "document.pdf");
        File.WriteAllBytes(path, pdf);
        try
        {
            using var run = System.Diagnostics.Process.Start(new System.Diagnostics.ProcessStartInfo(program, option is null ? [path, "-"] : [option, path]) { RedirectStandardOutput = true, StandardOutputEncoding = System.Text.Encoding.UTF8, UseShellExecute = false })!;
            var said = run.StandardOutput.ReadToEnd();
            Assert.True(run.WaitForExit(TimeSpan.FromMinutes(1)) && run.ExitCode == 0);
            return said;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [GeneratedRegex(@"\s+", RegexOptions.None, 5000)]
    private static partial Regex Blank();
}
