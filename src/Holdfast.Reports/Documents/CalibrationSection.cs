using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>How readings became concentrations: lines, limits, quality control.</summary>
internal sealed class CalibrationSection : IResultSection
{
    /// <inheritdoc/>
    public int Place => 10;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var runs = dossier.Evidence.Runs;
        var own = runs.Where(r => r is { Curve: not null, BorrowedFrom: null }).ToArray();
        var content = new List<Node>();
        if (runs.IsEmpty)
            return new("calibration", "Calibration and quality control", [Prose.Paragraph("No run of readings was taken in, so no concentration could be worked out from signals.")]);
        if (own.Length == 0)
            content.Add(Prose.Paragraph("No run has standards that give a line, so no signal could be turned into a concentration."));
        content.AddRange(StudyFigure.Of<CalibrationFigure>(dossier).Select(numbering.Figure));
        if (own.Length > 0)
        {
            content.Add(numbering.Table(() => CalibrationTable.Of(runs)));
            foreach (var run in own)
                content.AddRange(How(run));
            content.Add(numbering.Table(() => CalibrationTable.Limits(runs)));
        }

        content.Add(Prose.Heading("Quality control"));
        content.AddRange(Control(runs, numbering));
        var spread = runs.SelectMany(r => r.Findings).ToArray();
        if (spread.Length > 0)
            content.Add(FindingSection.Grouped(spread));
        return new("calibration", "Calibration and quality control", content);
    }

    /// <inheritdoc/>
    public IEnumerable<Node> InChapter(Dossier dossier, Numbering numbering)
        => dossier.Evidence.Runs.Any(r => r is { Curve: not null, BorrowedFrom: null }) ? [numbering.Table(() => CalibrationTable.Of(dossier.Evidence.Runs).Only("run", "readings", "top", "slope", "intercept", "s", "mandel_p", "lack_of_fit_p"))] : [];

    private static IEnumerable<Node> How(CalibratedRun run)
    {
        yield return Prose.Heading($"How the line of {run.Run.Id} was chosen");
        yield return Prose.List(run.Curve!.Reasons);
    }

    private static IEnumerable<Node> Control(IReadOnlyList<CalibratedRun> runs, Numbering numbering)
    {
        var blanks = runs.Sum(r => r.Blanks.Length);
        yield return Prose.Paragraph(blanks == 0 ? "No reagent blank was read." : $"{InWords.Count(blanks, "reagent blank")} {(blanks == 1 ? "was" : "were")} read.");
        if (CalibrationTable.Checks(runs) is not { } checks)
        {
            yield return Prose.Paragraph("No check standard from another stock was read in any run. Whether the standards were right and whether the instrument drifted is therefore not shown.");
            yield break;
        }

        var recoveries = runs.SelectMany(r => r.Checks).Select(c => c.Recovery).OfType<double>().ToArray();
        yield return numbering.Table(checks);
        if (recoveries.Length > 0)
            yield return Prose.Paragraph($"Check standards recovered {RecoveryRange(recoveries)} of what they should hold; 90 to 110 % is usual.");
    }

    /// <summary>Lowest and highest recovery, to 0.1 %.</summary>
    public static string RecoveryRange(IReadOnlyCollection<double> recoveries)
    {
        var (low, high) = (RoundedNumber.Fixed(recoveries.Min(), 1), RoundedNumber.Fixed(recoveries.Max(), 1));
        return (low == high ? low : $"{low} to {high}") + "\u00A0%";
    }
}
