using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.Documents.Chapter;

/// <summary>The study on its first page: material, main numbers, what holds most claims back, the experiments that serve several, each claim in a line.</summary>
internal static class GlanceSection
{
    // Few enough that they are acted on.
    private const int MostGaps = 4;

    /// <summary>The section.</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="claims">The claims with their numbers.</param>
    /// <param name="numbering">Sets tables.</param>
    public static Section Of(Dossier dossier, ClaimList claims, Numbering numbering)
    {
        var content = new List<Node>(SummarySection.Impossible(dossier)) { Prose.Paragraph(Material(dossier)), Prose.Paragraph(Counts(dossier.Verdicts)) };
        if (Numbers(dossier, claims) is { Rows.Count: > 0 } numbers)
            content.Add(numbering.Table(numbers));
        var gaps = claims.Gaps;
        if (gaps.Count > 0)
        {
            content.Add(Prose.Heading("What holds most claims back"));
            content.Add(Prose.List(gaps.Take(MostGaps).Select(g => Gap(g, claims))));
        }

        if (claims.Combined is { Length: > 0 } combined)
        {
            content.Add(Prose.Heading("Experiments that serve several claims at once"));
            content.Add(Prose.List(combined.Select(c => $"For {claims.Named(c.Claims)}: {InWords.Listed(c.Settings.Select(s => $"{InWords.Count(s.Vessels, "vessel")} at {s.Setting}"))}; {InWords.Count(c.Vessels, "vessel")} in place of {InWords.Plain(c.Apart)}.")));
        }

        if (claims.All.Length > 0)
            content.Add(numbering.Table(Lines(claims)));
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

    private static string Gap(IReadOnlyList<SharedGap> gap, ClaimList claims)
        => $"{InWords.Count(gap[0].Claims.Length, "claim")} ({claims.Numbers(gap[0].Claims)}) {(gap[0].Claims.Length == 1 ? "stands" : "stand")} on this, and it is not shown: {string.Join(" ", gap.Select(g => g.Sentence))}";

    // One number of each kind of claim: the first that decided the first claim of that kind and has an interval.
    private static Table Numbers(Dossier dossier, ClaimList claims)
    {
        var rows = dossier.Verdicts.Where(v => v.Claim.Stated)
            .Select(v => (Verdict: v, Number: v.Numbers.FirstOrDefault(n => n is { Low: not null, High: not null } && double.IsFinite(n.Value))))
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

    private static Table Lines(ClaimList claims)
        => new(
            "claims",
            "The claims, one line each",
            [new Column("number", "No."), new Column("claim", "Claim") { NamesRows = true }, new Column("verdict", "Verdict")],
            [.. claims.All.Select(c => Row.Of(c.Number.ToString(CultureInfo.InvariantCulture), c.Sentence, InWords.Of(c.Ruling)))])
        {
            Notes = claims.All.FirstOrDefault(c => !c.Verdicts[0].Claim.Stated) is { } raised
                ? [string.Create(CultureInfo.InvariantCulture, $"From {raised.Number} on: raised because the data invite them or stated claims stand on them.")]
                : [],
        };
}
