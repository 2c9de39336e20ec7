using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Fitting;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>What is said of a series with fitted curves: figure, levels, ranking, parameters, the second opinion of the weights.</summary>
internal static class FittedText
{
    /// <summary>The part of one series.</summary>
    /// <param name="fitted">The series with its fits.</param>
    /// <param name="kind">Begins the ids of its tables.</param>
    /// <param name="figure">Its figure, or null.</param>
    /// <param name="numbering">Numbers of figures and tables.</param>
    /// <param name="evidence">The study worked out: it tells why vessels have no uptake.</param>
    public static IEnumerable<Node> Of(FittedSeries fitted, string kind, Figure? figure, Numbering numbering, Evidence evidence)
    {
        var series = fitted.Series;
        var id = $"{kind}-{LevelTable.Id(series.Name)}";
        yield return Prose.Heading($"Series {series.Name}");
        yield return SeriesText.Of(series, numbering);
        if (MissingText.Of(evidence, numbering, series.Name) is { } missing)
            yield return missing;
        if (fitted.Fits.IsEmpty)
        {
            yield return Prose.Paragraph($"Nothing is fitted to {series.Name}: none of its vessels has an uptake.");
            yield break;
        }

        if (figure is not null)
            yield return numbering.Figure(figure);
        if (!series.Levels.IsEmpty)
            yield return numbering.Table(() => LevelTable.Of(series));
        yield return Prose.Paragraph(Standing(fitted, best: fitted.Best));
        yield return numbering.Table(() => RankingTable.Of(id + "-curves", $"Curves fitted to {series.Name}, best first", fitted.Fits, "mg/g"));
        var estimates = EstimateTable.Of(id + "-parameters", $"Parameters of the curves fitted to {series.Name}", fitted.Fits, series.Name);
        if (estimates.Rows.Count > 0)
            yield return numbering.Table(estimates);
        if (SecondOpinion(fitted) is { } second)
            yield return Prose.Paragraph(second);
        if (!fitted.Findings.IsEmpty)
            yield return FindingSection.Grouped(fitted.Findings);
    }

    private static string Standing(FittedSeries fitted, FitResult? best)
    {
        if (best is null)
            return $"No curve settled on {fitted.Series.Name} with enough vessels to compare; the table has the reason for each.";
        var near = fitted.Undistinguished.Select(f => f.Card.Name).ToArray();
        var text = near.Length < 2
            ? $"{best.Card.Name} has the lowest AICc of {InWords.Count(fitted.Fits.Length, "curve")} tried, by more than 2."
            : $"The vessels do not tell {InWords.Listed(near)} apart (AICc within 2); naming one of them as the best would not be shown.";
        return text + " " + Misfit(fitted, best);
    }

    // Replicates of an isotherm come to different Ce; the fit through the mass balance sees them at one C0 and can test.
    private static string Misfit(FittedSeries fitted, FitResult best)
    {
        var balance = fitted.Weighed.FirstOrDefault(f => f.IsFit && f.Card.Name == best.Card.Name);
        return (best.LackOfFit ?? balance?.LackOfFit) switch
        {
            null => $"No vessels share an abscissa with levels to spare, so the lack of fit of {best.Card.Name} is not tested.",
            { Test.P: < 0.05 and var p } => $"Yet {best.Card.Name} misses the level means by more than replicates differ ({InWords.P(p)}): a curve of the list that follows these data within their scatter is not shown.",
            { Test.P: var p } when best.LackOfFit is null => $"Replicates come to different Ce, so lack of fit is tested in the fit through the mass balance: {best.Card.Name} shows none ({InWords.P(p)}).",
            { Test.P: var p } => $"{best.Card.Name} shows no lack of fit ({InWords.P(p)}).",
        };
    }

    /// <summary>Whether the conclusion moves with the weights.</summary>
    private static string? SecondOpinion(FittedSeries fitted)
    {
        if (fitted.Best is not { } best || fitted.Weighed.IsEmpty)
            return null;
        var ranked = fitted.Weighed.Where(f => f.IsFit && f.Aicc is not null).OrderBy(f => f.Aicc).ToArray();
        if (ranked.Length == 0)
            return "Weighed by the propagated uncertainty of each vessel no curve settled, so the weights give no second opinion.";
        var first = ranked[0];
        if (first.Card.Name == best.Card.Name)
            return $"Second opinion: weighed by the propagated uncertainty of each vessel, {first.Card.Name} comes first again: its place does not rest on the weights.";
        var same = Array.Find(ranked, f => f.Card.Name == best.Card.Name);
        var gap = same is null ? "" : $"; {best.Card.Name} is then {RoundedNumber.Fixed(same.Aicc!.Value - first.Aicc!.Value, 1)} AICc behind";
        return $"Second opinion: weighed by the propagated uncertainty of each vessel, {first.Card.Name} comes first{gap}. The first place moves with the weights, so it is not firm.";
    }
}
