using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;
using Holdfast.Web;
using Microsoft.Playwright;

namespace Holdfast.Visitors;

/// <summary>The invented study in a folder of its own, served, with one browser to visit it.</summary>
internal sealed class ServedStudy : IAsyncDisposable
{
    private static readonly string[] Programs = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
    private readonly string root;
    private readonly IPlaywright driver;
    private readonly IBrowser browser;
    private Cookie[]? passed;

    private ServedStudy(string root, BenchHost host, IPlaywright driver, IBrowser browser) => (this.root, Host, this.driver, this.browser) = (root, host, driver, browser);

    /// <summary>The bench.</summary>
    public BenchHost Host { get; }

    /// <summary>Where the study is.</summary>
    public string Folder => Path.Combine(root, "demo");

    /// <summary>Takes the demo files in, serves the study and starts the browser.</summary>
    public static async Task<ServedStudy> Start()
    {
        var root = Directory.CreateTempSubdirectory("holdfast-visitors-").FullName;
        var folder = Path.Combine(root, "demo");
        using (var study = StudyFolder.Begin(folder, "invented demo student", TimeProvider.System, new StudyBegun("nickel on EHA-2 (invented)", "Ni", Invented: true)))
        {
            var files = Directory.GetFiles(Demo()).Where(f => !f.EndsWith(".md", StringComparison.Ordinal)).ToArray();
            if (Take.Files(study, files, new TakeOptions(), "invented demo student").Entry is null)
                throw new InvalidOperationException("The demo study was not taken in whole.");
        }

        var host = BenchHost.Create(new BenchOptions(folder, TimeProvider.System, "invented demo student"));
        await host.Start();
        var driver = await Playwright.CreateAsync();
        var browser = await driver.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Programs.FirstOrDefault(File.Exists) ?? throw new InvalidOperationException("No Chromium in /usr/bin."),
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--disable-renderer-backgrounding", "--disable-background-timer-throttling"],
        });
        return new ServedStudy(root, host, driver, browser);
    }

    /// <summary>A browser of its own, with nothing kept from earlier visits, that has passed the start address.</summary>
    public async Task<IBrowserContext> Visitor()
    {
        var context = await browser.NewContextAsync();
        if (passed is null)
        {
            await (await context.NewPageAsync()).GotoAsync(Host.StartAddress.ToString());
            passed = [.. (await context.CookiesAsync()).Select(c => new Cookie { Name = c.Name, Value = c.Value, Url = Host.Address })];
            await context.CloseAsync();
            context = await browser.NewContextAsync();
        }

        await context.AddCookiesAsync(passed);
        context.SetDefaultTimeout(120_000);
        return context;
    }

    /// <summary>Stops the host, so that the study can be opened to look at.</summary>
    public async Task Close() => await Host.DisposeAsync();

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await browser.DisposeAsync();
        driver.Dispose();
        await Host.DisposeAsync();
        foreach (var file in Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories))
            File.SetAttributes(file, FileAttributes.Normal);
        Directory.Delete(root, recursive: true);
    }

    private static string Demo()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            var here = Path.Combine(at.FullName, "samples", "demo");
            if (Directory.Exists(here))
                return here;
        }

        throw new InvalidOperationException("samples/demo is not above this program.");
    }
}
