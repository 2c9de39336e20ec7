using System.Globalization;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>
/// Acts on a study that exists: another run's calibration, one value for many vessels, roles, the study's own settings. Each by keyboard where it can be,
/// each one entry that undo takes back, each state by the rules of axe-core.
/// </summary>
[Collection("browser")]
public sealed class ActTests(Browsing browsing) : IClassFixture<Browsing>
{
    // Invented: 0.05 and 0.1 absorbance for each mg/L; V-3 reads 0.5, so that q = (20 − 10)·25/20 = 12.5 or (20 − 5)·25/20 = 18.75 mg/g, by hand.
    private static readonly (string Name, string Text)[] Files =
    [
        ("vessels.csv", "sample,series,m (mg),C0 (mg/L),t (min)\nV-1,KIN,20,20,10\nV-2,KIN,20,20,30\nV-3,KIN,20,20,60\nV-4,ISO,20,20,60\nV-5,ISO,20,40,60\nS9,ISO,,4,\n"),
        ("first.csv", "sample,role,standard (mg/L),Abs\nS0,standard,0,0.000\nS1,standard,4,0.200\nS2,standard,8,0.400\nS3,standard,16,0.800\nS4,standard,20,1.000\n"),
        ("steep.csv", "sample,role,standard (mg/L),Abs\nT0,standard,0,0.000\nT1,standard,4,0.400\nT2,standard,8,0.800\nT3,standard,12,1.200\n"),
        ("later.csv", "sample,Abs\nV-1,0.700\nV-2,0.600\nV-3,0.500\nV-4,0.500\nV-5,0.900\n"),
    ];

    [Fact]
    public async Task MissingUptake_SaysWhyAndIsMendedWhereItIsSaid()
    {
        Assert.SkipUnless(Browsing.IsInstalled, "No Chromium in /usr/bin.");
        await using var bench = await MadeBench.Start(Files);
        var page = await bench.Open(browsing);
        await Go(bench, page, "/samples?fill=volume");
        await page.Locator("#fill-value").FillAsync("25 mL");
        await page.Locator("#fill-value").PressAsync("Enter");
        await page.GetByText("volume 25 mL for 6 samples").WaitForAsync();
        await page.Locator("[data-fill]").PressAsync("Enter");
        await page.GetByText("Kept: set volume of 6 samples").WaitForAsync();

        await Go(bench, page, "/quantities");
        var lacking = page.Locator(".lacking").First;
        await lacking.GetByText("No uptake of 5 vessels (V-1, V-2, V-3, …): run later has no calibration. Use the one of first or steep.").WaitForAsync();
        await Look(page, "missing");
        await Accessibility.Faultless(page);
        await lacking.Locator("[data-calibrate]").First.PressAsync("Enter");
        await page.Locator("[data-undo]").GetByText("undo: use the calibration of first for later").WaitForAsync();
        await page.Locator("a[href='/quantities/q/V-3']").WaitForAsync();
        Assert.StartsWith("12.5", await page.Locator("a[href='/quantities/q/V-3']").InnerTextAsync(), StringComparison.Ordinal);

        await Go(bench, page, "/runs/later");
        await page.GetByText("Read on the calibration of first, as you chose.").WaitForAsync();
        await page.Locator("#calibration-of").SelectOptionAsync("steep");
        await page.GetByRole(AriaRole.Button, new() { Name = "Use it" }).PressAsync("Enter");
        await page.GetByText("Read on the calibration of steep, as you chose.").WaitForAsync();
        await Look(page, "run");
        await Accessibility.Faultless(page);
        await page.Locator("#run-instrument").FillAsync("flame AAS (invented)");
        await page.Locator("#run-instrument").PressAsync("Enter");
        await page.GetByText("Kept: instrument.").WaitForAsync();
        await page.Locator("#run-instrument").FillAsync("another");
        await page.Locator("#run-instrument").PressAsync("Enter");
        await page.GetByText("Say why what was said of later is replaced.").WaitForAsync();
        await page.Locator("#run-reason:focus").WaitForAsync();
        await page.Keyboard.TypeAsync("read the plate again");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("[data-undo]").GetByText("undo: set instrument of run later").WaitForAsync();
        await Go(bench, page, "/quantities/q/V-3");
        Assert.StartsWith("18.75", await page.Locator(".value").InnerTextAsync(), StringComparison.Ordinal);
        await Go(bench, page, "/runs/later");
        await page.Locator("[data-own-calibration]").PressAsync("Enter");
        await page.GetByText("It has none, so no concentration follows from its readings.").WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Constant_ForMany_LeavesWhatIsRecordedUntilToldWhy()
    {
        Assert.SkipUnless(Browsing.IsInstalled, "No Chromium in /usr/bin.");
        await using var bench = await MadeBench.Start(Files);
        var page = await bench.Open(browsing);
        await Go(bench, page, "/samples?fill=volume");
        await page.Locator("#fill-which").SelectOptionAsync("series:KIN");
        await page.Locator("#fill-value").FillAsync("10");
        await page.Locator("[data-look]").PressAsync("Enter");
        await page.Locator(".fill-seen").GetByText("V-1, V-2 and V-3").WaitForAsync();
        await page.Locator("[data-fill]").PressAsync("Enter");
        await page.Locator("td[data-code='V-3'][data-col='3'][data-seen='10']").WaitForAsync();

        await page.Locator("#fill-which").SelectOptionAsync("");
        await page.Locator("#fill-value").FillAsync("0.025 L");
        await page.Locator("[data-look]").PressAsync("Enter");
        await page.GetByText("3 samples have another value: V-1 10 mL, V-2 10 mL and V-3 10 mL.").WaitForAsync();
        await Look(page, "fill");
        await Accessibility.Faultless(page);
        await page.Locator("#fill-replace").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Fill 6 cells" }).PressAsync("Enter");
        await page.GetByText("Say why what was recorded is replaced.").WaitForAsync();
        await page.Locator("#fill-reason:focus").WaitForAsync();
        await page.Keyboard.TypeAsync("the larger flask");
        await page.Locator("[data-fill]").PressAsync("Enter");
        await page.Locator("td[data-code='V-1'][data-col='3'][data-seen='25']").WaitForAsync();
        await page.Locator("[data-undo]").GetByText("undo: set volume of 6 samples").PressAsync("Enter");
        await page.Locator("td[data-code='V-1'][data-col='3'][data-seen='10']").WaitForAsync();

        // What is selected in the grid, by keyboard; a value that hardly can be is asked about.
        await page.Locator("td[data-code='V-4'][data-col='6']").ClickAsync();
        await page.Keyboard.PressAsync("Shift+ArrowDown");
        await page.Locator("#fill-what").SelectOptionAsync("temperature");
        await page.Locator("#fill-which").SelectOptionAsync("grid:");
        await page.Locator("#fill-value").FillAsync("25");
        await page.Locator("[data-look]").PressAsync("Enter");
        await page.GetByText("temperature 25 K is unlikely small for 2 samples. Is the unit right?").WaitForAsync();
        await page.Locator("#fill-value").FillAsync("25 °C");
        await page.Locator("[data-look]").PressAsync("Enter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Fill 2 cells" }).PressAsync("Enter");
        await page.Locator("td[data-code='V-5'][data-col='6'][data-seen='298.15']").WaitForAsync();
        await page.Locator("#fill-value").FillAsync("ten");
        await page.Locator("[data-look]").PressAsync("Enter");
        await page.GetByText("“ten” is no single number").First.WaitForAsync();
        await page.Locator("#fill-value:focus").WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Role_InTheGrid_IsChosenByKeyboardForSeveralAtOnce()
    {
        Assert.SkipUnless(Browsing.IsInstalled, "No Chromium in /usr/bin.");
        await using var bench = await MadeBench.Start(Files);
        var page = await bench.Open(browsing);
        await Go(bench, page, "/samples");
        var role = page.Locator("td[data-code='S9'][data-col='-1']");
        await page.Locator("td[data-code='S9'][data-col='0']").ClickAsync();
        await page.Keyboard.PressAsync("ArrowLeft");
        await page.Keyboard.PressAsync("F2");
        await page.Locator("#role-editor:focus").WaitForAsync();
        await Accessibility.Faultless(page);
        await page.Keyboard.PressAsync("ArrowDown");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("S9: standard.").WaitForAsync();
        Assert.Equal("Standard", await role.GetAttributeAsync("data-seen"));
        // Its concentration stood under the start concentrations: it serves the standard.
        await page.Locator("td[data-code='S9'][data-col='10'][data-seen='4']").WaitForAsync();
        await Look(page, "roles");
        await page.Locator("[data-undo]").GetByText("undo: give S9 another role").ClickAsync();
        await page.Locator("td[data-code='S9'][data-col='-1'][data-seen='Vessel']").WaitForAsync();

        await page.Locator("td[data-code='V-4'][data-col='-1']").ClickAsync();
        await page.Keyboard.PressAsync("Shift+ArrowDown");
        await page.Keyboard.PressAsync("F2");
        await page.Locator("#role-editor").SelectOptionAsync("Control");
        await page.Locator("#role-editor").PressAsync("Enter");
        await page.Locator("[data-undo]").GetByText("undo: give 2 samples another role").WaitForAsync();

        await Go(bench, page, "/samples?fill=role");
        await page.Locator("#fill-which").SelectOptionAsync("file:first.csv");
        await page.Locator("#fill-role").SelectOptionAsync("CheckStandard");
        await page.Locator("#fill-known").FillAsync("1; 2");
        await page.Locator("[data-look]").PressAsync("Enter");
        await page.GetByText("5 samples and 2 concentrations").First.WaitForAsync();
        await page.Locator("#fill-known").FillAsync("");
        await page.Locator("[data-look]").PressAsync("Enter");
        await page.GetByText("standard to check standard: S0, S1, S2, S3 and S4.").WaitForAsync();
        await Look(page, "fill-role");
        await Accessibility.Faultless(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Change 5 samples" }).PressAsync("Enter");
        await page.GetByText("Kept: give 5 samples another role.").WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Settings_ReachedFromAGapOfTheMethods_AreKeptAsOneEntry()
    {
        Assert.SkipUnless(Browsing.IsInstalled, "No Chromium in /usr/bin.");
        await using var bench = await MadeBench.Start(Files);
        var page = await bench.Open(browsing);
        await Go(bench, page, "/write-up");
        await Look(page, "write-up");
        await Accessibility.Faultless(page);
        await page.Locator("a.blank[href='/plan#setting-separation']").PressAsync("Enter");
        await page.Locator("#setting-separation:focus").WaitForAsync();
        await page.Keyboard.TypeAsync("0.45 µm filter");
        await page.Locator("#setting-analyte").FillAsync("unobtainium");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("“unobtainium” is no element that is known here.").First.WaitForAsync();
        await page.Locator("#setting-analyte:focus").WaitForAsync();
        await Look(page, "settings");
        await Accessibility.Faultless(page);
        await page.Locator("#setting-analyte").FillAsync("plomo");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("Kept: metal (name or symbol) and separation.").WaitForAsync();
        Assert.Equal("Pb", await page.Locator("#setting-analyte").InputValueAsync());
        await Go(bench, page, "/write-up");
        await page.GetByText("The liquid was separated by 0.45 µm filter").WaitForAsync();
        await page.Locator("a.blank[href='/samples?fill=volume']").First.PressAsync("Enter");
        await page.Locator(".block-fill[open] #fill-value").WaitForAsync();
        Assert.Equal("volume", await page.Locator("#fill-what").InputValueAsync());
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Drafts_AfterAReload_AreInTheirFields()
    {
        Assert.SkipUnless(Browsing.IsInstalled, "No Chromium in /usr/bin.");
        await using var bench = await MadeBench.Start(Files);
        var page = await bench.Open(browsing);
        await Go(bench, page, "/samples/V-1");
        await page.Locator("[data-strike]").ClickAsync();
        await page.Locator("#strike-reason").FillAsync("the stopper leaked on the shaker");
        await page.ReloadAsync();
        await page.WaitForFunctionAsync("() => document.getElementById('strike-reason')?.value === 'the stopper leaked on the shaker'");
        await page.GetByRole(AriaRole.Button, new() { Name = "Draw the line" }).ClickAsync();
        await page.GetByText("counts nowhere").WaitForAsync();

        await Go(bench, page, "/readings");
        await page.Locator("#tray-block").FillAsync("sample\tm (mg)\nV-9\t20");
        await page.ReloadAsync();
        await page.WaitForFunctionAsync("() => document.getElementById('tray-block')?.value === 'sample\\tm (mg)\\nV-9\\t20'");
        await page.Locator("#tray-block").FillAsync("");
        await Go(bench, page, "/plan#setting-material");
        await page.Locator("#setting-material").FillAsync("beads (invented)");
        await page.ReloadAsync();
        await page.WaitForFunctionAsync("() => document.getElementById('setting-material')?.value === 'beads (invented)'");
        await page.Locator("#setting-material").PressAsync("Enter");
        await page.GetByText("Kept: material.").WaitForAsync();
        // What is kept is no draft any more: it is not brought back over what somebody else says later.
        await page.ReloadAsync();
        await page.Locator(".bench[data-alive]").WaitForAsync();
        Assert.Null(await page.EvaluateAsync<string?>("() => sessionStorage.getItem('holdfast-typed:/plan')"));
        Assert.Equal("beads (invented)", await page.Locator("#setting-material").InputValueAsync());
    }

    [Fact]
    public async Task EmptyStudy_OffersABlockThatGivesAQuantityAndIsAskedBeforeItGoes()
    {
        Assert.SkipUnless(Browsing.IsInstalled, "No Chromium in /usr/bin.");
        await using var bench = await MadeBench.Start();
        var page = await bench.Open(browsing);
        await Go(bench, page, "/");
        await Look(page, "empty");
        await Accessibility.Faultless(page);
        await page.Locator("[data-copy]").PressAsync("Enter");
        await page.GetByText("Copied.").WaitForAsync();
        Assert.StartsWith("sample\ttime (min)\tC0 (mg/L)", await page.EvaluateAsync<string>("() => navigator.clipboard.readText()"), StringComparison.Ordinal);
        var example = await page.RunAndWaitForPopupAsync(() => page.GetByRole(AriaRole.Link, new() { Name = "Open the example" }).ClickAsync());
        Assert.Equal("worked example", await example.Locator("h1").InnerTextAsync());
        await page.Locator("[data-try]").PressAsync("Enter");
        await page.Locator("[data-accept]").ClickAsync();
        await Go(bench, page, "/quantities");
        // (20 − 14.2)·25/20.1 = 7.21 mg/g, by hand.
        Assert.StartsWith("7.21", await page.Locator("a[href='/quantities/q/V-1']").InnerTextAsync(), StringComparison.Ordinal);
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    [Fact]
    public async Task Cell_FarFromItsPlan_IsAskedAboutOnce()
    {
        Assert.SkipUnless(Browsing.IsInstalled, "No Chromium in /usr/bin.");
        await using var bench = await MadeBench.Start(("vessels.csv", "sample,V (mL),dose (g/L)\n" + string.Concat(Enumerable.Range(1, 25).Select(i => string.Create(CultureInfo.InvariantCulture, $"V-{i},10,2\n")))));
        var page = await bench.Open(browsing);
        await Go(bench, page, "/samples");
        await page.Locator("td[data-code='V-1'][data-col='2']").ClickAsync();
        await page.Keyboard.TypeAsync("2000");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("V-1: sorbent mass 2000 mg is 100 times the planned 20 mg. Is it right?").WaitForAsync();
        await Look(page, "doubt");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep 2000" }).PressAsync("Enter");
        await page.Locator("td[data-code='V-1'][data-col='2'][data-seen='2000']").WaitForAsync();
        await page.Locator("td[data-code='V-2'][data-col='2']").ClickAsync();
        await page.Keyboard.TypeAsync("0.02 g");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator("td[data-code='V-2'][data-col='2'][data-seen='20']").WaitForAsync();

        await page.Locator("[data-undo]").ClickAsync();
        await page.Locator("td[data-code='V-2'][data-col='2'][data-seen='']").WaitForAsync();
        await page.Locator("[data-undo]").ClickAsync();
        await page.Locator("td[data-code='V-1'][data-col='2'][data-seen='']").WaitForAsync();
        // 25 samples: asked first; the answer that changes nothing has the focus.
        await page.Locator("[data-undo]").ClickAsync();
        await page.GetByText("This takes back 25 samples.").WaitForAsync();
        await Look(page, "undo");
        await Accessibility.Faultless(page);
        await page.Locator("[data-undo-not]:focus").WaitForAsync();
        await page.Keyboard.PressAsync("Escape");
        await page.Locator("[data-undo]").PressAsync("Enter");
        await page.Locator("[data-undo-sure]").PressAsync("Enter");
        await page.GetByText("No sample is recorded yet.").WaitForAsync();
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    private static async Task Go(MadeBench bench, IPage page, string path)
    {
        await page.GotoAsync(bench.Host.Address + path, new() { WaitUntil = WaitUntilState.Load });
        await page.WaitForFunctionAsync("() => document.querySelector('.bench[data-alive]') && !document.querySelector('.defence .working, [aria-busy=true], .grid-frame:not([data-ready])')");
    }

    // With HOLDFAST_LOOK set to a folder, what was seen is kept there, wide and narrow, light and dark.
    private static async Task Look(IPage page, string name)
    {
        if (Environment.GetEnvironmentVariable("HOLDFAST_LOOK") is not { Length: > 0 } folder)
            return;
        foreach (var (width, dark) in new[] { (1280, false), (1280, true), (480, false), (480, true) })
        {
            await page.SetViewportSizeAsync(width, 900);
            await page.EmulateMediaAsync(new() { ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light });
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"act-{name}-{width}{(dark ? "-dark" : "")}.png")), FullPage = true });
            Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth") <= width, $"{name} scrolls sideways at {width} px");
        }

        await page.SetViewportSizeAsync(1280, 900);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
    }
}
