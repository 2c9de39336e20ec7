namespace Holdfast.Reports.Documents;

/// <summary>One of several files that a document is written as.</summary>
/// <param name="Name">Where it lies beside the first of them, with "/" between folders.</param>
/// <param name="Bytes">What it holds.</param>
public sealed record DocumentFile(string Name, ReadOnlyMemory<byte> Bytes);
