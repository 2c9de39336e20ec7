using Holdfast.Amounts;
using Holdfast.Claims.Comparisons;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.StudyTables;

/// <summary>Studies and published values set beside each other, as tables: uptakes with their conditions, pairs with their verdicts, and what is not here.</summary>
public static class ComparisonTables
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["nr"] = "not recorded, or not the same on both sides of the point",
        ["nc"] = "not compared, for the reason given",
    };

    /// <summary>One row a series that answers.</summary>
    /// <param name="comparison">The comparison.</param>
    public static Table Uptakes(StudyComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        return new(
            "uptakes",
            comparison.Point is { } point ? $"Uptakes at {point.Words}" : "Uptakes",
            [
                new Column("study", "Study") { NamesRows = true },
                new Column("series", "Series"),
                new Column("material", "Material"),
                new Column("metal", "Metal"),
                Column.Of("ce", "Ce", "mg/L", "concentration left"),
                Column.Of("q", "q", "mg/g", "uptake"),
                new Column("ph_start", "pH, start"),
                new Column("ph_end", "pH, end"),
                Column.Of("temperature", "T", "K", "temperature"),
                Column.Of("dose", "D", "g/L", "dose"),
                Column.Of("c0", "C0", "mg/L", "start concentration"),
                Column.Of("t", "t", "min", "contact time"),
                new Column("water", "Water"),
                new Column("how", "Found by"),
                new Column("source", "Source"),
            ],
            [.. comparison.Uptakes.Select(One)],
            Codes)
        {
            Notes =
            [
                "q ± its standard uncertainty, read between the series' own points, never outside them. pH, T, D, C0 and t are those of the neighbouring levels, in proportion.",
                "Whether a series had come to equilibrium is a claim of its own study. A verdict speaks of the batches that were measured.",
            ],
        };
    }

    /// <summary>One row a pair, with both statements judged.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="margin">By how much more an uptake must be to count as better, as a share; no unit.</param>
    public static Table Pairs(StudyComparison comparison, double margin)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var judged = comparison.Pairs.Count(p => p.IsComparable);
        return new(
            "pairs",
            $"Better than: more uptake by more than {InWords.Plain(100 * margin, "%")} of the other's",
            [
                new Column("first", "First") { NamesRows = true },
                new Column("second", "Second"),
                new Column("ce", "At Ce"),
                new Column("difference", "First less second") { Unit = "mg/g" },
                new Column("low", "95 % from") { Unit = "mg/g" },
                new Column("high", "to") { Unit = "mg/g" },
                new Column("first_better", "First better"),
                new Column("first_p", "p"),
                new Column("second_better", "Second better"),
                new Column("second_p", "p, second"),
                new Column("why", "Why"),
                new Column("next", "What would settle it"),
            ],
            [.. comparison.Pairs.AsParallel().AsOrdered().Select(One)],
            Codes)
        {
            Notes =
            [
                $"{InWords.Count(judged, "pair")} of {InWords.Count(comparison.Pairs.Length, "pair")} compare like for like: {InWords.Count(2 * judged, "statement")}, each judged by a two-sided t test whose p is adjusted by Holm for all of them.",
                "The errors of two studies are taken as independent; a flask or a calibration that they share is not known here. Intervals are those of one pair alone.",
            ],
        };
    }

    /// <summary>One row a finding.</summary>
    /// <param name="findings">Findings of the comparison and of the files beside it.</param>
    public static Table Findings(IEnumerable<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return new(
            "findings", "What is not compared, and why",
            [new Column("code", "Code") { NamesRows = true }, new Column("sentence", "What")],
            [.. findings.Select(f => Row.Of(f.Code, f.Sentence))]);
    }

    private static Row One(ComparedUptake row) => Row.Of(
        row.Study,
        row.Series.Name,
        row.Series.Material ?? "",
        row.Analyte ?? "",
        new NumberCell(row.Left),
        row.U is { } u ? new MeasuredCell(row.Uptake, u) : new NumberCell(row.Uptake),
        Setting(row.At.StartPh),
        Setting(row.At.EndPh),
        Setting(row.At.Temperature),
        Setting(row.At.Dose),
        Setting(row.At.Start),
        Setting(row.At.Time),
        row.Series.Water ?? "",
        row.How,
        row.Series.Source ?? "");

    private static Row One(ComparedPair pair)
    {
        var interval = pair.Difference?.Interval();
        var decimals = interval is { Half: > 0 } known && RoundedNumber.DecimalsFor(known.Half) is >= 0 and <= 6 and var d ? d : (int?)null;
        return Row.Of(
            pair.First.Name,
            pair.Second.Name,
            InWords.Listed(new[] { pair.First.Left, pair.Second.Left }.Select(c => InWords.Plain(c, "mg/L"))),
            pair.Difference is { StandardError: > 0 } difference ? new MeasuredCell(difference.Value, difference.StandardError) : new MissingCell("nc"),
            End(interval?.Low),
            End(interval?.High),
            InWords.Of(pair.FirstBetter),
            Probability(pair.P?.First),
            InWords.Of(pair.SecondBetter),
            Probability(pair.P?.Second),
            pair.Reason,
            pair.Next?.Sentence ?? "");

        Cell End(double? end) => end is { } value && double.IsFinite(value) ? new NumberCell(value) { Decimals = decimals } : new MissingCell("nc");
    }

    private static Cell Setting(double? value) => value is { } known ? new NumberCell(known) : new MissingCell("nr");

    private static Cell Probability(double? p) => p is { } known ? new NumberCell(known) { Decimals = 4 } : new MissingCell("nc");
}
