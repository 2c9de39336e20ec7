using System.Globalization;
using System.Text;
using Holdfast.Claims;
using Holdfast.Claims.NextExperiments;
using Holdfast.Reports.Documents;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.HandOver;

/// <summary>NEXT.md: for the next student. What stands, what is open and which experiment would settle it, what was planned and not done, what is on the shelf.</summary>
internal static class NextStudent
{
    /// <summary>The text.</summary>
    /// <param name="about">What is said of the package.</param>
    public static string Of(HandOverWords about)
    {
        var text = new StringBuilder();
        Line(text, $"# For whoever goes on with {about.Title}");
        Line(text);
        if (about.Study.Invented)
        {
            Line(text, "**Invented demo data: no number here is a measurement.**");
            Line(text);
        }

        Claims(text, about.Dossier);
        Planned(text, about.Study);
        Shelf(text, about);
        Struck(text, about.Study);
        Missing(text, about.Dossier);
        Line(text, "## Before you begin");
        Line(text);
        Line(text, "Salts of heavy metals and the loaded powder are poisonous: the supplier's safety data sheet, the local rules and the people licensed for it decide how they are handled and where they go.");
        return text.ToString();
    }

    private static void Claims(StringBuilder text, Dossier dossier)
    {
        Verdict[] stated = [.. dossier.Verdicts.Where(v => v.Claim.Stated)];
        Line(text, "## Claims");
        Line(text);
        if (stated.Length == 0)
            Line(text, "None was stated.");
        foreach (var (ruling, title) in new[] { (Ruling.Holds, "Hold, within their scope"), (Ruling.Contradicted, "The data speak against them"), (Ruling.NotShownYet, "Not shown yet") })
        {
            Verdict[] some = [.. stated.Where(v => v.Ruling == ruling)];
            if (some.Length == 0)
                continue;
            Line(text, $"### {title} ({InWords.Plain(some.Length)})");
            Line(text);
            foreach (var verdict in some)
            {
                Line(text, $"- **{verdict.Claim.Id}**: {verdict.Sentence} {verdict.Reason}{(verdict.Scope is { Length: > 0 } scope ? $" Scope: {scope}." : "")}");
                if (ruling == Ruling.NotShownYet && verdict.Next is { } next)
                    Line(text, $"  - would settle it: {next.Sentence}{(next.Vessels is { } n ? $" ({InWords.Count(n, "vessel")}" + (next.Settings.IsEmpty ? ")" : $": {string.Join("; ", next.Settings)})") : "")} Size by: {next.Basis}.");
            }

            Line(text);
        }

        var together = CombinedExperiment.Of(stated);
        if (!together.IsEmpty)
        {
            Line(text, "### Experiments that serve several claims");
            Line(text);
            foreach (var one in together)
                Line(text, "- " + one.Sentence);
            Line(text);
        }
    }

    private static void Planned(StringBuilder text, Study study)
    {
        Line(text, "## Planned and not done");
        Line(text);
        var open = study.Plan.Where(p => p.Done is null).Select(p => $"- {p.Id}: {p.Work}{(p.Claim is null ? "" : $" (for {p.Claim})")}")
            .Concat(study.Designs.Select(d => (Plan: d, Left: d.Vessels.Count(v => study.Sample(v.Code) is { } sample && study.IsOnlyPlanned(sample)))).Where(d => d.Left > 0)
                .Select(d => $"- {d.Plan.Id}: {InWords.Count(d.Left, "vessel")} of {InWords.Plain(d.Plan.Vessels.Length)} still to be made; the targets are in `plain/planned_vessels.csv`")).ToArray();
        foreach (var line in open.Length == 0 ? ["Nothing."] : open)
            Line(text, line);
        Line(text);
    }

    private static void Shelf(StringBuilder text, HandOverWords about)
    {
        Line(text, "## On the shelf");
        Line(text);
        Line(text, about.Shelf ?? $"Where samples and powders are kept is not recorded. Ask before the author leaves, and keep the answer: `holdfast describe shelf=\"…\"`.");
        Line(text);
        var study = about.Study;
        foreach (var batch in study.Samples.Where(s => s.Words(SampleProperties.Batch) is { Length: > 0 }).GroupBy(s => s.Words(SampleProperties.Batch)!, StringComparer.Ordinal))
            Line(text, $"- powder {batch.Key}: used in {InWords.Count(batch.Count(), "vessel")}");
        foreach (var powder in study.Measurements.GroupBy(m => m.Sample, StringComparer.Ordinal))
            Line(text, $"- powder {powder.Key}: measured as {string.Join(", ", powder.Select(m => $"{m.Id} ({m.Technique})"))}");
        foreach (var series in study.Samples.Where(s => s.Words(SampleProperties.Series) is { Length: > 0 } && !study.IsOnlyPlanned(s)).GroupBy(s => s.Words(SampleProperties.Series)!, StringComparer.Ordinal))
            Line(text, $"- series {series.Key}: {InWords.Count(series.Count(), "sample")}, {series.First().Code} to {series.Last().Code}");
        foreach (var instrument in study.Apparatus)
            Line(text, $"- apparatus {instrument.Id}: {instrument.Serves}; {instrument.Basis}");
        Line(text);
    }

    private static void Struck(StringBuilder text, Study study)
    {
        if (study.Strikes.IsEmpty)
            return;
        Line(text, "## Struck, with the reason");
        Line(text);
        foreach (var strike in study.Strikes)
            Line(text, string.Create(CultureInfo.InvariantCulture, $"- {strike.Target}: {strike.Reason.ReplaceLineEndings(" ")} ({strike.Who}, {strike.When:d MMM yyyy})"));
        Line(text);
    }

    private static void Missing(StringBuilder text, Dossier dossier)
    {
        var gaps = MethodsGap.Of(dossier);
        if (gaps.IsEmpty)
            return;
        Line(text, "## Not recorded");
        Line(text);
        foreach (var gap in gaps)
            Line(text, $"- {gap.What}: `{gap.Command}`");
        Line(text);
    }

    private static void Line(StringBuilder text, string line = "") => text.Append(line).Append('\n');
}
