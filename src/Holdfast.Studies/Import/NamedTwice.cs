using Holdfast.Studies.Import.Headings;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Import;

/// <summary>Other names of samples: a column of a sheet ("sent as"), or lines of text ("701 = S2").</summary>
internal static class NamedTwice
{
    private const int FewestLines = 2;

    /// <summary>Codes by the other name, in any case of letters; a name of several samples is none.</summary>
    /// <param name="samples">Samples that are known.</param>
    /// <param name="lines">Lines of text about them.</param>
    public static Dictionary<string, string> Of(IReadOnlyCollection<Sample> samples, IEnumerable<string> lines)
    {
        var codes = new CodeIndex(samples.Select(s => s.Code));
        var said = lines.Select(l => l.Split(['=', ':', '→'], StringSplitOptions.TrimEntries)).Where(p => p.Length == 2)
            .Select(p => (codes.Find(p[0]), codes.Find(p[1])) switch
            {
                ([], [var code]) => (Name: p[0], Code: code),
                ([var code], []) => (Name: p[1], Code: code),
                _ => default,
            }).Where(n => n.Name is { Length: > 0 } name && name.Any(char.IsDigit) && !name.Contains(' ', StringComparison.Ordinal) && Lexicon.Tokens(name).Length <= 2).ToList();
        return samples.Where(s => s.Words(SampleProperties.Alias) is not null).Select(s => (Name: s.Words(SampleProperties.Alias)!, s.Code)).Concat(said.Count >= FewestLines ? said : [])
            .GroupBy(n => n.Name, StringComparer.OrdinalIgnoreCase).Where(g => g.Select(n => n.Code).Distinct(StringComparer.Ordinal).Count() == 1).ToDictionary(g => g.Key, g => g.First().Code, StringComparer.OrdinalIgnoreCase);
    }
}
