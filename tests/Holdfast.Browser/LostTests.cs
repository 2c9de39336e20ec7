using Holdfast.Studies.History;
using Holdfast.Studies.Store;

namespace Holdfast.Browser;

/// <summary>The program is killed while somebody types: the page says so in our words, keeps the words, and goes on when the program is back.</summary>
[Collection("browser")]
public sealed class LostTests(Browsing browsing) : IClassFixture<Browsing>, IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("holdfast-lost-").FullName;

    [Fact]
    public async Task Typing_WhileTheProgramIsKilled_IsOnThePageAndKeptAfterwards()
    {
        Assert.SkipUnless(Browsing.IsInstalled, "No Chromium in /usr/bin.");
        var folder = Path.Combine(root, "lost-study");
        using (var begun = StudyFolder.Begin(folder, "Ada", TimeProvider.System, new StudyBegun("lost (invented)", "Ni", Invented: true)))
            begun.Close();
        var bench = await BenchProcess.Run(folder);
        var page = await browsing.OpenOn(bench.Address);
        await page.GotoAsync(bench.Start.ToString());
        await page.GotoAsync(bench.Address + "/plan");
        await page.Locator(".bench[data-alive]").WaitForAsync();
        await page.Locator("#claim-time").FillAsync("120 min");
        await page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "State the claim" }).ClickAsync();
        await page.Locator("[data-kept]").WaitForAsync();
        var kept = await page.Locator("[data-kept]").InnerTextAsync();

        await page.Locator("#claim-time").FillAsync("240 min");
        await page.Locator("#claim-words").PressSequentiallyAsync("Four hours are");
        bench.Dispose();
        await page.Keyboard.TypeAsync(" enough.");
        await page.GetByText("The program does not answer").WaitForAsync();
        Assert.Contains(kept, await page.Locator("[data-last-kept]").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal("Four hours are enough.", await page.Locator("#claim-words").InputValueAsync());

        using var again = await BenchProcess.Run(folder);
        Assert.Equal(bench.Address, again.Address);
        var other = await page.Context.NewPageAsync();
        await other.GotoAsync(again.Start.ToString());
        await other.Locator(".bench[data-alive]").WaitForAsync();
        await page.WaitForFunctionAsync("() => !document.getElementById('components-reconnect-modal').open && document.querySelector('.bench[data-alive]') && document.getElementById('claim-words')?.value === 'Four hours are enough.'");
        Assert.Equal("240 min", await page.Locator("#claim-time").InputValueAsync());
        await page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "State the claim" }).ClickAsync();
        await page.GetByText("Stated: equilibrium-reached-240-min").WaitForAsync();
        await page.Locator(".stated").GetByText("Four hours are enough.").WaitForAsync();
        Assert.Equal(2, await page.Locator(".stated li").CountAsync());
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var file in Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories))
            File.SetAttributes(file, FileAttributes.Normal);
        Directory.Delete(root, recursive: true);
    }
}
