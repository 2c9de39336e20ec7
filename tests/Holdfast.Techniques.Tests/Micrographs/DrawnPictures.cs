using System.Text.Json;

namespace Holdfast.Techniques.Tests.Micrographs;

/// <summary>Drawn pictures with known particles: the folder "characterisation/micrographs" of HOLDFAST_REFERENCE, whose README says how each was made. Invented.</summary>
internal static class DrawnPictures
{
    private static readonly string? Root = Environment.GetEnvironmentVariable("HOLDFAST_REFERENCE") is { Length: > 0 } reference && Directory.Exists(Path.Combine(reference, "characterisation", "micrographs"))
        ? Path.Combine(reference, "characterisation", "micrographs") : null;

    /// <summary>Name and bytes of a picture; the test is skipped where the folder is not there.</summary>
    /// <param name="id">Its folder.</param>
    public static (string Name, byte[] Bytes) Of(string id)
    {
        Assert.SkipWhen(Root is null, "HOLDFAST_REFERENCE names no folder with drawn micrographs.");
        var file = Directory.EnumerateFiles(Path.Combine(Root!, id)).Single(f => Path.GetExtension(f) is ".png" or ".tif" or ".jpg");
        return (Path.GetFileName(file), File.ReadAllBytes(file));
    }

    /// <summary>What is true of it.</summary>
    /// <param name="id">Its folder.</param>
    public static JsonElement Truth(string id)
    {
        Assert.SkipWhen(Root is null, "HOLDFAST_REFERENCE names no folder with drawn micrographs.");
        return JsonDocument.Parse(File.ReadAllText(Path.Combine(Root!, id, "truth.json"))).RootElement;
    }
}
