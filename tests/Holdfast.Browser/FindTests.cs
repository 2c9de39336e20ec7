using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>Words found in a study, and moments named so that changes since can be seen.</summary>
[Collection("browser")]
public sealed class FindTests(Browsing browsing) : IClassFixture<Browsing>
{
    [Fact]
    public async Task Words_TypedIntoTheField_FindClaimsFiguresSamplesAndReadings()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/");
        await page.Locator("#find-words").FillAsync("120");
        await page.Keyboard.PressAsync("Enter");
        await Browsing.At(page, "/find?for=120");
        await page.Locator(".found a[href^='/defence/']").First.WaitForAsync();
        Assert.True(await page.Locator(".found a[href^='/samples/']").CountAsync() > 0);
        await browsing.Go(page, "/find?for=ISO-20-1");
        Assert.True(await page.Locator(".found a[href^='/readings/']").CountAsync() > 0);
        await browsing.Go(page, "/find?for=isotherm ISO-298");
        Assert.True(await page.Locator(".found a[href^='/findings/isotherm']").CountAsync() > 0);
        await browsing.Go(page, "/find?for=unobtainium");
        await page.GetByText("Nothing in this study holds all of these words.").WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Address_OfAPlaceInAPage_LeadsThereThoughThePageDrawsItLater()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/findings#second-opinion");
        await page.WaitForFunctionAsync("() => { const at = document.getElementById('second-opinion')?.getBoundingClientRect(); return at && at.top >= 0 && at.bottom <= innerHeight; }");
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Moment_Named_ShowsWhatChangedSince()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/daybook");
        await page.GetByRole(AriaRole.Button, new() { Name = "Name it" }).ClickAsync();
        await page.GetByText("The moment needs a name").WaitForAsync();
        await page.Locator("#mark-name").FillAsync("sent to supervisor");
        await page.Keyboard.PressAsync("Enter");
        var since = page.Locator(".marks a").First;
        await since.WaitForAsync();
        await browsing.Go(page, "/samples/ISO-20-1");
        await page.Locator("[data-strike]").ClickAsync();
        await page.GetByText("Without it ").First.WaitForAsync();
        await page.Locator("#strike-reason").FillAsync("the stopper leaked on the shaker");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("counts nowhere").WaitForAsync();
        await browsing.Go(page, "/daybook");
        await since.ClickAsync();
        await page.GetByText("What changed since “sent to supervisor”").First.WaitForAsync();
        await page.Locator(".since li", new() { HasText = "strike ISO-20-1" }).WaitForAsync();
        await page.Locator("caption", new() { HasText = "Means of levels" }).WaitForAsync();
        await page.Locator("[data-undo]").ClickAsync();
        await page.Locator("[data-redo]").GetByText("strike ISO-20-1").WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }
}
