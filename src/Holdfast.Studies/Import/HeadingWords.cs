using System.Collections.Frozen;
using System.Collections.Immutable;

namespace Holdfast.Studies.Import;

/// <summary>Headings that are no property of a sample: how a table is laid out, and the columns of the sheets for claims, margins and apparatus.</summary>
internal static class HeadingWords
{
    /// <summary>Where a row stands; a reader of the file knows that already.</summary>
    public static readonly FrozenSet<string> Position = Set("position", "pos", "no", "nr", "number", "rack", "seq", "sequence", "tube");

    /// <summary>Which repeat of a reading a row is.</summary>
    public static readonly FrozenSet<string> Repeat = Set("replicate", "rep", "repeat", "readingno", "repno");

    /// <summary>Which separately diluted or poured portion a row is.</summary>
    public static readonly FrozenSet<string> Portion = Set("portion", "aliquot", "portionno");

    public static readonly FrozenSet<string> Claim = Set("claim", "claimid", "claims");
    public static readonly FrozenSet<string> Rule = Set("rule", "claimrule");
    public static readonly FrozenSet<string> Wording = Set("wording", "words", "statement", "inmywords");
    public static readonly FrozenSet<string> Margin = Set("margin", "margins");
    public static readonly FrozenSet<string> Low = Set("low", "lower", "from", "min", "lowerend");
    public static readonly FrozenSet<string> High = Set("high", "upper", "upto", "max", "upperend");
    public static readonly FrozenSet<string> Unit = Set("unit", "units");
    public static readonly FrozenSet<string> Apparatus = Set("apparatus", "instrument", "device", "equipment");
    public static readonly FrozenSet<string> Serves = Set("serves", "measures", "usedfor");
    public static readonly FrozenSet<string> U = Set("u", "standarduncertainty", "uncertainty");
    public static readonly FrozenSet<string> RelativeU = Set("relativeu", "urel", "relativeuncertainty", "relativestandarduncertainty");
    public static readonly FrozenSet<string> Shared = Set("shared", "systematic");
    public static readonly FrozenSet<string> Basis = Set("basis", "source", "whereitcomesfrom");

    private static readonly ImmutableArray<FrozenSet<string>> Sheets =
        [Position, Repeat, Portion, Claim, Rule, Wording, Margin, Low, High, Unit, Apparatus, Serves, U, RelativeU, Shared, Basis];

    private static readonly Lazy<FrozenDictionary<string, ImmutableArray<Property>>> ByHeading = new(() => Property.All
        .SelectMany(p => p.Headings.Select(h => (Heading: h, Property: p)))
        .GroupBy(x => x.Heading, StringComparer.Ordinal)
        .ToFrozenDictionary(g => g.Key, g => g.Select(x => x.Property).Distinct().ToImmutableArray(), StringComparer.Ordinal));

    /// <summary>A heading's letters and digits in lower case: "Abs. 1" is "abs1".</summary>
    public static string Key(string heading) => string.Concat(heading.Normalize().Where(char.IsLetterOrDigit).Select(char.ToLowerInvariant));

    /// <summary>A word without the number at its end: "abs1" is "abs".</summary>
    public static string Unnumbered(string word) => word.AsSpan().TrimEnd("0123456789").ToString();

    /// <summary>Properties that a key names, most often one.</summary>
    public static ImmutableArray<Property> Properties(string key) => ByHeading.Value.GetValueOrDefault(key, []);

    /// <summary>True when the key means something here.</summary>
    public static bool IsKnown(string key) => Properties(key).Length > 0 || Sheets.Any(s => s.Contains(key)) || IsNumberedSignal(key);

    private static bool IsNumberedSignal(string key)
        => key.Length > 0 && char.IsAsciiDigit(key[^1]) && Properties(Unnumbered(key)).Any(p => p.IsSignal);

    private static FrozenSet<string> Set(params string[] words) => words.ToFrozenSet(StringComparer.Ordinal);
}
