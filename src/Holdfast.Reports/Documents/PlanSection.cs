using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Plans;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;

namespace Holdfast.Reports.Documents;

/// <summary>What was planned before anything was weighed, what was done, where the two differ, and what was changed with which reason.</summary>
internal static class PlanSection
{
    /// <summary>The section; null where no plan was designed.</summary>
    /// <param name="dossier">The study worked out.</param>
    /// <param name="numbering">Sets tables.</param>
    /// <param name="inFull">True to name every deviation; false to count them.</param>
    public static Section? Of(Dossier dossier, Numbering numbering, bool inFull)
    {
        var study = dossier.Evidence.Study;
        if (study.Designs.IsEmpty)
            return null;
        List<Node> content = [Prose.Paragraph(Frozen(study)), numbering.Table(() => PlanTables.PlannedClaims(study)), numbering.Table(() => PlanTables.PlannedSeries(study))];
        string[] deviations = [.. Deviations(study)];
        if (deviations.Length == 0)
            content.Add(Prose.Paragraph("What was recorded of mass, volume, contact time and start pH lies within the tolerances of the plan."));
        else if (inFull)
            content.AddRange([Prose.Heading("Deviations"), Prose.List(deviations)]);
        else
            content.Add(Prose.Paragraph($"{InWords.Count(deviations.Length, "vessel")} deviated from the plan in mass, volume, contact time or start pH; true values are used throughout, and the record names each."));
        content.AddRange(Listed("Amendments", study.PlanAmendments.Where(a => a.What.Length > 0)
            .Select(a => string.Create(CultureInfo.InvariantCulture, $"{a.When:d MMM yyyy}, {a.Who}: {Ended(a.What)} Reason: {Ended(a.Reason)}"))));
        content.AddRange(Listed("Warnings accepted before the work", study.Designs.SelectMany(d => d.Warnings).Where(w => w.Answer is not null).DistinctBy(w => w.Name)
            .Select(w => $"{w.Sentence} Accepted: {Ended(w.Answer!)}")));
        return new("plan", "Plan and deviations", content);
    }

    private static IEnumerable<Node> Listed(string title, IEnumerable<string> items)
    {
        string[] all = [.. items];
        return all.Length == 0 ? [] : [Prose.Heading(title), Prose.List(all)];
    }

    private static string Frozen(Study study)
    {
        var vessels = study.Designs.Sum(d => d.Vessels.Length);
        var first = study.Originals.IsEmpty ? (DateTimeOffset?)null : study.Originals.Min(o => o.When);
        var planned = $"{InWords.Count(vessels, "vessel")} were planned for {InWords.Count(study.Designs.Sum(d => d.Questions.Length), "claim")}, their order drawn at random from a stored seed.";
        if (study.PlanFrozen is not { } frozen)
            return $"{planned} The plan was not frozen, so that margins and vessels could change without a reason.";
        var late = first is { } data && study.Originals.Min(o => o.Entry) < frozen.Entry ? string.Create(CultureInfo.InvariantCulture, $" By then data had been taken in ({data:d MMM yyyy}).") : "";
        return string.Create(CultureInfo.InvariantCulture, $"{planned} Plan and margins were frozen on {frozen.When:d MMM yyyy} by {frozen.Who}, fingerprint {frozen.Sha256}.{late}");
    }

    private static IEnumerable<string> Deviations(Study study)
        => from vessel in study.Designs.SelectMany(d => d.Vessels)
           let sample = study.Sample(vessel.Code)
           where sample is not null
           let said = string.Join("; ", PlanDeviation.Of(vessel, sample))
           where said.Length > 0
           select $"{vessel.Code} ({vessel.Series}): {said}.";

    private static string Ended(string sentence) => sentence.EndsWith('.') ? sentence : sentence + ".";
}
