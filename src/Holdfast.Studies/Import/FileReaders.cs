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

    /// <summary>Bytes that tell whether a file may be larger than <see cref="Limits.File"/>.</summary>
    public const int Head = 64;

    /// <summary>How large a file that begins like this may be, in bytes: only kinds that say so may pass <see cref="Limits.File"/>.</summary>
    /// <param name="head">Its first bytes.</param>
    public static long Largest(byte[] head) => All.Where(r => r.Largest > Limits.File).FirstOrDefault(r => r.Recognises(head))?.Largest ?? Limits.File;
}
