using System.Collections.Immutable;

namespace Holdfast.Studies.Acts;

/// <summary>Which samples something is set for: a series, codes, what one file brought, or every vessel.</summary>
/// <param name="Series">One series by its name, or null.</param>
/// <param name="Codes">Codes; * stands for any letters. Empty for no such choice.</param>
/// <param name="File">Name of a file that was taken in, or null.</param>
public sealed record SampleSelection(string? Series, ImmutableArray<string> Codes, string? File)
{
    /// <summary>Every sample that is filled, shaken and separated.</summary>
    public static SampleSelection Vessels { get; } = new(null, [], null);

    /// <summary>The samples, in the order they came, or none with what is wrong with the choice.</summary>
    /// <param name="study">The study.</param>
    /// <param name="trouble">What is wrong; "" when nothing is.</param>
    public ImmutableArray<Sample> In(Study study, out string trouble)
    {
        ArgumentNullException.ThrowIfNull(study);
        trouble = "";
        var unknown = Codes.Where(c => !study.Samples.Any(s => Fits(s.Code, c))).ToArray();
        if (unknown.Length > 0)
        {
            trouble = $"There is no sample {string.Join(", ", unknown)} in this study.";
            return [];
        }

        var read = File is null ? [] : study.Readings.Where(r => r.Origin.FileName == File).Select(r => r.Sample).ToHashSet(StringComparer.Ordinal);
        ImmutableArray<Sample> chosen = [.. study.Samples.Where(s =>
            (Codes.IsEmpty ? Series is not null || File is not null || IsFilled(s) : Codes.Any(c => Fits(s.Code, c)))
            && (Series is null || string.Equals(s.Series, Series, StringComparison.OrdinalIgnoreCase))
            && (File is null || read.Contains(s.Code) || s.Facts.Values.Any(f => f.Origin.FileName == File)))];
        if (chosen.IsEmpty)
        {
            trouble = Series is not null ? $"This study has no series {Series}. Series: {Listed(study.Samples.Select(s => s.Series))}."
                : File is not null ? $"No sample came with {File}. Files: {Listed(study.Originals.Select(o => o.FileName))}."
                : "This study has no vessel yet.";
        }

        return chosen;
    }

    /// <summary>True for samples that are filled, shaken and separated: everything but what serves the instrument.</summary>
    /// <param name="sample">The sample.</param>
    public static bool IsFilled(Sample sample)
    {
        ArgumentNullException.ThrowIfNull(sample);
        return sample.Role is not (SampleRole.Standard or SampleRole.CheckStandard or SampleRole.Blank or SampleRole.Solvent or SampleRole.StartSolution);
    }

    private static bool Fits(string code, string pattern)
    {
        var parts = pattern.Split('*');
        if (parts.Length == 1)
            return string.Equals(code, pattern, StringComparison.OrdinalIgnoreCase);
        if (code.Length < parts.Sum(p => p.Length) || !code.StartsWith(parts[0], StringComparison.OrdinalIgnoreCase) || !code.EndsWith(parts[^1], StringComparison.OrdinalIgnoreCase))
            return false;
        var (at, end) = (parts[0].Length, code.Length - parts[^1].Length);
        foreach (var part in parts[1..^1])
        {
            at = code.IndexOf(part, at, end - at, StringComparison.OrdinalIgnoreCase);
            if (at < 0)
                return false;
            at += part.Length;
        }

        return true;
    }

    private static string Listed(IEnumerable<string?> names) => string.Join(", ", names.OfType<string>().Distinct(StringComparer.Ordinal)) is { Length: > 0 } list ? list : "none";
}
