using System.Collections.Immutable;
using System.Text.Json;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Properties;

namespace Holdfast.Testing;

/// <summary>One case of files as people really have them: its files, what a careful reader does, and the true quantities.</summary>
internal sealed class IntakeCase
{
    private readonly string folder;
    private readonly JsonElement truth;
    private readonly JsonElement asked;

    private IntakeCase(string folder)
    {
        this.folder = folder;
        using var said = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "case.json")));
        using var expected = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "expected.json")));
        truth = expected.RootElement.Clone();
        asked = said.RootElement.Clone();
        Name = Path.GetFileName(folder);
        Human = said.RootElement.GetProperty("human").GetString()!;
        Analyte = said.RootElement.TryGetProperty("analyte", out var analyte) ? analyte.GetString()! : "";
        Files = [.. said.RootElement.GetProperty("files").EnumerateArray().Select(f => f.GetString()!)];
    }

    /// <summary>Its folder's name.</summary>
    public string Name { get; }

    /// <summary>"understands", "asks" or "refuses": what a careful reader does.</summary>
    public string Human { get; }

    /// <summary>Element that is taken up.</summary>
    public string Analyte { get; }

    /// <summary>True where a careful reader understands, and a question is no fault all the same.</summary>
    public bool AskingIsFine => asked.TryGetProperty("asking_is_fine", out var fine) && fine.GetBoolean();

    /// <summary>Names of its files.</summary>
    public ImmutableArray<string> Files { get; }

    /// <summary>The cases below a folder.</summary>
    public static IEnumerable<IntakeCase> In(string folder)
        => Directory.EnumerateDirectories(folder).Where(d => File.Exists(Path.Combine(d, "case.json"))).Order(StringComparer.Ordinal).Select(d => new IntakeCase(d)).Where(c => c.Analyte.Length > 0);

    /// <summary>Takes the files in and compares.</summary>
    /// <param name="answers">Answers, or null for none.</param>
    /// <param name="dress">Gives a file another appearance, or null.</param>
    public IntakeOutcome Run(Answers? answers = null, Func<byte[], byte[]>? dress = null)
    {
        var study = new Study { Title = "intake", Analyte = Analyte };
        var incoming = Files.Select(f => new IncomingFile(f, Dressed(File.ReadAllBytes(Path.Combine(folder, "files", f))))).ToList();
        byte[] Dressed(byte[] bytes) => dress?.Invoke(bytes) ?? bytes;

        var understood = Take.Understand(study, incoming, answers ?? Answers.None);
        var open = understood.SelectMany(u => u.Understanding.Questions).Where(q => q.IsOpen).Select(q => $"{q.Id}: {q.Text}").ToImmutableArray();
        ImmutableArray<string> unworded = [.. understood.SelectMany(u => u.Understanding.Questions).SelectMany(q => q.Choices.Where(c => c.Contains('-', StringComparison.Ordinal) && c.All(x => char.IsAsciiLetterLower(x) || x == '-') && ChoiceWords.Of(q.Id, c) == c).Select(c => $"{q.Id}: {c}"))];
        var said = understood.SelectMany(u => u.Understanding.Findings).Where(f => f.Weight != Weight.Note).Select(f => f.ToString()).ToImmutableArray();
        // What is assumed is said as well; it counts as asked only where it names what the case is about.
        said = [.. said, .. understood.SelectMany(u => u.Understanding.Questions).Where(q => q is { IsOpen: false, Answer: null } && NamesIt(q.Text)).Select(q => $"{q.Id}: {q.Text}")];
        if (open.IsEmpty)
        {
            foreach (var one in understood.Where(u => u.Understanding.Proposal is not null).OrderBy(u => u.Turn))
                study = Fold.After(study, one.Understanding.Proposal!, study.Version + 1, default, "");
        }

        // What the quantities themselves say, as both doors show it at once: "A5 reads above the highest standard".
        var evidence = Evidence.Of(study);
        said = [.. said, .. evidence.Vessels.SelectMany(v => v.Findings).Where(f => f.Weight != Weight.Note && NamesIt(f.Sentence)).Select(f => f.ToString())];
        return Compare(evidence, open, said) with { Unworded = unworded };
    }

    private IntakeOutcome Compare(Evidence evidence, ImmutableArray<string> open, ImmutableArray<string> said)
    {
        var vessels = evidence.Vessels.Where(v => v.Sample.Role is SampleRole.Vessel or SampleRole.Control).ToList();
        var (right, expected) = (0, 0);
        var (wrong, missing) = (new List<string>(), new List<string>());
        foreach (var sample in truth.GetProperty("samples").EnumerateArray())
        {
            var code = sample.GetProperty("code").GetString()!;
            var mine = Find(vessels, sample, code);
            foreach (var (quantity, get) in Quantities)
            {
                var got = mine is null ? null : get(mine);
                if (sample.TryGetProperty(quantity, out var want))
                {
                    expected++;
                    if (got is not { } value)
                        missing.Add($"{code}.{quantity}");
                    else if (Math.Abs(value - want.GetDouble()) > Tolerance(quantity, want.GetDouble()))
                        wrong.Add(FormattableString.Invariant($"{code}.{quantity} {value:G4} for {want.GetDouble():G4}"));
                    else
                        right++;
                }
                else if (got is not null && sample.TryGetProperty("withhold", out var withheld) && withheld.EnumerateArray().Any(w => w.GetString() == quantity))
                {
                    wrong.Add(FormattableString.Invariant($"{code}.{quantity} {got:G4} where none is known"));
                }
            }

            if (mine is not null)
                vessels.Remove(mine);
        }

        wrong.AddRange(vessels.Where(v => v.Sample.Role == SampleRole.Vessel && (v.Uptake is not null || v.Removal is not null)).Select(v => $"{v.Sample.Code}: no such vessel"));
        var spoke = !open.IsEmpty || !said.IsEmpty;
        return new IntakeOutcome(Name, Human, right, expected, [.. wrong], [.. missing], open, said,
            wrong.Count > 0 ? spoke && open.IsEmpty ? "WRONG, something was said" : "WRONG"
            : Human == "understands" ? missing.Count == 0 ? "RIGHT" : open.IsEmpty && !(AskingIsFine && said.Any(IsAbout)) ? "MUTE" : "ASKED"
            : spoke ? "ASKED" : "MUTE")
        { AskingIsFine = AskingIsFine };
    }

    private static readonly (string Name, Func<Vessel, double?> Get)[] Quantities =
    [
        ("ce", v => v.End?.Value?.Value),
        ("removal", v => v.Removal?.Value),
        ("q", v => v.Uptake?.Value),
        ("t", v => v.Sample.Number(BatchProperties.ContactTime)),
    ];

    private double Tolerance(string quantity, double want)
    {
        var (relative, absolute) = (0.01, 0.0);
        if (truth.TryGetProperty("tolerance", out var all) && all.TryGetProperty(quantity, out var own))
            (relative, absolute) = (own.TryGetProperty("rel", out var r) ? r.GetDouble() : 0, own.TryGetProperty("abs", out var a) ? a.GetDouble() : 0);
        return Math.Max(relative * Math.Abs(want), absolute);
    }

    private Vessel? Find(List<Vessel> vessels, JsonElement sample, string code)
    {
        var series = sample.TryGetProperty("series", out var s) ? Plain(s.GetString()!) : "";
        bool InSeries(Vessel v) => series.Length == 0 || Plain(v.Sample.Series ?? "").Contains(series, StringComparison.Ordinal) || Plain(v.Sample.Code).Contains(series, StringComparison.Ordinal);
        var plain = Plain(code);
        return vessels.Find(v => Plain(v.Sample.Code) == plain && InSeries(v)) ?? vessels.Find(v => plain.Length > 0 && Plain(v.Sample.Code).EndsWith(plain, StringComparison.Ordinal) && InSeries(v) && series.Length > 0)
            ?? (sample.TryGetProperty("key", out var key) ? vessels.Find(v => key.EnumerateObject().All(k => Close(v, k.Name, k.Value.GetDouble()))) : null)
            ?? vessels.Find(v => Quantities.Any(q => q.Name != "t" && sample.TryGetProperty(q.Name, out _)) && Quantities.Where(q => q.Name != "t").All(q => !sample.TryGetProperty(q.Name, out var w) || Close(v, q.Name, w.GetDouble())));
    }

    private bool Close(Vessel vessel, string quantity, double want)
        => Array.Find(Quantities, q => q.Name == quantity).Get(vessel) is { } got && Math.Abs(got - want) <= Tolerance(quantity, want);

    private bool NamesIt(string text)
        => Human == "asks" && IsAbout(text);

    private bool IsAbout(string text) => asked.TryGetProperty("names", out var names) && Matches(names, "where", text) && Matches(names, "what", text);

    private static bool Matches(JsonElement names, string kind, string text)
        => !names.TryGetProperty(kind, out var patterns) || patterns.EnumerateArray().Any(p => System.Text.RegularExpressions.Regex.IsMatch(text, p.GetString()!, System.Text.RegularExpressions.RegexOptions.NonBacktracking));

    private static string Plain(string text) => string.Concat(text.Where(char.IsLetterOrDigit)).ToLowerInvariant();
}
