using System.Collections.Immutable;

namespace Holdfast.Studies.Import;

/// <summary>Every kind of file that can be read, found by <see cref="Catalogue"/>.</summary>
public static class FileReaders
{
    private static readonly Lazy<ImmutableArray<IFileReader>> Found = new(() =>
        [.. Catalogue.Of<IFileReader>().OrderBy(r => r.Order).ThenBy(r => r.Name, StringComparer.Ordinal)]);

    /// <summary>All of them, in the order in which they are asked.</summary>
    public static ImmutableArray<IFileReader> All => Found.Value;

    /// <summary>The reader for these bytes, or null when no kind is recognised.</summary>
    /// <param name="bytes">The whole file.</param>
    public static IFileReader? For(byte[] bytes) => All.FirstOrDefault(r => r.Recognises(bytes));
}
