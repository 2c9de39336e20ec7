using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>Preference over other metals, and ions given in exchange.</summary>
internal sealed class CompetitionSection : IResultSection
{
    /// <inheritdoc/>
    public int Place => 66;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var evidence = dossier.Evidence;
        var mixtures = MixtureStudy.Of(evidence);
        var ions = ExchangeStudy.Of(evidence).Ions.Where(i => i.Loadings > 1).ToArray();
        if (mixtures.Rivals.IsEmpty && mixtures.Findings.IsEmpty && ions.Length == 0)
            return null;
        var metal = evidence.Study.Analyte ?? "the metal";
        var content = new List<Node>();
        if (!mixtures.Rivals.IsEmpty)
        {
            content.Add(Prose.Heading("Two metals in one vessel"));
            content.AddRange(StudyFigure.Of<SelectivityFigure>(dossier).Select(f => (Node)numbering.Figure(f)));
            var trails = Prose.Trails("Trails of the selectivity coefficients", mixtures.Rivals.Where(r => r.Preference is not null).Select(r => (r.Metal, "alpha:" + r.Metal)), numbering);
            content.Add(numbering.Table(() => MixtureTable.Of(mixtures, metal)));
            content.Add(Prose.Paragraph("The metals were compared by amount in one vessel; single-metal capacities do not give a preference."
                + (mixtures.Rivals.All(r => r.Vessels.All(v => v.Preference.U == 0)) ? " The concentrations of both metals came without uncertainties, so that the intervals rest on the scatter of vessels." : "")));
            content.AddRange(trails);
        }

        if (!mixtures.Findings.IsEmpty)
            content.Add(FindingSection.Grouped(mixtures.Findings));
        var figures = StudyFigure.Of<ExchangeFigure>(dossier).ToDictionary(f => f.Id, StringComparer.Ordinal);
        foreach (var ion in ions)
        {
            content.Add(Prose.Heading($"{ion.Ion} released for {metal} sorbed"));
            if (figures.GetValueOrDefault(StudyFigure.Id("exchange", ion.Ion)) is { } figure)
                content.Add(numbering.Figure(figure));
            content.Add(Prose.Paragraph(Words(ion, metal)));
            if (!ion.Findings.IsEmpty)
                content.Add(FindingSection.Grouped(ion.Findings));
        }

        return new("competition", "Rivals and exchange", content);
    }

    private static string Words(ExchangedIon ion, string metal)
    {
        var control = ion.Control.IsEmpty
            ? "No sorbent-only control at this pH was subtracted, so that dissolution of the sorbent is in the slope."
            : $"The mean of {InWords.Count(ion.Control.Length, "sorbent-only sample")} at the {(ion.ControlAtEndPh ? "end" : "start")} pH of the vessels was subtracted ({InWords.Some([.. ion.Control.Select(c => c.Code)], 3)}).";
        return ion.Ratio is not { } ratio
            ? $"No ratio was found for {ion.Ion}. {control}"
            : $"The line with errors in both gives {InWords.Of(ratio.Slope, "")} {ion.Ion} released for each {metal} sorbed, in {InWords.Count(ion.Points.Length, "vessel")} at {InWords.Count(ion.Loadings, "loading")}. {control}";
    }
}
