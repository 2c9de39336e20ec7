using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Wordprocessing;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Words;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;
using Holdfast.Testing;

namespace Holdfast.Reports.Tests.Words;

public sealed class EditedChapterTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("holdfast-words-").FullName;

    [Fact]
    public void EditedFile_ComesBackAsProposals_AndLaterNumbersReachHerWords()
    {
        using var study = Demo();
        study.Append(study.Daybook.Version, "Ada", new TextWritten("discussion", "I find {qm:ISO-298@langmuir} of nickel on the powder.\n\n- a *first* point\n- a second point"));
        var made = Chapter(study).Docx();
        Assert.Empty(EditedChapter.Of(made, "c.docx", study.Daybook).Proposals);
        Assert.True(EditedChapter.Of(made, "c.docx", study.Daybook).IsKnown);

        var stated = study.Study.Claims.Length.ToString(System.Globalization.CultureInfo.InvariantCulture);
        var capacity = Sentence(study, "Claim 12 ");
        var edited = Edit(made, paragraphs =>
        {
            Set(paragraphs.Single(p => Text(p).StartsWith("I find ", StringComparison.Ordinal)), Text(paragraphs.Single(p => Text(p).StartsWith("I find ", StringComparison.Ordinal))).Replace("I find", "We found", StringComparison.Ordinal));
            Set(paragraphs.Single(p => Text(p) == "a second point"), "a second point, said better");
            Set(paragraphs.Single(p => Text(p) == capacity), capacity.Replace("Claim 12 ", "On claim 12: it ", StringComparison.Ordinal));
            var hold = paragraphs.First(p => Text(p).StartsWith("Of ", StringComparison.Ordinal) && Text(p).Contains(" claims stated", StringComparison.Ordinal));
            Set(hold, Text(hold).Replace($"Of {stated} ", "Of 99 ", StringComparison.Ordinal));
            var cell = paragraphs.First(p => Text(p).StartsWith("13.53 (", StringComparison.Ordinal));
            Set(cell, Text(cell).Replace("13.53", "13.9", StringComparison.Ordinal));
            var heading = paragraphs.Single(p => Text(p) == "6. Limits of the study");
            heading.InsertAfterSelf(new Paragraph(new DocumentFormat.OpenXml.Wordprocessing.Run(new DocumentFormat.OpenXml.Wordprocessing.Text("A limit that only I know."))));
        });
        var result = EditedChapter.Of(edited, "c.docx", study.Daybook);
        Assert.Equal(study.Daybook.Version, result.On);
        Assert.Equal(["discussion", "discussion", "limits", "results"], result.Proposals.Select(p => p.Place).Order(StringComparer.Ordinal));
        Assert.Contains(result.Proposals, p => p.Change is TextWritten { Place: "discussion", Text: "We found {qm:ISO-298@langmuir} of nickel on the powder.\n\n- a *first* point\n- a second point" });
        Assert.Contains(result.Proposals, p => p.Change is TextWritten { Place: "discussion", Text: "We found {qm:ISO-298@langmuir} of nickel on the powder.\n\n- a *first* point\n- a second point, said better" });
        Assert.Contains(result.Proposals, p => p.Change is TextWritten { Place: "limits", Text: "A limit that only I know." });
        Assert.Equal([(stated, "99", stated), ("13.53", "13.9", "13.53")], result.Numbers.Select(n => (n.Studys, n.Written, n.Now)));

        study.Append(study.Daybook.Version, "Ada", [.. result.Proposals.GroupBy(p => p.Change is TextWritten t ? t.Place : "sentence").Select(g => g.Last().Change)]);
        var hers = Sentence(study, "On claim 12: it ");
        Assert.Equal(capacity.Replace("Claim 12 ", "On claim 12: it ", StringComparison.Ordinal), hers);
        Assert.Empty(EditedChapter.Of(Chapter(study).Docx(), "c.docx", study.Daybook).Proposals);

        // The study changes: her words stay, its numbers are new.
        study.Append(study.Daybook.Version, "Ada", new Struck("ISO-20-1", "stopper leaked"));
        Assert.Empty(EditedChapter.WithoutPlace(study.Study));
        var later = Sentence(study, "On claim 12: it ");
        Assert.NotEqual(hers, later);
        Assert.Equal(NumbersInText.Masked(hers), NumbersInText.Masked(later));
        Assert.Contains("We found", Chapter(study).Html(), StringComparison.Ordinal);

        // The file from before the strike still comes back, held against the entry it was made from.
        var old = EditedChapter.Of(edited, "c.docx", study.Daybook);
        Assert.True(old.IsKnown);
        Assert.True(old.On < study.Daybook.Version);
    }

    [Fact]
    public void RewordedSentence_EditedAgain_GoesOnFromTheSameSentence()
    {
        using var study = Demo();
        var was = Sentence(study, "Claim 12 ");
        study.Append(study.Daybook.Version, "Ada", new SentenceReworded(NumbersInText.Masked(was), was.Replace("Claim 12 ", "The twelfth claim ", StringComparison.Ordinal)));
        var edited = Edit(Chapter(study).Docx(), paragraphs =>
        {
            var hers = paragraphs.Single(p => Text(p).StartsWith("The twelfth claim ", StringComparison.Ordinal));
            Set(hers, Text(hers).Replace("The twelfth claim ", "My twelfth claim ", StringComparison.Ordinal));
        });
        var proposal = Assert.Single(EditedChapter.Of(edited, "c.docx", study.Daybook).Proposals);
        Assert.Equal(NumbersInText.Masked(was), Assert.IsType<SentenceReworded>(proposal.Change).Was);
    }

    [Fact]
    public void Rewording_OfASentenceThatIsAnotherNow_IsNamedAndKept()
    {
        using var study = Demo();
        study.Append(study.Daybook.Version, "Ada", new SentenceReworded("No chapter says # of this.", "Mine."));
        Assert.Equal("No chapter says # of this.", Assert.Single(EditedChapter.WithoutPlace(study.Study)));
        Assert.DoesNotContain("Mine.", Chapter(study).Html(), StringComparison.Ordinal);
    }

    [Fact]
    public void File_OfAnotherStudyOrNoDocument_IsRefused()
    {
        using var study = Demo();
        var other = StudyChapter.Of(Dossier.Of(new Study { Title = "other", Fingerprint = new string('b', 64), Version = 3 })).Docx();
        Assert.Equal(Codes.Unreadable, Assert.Throws<StudyException>(() => EditedChapter.Of(other, "c.docx", study.Daybook)).Code);
        Assert.Equal(Codes.Unreadable, Assert.Throws<StudyException>(() => EditedChapter.Of([1, 2, 3], "c.docx", study.Daybook)).Code);
    }

    [Theory]
    [InlineData("q is 8.05 ± 0.31 mg/g (n = 3), 95 % of it.", "8.05 0.31 3 95")]
    [InlineData("In KIN-05 and Ni(OH)2 at −0.4: 2.4 × 10⁻⁹", "−0.4 2.4")]
    [InlineData("from 13.01 to 14.07.", "13.01 14.07")]
    [InlineData("nothing here", "")]
    public void Numbers_OfAText_AreThoseThatStandByThemselves(string text, string numbers)
        => Assert.Equal(numbers, string.Join(' ', NumbersInText.Of(text)));

    [Fact]
    public void OwnText_UnknownNumber_IsMarkedAndKnownOnesHaveUnitAndUncertainty()
    {
        using var study = Demo();
        study.Append(study.Daybook.Version, "Ada", new TextWritten("question", "Is {q:ISO-20-1} **much**, or {q:nothing}? <script>"));
        var html = Chapter(study).Html();
        Assert.Matches("""<p>Is <span data-number="q:ISO-20-1">[\d.]+ ± [\d.]+ mg/g</span> <b>much</b>, or <mark class="blank">\[no such number: q:nothing\]</mark>\? &lt;script&gt;</p>""", html);
    }

    private StudyFolder Demo()
    {
        var study = StudyFolder.Begin(Path.Combine(root, Path.GetRandomFileName()), "Ada", TimeProvider.System, new StudyBegun("Nickel on EHA-2 (invented)", "Ni", Invented: true));
        Take.Files(study, [Repository.Path("samples", "demo")], new TakeOptions(), "Ada", TestContext.Current.CancellationToken);
        return study;
    }

    private static WrittenDocument Chapter(StudyFolder study) => StudyChapter.Of(Dossier.Of(study.Study));

    private static string Sentence(StudyFolder study, string begin)
        => WordParagraphs.Read(Chapter(study).Docx(), "c.docx").Single(p => p.Text.StartsWith(begin, StringComparison.Ordinal)).Text;

    private static byte[] Edit(byte[] docx, Action<IReadOnlyList<Paragraph>> edit)
    {
        using var stream = new MemoryStream();
        stream.Write(docx);
        using (var document = WordprocessingDocument.Open(stream, isEditable: true))
            edit([.. document.MainDocumentPart!.Document!.Body!.Descendants<Paragraph>()]);
        return stream.ToArray();
    }

    private static string Text(Paragraph paragraph) => string.Concat(paragraph.Descendants<DocumentFormat.OpenXml.Wordprocessing.Text>().Select(t => t.Text));

    // As typed anew: one run.
    private static void Set(Paragraph paragraph, string text)
    {
        foreach (var child in paragraph.ChildElements.Where(c => c is not (ParagraphProperties or BookmarkStart or BookmarkEnd)).ToList())
            child.Remove();
        paragraph.Append(new DocumentFormat.OpenXml.Wordprocessing.Run(new DocumentFormat.OpenXml.Wordprocessing.Text(text) { Space = DocumentFormat.OpenXml.SpaceProcessingModeValues.Preserve }));
    }

    public void Dispose()
    {
        foreach (var file in Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories))
            File.SetAttributes(file, FileAttributes.Normal);
        Directory.Delete(root, recursive: true);
    }
}
