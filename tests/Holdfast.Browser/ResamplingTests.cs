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
        var other = await page.Context.NewPageAsync();
        await browsing.Go(other, "/findings");
        await other.Locator(".resampling").WaitForAsync();
        await page.Keyboard.PressAsync("Escape");
        await page.GetByText("Stopped. The study is as it was.").WaitForAsync();
        await other.GetByText("Stopped. The study is as it was.").WaitForAsync();
        Assert.Equal(0, await page.Locator("table#resampled").CountAsync());
        Assert.Equal(entry, await page.Locator(".foot").InnerTextAsync());

        await page.Locator("#resample-series").SelectOptionAsync("isotherm|ISO-298");
        await page.Locator("#resample-count").FillAsync("1000");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("table#resampled").WaitForAsync();
        Assert.Equal(3, await page.Locator("table#resampled tbody tr").CountAsync());
        await page.GetByText("1000 resamples of 24 points, seed 1").WaitForAsync();

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
