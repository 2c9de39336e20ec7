using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>Her own table with a meaning over every column: by mouse, by keys, in both themes. Invented numbers on q = 40 · 0.2 · Ce / (1 + 0.2 · Ce).</summary>
[Collection("browser")]
public sealed class ColumnMenuTests(Browsing browsing) : IClassFixture<Browsing>
{
    private const string Block = "sample\theap\tV (mL)\tC0 (mg/L)\tCe (mg/L)\tlamp\n"
        + "V-1\t20\t25\t3.41\t0.5\ta\nV-2\t20\t25\t6.33\t1\ta\nV-3\t20\t25\t11.14\t2\ta\nV-4\t20\t25\t18.22\t4\tb\n"
        + "V-5\t20\t25\t27.69\t8\tb\nV-6\t20\t25\t40.38\t16\tb\nV-7\t20\t25\t59.68\t32\tb\nV-8\t20\t25\t79.09\t50\tb\nStd 1\t\t\t\t\tc\n";

    [Theory]
    [InlineData(1280, false)]
    [InlineData(1280, true)]
    [InlineData(480, true)]
    [InlineData(360, false)]
    public async Task Meaning_ChosenWithTheMouse_IsOneClickToOpenAndOneToChoose(int width, bool dark)
    {
        Assert.SkipUnless(Browsing.IsInstalled, "No Chromium in /usr/bin.");
        await using var bench = await EmptyBench.Open("Ni");
        var page = await Readings(bench, width, dark);
        await page.Locator("#tray-block").FillAsync(Block);
        await page.GetByRole(AriaRole.Button, new() { Name = "Put the block in the tray" }).ClickAsync();
        await Understood(page);
        await Clean(page, "unread", width, dark);
        Assert.Contains("no mass of powder", await page.Locator(".follows .why").First.InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("2 columns not used", await page.Locator(".preview > summary").InnerTextAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain("--", await page.Locator(".tray").InnerTextAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain("column:", await page.Locator(".tray").InnerTextAsync(), StringComparison.Ordinal);

        var heap = page.Locator(".meaning", new() { HasText = "heap" });
        await heap.ClickAsync();
        await page.Locator("[data-menu-search]:focus").WaitForAsync();
        await Clean(page, "menu", width, dark);
        Assert.True((await page.Locator(".column-menu").BoundingBoxAsync())!.X >= 0);
        await page.Locator("[data-choice=mass]").ClickAsync();
        await page.Locator("fieldset.question.open").WaitForAsync();
        await Understood(page);
        Assert.True(await page.Locator("[data-accept]").IsDisabledAsync());
        Assert.Contains("heap", await page.Locator("#keep-said").InnerTextAsync(), StringComparison.Ordinal);
        await Clean(page, "question", width, dark);
        await page.Locator("fieldset.question.open label", new() { HasText = "mg" }).First.ClickAsync();
        await page.Locator(".first-fit").First.WaitForAsync();
        await Clean(page, "follows", width, dark);
        // q = (79.09 - 50) mg/L · 0.025 L / 0.020 g = 36.36 mg/g, by hand.
        Assert.StartsWith("36.4", (await page.Locator("tr[data-sample='V-8'] td").Last.InnerTextAsync()).Trim(), StringComparison.Ordinal);

        // A unit is one click more, and the number follows at once; the answer can be taken back.
        await heap.ClickAsync();
        await page.Locator("[data-unit=g]").ClickAsync();
        await page.Locator("fieldset.question", new() { HasText = "g of powder in a litre" }).First.WaitForAsync();
        await Clean(page, "sense", width, dark);
        await heap.ClickAsync();
        await page.Locator("[data-unit=mg]").ClickAsync();
        await page.Locator(".first-fit").First.WaitForAsync();
        await page.Locator("[data-accept]").ClickAsync();
        await page.Locator(".said", new() { HasText = "1 column not used: lamp" }).WaitForAsync();
        await Clean(page, "kept", width, dark);

        // The same layout asks nothing the next time, says so, and can be told to ask again.
        await page.Locator("#tray-block").FillAsync(Block.Replace("V-", "W-", StringComparison.Ordinal));
        await page.GetByRole(AriaRole.Button, new() { Name = "Put the block in the tray" }).ClickAsync();
        await page.Locator(".remembered").WaitForAsync();
        await Understood(page);
        Assert.Equal(0, await page.Locator("fieldset.question.open").CountAsync());
        await Clean(page, "remembered", width, dark);
        await page.Locator(".remembered [data-forget]").ClickAsync();
        await page.Locator(".meaning.unread", new() { HasText = "heap" }).WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
        await page.CloseAsync();
    }

    [Fact]
    public async Task Block_FromPasteToTheFirstFit_NeedsNoMouse()
    {
        Assert.SkipUnless(Browsing.IsInstalled, "No Chromium in /usr/bin.");
        await using var bench = await EmptyBench.Open("Ni");
        var page = await Readings(bench, 1280, dark: false);
        var hands = new TypingHands(page);
        await hands.TabTo("#tray-block");
        await hands.Paste(Block);
        await hands.TabTo("button", "Put the block in the tray");
        await hands.Press("Enter");
        await Understood(page);

        // Escape closes and gives the focus back.
        await hands.TabTo(".meaning", "heap");
        await hands.Press("Enter");
        await page.Locator("[data-menu-search]:focus").WaitForAsync();
        await hands.Press("Escape");
        await page.Locator(".column-menu").WaitForAsync(new() { State = WaitForSelectorState.Detached });
        await page.Locator(".meaning:focus", new() { HasText = "heap" }).WaitForAsync();
        await hands.Press("Enter");
        await page.Locator("[data-menu-search]:focus").WaitForAsync();
        await hands.Type("nothing of this name");
        await page.GetByText("Nothing of that name").WaitForAsync();
        await hands.Press("Control+a");
        await hands.Type("mass");
        await hands.Press("ArrowDown", "ArrowUp");
        Assert.Equal("mass", await page.Locator("[role=option][data-active]").GetAttributeAsync("data-choice"));
        await hands.Press("Enter");
        await page.Locator("fieldset.question.open").WaitForAsync();
        await page.Locator(".meaning:focus", new() { HasText = "heap" }).WaitForAsync();
        await Understood(page);

        await hands.TabTo("fieldset.question.open input[value=mg]");
        await hands.Press("Space");
        await page.Locator(".first-fit").First.WaitForAsync();
        await Understood(page);
        await hands.TabTo("[data-accept]");
        await hands.Press("Enter");
        await page.Locator(".said", new() { HasText = "Kept as entry 2" }).WaitForAsync();
        await hands.TabTo(".thread a", "Findings");
        await hands.Press("Enter");
        await page.Locator(".figure-cards img").First.WaitForAsync();
        Assert.True(hands.Unseen.Count == 0, string.Join("\n", hands.Unseen.Distinct()));
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
        await page.CloseAsync();
    }

    private async Task<IPage> Readings(EmptyBench bench, int width, bool dark)
    {
        var page = await browsing.OpenOn(bench.Address);
        await page.SetViewportSizeAsync(width, 900);
        await page.EmulateMediaAsync(new() { ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light });
        await page.GotoAsync(bench.Start.ToString());
        await page.Locator(".bench[data-alive]").WaitForAsync();
        await page.Locator(".thread a", new() { HasText = "Readings" }).ClickAsync();
        await page.Locator("h1", new() { HasText = "Readings" }).WaitForAsync();
        return page;
    }

    private static Task<IJSHandle> Understood(IPage page)
        => page.WaitForFunctionAsync("() => document.querySelector('.incoming') && !document.querySelector('.tray .working')");

    // No serious fault by the rules of axe-core in this state, and with HOLDFAST_LOOK what was seen is kept.
    private static async Task Clean(IPage page, string state, int width, bool dark)
    {
        if (Environment.GetEnvironmentVariable("HOLDFAST_LOOK") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, FormattableString.Invariant($"state-{state}-{width}{(dark ? "-dark" : "")}.png")) });
        await Accessibility.Faultless(page);
    }
}
