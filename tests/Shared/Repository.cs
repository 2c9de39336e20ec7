using System.Reflection;

namespace Holdfast.Testing;

/// <summary>Where the tests find files: the repository itself, and the outside files that only some machines have.</summary>
internal static class Repository
{
    /// <summary>The repository's root folder.</summary>
    public static string Root { get; } = typeof(Repository).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .First(a => a.Key == "RepositoryRoot").Value!;

    /// <summary>A file or folder below the root.</summary>
    public static string Path(params string[] parts) => System.IO.Path.Combine([Root, .. parts]);

    /// <summary>
    /// A third-party file kept verbatim outside the repository, in the folder that HOLDFAST_REFERENCE names. The test that asks
    /// for it counts as skipped where the folder is not set.
    /// </summary>
    public static string Verbatim(params string[] parts)
    {
        var folder = Environment.GetEnvironmentVariable("HOLDFAST_REFERENCE");
        Assert.SkipWhen(string.IsNullOrEmpty(folder), "HOLDFAST_REFERENCE is not set: the third-party file is not in the repository.");
        var path = System.IO.Path.Combine([folder!, .. parts]);
        Assert.True(File.Exists(path) || Directory.Exists(path), $"{path} is missing from HOLDFAST_REFERENCE.");
        return path;
    }
}
