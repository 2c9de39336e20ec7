using System.Globalization;
using Holdfast.BatchSorption;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Statistics;
using Holdfast.Studies.Properties;

namespace Holdfast.Reports.Documents;

/// <summary>Removal against pH, with the controls that held no sorbent.</summary>
internal sealed class PhSection : IResultSection
{
    /// <inheritdoc/>
    public int Place => 60;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var all = dossier.Evidence.Series.Where(s => s.Varied == BatchProperties.StartPh && !s.Levels.IsEmpty).ToArray();
        if (all.Length == 0)
            return null;
        var figures = StudyFigure.Of<PhFigure>(dossier).ToDictionary(f => f.Id, StringComparer.Ordinal);
        var content = new List<Node>();
        foreach (var series in all)
        {
            content.Add(Prose.Heading($"Series {series.Name}"));
            content.Add(SeriesText.Of(series, numbering));
            if (figures.GetValueOrDefault(StudyFigure.Id("ph", series.Name)) is { } figure)
                content.Add(numbering.Figure(figure));
            content.Add(numbering.Table(() => LevelTable.Of(series, BatchProperties.EndPh)));
            content.Add(Prose.Paragraph(Drift(series)));
            content.AddRange(Controls(series));
        }

        return new("ph", "pH", content);
    }

    private static string Drift(Series series)
    {
        double[] shifts = [.. series.Vessels
            .Select(v => v.Sample.Number(BatchProperties.EndPh) - v.Sample.Number(BatchProperties.StartPh)).OfType<double>()];
        if (shifts.Length == 0)
            return "The end pH was not recorded, so the pH at which the metal was taken up is not known.";
        var moved = shifts.Count(s => Math.Abs(s) > Attribution.LargestPHShift);
        return string.Create(CultureInfo.InvariantCulture,
            $"The pH moved by {InWords.Span([.. shifts.Select(s => Math.Round(s, 2))], "")} from start to end; in {moved} of {shifts.Length} vessels by more than {Attribution.LargestPHShift:0.0}, so the start pH names the vessel but not the condition it came to.");
    }

    private static IEnumerable<Node> Controls(Series series)
    {
        var controls = series.Controls.Where(v => v.Removal is not null).GroupBy(v => v.Sample.Number(BatchProperties.StartPh)).OrderBy(g => g.Key).ToArray();
        if (controls.Length == 0)
        {
            yield return Prose.Paragraph("No control without sorbent was read in this series: loss by precipitation and to the wall cannot be told from sorption.");
            yield break;
        }

        yield return Prose.Paragraph("Loss in the controls without sorbent, which is not the sorbent’s (mean and 95 % interval by t):");
        yield return Prose.List(controls.Select(g =>
        {
            double[] losses = [.. g.Select(v => v.Removal!.Value.Value)];
            var at = g.Key is { } ph ? $"start pH {InWords.Setting(ph, "")}" : $"start pH {Prose.NotRecorded}";
            var mean = Summary.Of(losses).MeanEstimate().Value;
            return mean is { StandardError: > 0 } ? $"{at}: {InWords.Of(mean, "%")}, n = {losses.Length.ToString(CultureInfo.InvariantCulture)}"
                : $"{at}: {InWords.Of(g.First().Removal!.Value, "%")}, n = {losses.Length.ToString(CultureInfo.InvariantCulture)}";
        }));
    }
}
