using Holdfast.Amounts;
using Holdfast.Claims;
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
        if (Errors(fitted) is { } errors)
            yield return Prose.Paragraph(errors);
        if (PredictionTable.Of(id + "-predictions", fitted) is { } predicted)
            yield return numbering.Table(predicted);
        if (!fitted.Findings.IsEmpty)
            yield return FindingSection.Grouped(fitted.Findings);
    }

    /// <summary>What the chapter shows of a family: the equations of the curves that lead, and their parameters, of the series that stated claims are about; of all where none is.</summary>
    /// <param name="all">Every fitted series of the family.</param>
    /// <param name="verdicts">Judged claims.</param>
    /// <param name="kind">What they are: "isotherms".</param>
    /// <param name="numbering">Numbers of tables.</param>
    public static IEnumerable<Node> InChapter(IReadOnlyCollection<FittedSeries> all, IReadOnlyCollection<Verdict> verdicts, string kind, Numbering numbering)
    {
        var asked = verdicts.Where(v => v.Claim.Stated).SelectMany(v => v.Claim.Words("series")?.Split(',', StringSplitOptions.TrimEntries) ?? []).ToHashSet(StringComparer.Ordinal);
        var some = all.Any(f => asked.Contains(f.Series.Name));
        FittedSeries[] led = [.. all.Where(f => f.Best is not null && (!some || asked.Contains(f.Series.Name)))];
        if (led.Length == 0)
            yield break;
        foreach (var card in led.Select(f => f.Best!.Card).DistinctBy(c => c.Name, StringComparer.Ordinal))
        {
            yield return Prose.Paragraph($"{card.Name} has the lowest AICc for {InWords.Listed(led.Where(f => f.Best!.Card.Name == card.Name).Select(f => f.Series.Name))}: ", FormulaMath.Of(card.Formula), ".");
        }

        yield return numbering.Table(() => BestCurveTable.Of("leading-" + LevelTable.Id(kind), $"The leading {kind} of {(led.Length < all.Count ? "the series that the claims are about; the record has the others" : "each series")}", led));
    }

    private static string Standing(FittedSeries fitted, FitResult? best)
    {
        if (best is null)
            return $"No curve settled on {fitted.Series.Name} with enough vessels to compare; the table has the reason for each.";
        var near = fitted.Undistinguished.Select(f => f.Card.Name).ToArray();
        var text = near.Length < 2
            ? $"{best.Card.Name} has the lowest AICc of {InWords.Count(fitted.Fits.Length, "curve")} tried, by more than 2."
            : $"The vessels do not tell {InWords.Listed(near)} apart (AICc within 2); naming one of them as the best would not be shown.";
        return text + " " + Misfit(best);
    }

    private static string Misfit(FitResult best) => best.LackOfFit switch
    {
        null => $"No setting has replicate vessels with settings to spare, so the lack of fit of {best.Card.Name} is not tested.",
        { Test.P: < 0.05 and var p } => $"Yet {best.Card.Name} misses the level means by more than replicates differ ({InWords.P(p)}): a curve of the list that follows these data within their scatter is not shown.",
        { Test.P: var p } => $"{best.Card.Name} shows no lack of fit ({InWords.P(p)}).",
    };

    /// <summary>The error model in words: what every interval and comparison of the series rests on.</summary>
    private static string? Errors(FittedSeries fitted)
    {
        if (fitted.Best is not { Errors: { } errors } best)
            return null;
        var scatter = errors.VesselScatter > 0
            ? $"{InWords.Plain(100 * errors.VesselScatter, "%")} {(errors.Form == ScatterForm.Amount ? "of the amount taken up" : "of what the sorbent takes up")} from vessel to vessel, as the residuals of {best.Card.Name} show it ({RoundedNumber.Fixed(errors.VesselScatterFreedom ?? 0, 1)} degrees of freedom)"
            : $"no scatter from vessel to vessel, since the residuals of {best.Card.Name} show none beyond what is stated";
        var replicates = errors.ReplicateScatter switch
        {
            null => "No setting has replicates, so that misfit and scatter are not told apart.",
            0 => $"Replicates ({InWords.Count(errors.ReplicateFreedom, "degree")} of freedom) show none of their own.",
            { } share => $"Replicates alone show {InWords.Plain(100 * share, "%")} ({InWords.Count(errors.ReplicateFreedom, "degree")} of freedom).",
        };
        return $"One error model serves fits, intervals and comparison: what is stated of every vessel, with flasks, calibration and glassware shared, and {scatter}. {replicates}";
    }
}
