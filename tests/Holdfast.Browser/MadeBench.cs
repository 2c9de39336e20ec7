using System.Text;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;
using Holdfast.Web;
using Microsoft.Playwright;

namespace Holdfast.Browser;

/// <summary>A bench with a small invented study of its own: vessels without volumes, two runs with standards, one without.</summary>
internal sealed class MadeBench : IAsyncDisposable
{
    private readonly string root;
    private IPage? page;

    private MadeBench(string root, BenchHost host) => (this.root, Host) = (root, host);

    /// <summary>The running host.</summary>
    public BenchHost Host { get; }

    /// <summary>Begins the study, takes its files in and starts the host.</summary>
    /// <param name="files">Names and texts of the files.</param>
    public static Task<MadeBench> Start(params (string Name, string Text)[] files) => Start([.. files.Select(f => (f.Name, Encoding.UTF8.GetBytes(f.Text)))]);

    /// <summary>Begins the study, takes its files in and starts the host.</summary>
    /// <param name="files">Names and bytes of the files.</param>
    public static async Task<MadeBench> Start((string Name, byte[] Bytes)[] files)
    {
        var root = Directory.CreateTempSubdirectory("holdfast-made-").FullName;
        var folder = Path.Combine(root, "study");
        using (var study = StudyFolder.Begin(folder, "Ada", TimeProvider.System, new StudyBegun("small study (invented)", null, Invented: true)))
        {
            foreach (var (name, bytes) in files)
            {
                var taken = Take.Keep(study, Take.Understand(study.Study, [new IncomingFile(name, bytes)], Answers.None), new TakeOptions(), "Ada");
                Assert.NotNull(taken.Entry);
            }
        }

        var host = BenchHost.Create(new BenchOptions(folder, TimeProvider.System, "Ada") { Example = () => new Study { Title = "worked example", Invented = true } });
        await host.Start(CancellationToken.None);
        return new MadeBench(root, host);
    }

    /// <summary>A page on it, which is closed before the bench is: it would call for it ever after.</summary>
    /// <param name="browsing">The browser.</param>
    public async Task<IPage> Open(Browsing browsing)
    {
        var opened = await browsing.OpenOn(Host.Address);
        page = opened;
        await opened.GotoAsync(Host.StartAddress.ToString());
        await opened.Locator(".bench[data-alive]").WaitForAsync();
        return opened;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (page is not null)
            await page.Context.CloseAsync();
        await Host.DisposeAsync();
        foreach (var file in Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories))
            File.SetAttributes(file, FileAttributes.Normal);
        Directory.Delete(root, recursive: true);
    }
}
