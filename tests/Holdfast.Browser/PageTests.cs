using System.Globalization;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>
/// Every page at four widths, and in both themes by the rules of axe-core (WCAG 2.x). With HOLDFAST_LOOK set to a folder, what was seen is kept there.
/// </summary>
[Collection("browser")]
public sealed class PageTests(Browsing browsing) : IClassFixture<Browsing>
{
    private const int Height = 900;

    private static readonly string[] Paths =
    [
        "/", "/plan", "/preparations", "/samples", "/samples/ISO-20-1", "/readings", "/readings/R-0001", "/runs/aas-run1", "/quantities", "/quantities/q/ISO-20-1", "/quantities/dH/TEMP-298", "/quantities/qm/ISO-298%40langmuir", "/findings", "/findings/section/isotherms", "/findings/section/isotherms/series-iso-298", "/findings/section/nothing",
        "/findings/kinetics-kin-20", "/findings/dose-dose?part=1:0..3:0..15&mark=DOSE-1.0-1",
        "/defence", "/write-up", "/daybook", "/apparatus", "/nowhere",
        "/find?for=120", "/daybook/since/1", "/bench-card", "/bench-card/paper", "/samples/ISO-20-1/card?value=mass",
    ];

    // Loaded where it is narrowest, then drawn wider, as a window is: a page is asked for once.
    private static readonly int[] Widths = [320, 480, 900, 1280];

    [Fact]
    public async Task Pages_EachOfThem_StandAtEveryWidthWithoutSeriousFault()
    {
        var page = await browsing.Open(Widths[0]);
        var faults = new List<string>();
        foreach (var path in Paths.Append(await Claim(page)))
        {
            await browsing.Go(page, path);
            foreach (var width in Widths)
            {
                await page.SetViewportSizeAsync(width, Height);
                await Keep(page, path, width, dark: false);
                await CountsAreInView(page, path, width);
            }

            faults.AddRange(await Accessibility.Faults(page));
            await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
            await Keep(page, path, Widths[^1], dark: true);
            faults.AddRange(await Accessibility.FaultsOfColour(page));
            await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
            await page.SetViewportSizeAsync(Widths[0], Height);
            Assert.Equal(1, await page.Locator("h1").CountAsync());
            Assert.Contains("Invented data", await page.Locator(".invented").InnerTextAsync(), StringComparison.Ordinal);
        }

        Assert.True(faults.Count == 0, string.Join("\n", faults));
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    /// <summary>The check itself can fail: a picture without words, and grey on grey that only the dark theme shows.</summary>
    [Fact]
    public async Task Faults_OfAFaultyPage_AreNamed()
    {
        var page = await browsing.Open();
        await browsing.Go(page, "/nowhere");
        await page.EvaluateAsync("""
            () => {
              document.querySelector('main').innerHTML = '<img src="data:,"><p class="faint">faint</p>';
              const sheet = new CSSStyleSheet();
              sheet.replaceSync('@media (prefers-color-scheme: dark) { .faint { color: #777; background: #888; } }');
              document.adoptedStyleSheets = [sheet];
            }
            """);
        Assert.Contains("image-alt", Assert.Single(await Accessibility.Faults(page)), StringComparison.Ordinal);
        Assert.Empty(await Accessibility.FaultsOfColour(page));
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        Assert.Contains("color-contrast", Assert.Single(await Accessibility.FaultsOfColour(page)), StringComparison.Ordinal);
        Assert.Contains("image-alt", await Assert.ThrowsAnyAsync<Exception>(() => Accessibility.Faultless(page.Locator("main"))) is { } e ? e.Message : "", StringComparison.Ordinal);
    }

    private static async Task CountsAreInView(IPage page, string path, int width)
    {
        var counts = page.Locator(".verdict-counts dd");
        Assert.Equal(3, await counts.CountAsync());
        for (var i = 0; i < 3; i++)
        {
            var box = await counts.Nth(i).BoundingBoxAsync();
            Assert.True(box is { Width: > 0, Height: > 0 } && box.X >= 0 && box.X + box.Width <= width && box.Y >= 0 && box.Y + box.Height <= Height, $"{path} at {width} px");
            Assert.True(int.TryParse(await counts.Nth(i).InnerTextAsync(), NumberStyles.None, CultureInfo.InvariantCulture, out _));
        }

        Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth") <= width, $"{path} scrolls sideways at {width} px");
    }

    /// <summary>No page under Findings grows with the study: each holds at most this many elements at the size of the demo.</summary>
    [Fact]
    public async Task Findings_EachOfItsPages_StaysSmall()
    {
        const int most = 2500;
        var page = await browsing.Open();
        await browsing.Go(page, "/findings");
        Assert.InRange(await page.Locator("*").CountAsync(), 100, most);
        var sections = await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('main h2 a[href^=\"/findings/section/\"]')].map(a => a.getAttribute('href'))");
        Assert.InRange(sections.Length, 10, 40);
        var seen = new List<string>(sections);
        for (var i = 0; i < seen.Count; i++)
        {
            await browsing.Go(page, seen[i]);
            Assert.True(await page.Locator("*").CountAsync() <= most, $"{seen[i]} holds {await page.Locator("*").CountAsync()} elements");
            Assert.NotEqual("There is no such section", await page.Locator("h1").InnerTextAsync());
            seen.AddRange((await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('main nav a[href^=\"/findings/section/\"]')].map(a => a.getAttribute('href'))")).Except(seen));
        }

        Assert.True(seen.Count > sections.Length + 5);
        Assert.True(browsing.Offences.Count == 0, string.Join("\n", browsing.Offences));
    }

    private async Task<string> Claim(IPage page)
    {
        await browsing.Go(page, "/defence");
        return (await page.Locator(".claims a").First.GetAttributeAsync("href"))!;
    }

    private static async Task Keep(IPage page, string path, int width, bool dark)
    {
        if (Environment.GetEnvironmentVariable("HOLDFAST_LOOK") is not { Length: > 0 } folder)
            return;
        var name = string.Concat(path.Trim('/').Select(c => char.IsLetterOrDigit(c) ? c : '-'));
        await page.ScreenshotAsync(new()
        {
            Path = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{(name.Length == 0 ? "home" : name)}-{width}{(dark ? "-dark" : "")}.png")),
        });
    }
}
