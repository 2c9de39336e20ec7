using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>Figures that answer: a closer look by mouse and by keyboard, the mark struck where it is seen, the same part taken away as a file.</summary>
[Collection("browser")]
public sealed class FigureTests(Browsing browsing) : IClassFixture<Browsing>
{
    [Fact]
    public async Task Box_DrawnOnAFigure_ShowsThatPartOnScreenAndInItsFile()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/findings");
        await page.Locator("a[href='/findings/kinetics-kin-20']").ClickAsync();
        await Browsing.At(page, "/findings/kinetics-kin-20");
        var sheet = (await page.Locator("[data-closer] svg").BoundingBoxAsync())!;
        var marks = await page.Locator("[data-closer] .figure-mark").CountAsync();
        await page.Mouse.MoveAsync(sheet.X + 0.15f * sheet.Width, sheet.Y + 0.15f * sheet.Height);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(sheet.X + 0.3f * sheet.Width, sheet.Y + 0.3f * sheet.Height);
        await page.Locator(".figure-box").WaitForAsync();
        await page.Mouse.MoveAsync(sheet.X + 0.4f * sheet.Width, sheet.Y + 0.5f * sheet.Height);
        await page.Mouse.UpAsync();
        await Browsing.At(page, "/findings/kinetics-kin-20?part=");
        await page.GetByText("A part of the figure: contact time").WaitForAsync();
        Assert.InRange(await page.Locator("[data-closer] .figure-mark").CountAsync(), 1, marks - 1);

        var file = await page.RunAndWaitForDownloadAsync(() => page.Locator("a[href*='kinetics-kin-20-174mm.svg']").ClickAsync());
        Assert.Contains("A part of the figure", await File.ReadAllTextAsync(await file.PathAsync(), TestContext.Current.CancellationToken), StringComparison.Ordinal);

        await page.GetByRole(AriaRole.Link, new() { Name = "Wider" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Whole figure" }).ClickAsync();
        await page.GetByText("A part of the figure: contact time").WaitForAsync(new() { State = WaitForSelectorState.Detached });
        Assert.Equal(marks, await page.Locator("[data-closer] .figure-mark").CountAsync());
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Part_ChosenByKeyboard_RefusesEndsThatCross()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/findings/dose-dose");
        await page.Locator(".part-form summary").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("#part-panel").SelectOptionAsync("1");
        await page.Locator("#part-x-low").FillAsync("2,5");
        await page.Locator("#part-x-high").FillAsync("1");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("The lower end of dose is 2,5; it has to lie below the upper end, 1.").WaitForAsync();
        await page.Locator("#part-x-high").FillAsync("4");
        await page.Keyboard.PressAsync("Enter");
        await Browsing.At(page, "/findings/dose-dose?part=1");
        await page.GetByText("A part of the figure: dose 2.5 to 4").WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Mark_ChosenByKeyboard_IsStruckWhereItIsSeen()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/findings/kinetics-kin-20");
        var mark = page.Locator("[data-closer] .figure-mark[data-id='K20-030-1'] a").First;
        await mark.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Browsing.At(page, "/findings/kinetics-kin-20?mark=K20-030-1");
        await page.WaitForFunctionAsync("() => document.activeElement?.id === 'mark-chosen'");
        await page.Locator(".mark-chosen a[href='/quantities/q/K20-030-1']").WaitForAsync();
        await page.Locator("[data-strike]").ClickAsync();
        await page.GetByText("Without it ").First.WaitForAsync();
        await page.Locator("#strike-reason").FillAsync("the stopper leaked on the shaker");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("counts nowhere").WaitForAsync();
        await page.Locator("[data-closer] figcaption", new() { HasText = "Hollow grey marks: 1 struck" }).WaitForAsync();
        await page.Locator("[data-undo]").ClickAsync();
        await page.Locator("[data-closer] figcaption", new() { HasText = "Hollow grey marks" }).WaitForAsync(new() { State = WaitForSelectorState.Detached });
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Claim_NotShownYet_DrawsTheTimesNeededOnItsOwnFigure()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/defence/equilibrium-reached-kin-20-120-min");
        await page.Locator(".claim svg text", new() { HasText = "480 min to run" }).WaitForAsync();
        Assert.True(await page.Locator(".claim .figure-mark a[href='/quantities/q/K20-120-1']").CountAsync() > 0);
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Theory]
    [InlineData("equilibrium-reached-kin-20-120-min")]
    [InlineData("best-kinetic-model-kin-05-pseudo-second-order")]
    [InlineData("favourable-iso-298")]
    public async Task Claim_Printed_IsOneSheetWithItsFigureAndFootnotes(string claim)
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/defence/" + claim);
        var sheet = Encoding.Latin1.GetString(await page.PdfAsync(new() { Format = "A4" }));
        Assert.Single(Regex.Matches(sheet, @"/Type\s*/Page\b(?!s)"));
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        Assert.True(await page.Locator(".claim .figure-sheet").IsVisibleAsync());
        Assert.Contains(await page.Locator(".footnotes li").AllInnerTextsAsync(), f => Regex.IsMatch(f, @"^(q|n):\S+ = .+ ± .+ ← .*aas-run\d"));
        Assert.False(await page.Locator(".defence").IsVisibleAsync());
    }

    [Fact]
    public async Task Labels_OfAFigure_AreSetInTheTypefaceTheyWereMeasuredWith()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/findings/kinetics-kin-20");
        Assert.True(await page.EvaluateAsync<bool>("() => document.fonts.ready.then(fonts => [...fonts].some(f => f.family.includes('Liberation Sans') && f.status === 'loaded'))"));
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }
}
