using System.Globalization;
using Holdfast.Amounts;
using Holdfast.BatchSorption;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Linearised;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>Uptake against contact time.</summary>
internal static class KineticsSection
{
    private const double TrapScatter = 0.05;
    private const int TrapSets = 1000;
    private const ulong TrapSeed = 1;

    /// <summary>The section; null without a kinetic series.</summary>
    public static Section? Of(Dossier dossier, Numbering numbering)
    {
        if (dossier.Evidence.Kinetics.IsEmpty)
            return null;
        var figures = StudyFigure.Of<KineticsFigure>(dossier).ToDictionary(f => f.Id, StringComparer.Ordinal);
        var content = new List<Node>
        {
            Prose.Paragraph("Every curve of the list was fitted to the uptakes of single vessels by nonlinear least squares. A curve that follows the points is a description; it is not a mechanism."),
        };
        foreach (var fitted in dossier.Evidence.Kinetics)
        {
            content.AddRange(FittedText.Of(fitted, "kinetics", figures.GetValueOrDefault(StudyFigure.Id("kinetics", fitted.Series.Name)), numbering));
            if (fitted.Plateau is { } plateau)
                content.Add(Prose.Paragraph(Level(plateau)));
        }

        content.AddRange(Lines(dossier.Evidence.Kinetics, numbering));
        return new("kinetics", "Contact time", content);
    }

    private static string Level(Plateau plateau)
        => $"Over all times of this series the uptake changes by {RoundedNumber.Interval(100 * plateau.Lower, 100 * plateau.Upper)} % of its mean per doubling of time (90 % interval; margin ±{InWords.Plain(100 * Plateau.Margin)} %): {plateau.Reason}. Equilibrium by a stated time is judged in the defence.";

    private static IEnumerable<Node> Lines(IEnumerable<FittedSeries> all, Numbering numbering)
    {
        yield return Prose.Heading("Linear plots, for display only");
        foreach (var fitted in all)
        {
            double[] times = [.. fitted.Fits.Where(f => f.Points.Count > 0).Select(f => f.Points.X.Where(x => x > 0).ToArray()).FirstOrDefault() ?? []];
            if (times.Distinct().Count() < 2)
                continue;
            var trap = SecondOrderLineTrap.ForConstantUptake(times, TrapScatter, TrapSets, TrapSeed);
            yield return Prose.Paragraph(string.Create(CultureInfo.InvariantCulture,
                $"A high R² of t/q against t says nothing, since t stands on both axes. Drawn {trap.Sets} times at the times of {fitted.Series.Name}, an uptake that does not depend on time at all, read with {100 * TrapScatter:0} % scatter, gives a median R² of {RoundedNumber.Fixed(trap.MedianRSquared, 4)}; {100 * trap.ShareAbove:0} % of the draws lie above 0.95."));
            if (LinearFormTable.Of("kinetics-" + LevelTable.Id(fitted.Series.Name) + "-linear", $"Linear plots of {fitted.Series.Name}, for display only, beside the direct fit", fitted) is { } table)
                yield return numbering.Table(table);
        }
    }
}
