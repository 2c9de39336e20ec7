using System.Globalization;
using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Linearised;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;

namespace Holdfast.Reports.Documents;

/// <summary>Uptake against contact time.</summary>
internal sealed class KineticsSection : IResultSection
{
    private const double TrapScatter = 0.05;
    private const int TrapSets = 1000;
    private const ulong TrapSeed = 1;

    /// <inheritdoc/>
    public int Place => 40;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var all = dossier.Evidence.Kinetics;
        if (all.IsEmpty)
            return null;
        var figures = StudyFigure.Of<KineticsFigure>(dossier).ToDictionary(f => f.Id, StringComparer.Ordinal);
        var content = new List<Node>
        {
            Prose.Paragraph("Every curve of the list was fitted to the uptakes of single vessels by nonlinear least squares. A curve that follows the points is a description; it is not a mechanism. Equilibrium by a stated time is judged in the defence."),
        };
        foreach (var fitted in all)
            content.AddRange(FittedText.Of(fitted, "kinetics", figures.GetValueOrDefault(StudyFigure.Id("kinetics", fitted.Series.Name)), numbering, dossier.Evidence));
        content.AddRange(LinearText.Of(all, "kinetics", numbering, Trap(all)));
        return new("kinetics", "Contact time", content);
    }

    /// <inheritdoc/>
    public IEnumerable<Node> InChapter(Dossier dossier, Numbering numbering) => FittedText.InChapter(dossier.Evidence.Kinetics, dossier.Verdicts, "kinetic curves", numbering);

    // What t/q on t gives when there is nothing to find, at the study's own times.
    private static string? Trap(IEnumerable<FittedSeries> all)
    {
        var series = all.Select(f => (f.Series.Name, Times: f.Fits.Select(t => t.Points.X.Where(x => x > 0).ToArray()).FirstOrDefault() ?? []))
            .FirstOrDefault(t => t.Times.Distinct().Count() > 1);
        if (series.Times is null)
            return null;
        var trap = SecondOrderLineTrap.ForConstantUptake(series.Times, TrapScatter, TrapSets, TrapSeed);
        return string.Create(CultureInfo.InvariantCulture,
            $"A high R² of t/q against t says nothing, since t stands on both axes. Drawn {trap.Sets} times at the times of {series.Name}, an uptake that does not depend on time at all, read with {100 * TrapScatter:0} % scatter, gives a median R² of {RoundedNumber.Fixed(trap.MedianRSquared, 4)}, and {100 * trap.ShareAbove:0} % of the draws lie above 0.95.");
    }
}
