using System.Globalization;
using System.Text.Json;
using Holdfast.Diffraction;
using Holdfast.Testing;

namespace Holdfast.Tests.Diffraction;

/// <summary>Made and measured patterns from outside the repository, and what is known of them.</summary>
internal static class Patterns
{
    /// <summary>Copper, both lines, as the made patterns use it.</summary>
    public static Radiation Copper { get; } = Radiation.Of("Cu")!;

    /// <summary>A two-column file.</summary>
    public static PowderScan Read(params string[] parts)
    {
        var rows = File.ReadLines(Repository.Verbatim(["characterisation", "xrd", .. parts]))
            .Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(c => double.Parse(c, CultureInfo.InvariantCulture)).ToArray()).ToArray();
        return new([.. rows.Select(r => r[0])], [.. rows.Select(r => r[1])]);
    }

    /// <summary>A file of checks in the repository.</summary>
    public static JsonElement Checks(params string[] parts)
        => JsonDocument.Parse(File.ReadAllText(Repository.Path(["reference", "characterisation", "xrd", .. parts]))).RootElement;
}
