using System.Diagnostics;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Documents.Sources;
using Holdfast.Studies;

namespace Holdfast.Reports.Tests.Documents;

/// <summary>Documents as LaTeX: read back by <see cref="LatexSource"/>, held against the page of the same document, and set where a TeX is installed.</summary>
public partial class LatexFileTests
{
    private static readonly Lazy<WrittenDocument> Chapter = new(() => StudyChapter.Of(DemoStudy.Dossier));
    private static readonly Lazy<IReadOnlyList<DocumentFile>> Files = new(() => Chapter.Value.Latex());

    // Numbers in all formats are one: the page and the source hold the same ones.
    [Fact]
    public void Chapter_HasTheNumbersOfThePage() => Assert.Equal(OnPage(Chapter.Value), InSource(Files.Value));

    [Fact]
    public void Record_HasTheNumbersOfThePage()
    {
        var record = StudyReport.Of(DemoStudy.Dossier);
        string[] page = OnPage(record), source = InSource(record.Latex());
        var (ofPage, ofSource) = (page.CountBy(n => n, StringComparer.Ordinal).ToHashSet(), source.CountBy(n => n, StringComparer.Ordinal).ToHashSet());
        Assert.True(ofPage.SetEquals(ofSource), $"on the page: {string.Join(' ', ofPage.Except(ofSource).Take(30))}; in the source: {string.Join(' ', ofSource.Except(ofPage).Take(30))}");
    }

    [Fact]
    public void Chapter_NamesOnlyWhatIsThere()
    {
        var names = new LatexSource(Source(Files.Value)).Names;
        Assert.NotEmpty(names["ref"]);
        Assert.Subset(names["label"].ToHashSet(StringComparer.Ordinal), names["ref"].ToHashSet(StringComparer.Ordinal));
        Assert.Subset(names["hypertarget"].ToHashSet(StringComparer.Ordinal), names["hyperlink"].ToHashSet(StringComparer.Ordinal));
        Assert.Equal(names["label"].Distinct(StringComparer.Ordinal), names["label"]);
        Assert.Equal(Chapter.Value.Figures.Count, names["includegraphics"].Count());
        Assert.Equal(names["includegraphics"], Files.Value.Select(f => f.Name).Where(n => n.EndsWith(".pdf", StringComparison.Ordinal)));
        Assert.All(Files.Value.Where(f => f.Name.EndsWith(".pdf", StringComparison.Ordinal)), f => Assert.Equal("%PDF"u8.ToArray(), f.Bytes[..4].ToArray()));
        string[] entries = [.. Entry().Matches(Text(Files.Value, "chapter.bib")).Select(m => m.Groups["key"].Value)];
        Assert.Equal(entries.Distinct(StringComparer.Ordinal), entries);
        Assert.Equal(entries.Order(StringComparer.Ordinal), names["cite"].Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Chapter_OfTheSameStudy_IsTheSameToTheByte()
        => Assert.Equal(Files.Value.Select(f => (f.Name, Convert.ToHexString(f.Bytes.Span))), StudyChapter.Of(DemoStudy.Dossier).Latex().Select(f => (f.Name, Convert.ToHexString(f.Bytes.Span))));

    [Fact]
    public void Documents_OfHostileWords_ReadBackAsTheyAre()
    {
        const string Words = @"\input{/etc/passwd} $x$ 100 % #1 a_b^c ~ { } & ] [ *  \end{document} <<a>> --- ''q'' ""q"" |x| 镍 𝛼 ½ ⁻² ₂ é";
        var study = SmallStudy.Of(5, 5.2, 4.9) with { Title = Words };
        foreach (var document in new[] { StudyChapter.Of(Dossier.Of(study)), StudyReport.Of(Dossier.Of(study)) })
        {
            var source = Source(document.Latex());
            var said = new LatexSource(source).Words;
            Assert.Contains(@"\input{/etc/passwd} $x$ 100 % #1 a_b^c ~ { } & ] [ *", said, StringComparison.Ordinal);
            Assert.Contains(@"\end{document} <<a>> --- ''q'' ""q"" |x| [U+954D] [U+1D6FC]", said, StringComparison.Ordinal);
            Assert.Single(source.Split('\n'), l => !l.StartsWith('%') && l.Contains(@"\end{document}", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void Documents_OfLittle_ReadBack()
    {
        foreach (var study in new[] { new Study { Title = "" }, new Study { Title = "\u0001\n%" } })
        {
            Assert.NotEmpty(new LatexSource(Source(StudyChapter.Of(Dossier.Of(study)).Latex())).Words);
            Assert.NotEmpty(new LatexSource(Source(StudyReport.Of(Dossier.Of(study)).Latex())).Words);
        }
    }

    // The typesetting itself is the judge where there is one; elsewhere the reader above has to do.
    [Fact]
    public void Chapter_IsSetByATex()
    {
        var tex = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(p => Path.Combine(p, "pdflatex")).FirstOrDefault(File.Exists);
        Assert.SkipUnless(tex is not null, "No pdflatex is installed.");
        var folder = Directory.CreateTempSubdirectory("holdfast-tex-").FullName;
        try
        {
            foreach (var file in Files.Value)
            {
                var path = Path.Combine(folder, file.Name);
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                File.WriteAllBytes(path, file.Bytes.ToArray());
            }

            using var run = Process.Start(new ProcessStartInfo(tex!, ["-interaction=nonstopmode", "-halt-on-error", "-no-shell-escape", "chapter.tex"]) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false })!;
            run.ErrorDataReceived += (_, _) => { };
            run.BeginErrorReadLine();
            var said = run.StandardOutput.ReadToEnd();
            Assert.True(run.WaitForExit(TimeSpan.FromMinutes(2)));
            Assert.True(run.ExitCode == 0, said.Length > 2000 ? said[^2000..] : said);
            Assert.True(File.Exists(Path.Combine(folder, "chapter.pdf")));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // Taken apart by hand from the words of the program's own cards.
    [Theory]
    [InlineData("I. Langmuir, J. Am. Chem. Soc. 40 (1918) 1361", "langmuir1918-1361", "I.|Langmuir", "J. Am. Chem. Soc.", "40", "1361")]
    [InlineData("Y. S. Ho and G. McKay, Process Biochem. 34 (1999) 451, from memory", "ho1999-451", "Y. S.|Ho;G.|McKay", "Process Biochem.", "34", "451")]
    [InlineData("S. Brunauer, P. H. Emmett and E. Teller 1938; for solutions A. Ebadi and co-workers 2009; from memory", "brunauer1938", "S.|Brunauer;P. H.|Emmett;E.|Teller", "", "", "")]
    [InlineData("A. R. Khan and co-workers 1996, from memory", "khan1996", "A. R.|Khan", "", "", "")]
    [InlineData("Powell et al. 2007, Pure Appl. Chem. 79, 895 (IUPAC)", "powell2007-895", "|Powell", "Pure Appl. Chem.", "79", "895")]
    [InlineData("Martell & Smith 1976, Critical Stability Constants 4: pKs 15.2", "martell-smith-1976-critical", "", "", "", "")]
    [InlineData("Solved from dq/dt = kn·(qe − q)^n", "solved-from-dq-dt", "", "", "", "")]
    public void Sources_AreTakenApartAsFarAsTheirWordsGo(string words, string key, string authors, string journal, string volume, string page)
    {
        var source = CitedSource.Read(words);
        Assert.Equal((key, authors, journal, volume, page), (source.Key, string.Join(';', source.Authors.Select(a => $"{a.Given}|{a.Family}")), source.Journal, source.Volume, source.Page));
        Assert.Equal(words.Any(char.IsAsciiDigit), source.IsPublished);
        // Nothing in an entry that is not in the words.
        Assert.All(new[] { source.Year?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "", source.Journal, source.Volume, source.Page }, part => Assert.Contains(part, words, StringComparison.Ordinal));
    }

    [Fact]
    public void Bibliographies_HoldTheSameSources()
    {
        var read = JsonDocument.Parse(Text(Files.Value, "chapter.csl.json")).RootElement.EnumerateArray().ToArray();
        Assert.Equal(Entry().Matches(Text(Files.Value, "chapter.bib")).Select(m => m.Groups["key"].Value), read.Select(e => e.GetProperty("id").GetString()!));
        Assert.All(read, e => Assert.Contains("look it up", e.GetProperty("note").GetString(), StringComparison.Ordinal));
        var langmuir = Assert.Single(read, e => e.GetProperty("id").GetString() == "langmuir1918-1361");
        Assert.Equal(1918, langmuir.GetProperty("issued").GetProperty("date-parts")[0][0].GetInt32());
        Assert.Equal("Langmuir", langmuir.GetProperty("author")[0].GetProperty("family").GetString());
    }

    private static string[] OnPage(WrittenDocument document)
    {
        var page = ReportPage.Read(document.Html());
        page.Descendants().Where(e => e.Name.LocalName is "details" or "nav" or "svg" or "math" || (string?)e.Attribute("class") == "invented" || (string?)e.Attribute("class") == "skip").ToList().ForEach(e => e.Remove());
        // A break parts words, and white space alone between elements is lost in reading.
        page.Descendants().Where(e => e.Name.LocalName is "br" or "b").ToList().ForEach(e => e.Add(" "));
        var blocks = page.Element("body")!.Descendants().Where(e => e.Name.LocalName is "h1" or "h2" or "h3" or "h4" or "p" or "li" or "td" or "th" or "caption" or "figcaption" or "dt" or "dd");
        return [.. blocks.SelectMany(b => Of(b.Value)).Order(StringComparer.Ordinal)];
    }

    private static string[] InSource(IReadOnlyList<DocumentFile> files)
        => [.. new LatexSource(Source(files)).Words.Split('\n').SelectMany(Of).Order(StringComparer.Ordinal)];

    private static IEnumerable<string> Of(string text) => DossierNumbers.In(Blank().Replace(text, " "));

    private static string Source(IReadOnlyList<DocumentFile> files) => Encoding.UTF8.GetString(files[0].Bytes.Span);

    private static string Text(IReadOnlyList<DocumentFile> files, string name) => Encoding.UTF8.GetString(files.Single(f => f.Name == name).Bytes.Span);

    [GeneratedRegex(@"[\s\u2007\u2008]+", RegexOptions.None, 5000)]
    private static partial Regex Blank();

    [GeneratedRegex(@"^@\w+\{(?<key>[^,]+),", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 5000)]
    private static partial Regex Entry();
}
