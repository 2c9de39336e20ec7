using System.Globalization;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>The grid of vials with blocks: pasted as one entry, selected and copied by keyboard, a thousand rows.</summary>
[Collection("browser")]
public sealed class GridTests(Browsing browsing) : IClassFixture<Browsing>
{
    [Fact]
    public async Task Block_PastedOverTheGrid_IsOneEntryThatUndoTakesBack()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/samples");
        var corner = page.Locator("td[data-col='2'][data-seen]:not([data-seen=''])").First;
        var row = int.Parse((await corner.GetAttributeAsync("data-row"))!, CultureInfo.InvariantCulture);
        var before = await Cells(page, row, 2, 2, 2);
        await page.Locator(".grid-frame table").WaitForAsync();

        await Paste(page, corner, "30.1\t50,5\n30,2\tx.y");
        var refusal = page.Locator("section[aria-label='Block not kept yet']");
        await refusal.GetByText("1 of 4 cells of the block cannot be kept, so none is kept yet:").WaitForAsync();
        Assert.Contains("“x.y” is no single number", await refusal.InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(before, await Cells(page, row, 2, 2, 2));
        await refusal.GetByRole(AriaRole.Button, new() { Name = "Keep the other 3" }).ClickAsync();
        await refusal.GetByText("Say why what was recorded is corrected.").WaitForAsync();
        await page.Locator("#edit-reason:focus").WaitForAsync();
        await page.Keyboard.TypeAsync("the sheet had slipped by one line");
        await refusal.GetByRole(AriaRole.Button, new() { Name = "Leave everything as it was" }).ClickAsync();

        await Paste(page, corner, "30.1\t50,5\n30,2\t50.6");
        await page.GetByText("4 cells of the block kept as one entry.").WaitForAsync();
        await page.Locator($"td[data-row='{row + 1}'][data-col='3'][data-seen='50.6']").WaitForAsync();
        Assert.Equal("30.1,50.5,30.2,50.6", await Cells(page, row, 2, 2, 2));
        await page.Locator("[data-undo]").GetByText("undo: type 4 cells of samples").ClickAsync();
        await page.WaitForFunctionAsync("([row, seen]) => document.querySelector(`td[data-row='${row}'][data-col='2']`).dataset.seen === seen", new object[] { row, before.Split(',')[0] });
        Assert.Equal(before, await Cells(page, row, 2, 2, 2));
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Selection_ByShiftAndArrows_IsCopiedAsABlock()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/samples");
        var corner = page.Locator("td[data-col='2'][data-seen]:not([data-seen=''])").First;
        var row = int.Parse((await corner.GetAttributeAsync("data-row"))!, CultureInfo.InvariantCulture);
        await corner.FocusAsync();
        // The first press of an arrow makes the cell the one in hand; Shift then draws from it.
        await page.Keyboard.PressAsync("ArrowRight");
        await page.Keyboard.PressAsync("ArrowLeft");
        await page.Keyboard.PressAsync("Shift+ArrowDown");
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        Assert.Equal(4, await page.Locator("td[aria-selected='true']").CountAsync());
        await page.Keyboard.PressAsync("Control+c");
        var copied = await page.EvaluateAsync<string>("() => navigator.clipboard.readText()");
        Assert.Equal(await Cells(page, row, 2, 2, 2), copied.Replace('\t', ',').Replace('\n', ','));
        await page.Keyboard.PressAsync("ArrowUp");
        Assert.Equal(0, await page.Locator("td[aria-selected='true']").CountAsync());
    }

    [Fact]
    public async Task ThousandRows_PastedAtOnce_AreThereWithinSeconds()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/readings");
        var sheet = "sample\ttime (min)\n" + string.Concat(Enumerable.Range(1, 1000).Select(i => string.Create(CultureInfo.InvariantCulture, $"MANY-{i:0000}\t{i % 240}\n")));
        await page.EvaluateAsync("text => navigator.clipboard.writeText(text)", sheet);
        await page.Locator("#tray-block").FocusAsync();
        await page.Keyboard.PressAsync("Control+v");
        await page.GetByRole(AriaRole.Button, new() { Name = "Put the block in the tray" }).ClickAsync();
        await page.Locator("[data-accept]").ClickAsync();
        await page.GetByText("Kept as entry").First.WaitForAsync();

        await browsing.Go(page, "/samples?show=none");
        var corner = page.Locator("td[data-code='MANY-0001'][data-col='2']");
        var block = string.Join('\n', Enumerable.Range(1, 1000).Select(i => string.Create(CultureInfo.InvariantCulture, $"{20 + (i / 1000.0):0.000}\t50")));
        await Paste(page, corner, block);
        await page.Locator("td[data-code='MANY-1000'][data-col='2'][data-seen='21']").WaitForAsync();
        await page.Locator("[data-undo]").ClickAsync();
        await page.Locator("td[data-code='MANY-1000'][data-col='2'][data-seen='']").WaitForAsync();
        await page.Locator("[data-undo]").ClickAsync();
        await page.GetByText("This takes back 1000 samples.").WaitForAsync();
        await page.Locator("[data-undo-not]:focus").WaitForAsync();
        await page.Locator("[data-undo-sure]").ClickAsync();
        await page.Locator("td[data-code='MANY-1000']").First.WaitForAsync(new() { State = WaitForSelectorState.Detached });
    }

    [Fact]
    public async Task Vials_OfALargeStudy_AreShownSeriesBySeries()
    {
        const int most = 2500;
        var page = await browsing.Open();
        await browsing.Go(page, "/samples");
        Assert.InRange(await page.Locator("*").CountAsync(), 100, most);
        var shown = page.Locator("#show-vials");
        Assert.Equal("series:ISO-298", await shown.InputValueAsync());
        await page.Locator("td[data-code='ISO-02-1']").First.WaitForAsync();
        await shown.SelectOptionAsync("instrument");
        await Browsing.At(page, "/samples?show=instrument");
        await page.Locator("td[data-code='ISO-02-1']").First.WaitForAsync(new() { State = WaitForSelectorState.Detached });
        Assert.Contains("blank", await page.Locator(".vessels tbody tr").First.InnerTextAsync(), StringComparison.Ordinal);
        // The grid is one tab stop in every group, and the keys move in it.
        Assert.Equal(1, await page.Locator("td[role='gridcell'][tabindex='0']").CountAsync());
        await page.Locator("td[role='gridcell'][tabindex='0']").FocusAsync();
        await page.Keyboard.PressAsync("Shift+ArrowDown");
        Assert.Equal(2, await page.Locator("td[aria-selected='true']").CountAsync());
        await page.GoBackAsync();
        await page.WaitForFunctionAsync("() => document.querySelector('#show-vials').value === 'series:ISO-298'");
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    private static async Task Paste(IPage page, ILocator at, string block)
    {
        await page.EvaluateAsync("text => navigator.clipboard.writeText(text)", block);
        await at.ClickAsync();
        await page.Keyboard.PressAsync("Control+v");
    }

    private static async Task<string> Cells(IPage page, int row, int column, int rows, int columns)
        => string.Join(',', await page.EvaluateAsync<string[]>(
            "([row, col, rows, cols]) => Array.from({ length: rows * cols }, (_, i) => document.querySelector(`td[data-row='${row + Math.floor(i / cols)}'][data-col='${col + i % cols}']`).dataset.seen)",
            new[] { row, column, rows, columns }));
}
