namespace Holdfast.WaterLimits;

/// <summary>What a scheme says of one metal in water.</summary>
/// <param name="Element">Symbol of the element; the whole metal, whatever its form, unless the note says otherwise.</param>
/// <param name="Value">The limit, mg/L; null where the scheme sets none.</param>
/// <param name="Scheme">Who sets it: "EU Directive 2020/2184".</param>
/// <param name="Kind">What it is: "parametric value", "monthly average".</param>
/// <param name="Year">Year of the text.</param>
/// <param name="Water">"drinking water" or "effluent".</param>
/// <param name="Note">Dates, forms and other conditions; may be empty.</param>
/// <param name="Status">How the value is known.</param>
public sealed record WaterLimit(string Element, double? Value, string Scheme, string Kind, int Year, string Water, string Note, string Status)
{
    /// <summary>Stands beside every limit shown.</summary>
    public const string Reservation = "Local codes prevail, and values change: look the limit up before you rely on it.";

    private static readonly Dictionary<string, string> OtherWords = new(StringComparer.Ordinal)
    {
        ["EU Directive 2020/2184"] = "european union europe 98/83/ec dwd",
        ["US EPA primary regulations"] = "mcl maximum contaminant level epa us usa",
        ["US EPA secondary regulations"] = "epa us usa smcl",
        ["WHO guidelines 4th ed. with 1st and 2nd addenda"] = "world health organization organisation",
        ["US 40 CFR 433.15 metal finishing (existing sources)"] = "discharge epa us usa plating monthly mean daily maximum",
        ["India Environment (Protection) Rules Schedule VI inland surface water"] = "discharge indian",
    };

    /// <summary>Every limit, metal by metal within a scheme.</summary>
    public static IReadOnlyList<WaterLimit> All { get; } =
    [
        .. TradeTable.Read(WaterLimitTable.Table).Select(r => new WaterLimit(
            r["element"], r.Number("value_mg_L"), r["scheme"], r["kind"], (int)r.Number("year")!.Value, r["water"], r["note"], r["status"])),
    ];

    /// <summary>Name by which a claim calls it: "EU Directive 2020/2184, parametric value, nickel".</summary>
    public string Name => $"{Scheme}, {Kind}, {Composition.Element.Find(Element)?.Name.ToLowerInvariant() ?? Element}";

    /// <summary>True when the value was not seen in print for this table.</summary>
    public bool IsFromMemory => Status.Contains("from memory", StringComparison.Ordinal);

    /// <summary>Everything that is said of a metal.</summary>
    /// <param name="element">Symbol of the element.</param>
    public static IReadOnlyList<WaterLimit> Of(string element) => [.. All.Where(l => string.Equals(l.Element, element, StringComparison.Ordinal))];

    /// <summary>
    /// The limits of a metal that words name: every word must occur in the scheme, its kind, its year, its water or the metal's name. Several come back where the
    /// words fit several.
    /// </summary>
    /// <param name="element">Symbol of the element.</param>
    /// <param name="words">"EU drinking water 2020/2184 nickel".</param>
    public static IReadOnlyList<WaterLimit> Named(string element, string words)
    {
        var asked = Words(words).Where(w => w is not ("limit" or "the" or "for" or "of" or "in")).ToArray();
        return asked.Length == 0 ? [] : [.. Of(element).Where(l => l.Own() is var own && asked.All(own.Contains))];
    }

    private HashSet<string> Own()
        => [.. Words($"{Name} {Element} {Year.ToString(System.Globalization.CultureInfo.InvariantCulture)} {Water} {Without(OtherWords.GetValueOrDefault(Scheme) ?? "")}")];

    // A monthly average and a daily maximum are different claims: only the words of the row's own kind lead to it.
    private string Without(string others)
        => Kind == "any one day" ? others.Replace("monthly mean", "", StringComparison.Ordinal)
            : others.Replace("daily maximum", "", StringComparison.Ordinal);

    private static IEnumerable<string> Words(string text)
        => new string([.. text.ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) || c is '/' or '.' ? c : ' ')])
            .Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(w => w.Trim('.')).Where(w => w.Length > 0);
}
