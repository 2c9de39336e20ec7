using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Comparisons;

/// <summary>
/// All of one study that a comparison needs, as one line of JSON: levels with their conditions, and the curves that its isotherms do not tell apart. A study is read
/// once, alone, on any machine; what is compared afterwards is lines.
/// </summary>
/// <param name="Study">Name of the study.</param>
/// <param name="Analyte">Symbol of the metal; null when the study does not say.</param>
/// <param name="Series">Its series, in the order of the study.</param>
/// <param name="Findings">Why the study, or a part of it, is not here.</param>
public sealed record StudyLine(string Study, string? Analyte, ImmutableArray<SeriesLine> Series, ImmutableArray<Finding> Findings)
{
    /// <summary>What the line calls its layout.</summary>
    public const string Layout = "holdfast/study-line/1";

    private static readonly JsonSerializerOptions Form = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter() },
    };

    /// <summary>True for invented data, which every table says.</summary>
    public bool Invented { get; init; }

    /// <summary>The layout of this line; <see cref="Layout"/> unless another version wrote it.</summary>
    public string Schema { get; init; } = Layout;

    /// <summary>The line of a study.</summary>
    /// <param name="name">Name of the study in the comparison.</param>
    /// <param name="study">The study.</param>
    public static StudyLine Of(string name, Study study) => Of(name, Evidence.Of(study));

    /// <summary>The line of a study that was worked out.</summary>
    /// <param name="name">Name of the study in the comparison.</param>
    /// <param name="evidence">Its quantities and fits.</param>
    public static StudyLine Of(string name, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        ImmutableArray<SeriesLine> series = [.. evidence.Series.SelectMany(s => Lines(evidence, s)).Where(s => !s.Levels.IsEmpty)];
        return new(name, evidence.Study.Analyte, series, series.IsEmpty ? [Finding.Of(StudyComparison.NoUptake, Weight.Caution, $"{name} has no vessel with an uptake at conditions of its own. {MissingResult.Of(evidence).FirstOrDefault()?.Sentence}".TrimEnd(), name)] : [])
        {
            Invented = evidence.Study.Invented,
        };
    }

    /// <summary>The line of a study that could not be read: a finding in its place.</summary>
    /// <param name="name">Name of the study in the comparison.</param>
    /// <param name="code">Code of what stands in the way.</param>
    /// <param name="why">Why, in words.</param>
    public static StudyLine Unread(string name, string code, string why) => new(name, null, [], [Finding.Of(code, Weight.Stop, $"{name} is left out: {why}", name)]);

    /// <summary>The line of a published value: one level, taken as it is stated.</summary>
    /// <param name="published">The value.</param>
    public static StudyLine Of(PublishedUptake published)
    {
        ArgumentNullException.ThrowIfNull(published);
        var level = new LevelLine(published.Start, published.Dose, published.Left, published.Uptake, published.U, null, 1, null, published.Ph, published.Temperature, null);
        return new(published.Sorbent, published.Metal, [new("published", null, published.Water, [level], [], null, 0) { Source = Words(published) }], []);
    }

    /// <summary>The line as JSON, without a line end.</summary>
    public string Json() => JsonSerializer.Serialize(this, Form);

    /// <summary>Reads a line.</summary>
    /// <param name="json">The line.</param>
    /// <returns>The line, or null with why it is none.</returns>
    public static Outcome<StudyLine> Parse(string json)
    {
        try
        {
            if (JsonSerializer.Deserialize<StudyLine>(json, Form) is { Study: not null, Schema: Layout, Series.IsDefault: false, Findings.IsDefault: false } line
                && line.Series.All(s => s is { IsSound: true }) && line.Findings.All(f => f is { Code: not null, Sentence: not null }))
                return new(line, []);
        }
        catch (JsonException)
        {
            // Said below, like a line of another layout.
        }

        return Outcome<StudyLine>.None(Finding.Of(Codes.Unreadable, Weight.Stop, $"A line is no {Layout}. Write it again with holdfast compare --map."));
    }

    private static string Words(PublishedUptake published) => published.Read is { } read ? $"{published.Source} ({read})" : published.Source;

    // An isotherm is one line, since one curve runs through it. Elsewhere each level stands at conditions of its own; of a series in time, the last.
    private static IEnumerable<SeriesLine> Lines(Evidence evidence, Series series)
    {
        var pooled = Pooled(series);
        if (series.Varied == BatchProperties.InitialConcentration)
        {
            var curves = evidence.Isotherms.FirstOrDefault(f => f.Series == series) is { } fitted ? CurveComparison.NotToldApart(fitted.Fits) : [];
            return [One(evidence, series.Name, series.Levels, [.. curves.Select(CurveLine.Of).OfType<CurveLine>()], pooled)];
        }

        if (series.Varied == BatchProperties.ContactTime)
            return series.Levels is [.., var last] ? [One(evidence, series.Name, [last], [], pooled)] : [];
        return series.Levels.Where(HasOneSetting).Select(l => One(
            evidence, series.Varied is { } varied && series.Levels.Length > 1 ? $"{series.Name}, {varied.Title} {Phrase.With(l.X, varied.Unit)}" : series.Name, [l], [], pooled));
    }

    private static SeriesLine One(Evidence evidence, string name, ImmutableArray<Level> levels, ImmutableArray<CurveLine> curves, (double Sd, int Freedom)? pooled)
    {
        string? Common(Property property, string detail)
            => levels.SelectMany(l => l.Vessels).Select(v => v.Sample.Words(property)).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.Ordinal).ToArray() is { Length: > 0 } words
                ? string.Join(" and ", words)
                : evidence.Study.Details.GetValueOrDefault(detail);
        return new(
            name, Common(SampleProperties.Material, "material"), Common(SampleProperties.Matrix, "water"),
            [.. levels.Select(l => LevelLine.Of(l, pooled)).OfType<LevelLine>().OrderBy(l => l.Left)], curves, pooled?.Sd, pooled?.Freedom ?? 0);
    }

    // Vessels that were not sorted into levels may differ in more than one setting: then their mean is the mean of nothing.
    private static bool HasOneSetting(Level level)
    {
        return Alike(BatchProperties.InitialConcentration, Tolerances.SameStart) && Alike(BatchProperties.StartPh, Tolerances.SamePh)
            && Alike(BatchProperties.Temperature, Tolerances.SameTemperature) && Span([.. level.Vessels.Select(v => v.Dose?.Value).OfType<double>()], Tolerances.SameDose);

        bool Alike(Property property, Func<double, double, bool> same) => Span([.. level.Vessels.Select(v => v.Sample.Number(property)).OfType<double>()], same);

        static bool Span(double[] all, Func<double, double, bool> same) => all.Length == 0 || same(all.Max(), all.Min());
    }

    // Scatter of single vessels as a share of the uptake, from replicates of every level together.
    private static (double Sd, int Freedom)? Pooled(Series series)
    {
        var sum = 0.0;
        var freedom = 0;
        foreach (var uptakes in series.Levels.Select(l => l.Uptakes).Where(u => u.Length > 1 && u.Average() > 0))
        {
            var mean = uptakes.Average();
            sum += uptakes.Sum(q => (q / mean - 1) * (q / mean - 1));
            freedom += uptakes.Length - 1;
        }

        return freedom > 0 && sum > 0 ? (Math.Sqrt(sum / freedom), freedom) : null;
    }
}
