using System.Text;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>A check standard outside its window: every number that stands on it is grey until somebody answers.</summary>
[Collection("browser")]
public sealed class CheckTests(Browsing browsing) : IClassFixture<Browsing>
{
    [Fact]
    public async Task CheckStandard_OutsideItsWindow_GreysWhatStandsOnItUntilItIsAnswered()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/readings");
        // A line of slope 0.06 per mg/L; two vessels between a check of 1.5 mg/L that passes and one that reads 17 % low.
        const string block = """
            Remark;INVENTED demo data: nothing was measured
            Element;Ni

            position;label;type;standard (mg/L);dilution;Abs 1;Abs 2
            1;LS-0;standard;0;1;0,0004;0,0006
            2;LS-0.5;standard;0,5;1;0,0303;0,0306
            3;LS-1;standard;1;1;0,0607;0,0604
            4;LS-1.5;standard;1,5;1;0,0905;0,0909
            5;LS-2;standard;2;1;0,1206;0,1203
            6;QC-A;check standard;1,5;1;0,0911;0,0913
            7;LATE-1;vessel;;1;0,0827;0,0842
            8;LATE-2;vessel;;1;0,0609;0,0602
            9;QC-B;check standard;1,5;1;0,0755;0,0757
            """;
        const string sheet = "sample,series,role,C0 (mg/L),volume (mL),mass (mg),time (min)\nLATE-1,LATE,vessel,10,50,100,1440\nLATE-2,LATE,vessel,10,50,100,1440\n";
        await page.Locator("#tray-files").SetInputFilesAsync(
        [
            new FilePayload { Name = "late-run.csv", MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(block) },
            new FilePayload { Name = "late.csv", MimeType = "text/csv", Buffer = Encoding.UTF8.GetBytes(sheet) },
        ]);
        await page.Locator("[data-accept]").ClickAsync();
        await page.GetByText("Kept as entry").First.WaitForAsync();

        await browsing.Go(page, "/quantities");
        await page.Locator("tr.doubtful th", new() { HasText = "LATE-1 †" }).WaitForAsync();
        Assert.Equal(2, await page.Locator("tr.doubtful").CountAsync());
        await page.GetByText("Check standard QC-B of late-run reads back at 8").First.WaitForAsync();
        await page.Locator(".thread .open-decision[title*='check standard']").WaitForAsync();
        await browsing.Go(page, "/quantities/q/LATE-2");
        await page.Locator(".value.doubtful").WaitForAsync();
        await browsing.Go(page, "/");
        await page.GetByText("Answer the check standard QC-B").ClickAsync();
        await Browsing.At(page, "/samples/QC-B");
        await page.Locator("[data-strike]").ClickAsync();
        await page.GetByText("Without it ").First.WaitForAsync();
        await page.Locator("#strike-reason").FillAsync("made up from the wrong flask");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("counts nowhere").WaitForAsync();
        await browsing.Go(page, "/quantities");
        Assert.Equal(0, await page.Locator("tr.doubtful").CountAsync());
        await page.Locator("[data-undo]").ClickAsync();
        await page.Locator("tr.doubtful").First.WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }
}
