using System.Collections.Immutable;

namespace Holdfast.Studies.Import;

/// <summary>
/// A kind of file that can be read as tables. Every implementation with a constructor that takes nothing is found by
/// <see cref="Catalogue"/>: a new kind is one file, and nothing else is edited.
/// </summary>
public interface IFileReader
{
    /// <summary>What it reads, in words: "delimited text".</summary>
    string Name { get; }

    /// <summary>Asked in rising order; the reader of plain text comes last, since nearly anything could be text.</summary>
    int Order { get; }

    /// <summary>True when the bytes are of this kind. The name of the file is no evidence.</summary>
    /// <param name="bytes">The whole file.</param>
    bool Recognises(ReadOnlySpan<byte> bytes);

    /// <summary>Largest file of this kind, in bytes.</summary>
    long Largest => Limits.File;

    /// <summary>The tables of the file.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="fileName">Its name, for messages.</param>
    /// <param name="answers">Answers to questions about it.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="StudyException">Damaged (HF-406) or past a limit (HF-407).</exception>
    ImmutableArray<Grid> Read(byte[] bytes, string fileName, Answers answers, CancellationToken cancel);
}
