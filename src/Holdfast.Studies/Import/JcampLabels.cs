using System.Collections.Frozen;
using System.Globalization;

namespace Holdfast.Studies.Import;

/// <summary>What the labels of a JCAMP-DX block say.</summary>
internal sealed class JcampLabels
{
    // What the standard writes for an axis, as a heading with a unit that is known here.
    private static readonly FrozenDictionary<string, string> Axes = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["1CM"] = "wavenumber (1/cm)",
        ["CM1"] = "wavenumber (1/cm)",
        ["NANOMETERS"] = "wavelength (nm)",
        ["NANOMETRES"] = "wavelength (nm)",
        ["NM"] = "wavelength (nm)",
        ["MICROMETERS"] = "wavelength (µm)",
        ["MICROMETRES"] = "wavelength (µm)",
        ["SECONDS"] = "time (s)",
        ["MINUTES"] = "time (min)",
        ["HZ"] = "frequency (Hz)",
        ["ABSORBANCE"] = "absorbance (1)",
        ["A"] = "absorbance (1)",
        ["TRANSMITTANCE"] = "transmittance",
        ["TRANSMISSION"] = "transmittance",
        ["REFLECTANCE"] = "reflectance",
        ["INTENSITY"] = "intensity (a.u.)",
        ["RELATIVEINTENSITY"] = "intensity (a.u.)",
        ["ARBITRARYUNITS"] = "intensity (a.u.)",
        ["COUNTS"] = "intensity (a.u.)",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private readonly IReadOnlyList<JcampRecord> block;
    private readonly string fileName;

    /// <summary>Labels of one block.</summary>
    /// <param name="block">Its records.</param>
    /// <param name="fileName">The file, for messages.</param>
    public JcampLabels(IReadOnlyList<JcampRecord> block, string fileName) => (this.block, this.fileName) = (block, fileName);

    /// <summary>A heading for an axis: the words of the trade where they are known, else the axis with what the file wrote.</summary>
    /// <param name="units">What XUNITS or YUNITS says, or null.</param>
    /// <param name="axis">"x" or "y".</param>
    public static string Heading(string? units, string axis)
        => units is null || JcampRecord.Key(units) is not { Length: > 0 } key ? axis : Axes.GetValueOrDefault(key) ?? $"{axis} {units.Trim()}";

    /// <summary>A label's words, or null.</summary>
    /// <param name="label">In capitals without blanks.</param>
    public string? Words(string label) => block.FirstOrDefault(r => r.Label == label)?.Value is { Length: > 0 } words ? words : null;

    /// <summary>A label's number, or null when it is absent or no number.</summary>
    /// <param name="label">In capitals without blanks.</param>
    public double? Number(string label)
        => double.TryParse(Words(label), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;

    /// <summary>A label's number, without which the spectrum has no axis.</summary>
    /// <param name="label">In capitals without blanks.</param>
    /// <exception cref="StudyException">It is absent or no number (HF-406).</exception>
    public double Needed(string label)
        => Number(label) ?? throw new StudyException(Codes.Unreadable, $"{fileName} does not say {label}, so its axis is not known and nothing is taken in. Export it again.");
}
