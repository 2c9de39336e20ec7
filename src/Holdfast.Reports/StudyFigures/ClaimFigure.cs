using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Reports.Figures;
using Holdfast.Studies;

namespace Holdfast.Reports.StudyFigures;

/// <summary>The figure that shows what a claim rests on, with the settings still to be run drawn into it.</summary>
public static class ClaimFigure
{
    /// <summary>The figure of a claim.</summary>
    /// <param name="verdict">The judged claim.</param>
    /// <param name="study">The study.</param>
    /// <param name="figures">Every figure of the study.</param>
    /// <returns>The figure that shares most of its marks with the samples of the claim, or that of the run it names; null when none does.</returns>
    public static Figure? Of(Verdict verdict, Study study, IReadOnlyList<Figure> figures)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(figures);
        var shown = verdict.Data.IsEmpty
            ? verdict.Claim.Words("run") is { } run ? figures.FirstOrDefault(f => f.Id == StudyFigure.Id(CalibrationFigure.Kind, run)) : null
            : figures.Select(f => (Figure: f, Share: Shared(f, verdict, study))).Where(f => f.Share > 0).OrderByDescending(f => f.Share).FirstOrDefault().Figure;
        return shown is null ? null : WithSettings(shown, verdict.Next);
    }

    // Samples shown and samples of the claim in common, of all of either: a figure of everything is no figure of this.
    private static double Shared(Figure figure, Verdict verdict, Study study)
    {
        var marks = figure.Panels.SelectMany(p => p.AllMarks).Select(m => m.Id).OfType<string>().Select(id => study.Reading(id)?.Sample ?? id).Concat(figure.RestsOn).ToHashSet(StringComparer.Ordinal);
        var common = verdict.Data.Count(marks.Contains);
        return common == 0 ? 0 : (double)common / marks.Union(verdict.Data).Count();
    }

    private static Figure WithSettings(Figure figure, NextExperiment? next)
    {
        if (next is null)
            return figure;
        var panels = figure.Panels.Select(p => (Panel: p, Lines: Lines(p.X, next).ToArray())).ToArray();
        return Array.TrueForAll(panels, p => p.Lines.Length == 0)
            ? figure
            : figure with
            {
                Panels = [.. panels.Select(p => p.Panel with { Layers = [.. p.Panel.Layers, .. p.Lines] })],
                Notes = [.. figure.Notes, "Lines marked “to run”: settings of the experiment that would settle the claim."],
            };
    }

    private static IEnumerable<ReferenceLine> Lines(Axis axis, NextExperiment next)
    {
        if (!axis.Chosen || Unit.Read(axis.Unit) is not UnitText.Known { Unit: var unit })
            yield break;
        foreach (var setting in next.Settings)
        {
            if (QuantityText.Read(setting).Value is { } wanted && wanted.Unit.IsConvertibleTo(unit))
                yield return new(AxisName.X, wanted.In(unit).Value, $"{setting} to run");
        }
    }
}
