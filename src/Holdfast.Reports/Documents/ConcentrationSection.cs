using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;

namespace Holdfast.Reports.Documents;

/// <summary>From signals to concentrations and uptakes: what was read, how often, how well.</summary>
internal sealed class ConcentrationSection : IResultSection
{
    /// <inheritdoc/>
    public int Place => 20;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var evidence = dossier.Evidence;
        var study = evidence.Study;
        if (evidence.Vessels.IsEmpty)
            return new("concentrations", "Concentrations and vessels", [Prose.Paragraph("No vessel was recorded.")]);
        var byRole = evidence.Vessels.GroupBy(v => v.Sample.Role).OrderBy(g => g.Key)
            .Select(g => InWords.Count(g.Count(), InWords.Of(g.Key))).ToArray();
        var content = new List<Node>
        {
            Prose.Paragraph($"The study holds {InWords.Listed(byRole)}, {InWords.Count(study.Readings.Length, "reading")} in {InWords.Count(study.Runs.Length, "run")}, and {(study.Strikes.IsEmpty ? "no strike" : InWords.Count(study.Strikes.Length, "strike"))}."),
        };
        var read = evidence.Vessels.Where(v => v.End is { Value: not null } or { IsOnlyBelow: true }).ToArray();
        if (read.Length == 0)
        {
            content.Add(Prose.Paragraph("No vessel has a concentration."));
            if (MissingText.Of(evidence, numbering) is { } nothing)
                content.Add(nothing);
            return new("concentrations", "Concentrations and vessels", content);
        }

        var below = read.Where(v => v.End!.IsBelowDetection).ToArray();
        var below10 = read.Count(v => v.End!.IsBelowQuantification);
        var example = read.FirstOrDefault(v => v is { IsStruck: false, Uptake: not null } && v.Sample.Role == SampleRole.Vessel);
        content.Add(Prose.Paragraph(
            $"A concentration was found for {InWords.Count(read.Length, "sample")}. ",
            below.Length == 0
                ? "None lies below its detection limit. "
                : $"{InWords.Count(below.Length, "sample")} {(below.Length == 1 ? "lies" : "lie")} below the detection limit ({InWords.Some([.. below.Select(v => v.Code)], 6)}): printed as “< limit”, never as zero. ",
            string.Create(CultureInfo.InvariantCulture, $"{below10} of {read.Length} lie below the limit of quantification.")));
        content.Add(Prose.Paragraph(
            "Uptake is what left the solution, divided by the mass of sorbent: q = (C0 − Ce)·V/m. It is called sorption here only where the controls and the precipitation gate allow it. ",
            "The uncertainty of each number carries weighing, volume, start solution, dilution, the calibration line and the reading itself; vessels that share a line or a flask share that part of their error."));
        if (example is not null)
        {
            content.Add(Prose.Paragraph([
                $"For example, vessel {example.Code} took up {InWords.Of(example.Uptake!.Value, "mg/g")}",
                .. numbering.Trail("q:" + example.Code),
                $", its removal was {InWords.Of(example.Removal!.Value, "%")}",
                .. numbering.Trail("R:" + example.Code),
                ". The note shows formula, inputs, shares of the variance and the file and row of each reading.",
            ]));
        }

        if (MissingText.Of(evidence, numbering) is { } missing)
            content.Add(missing);
        content.Add(Prose.Paragraph("The appendix lists every vessel."));
        return new("concentrations", "Concentrations and vessels", content);
    }
}
