
namespace Holdfast.Browser;

/// <summary>Long work in the background: counted, stopped without a trace, and never a number of an earlier state.</summary>
[Collection("browser")]
public sealed class ResamplingTests(Browsing browsing) : IClassFixture<Browsing>
{
    [Fact]
    public async Task Resampling_CountedAndStopped_LeavesNothing_AndDoneGivesBothIntervalsUntilTheStudyChanges()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/findings");
        var entry = await page.Locator(".foot").InnerTextAsync();
        await page.Locator("#resample-count").FillAsync("99");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("Between 100 and").First.WaitForAsync();

        // Enough to be stopped on any machine; the Stop has the focus, so Escape is one key away.
        await page.Locator("#resample-series").SelectOptionAsync("kinetics|KIN-20");
        await page.Locator("#resample-count").FillAsync("1000000");
        await page.Keyboard.PressAsync("Enter");
        await page.WaitForFunctionAsync("() => document.activeElement?.dataset.stop !== undefined && document.querySelector('.resampling progress').value > 0");
        Assert.Matches(@"^\d[\d\s]* of 1\s000\s000, about \d+ (s|min) left$", await page.Locator(".resampling progress + p").InnerTextAsync());
        var other = await page.Context.NewPageAsync();
        await browsing.Go(other, "/findings");
        // The window that began it is gone from the page; it goes on, and the other window sees it go.
        await other.Locator(".resampling").WaitForAsync();
        await browsing.Go(page, "/samples");
        var seen = await other.EvaluateAsync<int>("() => document.querySelector('.resampling progress').value");
        await other.WaitForFunctionAsync("seen => document.querySelector('.resampling progress').value > seen", seen);
        await browsing.Go(page, "/findings");
        await page.Locator("[data-stop]").FocusAsync();
        await Accessibility.Faultless(other.Locator(".resampling"));
        await page.Keyboard.PressAsync("Escape");
        await page.GetByText("Stopped. The study is as it was.").WaitForAsync();
        await page.WaitForFunctionAsync("() => document.activeElement?.textContent === 'Resample'");
        await other.GetByText("Stopped. The study is as it was.").WaitForAsync();
        Assert.Equal(0, await page.Locator("table#resampled").CountAsync());
        Assert.Equal(entry, await page.Locator(".foot").InnerTextAsync());

        await page.Locator("#resample-series").SelectOptionAsync("isotherm|ISO-298");
        await page.Locator("#resample-count").FillAsync("200");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("table#resampled").WaitForAsync();
        await Accessibility.Faultless(page.Locator("section[aria-labelledby='second-opinion']"));
        Assert.Equal(2, await page.Locator("table#resampled tbody tr:has(td:text-is('Langmuir'))").CountAsync());
        await page.GetByText("200 resamples of each curve, seed 1").WaitForAsync();
        await page.GetByText("All resamples are done").WaitForAsync();

        await browsing.Go(other, "/samples/ISO-20-1");
        await other.Locator("[data-strike]").ClickAsync();
        await other.GetByText("Without it ").First.WaitForAsync();
        await other.Locator("#strike-reason").FillAsync("the stopper leaked on the shaker");
        await other.Keyboard.PressAsync("Enter");
        await page.GetByText("belonged to an earlier state and is gone").WaitForAsync();
        Assert.Equal(0, await page.Locator("table#resampled").CountAsync());
        await other.Locator("[data-undo]").ClickAsync();
        await other.Locator("[data-redo]").GetByText("strike ISO-20-1").WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }
}
