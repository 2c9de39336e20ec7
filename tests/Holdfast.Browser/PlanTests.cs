using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>The Plan: a claim's next experiment taken up, done and withdrawn; claims and margins by form.</summary>
[Collection("browser")]
public sealed class PlanTests(Browsing browsing) : IClassFixture<Browsing>
{
    [Fact]
    public async Task AddToPlan_FromAClaim_StandsInThePlanIsDoneAndUndone()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/defence");
        await page.Locator(".claims li", new() { HasText = "not shown yet" }).First.Locator("a").ClickAsync();
        await page.Locator("[data-plan]").ClickAsync();
        await page.GetByText("It stands in the Plan as P-").WaitForAsync();
        var sentence = await page.Locator("h1").InnerTextAsync();

        await browsing.Go(page, "/plan");
        var work = page.Locator(".plan li").First;
        Assert.Contains(sentence, await work.InnerTextAsync(), StringComparison.Ordinal);
        await work.GetByRole(AriaRole.Button, new() { Name = "Done" }).ClickAsync();
        await page.Locator(".plan li.done").WaitForAsync();
        await page.Locator("[data-undo]").ClickAsync();
        await page.Locator(".plan li:not(.done)").WaitForAsync();
        await page.Locator(".plan").GetByRole(AriaRole.Button, new() { Name = "Withdraw" }).ClickAsync();
        await page.GetByText("Nothing is planned yet").WaitForAsync();
        await page.Locator("[data-undo]").ClickAsync();
        await page.Locator(".plan li").WaitForAsync();
        await page.Locator("[data-undo]").ClickAsync();
        await page.GetByText("Nothing is planned yet").WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Claim_ByForm_IsRefusedInWordsThenStatedRewordedAndWithdrawn()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/plan");
        await page.Locator(".state-claim summary").ClickAsync();
        await page.Locator("#claim-rule").SelectOptionAsync("equilibrium-reached");
        await page.Locator("#claim-series").FillAsync("KIN-20");
        await page.GetByRole(AriaRole.Button, new() { Name = "State the claim" }).ClickAsync();
        await page.GetByText("Error: The contact time is missing. Write it like 120 min.").WaitForAsync();
        await page.Locator("#claim-time:focus").WaitForAsync();
        Assert.StartsWith("Error:", await page.TitleAsync(), StringComparison.Ordinal);
        await page.Locator("#claim-time").FillAsync("soon");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("“soon” cannot be read as the contact time").WaitForAsync();
        await page.Locator("#claim-time").FillAsync("3 h");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("Stated: equilibrium-reached-kin-20-3-h").WaitForAsync();

        await browsing.Go(page, "/defence/equilibrium-reached-kin-20-3-h");
        await page.Locator("p.ruling").WaitForAsync();
        await page.Locator("[data-reword]").ClickAsync();
        Assert.Equal("3 h", await page.Locator("#claim-time").InputValueAsync());
        await page.Locator("#claim-words").FillAsync("Three hours are enough.");
        await page.GetByRole(AriaRole.Button, new() { Name = "State it anew" }).ClickAsync();
        await page.Locator("h1", new() { HasText = "Three hours are enough." }).WaitForAsync();

        await page.Locator("[data-withdraw]").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Withdraw the claim" }).ClickAsync();
        await page.Locator("#withdraw-reason:focus").WaitForAsync();
        await page.Locator("#withdraw-reason").FillAsync("only a trial of the form");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("h1", new() { HasText = "Defence" }).WaitForAsync();
        await page.WaitForFunctionAsync("() => !document.querySelector('[aria-busy=true]')");
        Assert.Equal(0, await page.GetByText("Three hours are enough.").CountAsync());
        await browsing.Go(page, "/daybook");
        Assert.Contains("only a trial of the form", await page.Locator("tbody tr").First.InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Margin_ByForm_IsRefusedInWordsThenFixed()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/plan");
        await page.Locator(".fix-margin summary").ClickAsync();
        await page.Locator("#margin-name").SelectOptionAsync("plateau");
        await page.Locator("#margin-low").FillAsync("4");
        await page.Locator("#margin-high").FillAsync("-4");
        await page.GetByRole(AriaRole.Button, new() { Name = "Fix the margin" }).ClickAsync();
        await page.GetByText("is not above the lower end, 4.").WaitForAsync();
        await page.Locator("#margin-high:focus").WaitForAsync();
        await page.Locator("#margin-low").FillAsync("-4");
        await page.Locator("#margin-high").FillAsync("4,5");
        await page.Keyboard.PressAsync("Enter");
        var row = page.Locator("tr", new() { HasText = "plateau" });
        await row.WaitForAsync();
        Assert.Contains("4.5", await row.InnerTextAsync(), StringComparison.Ordinal);
    }
}
