using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Trails;
using Holdfast.Scaleup;

namespace Holdfast.Reports.Documents;

/// <summary>Sorbent for a limit in one stage and in two, and runs through beds.</summary>
internal sealed class TreatmentSection : IResultSection
{
    /// <inheritdoc/>
    public int Place => 80;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var plans = StagePlans.Of(dossier.Evidence);
        var beds = ColumnStudy.Of(dossier.Evidence);
        var content = new List<Node>();
        if (!plans.Plans.IsEmpty)
        {
            content.Add(Prose.Heading("Stirred stages"));
            var trails = Prose.Trails("Trails of the doses in one stage", plans.Plans.Select(p => ($"{p.Water} to {InWords.Plain(p.Stages.Target, "mg/L")}", "m1:" + TreatmentNumbers.Name(p))), numbering);
            content.Add(numbering.Table(() => TreatmentTables.Stages(plans)));
            content.AddRange(trails);
            content.Add(Prose.Paragraph($"Planned from the {plans.Plans[0].Curve} isotherm of {plans.Plans[0].Series}. In one stage all sorbent leaves in equilibrium with the outlet and is poorly loaded; a second stage lets it meet richer water first."));
        }

        if (!plans.Findings.IsEmpty)
        {
            if (plans.Plans.IsEmpty)
                content.Add(Prose.Heading("Stirred stages"));
            content.Add(FindingSection.Grouped(plans.Findings));
        }

        if (!beds.Runs.IsEmpty)
        {
            content.Add(Prose.Heading("Runs through a bed"));
            content.AddRange(StudyFigure.Of<BreakthroughFigure>(dossier).Select(f => (Node)numbering.Figure(f)));
            content.Add(numbering.Table(() => TreatmentTables.Beds(beds)));
            content.Add(Prose.Paragraph("Thomas, Yoon and Nelson, and Bohart and Adams in the usual form are one curve in three sets of letters: that they fit alike is arithmetic and supports no model."));
            content.AddRange(beds.Runs.Where(r => r.Curve.IsFit).SelectMany(r => Constants(r, numbering)));
            if (beds.ServiceTime is { } line)
                content.Add(Prose.Paragraph(Depths(line, beds, numbering)));
        }

        Finding[] raised = [.. beds.Findings, .. beds.Runs.SelectMany(r => r.Curve.Findings).Where(f => f.Weight != Weight.Note)];
        if (raised.Length > 0)
            content.Add(FindingSection.Grouped(raised));
        return content.Count == 0 ? null : new("treatment", "Stages and beds", content);
    }

    private static IEnumerable<Node> Constants(BedRun run, Numbering numbering)
    {
        if (run.Curve.Derived(p => BedConstants.Rate(p[0], run.Inlet)) is not { } rate)
            yield break;
        List<Node> words = [$"{run.Name}: rate constant {InWords.Of(rate, "L/(mg min)")}", .. numbering.Trail("kTh:" + run.Name)];
        if (run is { Flow: > 0, Mass: > 0 } && run.Curve.Derived(p => BedConstants.Capacity(p[1], run.Inlet, run.Flow.Value / 1000, run.Mass.Value)) is { } capacity)
            words.AddRange([$"; capacity q₀ = {InWords.Of(capacity, "mg/g")}", .. numbering.Trail("q0:" + run.Name)]);
        if (run is { Velocity: > 0, Depth: > 0 } && run.Curve.Derived(p => BedConstants.CapacityPerBed(p[1], run.Inlet, run.Velocity.Value, run.Depth.Value)) is { } perBed)
            words.AddRange([$"; N₀ = {InWords.Of(perBed, "mg/L")} of bed", .. numbering.Trail("N0:" + run.Name)]);
        if (BedConstants.Determined(BedConstants.AtStart(run.Curve["k"].Value, run.Curve["τ"].Value), run.LastRatio) != Ruling.Holds)
            words.Add("; not determined, because the curve is not near 0 at the start or the run ended early");
        words.Add(".");
        yield return Prose.Paragraph(words);
    }

    private static IEnumerable<Node> Depths(BedDepthServiceTime line, ColumnStudy beds, Numbering numbering)
    {
        var first = beds.Runs.First(r => r is { Depth: not null, Velocity: > 0, BreakTime: not null }).Name;
        return
        [
            $"Service time over depth gives N₀ = {InWords.Of(line.Capacity, "mg/L")} of bed", .. numbering.Trail("N0-line:" + first),
            $", a rate constant of {InWords.Of(line.Rate, "L/(mg min)")}", .. numbering.Trail("k-line:" + first),
            $" and a critical depth of {InWords.Of(line.CriticalDepth, "cm")}", .. numbering.Trail("Z0:" + first), ", below which the limit is passed at once.",
        ];
    }
}
