namespace Holdfast.Reports.HandOver;

/// <summary>One file of a package that is handed over, with what is said of it.</summary>
/// <param name="Name">Its name in the package, with "/" between folders.</param>
/// <param name="Bytes">What it holds.</param>
/// <param name="Says">What it is, in words.</param>
/// <param name="Kind">What it is for: "raw", "plain", "table", "figure", "document", "characterisation", "description".</param>
internal sealed record HandOverFile(string Name, byte[] Bytes, string Says, string Kind)
{
    private static readonly Dictionary<string, string> Types = new(StringComparer.OrdinalIgnoreCase)
    {
        [".csv"] = "text/csv",
        [".json"] = "application/json",
        [".jsonl"] = "application/jsonl",
        [".md"] = "text/markdown",
        [".txt"] = "text/plain",
        [".cff"] = "application/yaml",
        [".svg"] = "image/svg+xml",
        [".pdf"] = "application/pdf",
        [".png"] = "image/png",
        [".jpg"] = "image/jpeg",
        [".tif"] = "image/tiff",
        [".tiff"] = "image/tiff",
        [".docx"] = "application/vnd.openxmlformats-officedocument.wordprocessingml.document",
        [".xlsx"] = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
        [".aif"] = "chemical/x-cif",
        [".cif"] = "chemical/x-cif",
        [".jdx"] = "chemical/x-jcamp-dx",
    };

    /// <summary>Ending of its name without the point, lower case; "bin" where it has none.</summary>
    public string Format => Path.GetExtension(Name) is { Length: > 1 } end && end[1..].All(char.IsAsciiLetterOrDigit) ? end[1..].ToLowerInvariant() : "bin";

    /// <summary>Its media type.</summary>
    public string MediaType => Types.GetValueOrDefault(Path.GetExtension(Name), "application/octet-stream");

    /// <summary>Encoding of what is written here as text; null for pictures, documents, and files as they were taken in.</summary>
    public string? Encoding => Kind != "raw" && (MediaType.StartsWith("text/", StringComparison.Ordinal) || MediaType.StartsWith("chemical/", StringComparison.Ordinal) || Format is "json" or "jsonl" or "svg" or "cff") ? "utf-8" : null;
}
