using Holdfast.Claims;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Documents;

/// <summary>Removal and uptake against dose.</summary>
internal sealed class DoseSection : IResultSection
{
    /// <inheritdoc/>
    public int Place => 30;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var all = dossier.Evidence.Series.Where(s => s.Varied == BatchProperties.Dose && !s.Levels.IsEmpty).ToArray();
        if (all.Length == 0)
            return null;
        var figures = StudyFigure.Of<DoseFigure>(dossier).ToDictionary(f => f.Id, StringComparer.Ordinal);
        var content = new List<Node>();
        foreach (var series in all)
        {
            content.Add(Prose.Heading($"Series {series.Name}"));
            content.Add(SeriesText.Of(series, numbering));
            if (figures.GetValueOrDefault(StudyFigure.Id("dose", series.Name)) is { } figure)
                content.Add(numbering.Figure(figure));
            content.Add(numbering.Table(() => LevelTable.Of(series)));
            if (DosePrediction.Of(dossier.Evidence, series) is { } prediction)
                content.AddRange([Prose.Paragraph(prediction.Sentence), numbering.Table(() => DosePredictionTable.Of(series, prediction))]);
        }

        content.Add(Prose.Paragraph(
            "For every rising isotherm removal rises and uptake falls with dose. So a dose series has no optimum of its own, and where the two curves cross depends on the scales of the axes alone. A dose is an optimum only against a target, a cost or a margin stated beforehand."));
        return new("dose", "Dose", content);
    }
}
