using System.Text.Json;

namespace Holdfast.Studies.Tests;

/// <summary>Two studies hold the same: everything but which entry they come from.</summary>
internal static class Same
{
    public static void Study(Study expected, Study actual) => Assert.Equal(Text(expected), Text(actual));

    // The plain tables would not do: they leave out what they do not show. Every member is compared.
    private static string Text(Study study)
        => JsonSerializer.Serialize(study with { Version = 0, Fingerprint = "", ReadingsEver = 0, MeasurementsEver = 0 });
}
