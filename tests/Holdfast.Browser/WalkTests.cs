using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Holdfast.Statistics;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>What a chemist does: from a claim to the raw cell, a strike and back, pasting.</summary>
[Collection("browser")]
public sealed class WalkTests(Browsing browsing) : IClassFixture<Browsing>
{
    [Fact]
    public async Task Walk_FromAClaimToTheCellThenStrikeThenUndo_LeavesTheNumbersAsTheyWere()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/defence");
        await page.Locator(".claims a").First.ClickAsync();
        await page.Locator("p.ruling").WaitForAsync();

        await browsing.Go(page, "/quantities/q/ISO-20-1");
        var before = await page.Locator(".value").InnerTextAsync();
        Assert.Matches(@"^[0-9.]+\s±\s[0-9.]+\smg/g\s\(95\s%", before);
        await page.Locator("th a[href^='/readings/']").First.ClickAsync();
        await page.Locator(".raw").WaitForAsync();

        await browsing.Go(page, "/quantities/q/ISO-20-1");
        await page.Locator("[data-strike]").ClickAsync();
        await page.GetByText("Without it ").First.WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Draw the line" }).ClickAsync();
        await page.GetByText("Error: Say why ISO-20-1 is struck").WaitForAsync();
        await page.Locator("#strike-reason:focus").WaitForAsync();
        await page.Locator("#strike-reason").FillAsync("the stopper leaked on the shaker");
        await page.GetByRole(AriaRole.Button, new() { Name = "Draw the line" }).ClickAsync();
        await page.GetByText("counts nowhere").WaitForAsync();
        await page.Locator("[data-undo]").GetByText("undo: strike ISO-20-1").WaitForAsync();

        await page.Locator("h1").ClickAsync();
        await page.Keyboard.PressAsync("Control+z");
        await page.Locator("[data-strike]").WaitForAsync();
        await page.WaitForFunctionAsync("() => !document.querySelector('[aria-busy=true]')");
        Assert.Equal(before, await page.Locator(".value").InnerTextAsync());
        await browsing.Go(page, "/daybook");
        Assert.Contains("undo: strike ISO-20-1", await page.Locator("tbody tr").First.InnerTextAsync(), StringComparison.Ordinal);
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Theory]
    [InlineData(1_000, 0)]
    [InlineData(30_000, 2_000_000)]
    public async Task Paste_ALargeBlock_ArrivesWhole(int rows, int atLeast)
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/readings");
        var block = new StringBuilder("sample\ttime (min)\tmass (mg)\tvolume (mL)\tremark\n");
        for (var i = 1; i <= rows; i++)
            block.Append(CultureInfo.InvariantCulture, $"PASTE-{rows}-{i}\t{i % 240}\t20.1\t50.0\tan invented row that only makes the block long enough\n");
        Assert.True(block.Length >= atLeast);
        await page.EvaluateAsync("text => navigator.clipboard.writeText(text)", block.ToString());
        await page.Locator("#tray-block").FocusAsync();
        await page.Keyboard.PressAsync("Control+v");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put the block in the tray" }).ClickAsync();
        await page.Locator(".incoming").GetByText(string.Create(CultureInfo.InvariantCulture, $"{rows} rows: {rows} ready")).First.WaitForAsync(new() { Timeout = 60_000 });
        await page.GetByRole(AriaRole.Button, new() { Name = "Remove" }).ClickAsync();
        await page.Locator(".incoming").WaitForAsync(new() { State = WaitForSelectorState.Detached });
    }

    [Fact]
    public async Task Grid_ByKeyboardAlone_AsksForAReasonThenKeeps()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/samples");
        var mass = page.Locator("td[data-col='2'][data-seen]:not([data-seen=''])").First;
        var (code, seen) = ((await mass.GetAttributeAsync("data-code"))!, (await mass.GetAttributeAsync("data-seen"))!);
        await mass.FocusAsync();
        await page.Keyboard.PressAsync("F2");
        await page.Keyboard.PressAsync("Escape");
        Assert.Equal(seen, await page.Locator($"td[data-code='{code}'][data-col='2']").InnerTextAsync());
        await page.Keyboard.TypeAsync("31.25");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText($"Say why sorbent mass of {code} is corrected").WaitForAsync();
        await page.Locator("#edit-reason:focus").WaitForAsync();
        await page.Keyboard.TypeAsync("misread the balance");
        await page.GetByRole(AriaRole.Button, new() { Name = "Try again: 31.25" }).PressAsync("Enter");
        await page.Locator($"td[data-code='{code}'][data-col='2'][data-seen='31.25']").WaitForAsync();
        await page.Locator("[data-undo]").PressAsync("Enter");
        await page.Locator($"td[data-code='{code}'][data-col='2'][data-seen='{seen}']").WaitForAsync();
    }

    [Fact]
    public async Task Numbers_FiftyDrawnByLot_AreEachTwoActionsAtMostFromTheirCells()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/quantities");
        await page.EvaluateAsync("() => document.querySelectorAll('details.fold:not([open]) > summary').forEach(fold => fold.click())");
        await page.WaitForFunctionAsync("() => !document.querySelector('details.fold:not([open])')");
        var all = await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('td a[href^=\"/quantities/\"]')].map(a => a.getAttribute('href'))");
        Assert.True(all.Length > 500);
        var wrong = new List<string>();
        new SeededStream(50, "numbers by lot").Shuffle<string>(all);
        foreach (var number in all[..50])
        {
            await page.GotoAsync(browsing.Bench.Host.Address + number);
            await page.Locator(".value").WaitForAsync();
            // Its own cells, or numbers one action further that have theirs: what a fit gave leads to the points it was fitted to.
            var cells = await page.Locator("main td", new() { HasTextRegex = new Regex(@"\brow \d") }).CountAsync();
            var onward = await page.Locator("main table a[href^='/quantities/']").CountAsync();
            var shares = await page.Locator("table:has(caption:has-text('Where the uncertainty comes from')) tbody td.number").AllInnerTextsAsync();
            // Eight shares to one decimal: rounding alone moves their sum by up to 0.4.
            var sum = shares.Sum(s => double.Parse(s, CultureInfo.InvariantCulture));
            if (cells + onward == 0)
                wrong.Add($"{number}: no cell at its end");
            if (shares.Count == 0)
                Assert.Contains("no uncertainty", await page.Locator(".value").InnerTextAsync(), StringComparison.Ordinal);
            else if (Math.Abs(sum - 100) > 0.4)
                wrong.Add($"{number}: shares add up to {sum}");
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Figure_AMarkOfIt_OpensItsTrailByKeyboard()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/findings/section/kinetics/series-kin-05");
        var figure = page.Locator("figure", new() { Has = page.Locator("svg#kinetics-kin-05") });
        var (mark, said) = (figure.Locator(".figure-mark a").First, figure.Locator(".figure-said"));
        await mark.FocusAsync();
        // Its values, with unit and interval, stand below the picture while it has the focus; under the pointer it is the same.
        var values = await said.InnerTextAsync();
        Assert.Equal(await mark.GetAttributeAsync("aria-label"), values);
        Assert.Matches(@"in [a-z ]+: [0-9.]+ \([0-9.]+ to [0-9.]+\)", values);
        await figure.Locator(".figure-mark a").Last.HoverAsync(new() { Force = true });
        Assert.NotEqual(values, await said.InnerTextAsync());
        await mark.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Browsing.At(page, "/quantities/q/");
        await page.Locator(".value").WaitForAsync();
    }

    [Fact]
    public async Task TwoWindows_TheSameCell_ShowsBothValuesAndLosesNone()
    {
        var one = await browsing.Open();
        await browsing.Go(one, "/samples");
        var two = await browsing.Open();
        await browsing.Go(two, "/samples");
        var cell = one.Locator("td[data-col='2'][data-seen]:not([data-seen=''])").First;
        var code = (await cell.GetAttributeAsync("data-code"))!;
        await two.Locator("#edit-reason").FillAsync("second window");
        await two.Locator($"td[data-code='{code}'][data-col='2']").FocusAsync();
        await two.Keyboard.TypeAsync("22.5");
        await one.Locator("#edit-reason").FillAsync("first window");
        await cell.FocusAsync();
        await one.Keyboard.TypeAsync("21.5");
        await one.Keyboard.PressAsync("Enter");
        await one.Locator($"td[data-code='{code}'][data-col='2'][data-seen='21.5']").WaitForAsync();
        await two.Keyboard.PressAsync("Enter");
        var conflict = two.Locator(".conflict");
        await conflict.GetByText($"{code} changed in another window: 21.5. Yours: 22.5.").WaitForAsync();
        await conflict.GetByRole(AriaRole.Button, new() { Name = "Keep mine: 22.5" }).ClickAsync();
        await one.Locator($"td[data-code='{code}'][data-col='2'][data-seen='22.5']").WaitForAsync();
    }
}
