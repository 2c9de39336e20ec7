using System.Collections.Concurrent;
using Holdfast.Testing;

namespace Holdfast.Conventions;

/// <summary>The files of the repository, as a reader of it sees them.</summary>
internal static class Sources
{
    private static readonly string[] Skipped = ["artifacts", ".git", "TestResults", "bin", "obj", "__mismatch__", "holdfast-demo"];
    private static readonly string[] TextEndings =
        [".cs", ".razor", ".css", ".js", ".html", ".md", ".csproj", ".props", ".slnx", ".json", ".txt", ".csv", ".sh", ".cff", ".yml", ".py", ".snap"];

    private static readonly ConcurrentDictionary<string, string> Read = new(StringComparer.Ordinal);

    /// <summary>Every text file, by its path below the root with forward slashes.</summary>
    public static IReadOnlyList<string> Texts { get; } =
        [.. Below(Repository.Root).Where(p => TextEndings.Contains(Path.GetExtension(p), StringComparer.Ordinal)).Order(StringComparer.Ordinal)];

    /// <summary>Every C# and Razor file of shipped code.</summary>
    public static IEnumerable<string> Shipped => Texts.Where(p => p.StartsWith("src/", StringComparison.Ordinal) && IsCode(p));

    /// <summary>Every C#, Razor and style sheet file, tests and samples included.</summary>
    public static IEnumerable<string> Code => Texts.Where(p => IsCode(p) || p.EndsWith(".css", StringComparison.Ordinal));

    /// <summary>The lines of a file.</summary>
    /// <param name="path">Path below the root.</param>
    public static string[] Lines(string path) => Text(path).TrimEnd('\n').Split('\n');

    /// <summary>The text of a file.</summary>
    /// <param name="path">Path below the root.</param>
    public static string Text(string path) => Read.GetOrAdd(path, p => File.ReadAllText(Repository.Path(p.Split('/'))));

    private static bool IsCode(string path)
        => path.EndsWith(".cs", StringComparison.Ordinal) || path.EndsWith(".razor", StringComparison.Ordinal);

    private static IEnumerable<string> Below(string folder)
    {
        foreach (var file in Directory.EnumerateFiles(folder))
            yield return Path.GetRelativePath(Repository.Root, file).Replace('\\', '/');
        foreach (var below in Directory.EnumerateDirectories(folder).Where(d => !Skipped.Contains(Path.GetFileName(d), StringComparer.Ordinal)))
        {
            foreach (var file in Below(below))
                yield return file;
        }
    }
}
