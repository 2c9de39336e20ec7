using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;

namespace Holdfast.Reports.Documents;

/// <summary>How well a sensor repeats within a day and between days, and how fast it answers, or what was not recorded for it.</summary>
internal static class SensorPrecisionText
{
    /// <summary>The paragraphs; none in a study without signals.</summary>
    /// <param name="dossier">The study worked out.</param>
    public static IEnumerable<Node> Of(Dossier dossier)
    {
        var found = SensorPrecisionStudy.Of(dossier.Evidence);
        if (Sensing.Of(dossier.Evidence).Signals.IsEmpty)
            yield break;
        yield return Prose.Heading("Precision and speed of the sensor");
        if (found.Levels.IsEmpty)
            yield return Prose.Paragraph("No day is recorded beside replicate vessels of the sensor, so its scatter within a day and between days is not told apart.");
        else
            yield return Prose.List(found.Levels.Select(Level));
        if (found.Responses.IsEmpty)
            yield return Prose.Paragraph("No vessel was read over time after an addition in a way that gives a response time.");
        else
            yield return Prose.List(found.Responses.Select(Response));
        if (found.Findings.Length > 0)
            yield return FindingSection.Grouped(found.Findings);
    }

    private static string Level(SensorPrecision level)
    {
        var text = $"{InWords.Plain(level.Quencher, "µmol/L")}: {InWords.Count(level.Days.Sum(d => d.Values.Count), "vessel")} on {InWords.Count(level.Days.Length, "day")}. Within a day the standard deviation is {Share(level.WithinSd, level)} "
            + $"(it may reach {Share(level.WithinUpper, level)}, 95 %)";
        return level is { BetweenSd: { } between, DaysUpper: { } upper, P: { } p, OnAnyDay: { } all }
            ? $"{text}; between days {Share(between, level)} ({InWords.P(p)}; that of the days’ means may reach {Share(upper, level)}); of one vessel on any day {Share(all, level)}."
            : text + "; one day shows nothing of other days.";
    }

    private static string Response(ResponseRun run)
        => $"{run.Name}: the signal {(run.IsResolved ? $"reaches its plateau after {InWords.Plain(run.Time.Reached, "min")}" : $"is on its plateau after at most {InWords.Plain(run.Time.Reached, "min")}")} and stays within {InWords.Plain(run.Time.Band)} of {InWords.Plain(run.Time.Plateau)} "
            + $"({InWords.Count(run.Samples.Length, "reading")}, {InWords.Count(run.Time.ReadingsBefore, "reading")} before)"
            + (run.Time.ByExponential is { } exponential ? $"; one exponential gives {InWords.Plain(exponential, "min")} to 95 %." : ".")
            + " A single vessel has no uncertainty of its own.";

    private static string Share(double sd, SensorPrecision level) => level.Mean > 0 ? InWords.Plain(100 * sd / level.Mean, "%") : InWords.Plain(sd);
}
