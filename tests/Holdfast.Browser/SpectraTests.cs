using System.Text;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>A file of whole spectra in the browser: seen before it counts, accepted, and each intensity followed back to its column.</summary>
[Collection("browser")]
public sealed class SpectraTests(Browsing browsing) : IClassFixture<Browsing>
{
    [Fact]
    public async Task Spectra_Dropped_AreSeenAccepted_AndEachIntensityLeadsToItsColumn()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/readings");
        await page.Locator("#tray-files").SetInputFilesAsync(new FilePayload { Name = "second-scan.csv", MimeType = "text/csv", Buffer = Scan() });
        var incoming = page.Locator(".incoming", new() { HasText = "second-scan.csv" });
        await incoming.GetByText("2 spectra: 2 ready").First.WaitForAsync();
        Assert.Contains("emission spectrum", await incoming.Locator(".meanings td").Nth(2).InnerTextAsync(), StringComparison.Ordinal);
        await page.Locator("[data-accept]").ClickAsync();
        await page.GetByText("Kept as entry").First.WaitForAsync();

        // Read again, the vessel's intensity is the mean of both spectra, and its trail names both columns and the liquid's.
        await browsing.Go(page, "/quantities/F/FL20-1");
        await page.GetByText("mean of the five points").WaitForAsync();
        var rows = page.Locator("table", new() { HasText = "as written" }).Locator("tbody tr");
        Assert.Equal(3, await rows.CountAsync());
        Assert.Contains("second-scan.csv, column FL20-1", await rows.Nth(1).InnerTextAsync(), StringComparison.Ordinal);
        await rows.Nth(1).Locator("a").First.ClickAsync();
        await page.GetByText("61 points, 580 to 640 nm").First.WaitForAsync();

        await browsing.Go(page, "/findings/spectra-fluor");
        await page.Locator("figure", new() { HasText = "Emission spectra of series FLUOR, excited at 394 nm" }).First.WaitForAsync();
        await page.Locator("[data-undo]").ClickAsync();
        await page.Locator("[data-redo]").WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Window_FixedByForm_IsTheOneThatIsRead()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/plan");
        await page.Locator(".fix-margin summary").ClickAsync();
        await page.Locator("#margin-name").SelectOptionAsync("area-window");
        await page.GetByText("Where none is fixed, the peak is read").WaitForAsync();
        await page.Locator("#margin-low").FillAsync("606");
        await page.Locator("#margin-high").FillAsync("626");
        await page.GetByRole(AriaRole.Button, new() { Name = "Fix the margin" }).ClickAsync();
        await page.GetByText("Fixed: area-window, 606 to 626 nm.").WaitForAsync();
        await browsing.Go(page, "/quantities/F/FL20-2");
        await page.GetByText("area from 606").WaitForAsync();
        await page.Locator("[data-undo]").ClickAsync();
        await page.GetByText("mean of the five points").WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    private static byte[] Scan()
    {
        var text = new StringBuilder("Remark,INVENTED demo data\nExcitation,394 nm\nemission wavelength (nm),FL20-1,FL20-2\n");
        for (var w = 580; w <= 640; w++)
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{w},{760 - 2 * (w - 616) * (w - 616) / 10.0},{750 - 2 * (w - 616) * (w - 616) / 10.0}\n");
        return Encoding.UTF8.GetBytes(text.ToString());
    }
}
