using Holdfast.Testing;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>The whole job with the keyboard alone, on the program as it is started from a terminal: from an empty folder to the report.</summary>
[Collection("browser")]
public sealed class KeyboardTests(Browsing browsing) : IClassFixture<Browsing>, IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("holdfast-keys-").FullName;

    [Fact]
    public async Task Study_FromAnEmptyFolderToItsReport_NeedsNoMouse()
    {
        Assert.SkipUnless(Browsing.IsInstalled, "No Chromium in /usr/bin.");
        using var bench = await BenchProcess.Run(Path.Combine(root, "ni-study"));
        var page = await browsing.OpenOn(bench.Address);
        var hands = new TypingHands(page);

        await page.GotoAsync(bench.Start.ToString());
        await page.Locator("#title:focus").WaitForAsync();
        await Accessibility.Faultless(page);
        await hands.Press("Enter");
        await page.GetByText("Error: The title is missing").WaitForAsync();
        await hands.Type("nickel by keyboard (invented)");
        await hands.TabTo("#analyte");
        await hands.Type("Ni");
        await hands.Press("Enter");
        await page.GetByText("nickel by keyboard").First.WaitForAsync();
        await Settle(page);

        await hands.TabTo(".thread a", "Readings");
        await hands.Press("Enter");
        await Arrive(page, "/readings");
        foreach (var file in new[] { "vessels.csv", "aas-run1.csv" })
        {
            await hands.TabTo("#tray-block");
            await hands.Paste(await File.ReadAllTextAsync(Repository.Path("samples", "demo", file), TestContext.Current.CancellationToken));
            await hands.TabTo("button", "Put the block in the tray");
            await hands.Press("Enter");
            await page.GetByText("In the tray.").WaitForAsync();
        }

        await page.Locator("[data-accept]").WaitForAsync();
        await hands.TabTo("[data-accept]");
        await hands.Press("Enter");
        await page.GetByText("Kept as entry 2").WaitForAsync();
        await Settle(page);

        await hands.TabTo(".thread a", "Findings");
        await hands.Press("Enter");
        await Arrive(page, "/findings");
        await page.Locator(".figure-cards img").First.WaitForAsync();

        await hands.TabTo(".thread a", "Quantities");
        await hands.Press("Enter");
        await Arrive(page, "/quantities");
        await hands.TabTo("td a[href^='/quantities/q/']");
        await hands.Press("Enter");
        await page.Locator(".value").WaitForAsync();
        var code = new Uri(page.Url).Segments[^1];
        await Settle(page);
        await hands.TabTo("[data-strike]");
        await hands.Press("Enter");
        await page.GetByText("Without it ").First.WaitForAsync();
        await hands.TabTo("#strike-kind");
        await hands.Press("ArrowDown");
        await hands.TabTo("#strike-reason");
        await hands.Type("the stopper leaked on the shaker");
        await hands.Press("Enter");
        await page.GetByText("counts nowhere").WaitForAsync();
        await page.Locator("[data-undo]").GetByText("undo: strike " + code).WaitForAsync();
        await Settle(page);

        await hands.TabTo("a.strip-head");
        await hands.Press("Enter");
        await Arrive(page, "/defence");
        await hands.TabTo(".claims a");
        await hands.Press("Enter");
        await page.Locator("p.ruling").WaitForAsync();

        await hands.TabTo(".thread a", "Write-up");
        await hands.Press("Enter");
        await Arrive(page, "/write-up");
        await hands.TabTo("a[href='/write-up/record.html']");
        var report = await page.RunAndWaitForDownloadAsync(() => hands.Press("Enter"));
        var text = await File.ReadAllTextAsync(await report.PathAsync(), TestContext.Current.CancellationToken);
        Assert.Contains("nickel by keyboard", text, StringComparison.Ordinal);
        Assert.Contains("the stopper leaked on the shaker", text, StringComparison.Ordinal);

        Assert.True(hands.Unseen.Count == 0, string.Join("\n", hands.Unseen.Distinct()));
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var file in Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories))
            File.SetAttributes(file, FileAttributes.Normal);
        Directory.Delete(root, recursive: true);
    }

    private static async Task Settle(IPage page) => await page.WaitForFunctionAsync("() => document.querySelector('.bench[data-alive]') && !document.querySelector('.defence .working, [aria-busy=true]')");

    private static async Task Arrive(IPage page, string path)
    {
        await Browsing.At(page, path);
        await page.Locator("h1:focus").WaitForAsync();
        await Settle(page);
    }
}
