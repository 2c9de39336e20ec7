using Holdfast.Web.Tests;
using Microsoft.Playwright;
using Xunit.Sdk;

namespace Holdfast.Browser;

/// <summary>A browser on the invented study. Every page it opens is watched: nothing may be asked of another origin, nothing may break the content policy.</summary>
public sealed class Browsing : IAsyncLifetime
{
    private static readonly string[] Places = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
    private readonly List<string> offences = [];
    private readonly List<(ITest? Test, IBrowserContext Context)> left = [];
    private Cookie? cookie;
    private IPlaywright? driver;
    private IBrowser? browser;

    /// <summary>The bench with the invented study, from the first page that is opened on it.</summary>
    public DemoBench Bench { get; private set; } = null!;

    /// <summary>What broke a rule since the last page was opened.</summary>
    public IReadOnlyList<string> Offences => offences;

    /// <summary>True where there is a browser to drive.</summary>
    public static bool IsInstalled => Chromium is not null;

    private static string? Chromium => Places.FirstOrDefault(File.Exists);

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        if (Chromium is not { } program)
            return;
        driver = await Playwright.CreateAsync();
        browser = await driver.Chromium.LaunchAsync(new()
        {
            ExecutablePath = program,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    /// <summary>A new page of the reader who passed the start address; the test is skipped where no browser is installed.</summary>
    /// <param name="width">Width in CSS pixels.</param>
    /// <param name="dark">True for the dark theme.</param>
    public async Task<IPage> Open(int width = 1280, bool dark = false)
    {
        if (browser is not null && cookie is null)
        {
            Bench = await DemoBench.Start();
            cookie = await Pass();
        }

        return await Watched(Bench?.Host.Address ?? "", width, dark, cookie);
    }

    /// <summary>A new page on a bench of its own, to be opened by its start address.</summary>
    /// <param name="address">Scheme, name and port: what else is asked is an offence.</param>
    public Task<IPage> OpenOn(string address) => Watched(address, 1280, dark: false, null);

    // The start address works once, and gives the cookie that every page of this reader carries from then on, as in life.
    private async Task<Cookie> Pass()
    {
        using var handler = new HttpClientHandler { AllowAutoRedirect = false, UseCookies = false };
        using var client = new HttpClient(handler);
        using var answer = await client.GetAsync(Bench.Host.StartAddress);
        var given = answer.Headers.GetValues("Set-Cookie").Single().Split(';')[0].Split('=', 2);
        return new Cookie { Name = given[0], Value = given[1], Url = Bench.Host.Address, HttpOnly = true, SameSite = SameSiteAttribute.Strict };
    }

    private async Task<IPage> Watched(string address, int width, bool dark, Cookie? pass)
    {
        Assert.SkipWhen(browser is null, "No Chromium in /usr/bin: install the package chromium, or run scripts/test.sh, which does.");
        await CloseWhatOthersLeft();
        offences.Clear();
        var context = await browser!.NewContextAsync(new()
        {
            ViewportSize = new() { Width = width, Height = 900 },
            ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
            Permissions = ["clipboard-read", "clipboard-write"],
            ReducedMotion = ReducedMotion.Reduce,
        });
        left.Add((TestContext.Current.Test, context));
        if (pass is not null)
            await context.AddCookiesAsync([pass]);
        await context.AddInitScriptAsync("document.addEventListener('securitypolicyviolation', e => console.error('policy: ' + e.violatedDirective + ' ' + e.blockedURI))");
        context.SetDefaultTimeout(60_000);
        await SlowLine.Lay(context);
        var page = await context.NewPageAsync();
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(address, StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal) && !request.Url.StartsWith("blob:", StringComparison.Ordinal))
                offences.Add("asked elsewhere: " + request.Url);
        };
        page.Console += (_, message) =>
        {
            if (message.Type == "error" && !IsOfTheLine(message.Text))
                offences.Add("console: " + message.Text);
        };
        page.PageError += (_, error) => offences.Add("script: " + error);
        return page;
    }

    // On a busy machine the live connection may drop and come back: the page heals by itself, which LostTests holds, and a page that did not would fail its own test.
    private static bool IsOfTheLine(string text)
        => text.Contains("Connection disconnected with error", StringComparison.Ordinal) || text.Contains("/_blazor?id=", StringComparison.Ordinal) || text.Contains("Failed to start the transport", StringComparison.Ordinal);

    // A test that fails leaves its page open, and a page whose bench is gone complains for ever: it must not speak into the next test.
    private async Task CloseWhatOthersLeft()
    {
        foreach (var (_, context) in left.Where(l => l.Test != TestContext.Current.Test).ToList())
            await context.CloseAsync();
        left.RemoveAll(l => l.Test != TestContext.Current.Test);
    }

    /// <summary>Goes to a page and waits until it answers and the study is worked out.</summary>
    /// <param name="page">The page.</param>
    /// <param name="path">Path, from a slash.</param>
    public async Task Go(IPage page, string path)
    {
        ArgumentNullException.ThrowIfNull(page);
        await page.GotoAsync(Bench.Host.Address + path, new() { WaitUntil = WaitUntilState.Load });
        await page.WaitForFunctionAsync("() => document.querySelector('.bench[data-alive]') && !document.querySelector('.defence .working, [aria-busy=true], .grid-frame:not([data-ready])')");
    }

    /// <summary>Waits until the page stands at an address; a page that changes in place loads nothing that could be waited for.</summary>
    /// <param name="page">The page.</param>
    /// <param name="path">Begin of the path with its query, from a slash.</param>
    public static Task At(IPage page, string path)
    {
        ArgumentNullException.ThrowIfNull(page);
        return page.WaitForFunctionAsync("path => (location.pathname + location.search).startsWith(path)", path);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (browser is not null)
            await browser.DisposeAsync();
        driver?.Dispose();
        if (Bench is not null)
            await Bench.DisposeAsync();
    }
}
