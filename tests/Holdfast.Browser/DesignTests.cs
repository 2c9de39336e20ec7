namespace Holdfast.Browser;

/// <summary>From an empty study to frozen vessels, cards with targets and labels, with the mouse and with the keyboard alone.</summary>
[Collection("browser")]
public sealed class DesignTests(Browsing browsing) : IClassFixture<Browsing>
{
    [Fact]
    public async Task Design_FromAnEmptyStudy_IsOnCardsAndLabelsAfterFewClicks()
    {
        await using var bench = await EmptyBench.Open("Ni");
        var page = await Plan(bench);
        var clicks = 0;
        async Task Click(string what)
        {
            await page.Locator(what).First.ClickAsync();
            clicks++;
        }

        await page.Locator("#design-vessels").FillAsync("12.5.3");
        await Click(".design-form button[type=submit]");
        await page.GetByText("“12.5.3” is no answer").WaitForAsync();
        await page.Locator("#design-vessels").FillAsync("60");
        await Click(".design-form button[type=submit]");
        await page.Locator("[data-keep-plan]").WaitForAsync();
        await Accessibility.Faultless(page);
        await Click("[data-keep-plan]");
        await page.Locator("[data-freeze]").WaitForAsync();
        foreach (var open in await page.Locator("[id^=freeze-]").AllAsync())
            await open.FillAsync("sixty vessels are all there are");
        await Click("[data-freeze]");
        await page.GetByText("Vessels and margins change only with a reason").WaitForAsync();
        await Click("a[href='/bench-card/labels']");
        await page.Locator(".label svg").First.WaitForAsync();
        Assert.InRange(await page.Locator(".label").CountAsync(), 40, 60);
        await Accessibility.Faultless(page);
        await Go(page, bench, "/bench-card/paper");
        Assert.Contains("planned 50 mg", await page.Locator(".paper-cards").InnerTextAsync(), StringComparison.Ordinal);
        Assert.InRange(clicks, 1, 25);

        // The first vial shows its targets; nothing that is only planned counts as evidence.
        await Go(page, bench, "/bench-card");
        Assert.Contains("planned", await page.Locator(".card").InnerTextAsync(), StringComparison.Ordinal);
        var evidence = await bench.Close();
        Assert.NotNull(evidence.Study.PlanFrozen);
        Assert.Empty(evidence.Vessels);
    }

    [Fact]
    public async Task Design_ByKeyboardAlone_IsPutOnThePlan()
    {
        await using var bench = await EmptyBench.Open("Ni");
        var page = await Plan(bench);
        await page.Locator("#design-vessels").WaitForAsync();
        await Tab(page, "document.activeElement.id === 'design-vessels'");
        await page.Keyboard.TypeAsync("60");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("[data-keep-plan]").WaitForAsync();
        await Tab(page, "document.activeElement.hasAttribute('data-keep-plan')");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("[data-freeze]").WaitForAsync();
        Assert.Single((await bench.Close()).Study.Designs);
    }

    private async Task<Microsoft.Playwright.IPage> Plan(EmptyBench bench)
    {
        var page = await browsing.OpenOn(bench.Address);
        await page.GotoAsync(bench.Start.ToString());
        await page.Locator(".bench[data-alive]").WaitForAsync();
        await Go(page, bench, "/plan");
        return page;
    }

    private static async Task Go(Microsoft.Playwright.IPage page, EmptyBench bench, string path)
    {
        await page.GotoAsync(bench.Address + path);
        await page.Locator(".bench[data-alive]").WaitForAsync();
    }

    private static async Task Tab(Microsoft.Playwright.IPage page, string reached)
    {
        for (var i = 0; i < 120; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<bool>(reached))
                return;
        }

        Assert.Fail("The keyboard did not reach it: " + reached);
    }
}
