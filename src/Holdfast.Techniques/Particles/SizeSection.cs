using Holdfast.Claims;
using Holdfast.Particles;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;
using Holdfast.Techniques.Micrographs;

namespace Holdfast.Techniques.Particles;

/// <summary>Particle sizes: how many, averages by number and by volume, how wide, how well counted.</summary>
internal sealed class SizeSection : IResultSection
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal) { ["one"] = "one particle alone", ["n.r."] = "not recorded" };

    /// <inheritdoc/>
    public int Place => 8;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var lists = ParticleStudy.Of(dossier.Evidence).Lists;
        var findings = lists.SelectMany(l => l.Findings).Concat(MicrographStudy.Of(dossier.Evidence).Pictures.SelectMany(p => MicrographStudy.Findings(p))).ToArray();
        if (lists.IsEmpty && findings.Length == 0)
            return null;
        var content = new List<Node> { Prose.Paragraph("Sizes measured in images, counted by number. They are not the sizes of light scattering (by intensity) or of diffraction (length of crystal columns), and are not compared with them.") };
        content.AddRange(StudyFigure.Of<SizeFigure>(dossier).Select(f => (Node)numbering.Figure(f)));
        foreach (var unit in lists.GroupBy(l => l.Unit, StringComparer.Ordinal))
            content.Add(numbering.Table(() => Sizes([.. unit])));
        if (lists.Any(l => l.Unit.Length > 0 && l.Statistics.Summary.N > 1))
            content.Add(Prose.List(lists.Where(l => l.Unit.Length > 0 && l.Statistics.Summary.N > 1).Select(Words)));
        if (findings.Length > 0)
            content.Add(FindingSection.Grouped(findings));
        return new("particles", "Particle sizes", content);
    }

    /// <summary>Statistics of lists in one unit.</summary>
    /// <param name="lists">The lists.</param>
    internal static Table Sizes(IReadOnlyList<SizeList> lists)
    {
        var unit = lists[0].Unit.Length > 0 ? lists[0].Unit : null;
        return new(
            StudyFigure.Id("particle-sizes", unit ?? "number"), unit is null ? "Shape of the particles" : "Sizes of the particles by number",
            [
                new Column("powder", "Powder") { NamesRows = true }, new Column("measurand", "What was measured"), new Column("n", "n"), new Column("images", "Images"),
                new Column("mean", "Mean") { Unit = unit }, new Column("sd", "Standard deviation") { Unit = unit }, new Column("d10", "D10") { Unit = unit }, new Column("d50", "Median") { Unit = unit },
                new Column("d90", "D90") { Unit = unit },
                new Column("geometric_mean", "Geometric mean") { Unit = unit }, new Column("gsd", "GSD"), new Column("volume_mean", "Mean by volume") { Unit = unit },
            ],
            [.. lists.Select(l => Row.Of(
                l.Powder, l.Measurand, new NumberCell(l.Particles.Length) { Decimals = 0 }, l.Images > 0 ? new NumberCell(l.Images) { Decimals = 0 } : new MissingCell("n.r."),
                l.MeanU is { } u ? new MeasuredCell(l.Statistics.Summary.Mean, u) { Address = SizeNumbers.Address("mean", l) } : new NumberCell(l.Statistics.Summary.Mean),
                l.Statistics.Summary.Sd is { } sd ? new NumberCell(sd) : new MissingCell("one"), Quantile(l, "d10", l.D10), Quantile(l, "d50", l.D50), Quantile(l, "d90", l.D90),
                new NumberCell(l.Statistics.GeometricMean), new NumberCell(l.Statistics.Gsd), new NumberCell(l.Statistics.VolumeMean)))],
            Codes)
        {
            Notes =
            [
                unit is null ? "Mean and quantiles ± standard uncertainty." : $"Mean and quantiles ± standard uncertainty; a scale nobody calibrated is known to {InWords.Plain(100 * ScaleBar.Uncalibrated, "%")}, added after averaging, and so is what observers differ by.",
                "Quantiles by resampling; where four or more images are named they are the values, for the mean as well. n: particles.",
            ],
        };
    }

    private static Cell Quantile(SizeList list, string what, SizeQuantile? found)
        => found is null ? new MissingCell("one") : new MeasuredCell(found.Value, list.Whole(found.Value, found.SamplingU)) { Address = SizeNumbers.Address(what, list) };

    private static string Words(SizeList list)
    {
        var s = list.Statistics;
        var normal = s.LogNormality is { } log ? $"log-normal {(log.P < 0.05 ? "rejected" : "not rejected")} ({InWords.P(log.P)}), normal {(s.Normality!.P < 0.05 ? "rejected" : "not rejected")} ({InWords.P(s.Normality.P)})" : "too few or too many for a test of the distribution";
        return $"{list.Powder}, {list.Measurand}: {normal}; {InWords.Count(s.Summary.N, "particle")} give the mean by number to {InWords.Plain(100 * CountNeeded.NumberMean.Reached(s.Gsd, s.Summary.N), "%")} and that by volume to {InWords.Plain(100 * CountNeeded.VolumeMean.Reached(s.Gsd, s.Summary.N), "%")} (95 %, if log-normal and independent); "
            + $"the largest particle has {InWords.Plain(100 * s.ShareOfLargest, "%")} of the volume.";
    }
}
