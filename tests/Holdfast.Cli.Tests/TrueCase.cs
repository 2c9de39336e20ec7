using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Holdfast.Testing;

/// <summary>
/// A case of files as people really have them, with the true quantities: the folder "intake" of HOLDFAST_REFERENCE, whose README says how each was made
/// and what a careful reader does. Invented data; every value was written from a stated truth.
/// </summary>
internal sealed partial class TrueCase
{
    private readonly JsonElement about;
    private readonly JsonElement expected;

    private TrueCase(string folder)
    {
        Folder = folder;
        about = Json("case.json");
        expected = Json("expected.json");
    }

    /// <summary>Folder of the case.</summary>
    public string Folder { get; }

    /// <summary>Its name: "s02-dilution-column".</summary>
    public string Id => Path.GetFileName(Folder);

    /// <summary>Symbol of the metal.</summary>
    public string Analyte => about.GetProperty("analyte").GetString()!;

    /// <summary>True where a plausible reading is wrong.</summary>
    public bool IsTrap => about.GetProperty("trap").GetBoolean();

    /// <summary>True where a careful reader needs no question.</summary>
    public bool IsUnderstood => about.GetProperty("human").GetString() == "understands";

    /// <summary>Paths of its files.</summary>
    public IReadOnlyList<string> Files => [.. about.GetProperty("files").EnumerateArray().Select(f => Path.Combine(Folder, "files", f.GetString()!))];

    /// <summary>Names of all cases, for a theory; one empty name where the folder is not there, so that the theory can say that it is skipped.</summary>
    public static IEnumerable<string> Names => Root is { } root ? Directory.GetDirectories(root).Where(d => File.Exists(Path.Combine(d, "case.json"))).Select(d => Path.GetFileName(d)!).Order(StringComparer.Ordinal) : [""];

    private static string? Root => Environment.GetEnvironmentVariable("HOLDFAST_REFERENCE") is { Length: > 0 } reference && Directory.Exists(Path.Combine(reference, "intake")) ? Path.Combine(reference, "intake") : null;

    /// <summary>The case of this name; the test is skipped where the folder is not there.</summary>
    /// <param name="name">Its name.</param>
    public static TrueCase Of(string name)
    {
        Assert.SkipWhen(Root is null, "HOLDFAST_REFERENCE names no folder with intake cases.");
        return new(Path.Combine(Root!, name));
    }

    /// <summary>What differs between quantities and the truth; empty where all is right.</summary>
    /// <param name="rows">Quantities as worked out.</param>
    /// <param name="answered">True once every question was answered rightly: values that were to be withheld before are then held against the truth as well.</param>
    public IReadOnlyList<string> Wrong(IReadOnlyList<TrueRow> rows, bool answered)
    {
        var wrong = new List<string>();
        var judged = new HashSet<TrueRow>();
        foreach (var sample in expected.GetProperty("samples").EnumerateArray())
        {
            var code = sample.GetProperty("code").GetString()!;
            var found = Found(sample, code, rows);
            judged.UnionWith(found);
            foreach (var quantity in (string[])["ce", "removal", "q", "t"])
            {
                if (sample.TryGetProperty(quantity, out var value))
                {
                    if (found.Count == 0 || found.Exists(r => r.Of(quantity) is not { } got || !IsClose(quantity, got, value.GetDouble())))
                        wrong.Add(Text($"{code}.{quantity}: {(found.Count == 0 ? "no such row" : string.Join(" and ", found.Select(r => r.Of(quantity) is { } g ? Text($"{g:G5}") : "nothing")))} for {value.GetDouble():G5}"));
                }
                else if (IsWithheld(sample, quantity) && !answered && found.Exists(r => r.Of(quantity) is not null))
                {
                    wrong.Add($"{code}.{quantity}: a number where none can be known");
                }
            }

            if (answered && sample.TryGetProperty("note", out var note) && Truth().Match(note.GetString()!) is { Success: true } truth)
            {
                var quantity = truth.Groups["what"].Value == "Ce" ? "ce" : "removal";
                var want = double.Parse(truth.Groups["value"].Value, CultureInfo.InvariantCulture);
                if (found.Count == 0 || found.Exists(r => r.Of(quantity) is not { } got || !IsClose(quantity, got, want)))
                    wrong.Add(Text($"{code}.{quantity}: {string.Join(" and ", found.Select(r => r.Of(quantity)))} for the true {want}"));
            }
        }

        var others = expected.TryGetProperty("others", out var o) ? o.EnumerateArray().Select(x => Plain(x.GetProperty("code").GetString()!)).ToHashSet(StringComparer.Ordinal) : [];
        wrong.AddRange(rows.Where(r => !judged.Contains(r) && !IsOfTwins(r) && (r.Of("q") ?? r.Of("removal") ?? (others.Contains(Plain(r.Sample)) ? null : r.Of("ce"))) is not null).Select(r => $"{r.Sample}: no such vessel"));
        return wrong;
    }

    // A code that stands twice becomes two vessels, "NI-04a" and "NI-04b".
    private bool IsOfTwins(TrueRow row) => row.Sample.Length > 1 && char.IsAsciiLetterLower(row.Sample[^1])
        && expected.GetProperty("samples").EnumerateArray().Any(s => IsWithheld(s, "q") && s.GetProperty("code").GetString() == row.Sample[..^1]);

    private List<TrueRow> Found(JsonElement sample, string code, IReadOnlyList<TrueRow> rows)
    {
        var (plain, series) = (Plain(code), sample.TryGetProperty("series", out var s) ? Plain(s.GetString()!) : "");
        bool InSeries(TrueRow r) => series.Length == 0 || Plain(r.Series).Contains(series, StringComparison.Ordinal) || Plain(r.Sample).Contains(series, StringComparison.Ordinal);
        var found = rows.Where(r => Plain(r.Sample) == plain && InSeries(r)).ToList();
        if (found.Count == 0 && series.Length > 0)
            found = [.. rows.Where(r => Plain(r.Sample).EndsWith(plain, StringComparison.Ordinal) && InSeries(r))];
        if (found.Count == 0 && sample.TryGetProperty("key", out var key))
            found = [.. rows.Where(r => key.EnumerateObject().All(k => r.Of(k.Name) is { } got && IsClose(k.Name, got, k.Value.GetDouble())))];
        return found;
    }

    private static bool IsWithheld(JsonElement sample, string quantity) => sample.TryGetProperty("withhold", out var withheld) && withheld.EnumerateArray().Any(w => w.GetString() == quantity);

    private bool IsClose(string quantity, double got, double want)
    {
        var (relative, absolute) = (0.01, 0.0);
        if (expected.GetProperty("tolerance").TryGetProperty(quantity, out var tolerance))
        {
            relative = tolerance.TryGetProperty("rel", out var rel) ? rel.GetDouble() : 0;
            absolute = tolerance.TryGetProperty("abs", out var abs) ? abs.GetDouble() : 0;
        }

        return Math.Abs(got - want) <= Math.Max(relative * Math.Abs(want), absolute);
    }

    private JsonElement Json(string name)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, name)));
        return document.RootElement.Clone();
    }

    private static string Plain(string text) => string.Concat(text.ToLowerInvariant().Where(c => char.IsAsciiLetterOrDigit(c) || c is 'µ' or '°'));

    private static string Text(FormattableString text) => FormattableString.Invariant(text);

    [GeneratedRegex(@"^true (?<what>Ce|removal) (?<value>[0-9.]+)", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Truth();
}

/// <summary>Quantities of one vessel as worked out: mg/L, %, mg/g, min.</summary>
/// <param name="Sample">Its code.</param>
/// <param name="Series">Its series, or "".</param>
/// <param name="Ce">Concentration after contact, or null.</param>
/// <param name="Removal">Removal, or null.</param>
/// <param name="Q">Uptake, or null.</param>
/// <param name="T">Contact time, or null.</param>
internal sealed record TrueRow(string Sample, string Series, double? Ce, double? Removal, double? Q, double? T)
{
    /// <summary>A quantity by its short name: "ce", "removal", "q", "t".</summary>
    /// <param name="quantity">The name.</param>
    public double? Of(string quantity) => quantity switch { "ce" => Ce, "removal" => Removal, "q" => Q, _ => T };
}
