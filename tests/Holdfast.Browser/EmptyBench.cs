using Holdfast.Claims.Analyses;
using Holdfast.Studies.History;
using Holdfast.Studies.Properties;
using Holdfast.Studies.Store;
using Holdfast.Testing;
using Holdfast.Web;

namespace Holdfast.Browser;

/// <summary>The bench with a study that holds nothing yet, in a folder that is gone afterwards.</summary>
internal sealed class EmptyBench : IAsyncDisposable
{
    private readonly string root;
    private BenchHost? host;

    private EmptyBench(string root) => this.root = root;

    /// <summary>The address to open: it carries the secret, and works once.</summary>
    public Uri Start => host!.StartAddress;

    /// <summary>Scheme, name and port.</summary>
    public string Address => host!.Address;

    private string Folder => Path.Combine(root, "study");

    /// <summary>Begins a study and starts the host.</summary>
    /// <param name="analyte">Symbol of the metal.</param>
    public static async Task<EmptyBench> Open(string analyte)
    {
        var bench = new EmptyBench(Directory.CreateTempSubdirectory("holdfast-empty-").FullName);
        StudyFolder.Begin(bench.Folder, "invented student", TimeProvider.System, new StudyBegun("first files (invented)", analyte, Invented: true)).Dispose();
        bench.host = BenchHost.Create(new BenchOptions(bench.Folder, TimeProvider.System, "invented student"));
        await bench.host.Start(CancellationToken.None);
        return bench;
    }

    /// <summary>Stops the host and works the study out from what lies on the disk.</summary>
    public async Task<Evidence> Close()
    {
        await host!.DisposeAsync();
        host = null;
        using var study = StudyFolder.OpenToRead(Folder);
        return Evidence.Of(study.Study);
    }

    /// <summary>Vessels with their quantities, as the cases ask for them.</summary>
    /// <param name="evidence">The study worked out.</param>
    public static IReadOnlyList<TrueRow> Rows(Evidence evidence) => [.. evidence.Vessels.Where(v => !v.IsStruck).Select(v => new TrueRow(
        v.Code, v.Sample.Series ?? "", v.End is { IsBelowDetection: false, Value: { } left } ? left.Value : null, v.Removal?.Value, v.Uptake?.Value, v.Sample.Number(BatchProperties.ContactTime)))];

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (host is not null)
            await host.DisposeAsync();
        foreach (var file in Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories))
            File.SetAttributes(file, FileAttributes.Normal);
        Directory.Delete(root, recursive: true);
    }
}
