using System.Text;
using Holdfast.Claims;
using Holdfast.Reports.Reviews;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;
using Holdfast.Testing;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>A page for a reader, from the disk and without a network: twenty remarks on numbers, figures, claims and sentences come back as a file, are taken in and answered (X33).</summary>
[Collection("browser")]
public sealed class ReviewTests(Browsing browsing) : IClassFixture<Browsing>, IDisposable
{
    private static readonly string[] Kinds = ["number", "figure", "claim", "sentence"];
    private readonly string root = Directory.CreateTempSubdirectory("holdfast-review-").FullName;

    [Fact]
    public async Task TwentyRemarks_ComeBack_AreAnsweredAndShownWithWhatChanged()
    {
        using var study = StudyFolder.Begin(Path.Combine(root, "demo"), "Ada", TimeProvider.System, new StudyBegun("Nickel on EHA-2 (invented)", "Ni", Invented: true));
        Take.Files(study, [Repository.Path("samples", "demo")], new TakeOptions(), "Ada", TestContext.Current.CancellationToken);
        var page = await Opened(ReviewPage.Of(study.Daybook, Dossier.Of(study.Study)), "review.html");

        for (var i = 0; i < 20; i++)
        {
            var place = page.Locator($"[data-pin^='{Kinds[i % 4]}:']").Nth(i / 4);
            // Half with the mouse, half with keys alone.
            if (i % 2 == 0)
            {
                await place.ScrollIntoViewIfNeededAsync();
                await place.ClickAsync(new() { Position = new() { X = 6, Y = 6 } });
            }
            else
            {
                await place.FocusAsync();
                await page.Keyboard.PressAsync("Enter");
            }

            await page.GetByRole(AriaRole.Textbox, new() { Name = "Your remark" }).FillAsync(FormattableString.Invariant($"Remark {i + 1}: why? <b>µ & \"n\"</b>"));
            await page.GetByRole(AriaRole.Button, new() { Name = "Keep", Exact = true }).ClickAsync();
        }

        await Assertions.Expect(page.Locator("#count")).ToHaveTextAsync("20 remarks, not saved as a file yet.");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the remarks as a file" }).ClickAsync();
        await Assertions.Expect(page.Locator("#count")).ToContainTextAsync("Type your name first");
        await page.GetByLabel("Your name").FillAsync("A. Supervisor");
        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Button, new() { Name = "Save the remarks as a file" }).ClickAsync());
        var file = Path.Combine(root, download.SuggestedFilename);
        await download.SaveAsAsync(file);
        Assert.Matches("^remarks-[0-9a-f]{8}-a-supervisor.json$", download.SuggestedFilename);
        Assert.Empty(browsing.Offences);

        var taken = Take.Files(study, [file], new TakeOptions(), "Ada", TestContext.Current.CancellationToken);
        Assert.Equal("20 rows: 20 ready", Assert.Single(taken.Understandings).Sentence);
        Assert.NotNull(taken.Entry);
        var remarks = study.Study.Remarks;
        Assert.Equal(20, remarks.Length);
        Assert.All(Kinds, k => Assert.Equal(5, remarks.Count(r => r.Pin.Kind == k)));
        Assert.All(remarks.Index(), r => Assert.Equal(FormattableString.Invariant($"Remark {r.Index + 1}: why? <b>µ & \"n\"</b>"), r.Item.Pin.Words));
        Assert.All(remarks, r => Assert.NotEmpty(r.Pin.Quote));
        Assert.Equal(remarks.Where(r => r.Pin.Kind == "claim").Select(r => r.Pin.Target), study.Study.Claims.Take(5).Select(c => c.Id));

        // Answered, closed, and something changed in between: the next copy says so.
        foreach (var remark in remarks)
            study.Append(study.Daybook.Version, "Ada", new RemarkAnswered(remark.Id, "Answer to " + remark.Id), new RemarkClosed(remark.Id));
        study.Append(study.Daybook.Version, "Ada", new Struck("ISO-20-1", "stopper leaked"));
        var next = await Opened(ReviewPage.Of(study.Daybook, Dossier.Of(study.Study)), "review-2.html");
        await Assertions.Expect(next.Locator("#section-remarks li")).ToHaveCountAsync(20);
        await Assertions.Expect(next.Locator("#section-remarks")).ToContainTextAsync("Answer of Ada: Answer to " + remarks[19].Id);
        await Assertions.Expect(next.Locator("#section-changed")).ToContainTextAsync("strike ISO-20-1");
        await Assertions.Expect(next.Locator("#section-changed #changed-numbers")).ToContainTextAsync("main-numbers: capacity, ISO-298, Value (interval)");
        Assert.Equal(0, await next.Locator("#section-remarks b b, #section-remarks script").CountAsync());
        Assert.Empty(browsing.Offences);
    }

    [Fact]
    public async Task ClosedBrowser_LosesNoRemark_AndASavedFileIsGoneOnWith()
    {
        using var study = StudyFolder.Begin(Path.Combine(root, "small"), "Ada", TimeProvider.System, new StudyBegun("small (invented)", "Ni", Invented: true));
        var page = await Opened(ReviewPage.Of(study.Daybook, Dossier.Of(study.Study)), "review.html");
        await page.Locator("[data-pin^='sentence:']").First.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await page.GetByRole(AriaRole.Textbox, new() { Name = "Your remark" }).FillAsync("Which powder?");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep", Exact = true }).ClickAsync();
        var again = await page.Context.NewPageAsync();
        await again.GotoAsync(page.Url);
        await Assertions.Expect(again.Locator("#list")).ToContainTextAsync("Which powder?");
        await again.GetByRole(AriaRole.Button, new() { Name = "Remove remark 1" }).ClickAsync();
        await Assertions.Expect(again.Locator("#count")).ToHaveTextAsync("No remark yet.");
        var file = new { schema = ReviewFile.Schema, entry = 1, fingerprint = study.Daybook.Fingerprint, by = "B", remarks = new[] { new { kind = "sentence", target = "glance/1", quote = "q", words = "Saved before", made = DateTimeOffset.UnixEpoch } } };
        await again.Locator("#again").SetInputFilesAsync(new FilePayload { Name = "r.json", MimeType = "application/json", Buffer = Encoding.UTF8.GetBytes(System.Text.Json.JsonSerializer.Serialize(file)) });
        await Assertions.Expect(again.Locator("#list")).ToContainTextAsync("Saved before");
        Assert.Empty(browsing.Offences);
    }

    private async Task<IPage> Opened(string html, string name)
    {
        var path = Path.Combine(root, name);
        await File.WriteAllTextAsync(path, html);
        var page = await browsing.OpenOn("file://");
        await page.Context.SetOfflineAsync(true);
        await page.GotoAsync(new Uri(path).AbsoluteUri);
        return page;
    }

    public void Dispose()
    {
        foreach (var file in Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories))
            File.SetAttributes(file, FileAttributes.Normal);
        Directory.Delete(root, recursive: true);
    }
}
