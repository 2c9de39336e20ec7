using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Regeneration;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>Sorption and elution cycles.</summary>
internal sealed class ReuseSection : IResultSection
{
    /// <inheritdoc/>
    public int Place => 70;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var all = ReuseStudy.Of(dossier.Evidence).Series;
        if (all.IsEmpty)
            return null;
        var figures = StudyFigure.Of<CyclesFigure>(dossier).ToDictionary(f => f.Id, StringComparer.Ordinal);
        var content = new List<Node>();
        foreach (var series in all)
        {
            content.Add(Prose.Heading($"Series {series.Name}"));
            content.Add(SeriesText.Of(series.Source, numbering));
            if (figures.GetValueOrDefault(StudyFigure.Id("cycles", series.Name)) is { } figure)
                content.Add(numbering.Figure(figure));
            content.Add(numbering.Table(() => CycleTable.Of(series)));
            content.Add(Prose.Paragraph(Words(series)));
            if (series.Cycles.Skip(1).Any(c => c.Vessels.Average(v => v.Uptake.Value) > series.Cycles[0].Vessels.Average(v => v.Uptake.Value)))
            {
                content.Add(Prose.Paragraph("A later cycle lies above the first. Before that is a merit of regeneration, these are ruled out, in this order:"));
                content.Add(Prose.List(RiseQuestion.InOrder.Select(q => $"{q.Reason} What tells: {q.Tells}.")));
            }

            if (series.Source.Vessels.All(v => v.End is not { Value.U: > 0 }))
                content.Add(Prose.Paragraph("The concentrations came without their readings, so no vessel of this series has an uncertainty from reading and calibration."));
            if (!series.Findings.IsEmpty)
                content.Add(FindingSection.Grouped(series.Findings));
        }

        return new("reuse", "Reuse", content);
    }

    // Common practice: two units of AICc do not tell two curves apart.
    private static string Laws(ReuseSeries series)
        => series.Linear.Aicc - series.Geometric.Aicc is not { } difference ? "With so few vessels the two laws cannot be compared."
            : Math.Abs(difference) < 2 ? $"The two laws are not told apart: their AICc differ by {InWords.Plain(Math.Abs(difference))}."
            : $"{(difference > 0 ? "The constant share" : "The constant loss")} describes the cycles better, by {InWords.Plain(Math.Abs(difference))} units of AICc.";

    private static string Words(ReuseSeries series)
    {
        var balance = series.LeftAtTheEnd is { } left
            ? $" By the balance of sorbed and eluted amounts {InWords.Plain(left, "mg/g")} is left on the powder after cycle {InWords.Plain(series.Cycles[^1].Number)}."
            : " The balance of sorbed and eluted amounts is not closed: an eluate was not analysed.";
        return series.Trend is not { } trend
            ? "No trend over the cycles can be judged." + balance
            : $"By the straight trend uptake changes by {InWords.Of(trend.PerCycle, "mg/g")} per cycle"
                + (trend.KeptPerCycle is { } kept ? $"; as a constant share kept it is {InWords.Of(kept, "")} from one cycle to the next. {Laws(series)} Neither is extended beyond the last cycle." : ".")
                + balance;
    }
}
