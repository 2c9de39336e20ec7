using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Fluorescence;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>What the study shows about a sensor that dims: its curve, limits, lifetimes, drift, other ions, real waters.</summary>
internal sealed class SensorSection : IResultSection
{
    /// <inheritdoc/>
    public int Place => 100;

    /// <inheritdoc/>
    public Section? Of(Dossier dossier, Numbering numbering)
    {
        var sensing = Sensing.Of(dossier.Evidence);
        if (sensing.IsEmpty)
            return null;
        var content = new List<Node>();
        foreach (var series in sensing.Series)
            content.AddRange(Quenching(series, dossier, numbering));
        content.AddRange(Lifetime(sensing, dossier, numbering));
        foreach (var drift in sensing.Drifts)
            content.Add(Prose.Paragraph(Drift(drift)));
        content.AddRange(Others(sensing, dossier, numbering));
        content.AddRange(Waters(sensing, dossier, numbering));
        content.AddRange(SensorPrecisionText.Of(dossier));
        var findings = sensing.Findings.Concat(sensing.Series.SelectMany(s => s.Findings)).ToArray();
        if (findings.Length > 0)
            content.AddRange([Prose.Heading("What the sensor’s data say about themselves"), FindingSection.Grouped(findings)]);
        return new("sensor", "Sensing by fluorescence", content);
    }

    private static IEnumerable<Node> Quenching(SensorSeries series, Dossier dossier, Numbering numbering)
    {
        yield return Prose.Heading($"Series {series.Name}");
        yield return Prose.Paragraph(
            $"{InWords.Count(series.Samples.Length, "vessel")} at {InWords.Count(series.Levels.Length, "level")} of quencher, {InWords.Span(series.Levels, "µmol/L")}, and {InWords.Count(series.Blanks.Length, "separate blank")}"
                + $"{(series.IsInRisingOrder ? "; the levels were read in rising order" : series.IsOrderKnown ? "" : "; the order in which they were read is not known")}. F0 is the {series.F0From}.");
        if (Spectra(series, EmissionStudy.Of(dossier.Evidence)) is { } spectra)
            yield return Prose.Paragraph(spectra);
        foreach (var figure in Of<SpectraFigure>("spectra", series.Name, dossier))
            yield return numbering.Figure(figure);
        foreach (var figure in Of<QuenchingFigure>("quenching", series.Name, dossier))
            yield return numbering.Figure(figure);
        yield return numbering.Table(() => SensorTables.Levels(series));
        if (!series.Fits.IsEmpty)
        {
            yield return Prose.Paragraph("Every law was fitted to the signal itself, with F0 as a parameter and weights for a constant relative error. The line of F0/F puts one reading of F0 into every point, so it serves for the range and the limits only.");
            yield return numbering.Table(() => SensorTables.Laws(series));
            yield return Prose.Paragraph(Law(series));
            yield return numbering.Table(() => EstimateTable.Of("quenching-estimates-" + LevelTable.Id(series.Name), $"Parameters of the laws fitted to {series.Name}", series.Fits, series.Name));
        }

        yield return Prose.Paragraph(Range(series));
        if (SensorTables.Limits(series) is { } limits)
            yield return numbering.Table(limits);
    }

    private static string? Spectra(SensorSeries series, EmissionStudy emission)
    {
        SensorSample[] read = [.. series.Samples.Concat(series.Blanks).Where(s => s.Spectra is not null)];
        if (read.Length == 0 || emission.Window is not { } window)
            return null;
        var repeated = read.Count(s => s.Spectra!.Used.Length > 1);
        return $"The signals of {InWords.Count(read.Length, "vessel and blank", "vessels and blanks")} were read from whole spectra, all in one window: {(window.IsArea ? "the area" : "the mean of five points")} "
            + $"from {InWords.Setting(window.From, "nm")} to {InWords.Setting(window.To, "nm")} ({emission.WindowFrom}), {(read[0].Spectra!.Solvent is null ? "scatter not taken off" : "less the liquid alone")}. "
            + (repeated == read.Length ? "Each was read more than once, which gives it an uncertainty of its own."
                : $"{(repeated == 0 ? "Each" : "All but " + InWords.Count(repeated, "sample"))} was read once: the points of one band do not show their own noise, so that a signal has no uncertainty of its own and the scatter between vessels holds it.");
    }

    private static string Law(SensorSeries series)
    {
        if (series.Ranking is not { Ranked: [var best, ..] } ranking)
            return "No law could be ranked.";
        var text = ranking.Survivors.Count > 1
            ? $"The signals do not tell {InWords.Listed(ranking.Survivors.Select(r => r.Fit.Card.Name))} apart."
            : $"{best.Fit.Card.Name} loses least.";
        var constants = series.Plots.Where(p => p.Order is not null || p.Name.StartsWith("1/", StringComparison.Ordinal))
            .Select(p => $"{p.Name} would give {InWords.Plain(p.Constant, "L/µmol")}{(p.Order is { } n ? $" and a slope of {InWords.Plain(Math.Round(n, 2))}" : "")}").ToArray();
        return text + (constants.Length == 0 ? "" : $" For comparison only: {string.Join("; ", constants)}. Both plots take the quencher added for the quencher free and stretch the noise of weak effects.");
    }

    private static string Range(SensorSeries series)
    {
        var text = series.Range?.Longest is { } longest
            ? $"F0/F is straight up to {InWords.Plain(longest.Top, "µmol/L")}, the last level at which neither curvature nor lack of fit shows (slope {InWords.Of(longest.Linearity.Line.Coefficient(1)!, "L/µmol")})."
            : "No straight range of five levels was found on F0/F.";
        return series.TwoLines is not { } lines ? text
            : lines.AreShown ? $"{text} Two joined lines describe it better, with a break at {InWords.Of(lines.Break, lines.BreakInterval.Low, lines.BreakInterval.High, "µmol/L")}: two regions of use, not two mechanisms."
            : $"{text} Two joined lines gain too little over one: there is one smooth curve.";
    }

    private static IEnumerable<Node> Lifetime(Sensing sensing, Dossier dossier, Numbering numbering)
    {
        if (sensing.Lifetimes.IsEmpty)
        {
            if (!sensing.Series.IsEmpty)
                yield return Prose.Paragraph("No lifetimes were read, so static and dynamic quenching are not told apart.");
            yield break;
        }

        foreach (var lifetimes in sensing.Lifetimes)
        {
            yield return Prose.Heading($"Lifetimes, series {lifetimes.Name}");
            foreach (var figure in Of<LifetimeFigure>("lifetimes", lifetimes.Name, dossier))
                yield return numbering.Figure(figure);
            if (lifetimes.Constant is not { } ofLifetimes || sensing.Series.FirstOrDefault()?.ConstantTo(lifetimes.Highest) is not { } ofSignals)
                continue;
            var ratio = Lifetimes.Of(ofSignals, ofLifetimes).Ratio;
            var text = $"The constant of the lifetimes is {InWords.Of(ratio, "")} of the constant of the signals; 1 is dynamic, 0 is static.";
            yield return Prose.Paragraph(lifetimes.WithoutQuencher is { } without and > 0
                ? $"{text} {DiffusionLimit.Says(DiffusionLimit.Bimolecular<Amounts.Number>(1e6 * ofSignals.Value, without / 1000).Value).Sentence}" : text);
        }
    }

    private static string Drift(DriftRun drift)
        => $"Without quencher the signal of {drift.Name} changed by {InWords.Of(-100 * drift.Control.LossBy(drift.Control.Longest), "%")} in {InWords.Plain(drift.Control.Longest, "min")}, "
            + (drift.Control.IsSmooth ? "by one smooth law as far as its readings show." : "by no smooth law: the series cannot be corrected by it.");

    private static IEnumerable<Node> Others(Sensing sensing, Dossier dossier, Numbering numbering)
    {
        foreach (var series in sensing.Interferences)
        {
            yield return Prose.Heading($"Other ions, series {series.Name}");
            foreach (var figure in Of<InterferenceFigure>("interference", series.Name, dossier))
                yield return numbering.Figure(figure);
            yield return numbering.Table(() => SensorTables.Ions(series));
            var tolerated = series.Ions.GroupBy(i => i.Ion, StringComparer.Ordinal).Where(g => g.Any(i => i.Quencher > 0))
                .Select(g => (Ion: g.Key, Ratio: Interference.ToleranceRatio(g.Where(i => i.Quencher > 0).Select(i => i.Found)))).ToArray();
            if (tolerated.Length > 0)
                yield return Prose.List(tolerated.Select(t => t.Ratio is { } ratio ? $"{t.Ion}: tolerated up to {InWords.Plain(ratio)} times the analyte" : $"{t.Ion}: no excess is shown to be tolerated"));
            else
                yield return Prose.Paragraph("Every ion was read alone. Whether it disturbs the analyte when both are there is not shown.");
        }
    }

    private static IEnumerable<Node> Waters(Sensing sensing, Dossier dossier, Numbering numbering)
    {
        if (SensorTables.Waters(sensing) is not { } table)
            yield break;
        yield return Prose.Heading("Real waters with known additions");
        foreach (var figure in StudyFigure.Of<RecoveryFigure>(dossier))
            yield return numbering.Figure(figure);
        yield return numbering.Table(table);
        yield return Prose.List(sensing.Waters.Select(w =>
            $"{w.Name}: found rises {InWords.Of(w.Water.Slope, "")} per added; without addition {InWords.Of(w.Water.Native, "µmol/L")} was found. "
                + (w.Water.MatrixEffectIsShown ? "The water changes the response: use standard additions." : "The interval holds 1.")
                + (w.ReadBack ? "" : " What was found came worked out, without its readings.")));
    }

    private static IEnumerable<Figures.Figure> Of<TKind>(string kind, string series, Dossier dossier) where TKind : IStudyFigure
        => StudyFigure.Of<TKind>(dossier).Where(f => f.Id == StudyFigure.Id(kind, series));
}
