using Holdfast.Claims;
using Holdfast.Porosity;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Techniques.NitrogenSorption;

/// <summary>Nitrogen sorption: area, micropores, pore volume and sizes of each powder, with how they were chosen.</summary>
internal sealed class NitrogenSorptionSection : IResultSection
{
    /// <inheritdoc/>
    public int Place => 4;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var study = SorptionStudy.Of(dossier.Evidence);
        if (study.Isotherms.IsEmpty)
            return null;
        var content = new List<Node>();
        var isotherms = StudyFigure.Of<NitrogenIsothermFigure>(dossier).ToDictionary(f => f.RestsOn[0], StringComparer.Ordinal);
        var sizes = StudyFigure.Of<PoreSizeFigure>(dossier).ToDictionary(f => f.RestsOn[0], StringComparer.Ordinal);
        foreach (var powder in study.Powders)
        {
            content.Add(Prose.Heading(powder.Name));
            if (powder.Area is { } area && powder.WithArea.Length > 1)
                content.Add(Prose.Paragraph([$"{InWords.Count(powder.WithArea.Length, "portion")} give a BET area of {InWords.Of(area, "m2/g")}", .. numbering.Trail(SorptionNumbers.Area(powder.Name)), "; portions, masses and the choice of the window are in the interval."]));
            foreach (var isotherm in powder.Isotherms)
            {
                if (isotherms.GetValueOrDefault(isotherm.Measurement.Id) is { } figure)
                    content.Add(numbering.Figure(figure));
                content.Add(Html.Element("ul", Words(isotherm, study.Reference, numbering).Select(w => (Node)Html.Element("li", w))));
                if (sizes.GetValueOrDefault(isotherm.Measurement.Id) is { } distribution)
                    content.Add(numbering.Figure(distribution));
                if (isotherm.Refused is { } refused)
                    content.Add(FindingSection.Grouped([refused]));
                else if (!isotherm.Findings.IsEmpty)
                    content.Add(FindingSection.Grouped(isotherm.Findings));
            }
        }

        content.Add(numbering.Table(() => SorptionTables.Numbers(study)));
        return new("nitrogen-sorption", "Nitrogen sorption", content);
    }

    private static IEnumerable<Node[]> Words(SorptionIsotherm isotherm, SorptionIsotherm? reference, Numbering numbering)
    {
        var id = isotherm.Measurement.Id;
        if (isotherm.Bet is not { } bet)
            yield break;
        if (isotherm.Area is { } area && bet.Chosen is { } w)
        {
            yield return
            [
                $"{id}: {(bet.IsApparent ? "apparent " : "")}BET area {InWords.Of(area, "m2/g")}", .. numbering.Trail(SorptionNumbers.Area(id)),
                $", by {InWords.Count(w.Points, "point")} over p/p0 {InWords.Plain(w.From)} to {InWords.Plain(w.To)}, C = {InWords.Plain(w.C)}. {bet.Accepted.Length} of {bet.Windows.Length} windows meet all criteria and give {InWords.Plain(bet.Lowest)} to {InWords.Plain(bet.Highest, "m2/g")}"
                    + (bet.Fixed is { IsPositive: true, IsLine: true } usual ? $"; the usual window, 0.05 to 0.30, gives {InWords.Plain(usual.Area, "m2/g")}." : "; the usual window, 0.05 to 0.30, is not consistent and gives no area."),
            ];
        }
        else
        {
            yield return [$"{id}: no BET area. Windows that pass: {string.Join(", ", bet.Passing.Select(p => $"{p.Criterion} {InWords.Plain(p.Passing)}"))}, of {InWords.Plain(bet.Windows.Length)}."
                + (bet.Closest is { } near ? $" The closest, {InWords.Plain(near.From)} to {InWords.Plain(near.To)}, is not consistent and gives no number." : "")];
        }

        if (isotherm.LayerPlots.Length > 0)
        {
            Node[] usual = isotherm.MicroporeVolume is { } micro && isotherm.ExternalArea is { } external
                ? [$"t-plot (Harkins–Jura, 0.35 to 0.50 nm): micropores {InWords.Of(micro, "cm3/g")}", .. numbering.Trail(SorptionNumbers.Micropores(id)), $", area outside them {InWords.Of(external, "m2/g")}", .. numbering.Trail(SorptionNumbers.External(id)), ". "]
                : ["t-plot: no number. "];
            yield return [.. usual, "By curve and range: " + string.Join("; ", isotherm.LayerPlots.Select(p => $"{p.Curve.Name} {InWords.Plain(p.Plot.From)} to {InWords.Plain(p.Plot.To, "nm")} {InWords.Plain(p.Plot.MicroporeVolume, "cm3/g")} and {InWords.Plain(p.Plot.ExternalArea, "m2/g")}, R² {InWords.Plain(p.Plot.R2)}")) + "."];
        }

        if (isotherm.AlphaPlot is { } alpha)
        {
            yield return [$"α_s-plot against {reference!.Measurement.Sample} ({reference.Measurement.Id}, {reference.Measurement.Setting(SorptionIsotherm.ReferenceArea)!.Written}, taken as exact), {InWords.Plain(alpha.From)} to {InWords.Plain(alpha.To)}: "
                + (alpha.R2 >= LayerPlot.SmallestR2 ? $"micropores {InWords.Of(alpha.MicroporeVolume, alpha.MicroporeVolume - 2 * alpha.MicroporeVolumeU, alpha.MicroporeVolume + 2 * alpha.MicroporeVolumeU, "cm3/g")}, area outside them {InWords.Of(alpha.ExternalArea, alpha.ExternalArea - 2 * alpha.ExternalAreaU, alpha.ExternalArea + 2 * alpha.ExternalAreaU, "m2/g")} (± twice the scatter about the line alone)." : $"its points lie on no line (R² {InWords.Plain(alpha.R2)}), no number.")];
        }

        if (isotherm.PoreVolume is { } volume)
        {
            yield return
            [
                $"Pore volume at p/p0 0.95: {InWords.Of(volume, "cm3/g")}", .. numbering.Trail(SorptionNumbers.Volume(id)),
                (isotherm.VolumeWithVoids is { } voids ? $"; at 0.99, with the voids between grains, {InWords.Plain(voids, "cm3/g")}" : "")
                    + (bet.Chosen is { } chosen ? $". 4V/A (BET) is {InWords.Plain(PoreVolume.AverageDiameter(volume.Value, chosen.Area), "nm")}, an average and no pore." : "."),
            ];
        }

        if (isotherm.ByAdsorption?.Sizes is { Mode: { } mode } sizes)
        {
            yield return [$"Pore sizes by the adsorption branch: largest dV/dlog d at {InWords.Plain(mode.Diameter, "nm")} (step {InWords.Plain(2 * mode.SmallestRadius)} to {InWords.Plain(2 * mode.LargestRadius, "nm")}), {InWords.Plain(sizes.Volume, "cm3/g")} and {InWords.Plain(sizes.Area, "m2/g")} in all"
                + (isotherm.ByDesorption is { Mode: { } down } other ? $"; by desorption at {InWords.Plain(down.Diameter, "nm")}, {InWords.Plain(other.Area, "m2/g")}." : ".")];
        }

        if (isotherm.Shape is { } shape)
            yield return [$"Type, as a suggestion: {shape.Words}. {shape.Evidence}."];
    }
}
