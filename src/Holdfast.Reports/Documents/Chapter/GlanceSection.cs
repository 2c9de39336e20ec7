using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.Documents.Chapter;

/// <summary>The study on its first page: material, how the claims stand by area, main numbers, the gaps that hold claims back, and the experiments that serve several.</summary>
internal static class GlanceSection
{
    /// <summary>Id of the table of how the claims stand; it is set where there are topics.</summary>
    public const string StandingId = "standing";

    /// <summary>The section.</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="topics">The claims by area.</param>
    /// <param name="claims">The claims with their numbers.</param>
    /// <param name="numbering">Sets tables.</param>
    public static Section Of(Dossier dossier, IReadOnlyList<Topic> topics, ClaimList claims, Numbering numbering)
    {
        var content = new List<Node>(SummarySection.Impossible(dossier)) { Prose.Paragraph(Material(dossier)), Prose.Paragraph(Counts(dossier.Verdicts)) };
        if (topics.Count > 0)
            content.Add(numbering.Table(Standing(topics, claims)));
        if (Numbers(dossier, claims) is { Rows.Count: > 0 } numbers)
            content.Add(numbering.Table(numbers));
        if (Gaps(claims) is { Rows.Count: > 0 } gaps)
            content.Add(numbering.Table(gaps));
        if (claims.Combined is { Length: > 0 } combined)
        {
            content.Add(Prose.Heading("Experiments that serve several claims at once"));
            content.Add(Prose.List(combined.Select(c => $"For {claims.Named(c.Claims)}: {InWords.Listed(c.Settings.Select(s => $"{InWords.Count(s.Vessels, "vessel")} ({s.Setting})"))}, where one by one they would take {InWords.Plain(c.Apart)}.")));
        }

        return new("glance", "The study at a glance", content);
    }

    private static string Material(Dossier dossier)
    {
        var study = dossier.Evidence.Study;
        var material = study.Details.GetValueOrDefault("material") ?? InWords.Listed(dossier.Evidence.Vessels.Select(v => v.Sample.Words(Studies.Properties.SampleProperties.Material)).OfType<string>());
        return Prose.WithoutGaps($"Material: {(material.Length > 0 ? material : Prose.Gap("material"))}. Metal: {study.Analyte ?? Prose.Gap("analyte")}.");
    }

    private static string Counts(IReadOnlyCollection<Verdict> verdicts)
    {
        if (verdicts.Count == 0)
            return "No claim was stated and the data invite none.";
        string Split(bool stated) => InWords.Split([.. verdicts.Where(v => v.Claim.Stated == stated).Select(v => v.Ruling)], each: false);
        var (stated, raised) = (verdicts.Count(v => v.Claim.Stated), verdicts.Count(v => !v.Claim.Stated));
        return (stated > 0 ? $"Of {InWords.Count(stated, "claim")} stated, {Split(stated: true)}. " : "")
            + (raised > 0 ? $"Of {InWords.Count(raised, "claim")} that the data invite or that others stand on, {Split(stated: false)}. " : "")
            + "“Not shown yet” means that these data do not decide.";
    }

    private static Table Standing(IReadOnlyList<Topic> topics, ClaimList claims)
        => new(
            StandingId,
            "How the claims stand, by their numbers in the results",
            [new Column("area", "Area") { NamesRows = true }, .. Enum.GetValues<Ruling>().Select(r => new Column(SummarySection.Class(r), SentenceCase.Of(InWords.Of(r))))],
            [.. topics.Select(t => Row.Of([t.Title, .. Enum.GetValues<Ruling>().Select(r => (Cell)claims.Numbers(t.Claims.Where(v => v.Ruling == r)))]))]);

    // A gap that one claim alone stands on is told with that claim in the record; what closes several is told once.
    private static Table Gaps(ClaimList claims)
        => new(
            "gaps",
            "What holds most claims back: gaps that they share, and what would close each",
            [new Column("gap", "Not shown") { NamesRows = true }, new Column("claims", "Claims that stand on it"), new Column("next", "What would close it")],
            [.. claims.Gaps.Where(same => same[0].Claims.Length > 1).SelectMany(same => same.Select((g, i) => Row.Of(
                g.Sentence, i == 0 ? Standing(g, claims) : "the same", g.Grounds.Select(v => v.Next?.Sentence).OfType<string>().FirstOrDefault() ?? "see the record")))])
        {
            Notes = ["A gap of one claim alone stands in the record."],
        };

    private static string Standing(SharedGap gap, ClaimList claims)
    {
        var (stated, raised) = (gap.Claims.Where(v => v.Claim.Stated).ToArray(), gap.Claims.Count(v => !v.Claim.Stated));
        return raised == 0 ? claims.Numbers(stated) : $"{claims.Numbers(stated)}{(stated.Length > 0 ? "; " : "")}{InWords.Plain(raised)} that the data raise";
    }

    // The first with an interval; where the same number stands again with a wider one of the same confidence, that one, since it leaves nothing out.
    private static Deciding? Main(IEnumerable<Deciding> numbers)
    {
        Deciding[] known = [.. numbers.Where(n => n is { Low: not null, High: not null } && double.IsFinite(n.Value))];
        return known.Where(n => n.Value.Equals(known[0].Value) && n.Unit == known[0].Unit && Kind(n) == Kind(known[0])).MaxBy(n => n.High - n.Low);
    }

    // One number of each kind of claim, from the first claim of that kind.
    private static Table Numbers(Dossier dossier, ClaimList claims)
    {
        var rows = dossier.Verdicts.Where(v => v.Claim.Stated)
            .Select(v => (Verdict: v, Number: Main(v.Numbers)))
            .Where(p => p.Number is not null)
            .DistinctBy(p => p.Verdict.Claim.Rule, StringComparer.Ordinal);
        return new(
            "main-numbers",
            "Main numbers, each with its interval",
            [
                new Column("quantity", "Quantity") { NamesRows = true },
                new Column("value", "Value (interval)"),
                new Column("unit", "Unit"),
                new Column("interval", "The interval is"),
                new Column("claim", "Claim"),
            ],
            [.. rows.Select(r => Row.Of(
                Named(r.Verdict.Claim, r.Number!), InWords.ValueOf(r.Number! with { Unit = "" }), r.Number!.Unit.Length > 0 ? r.Number.Unit : "none", Kind(r.Number),
                claims.Of(r.Verdict).ToString(CultureInfo.InvariantCulture)))]);
    }

    // A detection limit is of a run or a sensor: what the claim is about tells them apart.
    private static string Named(Claim claim, Deciding number)
        => new[] { claim.Words("run"), claim.Words("series"), claim.Words("ph") is { } ph ? "pH " + ph : null }.OfType<string>()
            .FirstOrDefault(p => !number.Name.Contains(p, StringComparison.OrdinalIgnoreCase)) is { } of ? $"{number.Name}, {of}" : number.Name;

    private static string Kind(Deciding number)
        => number.Level is { } level ? InWords.Plain(100 * level, "%") : number.Note is { Length: > 0 } note ? note.Split(',')[0].Replace(" interval", "", StringComparison.Ordinal) : "not told";
}
