namespace Holdfast.Browser;

/// <summary>A number that many vessels gave, followed from the claim to the cells it was read in.</summary>
[Collection("browser")]
public sealed class TrailTests(Browsing browsing) : IClassFixture<Browsing>
{
    // Two actions at most from claim to raw cell (our own requirement): the number, and there the readings stand with file and row.
    [Fact]
    public async Task Enthalpy_OfAClaim_LeadsToItsPointsAndCells()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/defence");
        await page.Locator("a", new() { HasText = "spontaneous and endothermic" }).First.ClickAsync();
        await page.Locator(".deciding a[href='/quantities/dH/TEMP-298']").First.ClickAsync();
        await page.GetByText("straight line of ln K on 1/T").WaitForAsync();
        Assert.Equal(3, await page.Locator("table", new() { HasText = "fitted" }).Locator("tbody tr").CountAsync());
        Assert.Contains("aas-run3.xlsx", await page.Locator("table", new() { HasText = "as written" }).InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("spontaneous and endothermic", await page.Locator("ul", new() { HasText = "endothermic" }).Last.InnerTextAsync(), StringComparison.Ordinal);

        // From a point of the line to the fit at that temperature, and from a point of that to the vessel.
        await page.Locator("th a[href='/quantities/K/TEMP-308']").ClickAsync();
        await page.Locator("th a[href='/quantities/q/T308-20-1']").ClickAsync();
        await page.GetByText("uptake of T308-20-1").WaitForAsync();

        // Under Findings, a cell of the table of parameters and a raised link lead the same way.
        await browsing.Go(page, "/findings/section/isotherms/series-iso-298");
        Assert.True(await page.Locator("td a[href='/quantities/qm/ISO-298%40langmuir']").CountAsync() > 0);
        await browsing.Go(page, "/findings/section/temperature");
        Assert.True(await page.Locator("sup a[href='/quantities/dS/TEMP-298']").CountAsync() > 0);
        await browsing.Go(page, "/quantities");
        Assert.True(await page.Locator("td a[href='/quantities/alpha/Zn']").CountAsync() > 0);
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }
}
