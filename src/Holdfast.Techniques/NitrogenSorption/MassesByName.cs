using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Holdfast.Studies;
using Holdfast.Studies.Import;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>Masses of several powders that one line gives by their names: "weighed after drying: bare 0.2210 g, with iron 0.1984 g".</summary>
internal static partial class MassesByName
{
    private const string InOrder = "in-order", Unknown = "not-known";

    /// <summary>The mass of each powder; empty where no line gives one to every powder and to each a single one.</summary>
    /// <param name="source">The grid and where it is said that masses without names are taken in order.</param>
    /// <param name="lines">Lines outside the tables.</param>
    /// <param name="powders">Names of the powders as they stand above their columns; at least two.</param>
    public static ImmutableDictionary<string, MeasuredSetting> Of(MeasurementSource source, IEnumerable<GridRow> lines, IReadOnlyList<string> powders)
    {
        foreach (var row in lines)
        {
            var text = string.Join("; ", row.Cells.Where(c => !c.IsBlank).Select(c => c.Text));
            var found = Stated().Matches(text).Select(m => (Powder: Only(powders, m.Groups["before"].Value) ?? Only(powders, m.Groups["behind"].Value), Mass: Setting(m, row.Number))).ToList();
            if (found.Count == powders.Count && found.TrueForAll(f => f.Powder is not null) && found.Select(f => f.Powder).Distinct().Count() == powders.Count)
                return found.ToImmutableDictionary(f => f.Powder!, f => f.Mass);
            // "61.8 mg, 64.0 mg and 60.5 mg" over three powders.
            if (found.Count == powders.Count && found.TrueForAll(f => f.Powder is null))
            {
                var said = $"Line {row.Number.ToString(CultureInfo.InvariantCulture)} gives {found.Count.ToString(CultureInfo.InvariantCulture)} masses without names: they are taken in the order of {string.Join(", ", powders)}.";
                return source.Talk.Assume(source.Question("masses"), Codes.Ambiguous, said, [InOrder, Unknown]) == InOrder ? powders.Index().ToImmutableDictionary(p => p.Item, p => found[p.Index].Mass) : ImmutableDictionary<string, MeasuredSetting>.Empty;
            }
        }

        return ImmutableDictionary<string, MeasuredSetting>.Empty;
    }

    private static MeasuredSetting Setting(Match mass, int row)
        => new("mass", mass.Groups["mass"].Value, double.Parse(mass.Groups["number"].Value.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture), mass.Groups["unit"].Value, row);

    // The one powder that shares the most words with a label: "with iron" is "with 3 % iron".
    private static string? Only(IReadOnlyList<string> powders, string label)
    {
        var words = Words(label);
        var shared = powders.Select(p => (Powder: p, Shared: Words(p).Count(w => words.Contains(w, StringComparer.Ordinal)))).OrderByDescending(s => s.Shared).ToList();
        return shared[0].Shared > 0 && shared[0].Shared > shared[1].Shared ? shared[0].Powder : null;
    }

    private static string[] Words(string text) => FileWords.Plain(text).Split([' ', ',', ';', ':', '=', '(', ')', '.', '%'], StringSplitOptions.RemoveEmptyEntries);

    // The name before its mass, or in brackets behind it.
    [GeneratedRegex(@"(?<before>[^,;]*?)(?<mass>(?<number>\d+([.,]\d+)?)\s*(?<unit>mg|g))\b(\s*\((?<behind>[^)]*)\))?", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Stated();
}
