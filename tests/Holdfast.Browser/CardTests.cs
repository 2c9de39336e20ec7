using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>The bench card: one value a screen, keys for gloves, the clock in one tap, each value kept at once.</summary>
[Collection("browser")]
public sealed class CardTests(Browsing browsing) : IClassFixture<Browsing>
{
    private const double TwentyMillimetres = 20 * 96 / 25.4;

    [Fact]
    public async Task Card_TypedByItsKeys_KeepsEachValueAndGoesOn()
    {
        var page = await browsing.Open(480);
        await browsing.Go(page, "/readings");
        await page.Locator("#tray-block").FillAsync("sample\ttime (min)\nCARD-1\t\nCARD-2\t\n");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put the block in the tray" }).ClickAsync();
        await page.Locator("[data-accept]").ClickAsync();
        await page.GetByText("Kept as entry").First.WaitForAsync();

        await browsing.Go(page, "/samples/CARD-1/card?value=mass");
        foreach (var key in await page.Locator(".keys button, [data-next]").AllAsync())
        {
            var box = (await key.BoundingBoxAsync())!;
            Assert.True(box.Width >= TwentyMillimetres - 0.5 && box.Height >= TwentyMillimetres - 0.5, $"{await key.InnerTextAsync()}: {box.Width} x {box.Height} px");
        }

        foreach (var key in new[] { "2", "0", ".", "5", "1" })
            await page.Locator(".keys").GetByRole(AriaRole.Button, new() { Name = key, Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "take the last figure back" }).ClickAsync();
        await page.WaitForFunctionAsync("() => document.getElementById('card-value').value === '20.5'");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await page.Locator("p.shown").GetByText("20.5 mg").WaitForAsync();
        await page.Locator("[data-next]").GetByText("Next vial: CARD-2").ClickAsync();
        await Browsing.At(page, "/samples/CARD-2/card?value=mass");
        await page.Locator("h1", new() { HasText = "CARD-2" }).WaitForAsync();
        await page.Locator("#card-value").FillAsync("twenty");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("“twenty” is no single number").WaitForAsync();

        await browsing.Go(page, "/samples/CARD-1/card?value=contact-time");
        await page.GetByText("Sorbent is in: start the clock").ClickAsync();
        await page.GetByText("Separated: stop the clock").ClickAsync();
        await page.Locator("p.shown", new() { HasText = "0.0 min" }).WaitForAsync();
        // What was kept is there for the next visit, as after a kill.
        await browsing.Go(page, "/samples/CARD-1/card?value=mass");
        Assert.Equal("20.5 mg", await page.Locator("p.shown").InnerTextAsync());
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Cards_OnPaper_FitTheSheetAndShowWhatIsRecorded()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/bench-card/paper");
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        Assert.True(await page.Locator(".paper-card").CountAsync() > 20);
        Assert.False(await page.Locator(".thread").IsVisibleAsync());
        Assert.False(await page.Locator("[data-print]").IsVisibleAsync());
        var sheet = await page.PdfAsync(new() { Format = "A4" });
        Assert.True(sheet.AsSpan(0, 5).SequenceEqual("%PDF-"u8));
    }
}
