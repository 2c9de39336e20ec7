using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;
using Holdfast.Testing;

namespace Holdfast.Web.Tests;

/// <summary>The bench with the invented study, in a folder that is gone afterwards.</summary>
public sealed class DemoBench : IAsyncDisposable
{
    private readonly string root;

    private DemoBench(string root, BenchHost host) => (this.root, Host) = (root, host);

    /// <summary>The running host.</summary>
    public BenchHost Host { get; }

    /// <summary>Begins the study, takes the demo files in and starts the host.</summary>
    public static async Task<DemoBench> Start()
    {
        var root = Directory.CreateTempSubdirectory("holdfast-bench-").FullName;
        var folder = System.IO.Path.Combine(root, "demo");
        using (var study = StudyFolder.Begin(folder, "invented demo student", TimeProvider.System, new StudyBegun("nickel on EHA-2 (invented)", "Ni", Invented: true)))
        {
            var taken = Take.Files(study, Directory.GetFiles(Repository.Path("samples", "demo")).Where(f => !f.EndsWith(".md", StringComparison.Ordinal)).ToArray(), new TakeOptions(), "invented demo student");
            Assert.NotNull(taken.Entry);
        }

        var host = BenchHost.Create(new BenchOptions(folder, TimeProvider.System, "invented demo student"));
        await host.Start(CancellationToken.None);
        return new DemoBench(root, host);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await Host.DisposeAsync();
        foreach (var file in Directory.EnumerateFiles(root, "*", SearchOption.AllDirectories))
            File.SetAttributes(file, FileAttributes.Normal);
        Directory.Delete(root, recursive: true);
    }
}
