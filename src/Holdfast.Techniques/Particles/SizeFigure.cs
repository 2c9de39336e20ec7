using Holdfast.Claims;
using Holdfast.Particles;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Techniques.Particles;

/// <summary>Histogram of each list of particle sizes with the log-normal curve of its geometric mean and standard deviation.</summary>
internal sealed class SizeFigure : IStudyFigure
{
    public int Place => 8;

    public IEnumerable<Figure> Of(Dossier dossier)
        => ParticleStudy.Of(dossier.Evidence).Lists.Where(l => l.Unit.Length > 0 && l.Statistics.LogSd > 0).Select(l => One(l, dossier));

    private static Figure One(SizeList list, Dossier dossier)
    {
        var (statistics, histogram) = (list.Statistics, SizeHistogram.Of(list.Statistics));
        var curve = new LogNormal(statistics.GeometricMean, statistics.Gsd);
        double low = statistics.Sizes[0], high = statistics.Sizes[^1], bin = histogram.Edges[1] - histogram.Edges[0];
        return new(
            StudyFigure.Id("particles", $"{list.Powder} {list.Measurand}"), $"Particles of {list.Powder}, {list.Measurand}",
            $"{InWords.Count(statistics.Summary.N, "particle")} in bins of {InWords.Plain(bin, list.Unit)}; median {InWords.Plain(statistics.Summary.Median, list.Unit)}, geometric standard deviation {InWords.Plain(statistics.Gsd)}.",
            [
                new Panel(new Axis("d", list.Unit, list.Measurand), new Axis("particles", null, "particles in each bin"),
                [
                    new Bars([.. histogram.Counts.Select((c, k) => new Bar(histogram.Edges[k], histogram.Edges[k + 1], c))]),
                    ModelCurve.Of(d => statistics.Summary.N * bin * curve.Density(d), low, high) with { Slot = 1, Label = "log-normal" },
                ]),
            ])
        {
            Notes = ["Bins after Freedman and Diaconis, for the eye; every number comes from the list itself. The curve has the geometric mean and standard deviation of the list and is not fitted to the bins."],
            MadeFrom = StudyFigure.MadeFrom(dossier),
        };
    }
}
