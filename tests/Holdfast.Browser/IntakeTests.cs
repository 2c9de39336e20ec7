using Holdfast.Testing;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>Files as people really have them, dropped on the page and answered with the mouse, held against the true quantities of each case.</summary>
[Collection("browser")]
public sealed class IntakeTests(Browsing browsing) : IClassFixture<Browsing>
{
    private const int MostClicks = 12;

    /// <summary>Names of the cases.</summary>
    public static TheoryData<string> Cases => [.. TrueCase.Names];

    [Theory]
    [MemberData(nameof(Cases))]
    public async Task Case_DroppedAndAnsweredWithTheMouse_GivesTheTrueQuantities(string name)
    {
        var given = TrueCase.Of(name);
        Assert.SkipUnless(Browsing.IsInstalled, "No Chromium in /usr/bin.");
        await using var bench = await EmptyBench.Open(given.Analyte);
        var page = await Readings(bench);
        // Choosing the files is a click on the chooser and one on Open.
        var clicks = 2;
        await page.Locator("#tray-files").SetInputFilesAsync(given.Files.ToArray());
        await Understood(page);
        await Look(page, given.Id);
        while (await page.Locator("fieldset.question.open").CountAsync() > 0)
        {
            // The likeliest answer stands first; in the traps of these cases it is the true one, which the quantities below prove.
            var question = page.Locator("fieldset.question.open").First;
            var id = await question.GetAttributeAsync("id");
            await question.Locator("label").First.ClickAsync();
            clicks++;
            await page.Locator($"[id='{id}'].open").WaitForAsync(new() { State = WaitForSelectorState.Detached });
            await Understood(page);
        }

        Assert.True(await page.Locator("[data-accept]").IsEnabledAsync());
        var shown = await page.Locator(".follows tbody tr").AllInnerTextsAsync();
        await Look(page, given.Id + "-answered");
        await page.Locator("[data-accept]").ClickAsync();
        clicks++;
        await page.Locator(".said", new() { HasText = "Kept as entry 2" }).WaitForAsync();
        await page.Locator(".thread a", new() { HasText = "Findings" }).ClickAsync();
        clicks++;
        await page.Locator("h1", new() { HasText = "Findings" }).WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
        await page.CloseAsync();
        var evidence = await bench.Close();
        TestContext.Current.SendDiagnosticMessage($"{given.Id}: {clicks} clicks to the findings");

        var wrong = given.Wrong(EmptyBench.Rows(evidence), answered: true);
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
        Assert.True(clicks <= MostClicks, $"{clicks} clicks");
        // What the page promised before is what the study holds.
        foreach (var line in shown)
        {
            var cells = line.Split('\t');
            var vessel = Assert.Single(evidence.Vessels, v => v.Code == cells[0].Trim());
            Assert.True(vessel.Uptake is null || cells[^1].Trim() == Holdfast.Reports.StudyTables.InWords.PlusMinus(vessel.Uptake.Value), line);
        }

    }

    private async Task<IPage> Readings(EmptyBench bench)
    {
        var page = await browsing.OpenOn(bench.Address);
        await page.GotoAsync(bench.Start.ToString());
        await page.Locator(".bench[data-alive]").WaitForAsync();
        await page.Locator(".bench[data-alive]").WaitForAsync();
        await page.Locator(".thread a", new() { HasText = "Readings" }).ClickAsync();
        await page.Locator("h1", new() { HasText = "Readings" }).WaitForAsync();
        return page;
    }

    private static Task<IJSHandle> Understood(IPage page)
        => page.WaitForFunctionAsync("() => document.querySelector('.incoming') && !document.querySelector('.tray .working')");

    // With HOLDFAST_LOOK set to a folder, what was seen is kept there, at the widths and in the themes that are looked at.
    private static async Task Look(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("HOLDFAST_LOOK") is not { Length: > 0 } folder)
            return;
        foreach (var (width, dark) in new[] { (1280, false), (480, true), (360, false) })
        {
            await page.SetViewportSizeAsync(width, 900);
            await page.EmulateMediaAsync(new() { ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light });
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, FormattableString.Invariant($"{name}-{width}{(dark ? "-dark" : "")}.png")), FullPage = true });
        }

        await page.SetViewportSizeAsync(1280, 900);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
    }
}
