using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Documents;

/// <summary>Whether a solid of the metal could have formed in the vessels, so that removal would not be sorption.</summary>
internal sealed class PrecipitationSection : IResultSection
{
    /// <inheritdoc/>
    public int Place => 60;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var guard = PrecipitationGuard.Of(dossier.Evidence);
        if (guard.Vials.IsEmpty)
            return null;
        var content = new List<Node>();
        if (guard.Ions.Count == 0)
            content.Add(Prose.Paragraph($"No constants of {dossier.Evidence.Study.Analyte ?? "the metal"} are known here, so the calculation says nothing. Controls without sorbent at the same end pH decide."));
        else
            content.AddRange(Calculated(guard, dossier, numbering));
        content.Add(Prose.Paragraph(Count(guard)));
        content.Add(numbering.Table(() => PrecipitationTable.Vials(guard.Vials, together: true)));
        content.Add(Prose.Paragraph("Not considered; each can precipitate metal or hold it in solution:"));
        content.Add(Prose.List(PrecipitationGuard.NotConsidered));
        return new("precipitation", "Sorption or precipitation", content);
    }

    private static IEnumerable<Node> Calculated(PrecipitationGuard guard, Dossier dossier, Numbering numbering)
    {
        yield return Prose.Paragraph(
            $"The pH from which each solid of {InWords.Listed(guard.Ions.Select(i => i.Name))} can form was worked out from its hydrolysis and solubility constants, with Davies activity coefficients. "
            + "A vessel holds when even the least soluble solid could not form; it is contradicted when a solid that forms at once could. Between the two, controls without sorbent at the same end pH decide; where they were read they come first.");
        yield return Prose.Paragraph(Assumptions(guard));
        foreach (var figure in StudyFigure.Of<SpeciesFigure>(dossier))
            yield return numbering.Figure(figure);
        if (guard.Vials.Where(v => v.Onsets is not null).GroupBy(v => v.Onsets!).MaxBy(g => g.Count()) is { } most)
            yield return numbering.Table(() => PrecipitationTable.Solids(most.Key));
    }

    private static string Assumptions(PrecipitationGuard guard)
    {
        var assumed = guard.Vials.Count(v => Background.Of(v.Vessel.Sample.Words(SampleProperties.Matrix)).Assumed);
        var silent = guard.Vials.Count(v => AirContacts.Recorded(v.Vessel) is null);
        return $"Ionic strength: {(assumed == 0 ? "as recorded for every vessel" : $"taken as {InWords.Plain(Background.Usual, "mol/L")} in {InWords.Count(assumed, "vessel")} whose water does not name a 1:1 salt")}. "
            + $"Contact with air: {(silent == 0 ? "as recorded" : $"not recorded in {InWords.Count(silent, "vessel")}, which are taken as closed: somewhere between no carbonate and that of open water")}. "
            + "Away from 25 °C the ranges are wider by 0.025 pH for each kelvin (from memory).";
    }

    private static string Count(PrecipitationGuard guard)
    {
        string Of(Ruling ruling) => InWords.Count(guard.Vials.Count(v => v.Ruling == ruling), "vessel");
        return $"In {Of(Ruling.Holds)} no solid could form; in {Of(Ruling.NotShownYet)} it is not shown yet; in {Of(Ruling.Contradicted)} a solid forms.";
    }
}
