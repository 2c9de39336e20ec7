using Holdfast.Amounts;
using Holdfast.Calibration;
using Holdfast.Claims.Analyses;
using Holdfast.Fluorescence;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;
using Holdfast.Statistics;

namespace Holdfast.Reports.StudyTables;

/// <summary>Tables of a sensor: levels, limits, other ions, spiked waters.</summary>
public static class SensorTables
{
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal)
    {
        ["nw"] = "not worked out, because something it needs is missing",
        ["nr"] = "not recorded",
        ["one"] = "one value, which has no scatter",
    };

    /// <summary>Every table of a study's sensors, with the laws fitted.</summary>
    /// <param name="sensing">What the study shows about sensing.</param>
    public static IEnumerable<Table> All(Sensing sensing)
    {
        ArgumentNullException.ThrowIfNull(sensing);
        foreach (var series in sensing.Series)
        {
            yield return Levels(series);
            yield return Laws(series, forFiles: true);
            yield return EstimateTable.Of("quenching-parameters-" + LevelTable.Id(series.Name), $"Parameters of the laws fitted to {series.Name}", series.Fits);
            if (Limits(series) is { } limits)
                yield return limits;
        }

        foreach (var ions in sensing.Interferences)
            yield return Ions(ions);
        if (Waters(sensing) is { } waters)
            yield return waters;
    }

    /// <summary>One row a level: mean signal, F0/F, efficiency with its uncertainty.</summary>
    /// <param name="series">The series.</param>
    public static Table Levels(SensorSeries series)
    {
        ArgumentNullException.ThrowIfNull(series);
        return new Table(
            "sensor-levels-" + LevelTable.Id(series.Name),
            $"Levels of {series.Name}",
            [
                Column.Of("q", "Q", "µmol/L", "quencher added") with { NamesRows = true },
                new Column("n", RichText.Parse("*n*")) { Spoken = "number of vessels" },
                Column.Of("f", "F", null, "mean signal"),
                Column.Of("ratio", "F_0/F", null, "signal without quencher over signal"),
                Column.Of("e", "E", "%", "quenching efficiency"),
            ],
            [.. series.Levels.Select(q => Level(series, q))],
            Codes)
        {
            Notes =
            [
                $"Mean ± standard error over vessels. F0 is the {series.F0From}; its own uncertainty is in E and is shared by all levels.",
                .. series.Samples.Any(s => s.Factor is not null) ? new RichText[] { "Signals are corrected for the inner filter where absorbances were recorded." } : [],
            ],
        };
    }

    /// <summary>Every quenching law fitted, best first.</summary>
    /// <param name="series">The series.</param>
    /// <param name="forFiles">True for p values with every digit.</param>
    public static Table Laws(SensorSeries series, bool forFiles = false)
    {
        ArgumentNullException.ThrowIfNull(series);
        return RankingTable.Of(
            "quenching-laws-" + LevelTable.Id(series.Name), $"Quenching laws fitted to the signals of {series.Name}, relative weights", series.Fits, null, forFiles);
    }

    /// <summary>Every limit by its definition; null without blanks or a line.</summary>
    /// <param name="series">The series.</param>
    public static Table? Limits(SensorSeries series)
    {
        ArgumentNullException.ThrowIfNull(series);
        DetectionLimit[] limits = [.. new[]
        {
            LimitDefinition.CriticalOfBlanks, LimitDefinition.DetectionOfBlanks, LimitDefinition.ThreeSd, LimitDefinition.ThreePointThreeSd, LimitDefinition.TenSd,
        }.Select(d => series.Limit(null, d)).OfType<DetectionLimit>()];
        return limits.Length == 0 ? null : new Table(
            "sensor-limits-" + LevelTable.Id(series.Name),
            $"Limits of {series.Name}, each with its definition",
            [
                new Column("definition", "Definition") { NamesRows = true },
                new Column("value", "Limit") { Unit = "µmol/L" },
                new Column("low", "95 % from") { Unit = "µmol/L" },
                new Column("high", "to") { Unit = "µmol/L" },
                new Column("n", RichText.Parse("*n*")) { Spoken = "number of blanks" },
            ],
            [.. limits.Select(l => Row.Of(
                l.Formula, new NumberCell(l.Value), l.Interval is { } i ? new NumberCell(i.Low) : new MissingCell("nw"), l.Interval is { } j ? new NumberCell(j.High) : new MissingCell("nw"),
                new NumberCell(l.N) { Decimals = 0 }))],
            Codes)
        {
            Notes = [$"s0 is the standard deviation of F0/F of separate blanks, b the slope of F0/F up to {InWords.Plain(series.Range?.Longest?.Top ?? series.Levels[^1], "µmol/L")}. Limits of different definitions do not compare."],
        };
    }

    /// <summary>One row an ion.</summary>
    /// <param name="series">The ions.</param>
    public static Table Ions(InterferenceSeries series)
    {
        ArgumentNullException.ThrowIfNull(series);
        return new Table(
            "other-ions-" + LevelTable.Id(series.Name),
            $"Response with other ions over response without, {series.Name}",
            [
                new Column("ion", "Ion") { NamesRows = true },
                new Column("c", "Concentration") { Unit = "µmol/L" },
                Column.Of("q", "Q", "µmol/L", "quencher beside it"),
                new Column("n", RichText.Parse("*n*")) { Spoken = "number of vessels" },
                new Column("ratio", "Ratio"),
                new Column("low", "90 % from"),
                new Column("high", "to"),
                new Column("same_p", RichText.Parse("*p* of equivalence")),
                new Column("other_p", RichText.Parse("*p* of no effect")),
                new Column("standing", "How it stands"),
            ],
            [.. series.Ions.Select(i => Row.Of(
                i.Ion, i.Concentration is { } c ? new NumberCell(c) : new MissingCell("nr"), new NumberCell(i.Quencher), new NumberCell(i.Codes.Length) { Decimals = 0 },
                new MeasuredCell(i.Found.Effect.Value, i.Found.Effect.StandardError), new NumberCell(i.Found.Equivalence.Interval.Low) { Decimals = 3 },
                new NumberCell(i.Found.Equivalence.Interval.High) { Decimals = 3 }, new NumberCell(i.Found.AdjustedP) { Decimals = 3 }, new NumberCell(i.Found.DifferenceP) { Decimals = 3 },
                i.Found.IsShown ? "changes the response" : i.Found.IsExcluded ? "inside the margin" : "not shown"))],
            Codes)
        {
            Notes = [$"Ratio of means ± standard error. Margin {InWords.Plain(1 - series.Margin)} to {InWords.Plain(1 + series.Margin)}. Both p are Holm's over all ions."],
        };
    }

    /// <summary>One row a level of each spiked water; null without any.</summary>
    /// <param name="sensing">What the study shows about sensing.</param>
    public static Table? Waters(Sensing sensing)
    {
        ArgumentNullException.ThrowIfNull(sensing);
        return sensing.Waters.IsEmpty ? null : new Table(
            "recoveries",
            "Recoveries in real water",
            [
                new Column("water", "Water") { NamesRows = true },
                new Column("added", "Added") { Unit = "µmol/L" },
                new Column("n", RichText.Parse("*n*")) { Spoken = "number of vessels" },
                new Column("found", "Found") { Unit = "µmol/L" },
                new Column("recovery", "Recovery") { Unit = "%" },
            ],
            [.. sensing.Waters.SelectMany(w => w.Amounts.GroupBy(a => a.Added).OrderBy(g => g.Key).Select(g => Row.Of(
                w.Name, new NumberCell(g.Key), new NumberCell(g.Count()) { Decimals = 0 }, Mean([.. g.Select(a => a.Found)]),
                w.Water.Levels.FirstOrDefault(l => l.Added.Equals(g.Key)) is { } level
                    ? level.Estimate is { } e ? new MeasuredCell(100 * e.Value, 100 * e.StandardError) : new NumberCell(100 * level.Recovery)
                    : new MissingCell("nw"))))],
            Codes)
        {
            Notes = ["Mean ± standard error over vessels; recovery is found less found without addition, over added."],
        };
    }

    private static Row Level(SensorSeries series, double q)
    {
        double[] signals = [.. series.Samples.Where(s => s.Quencher.Equals(q)).Select(s => s.Signal.Value)];
        var mean = Measured(signals, $"level {InWords.Plain(q)}");
        var without = series.Blanks.Length > 1 ? Measured([.. series.Blanks.Select(b => b.Signal.Value)], "blanks")
            : Measured([.. series.Samples.Where(s => s.Quencher == 0).Select(s => s.Signal.Value)], "level 0");
        return Row.Of(
            new NumberCell(q), new NumberCell(signals.Length) { Decimals = 0 }, Cell(mean),
            mean is { Value: > 0 } && without is { } f0 ? Cell(f0 / mean.Value) : new MissingCell("nw"),
            mean is { } f && without is { Value: > 0 } w ? Cell(100 * QuenchingEfficiency.Of(f, w)) : new MissingCell("nw"));
    }

    private static Measured? Measured(double[] values, string of)
    {
        if (values.Length == 0)
            return null;
        var summary = Summary.Of(values);
        return summary.Sd is { } sd
            ? Amounts.Measured.From(summary.Mean, new Source("mean of " + of, "mean of " + of, sd / Math.Sqrt(values.Length), values.Length - 1, Evaluation.Repetition))
            : (Measured)summary.Mean;
    }

    private static Cell Cell(Measured? value)
        => value is not { } v ? new MissingCell("nw") : v.U > 0 ? MeasuredCell.Of(v) : new NumberCell(v.Value);

    private static Cell Mean(double[] values)
        => Summary.Of(values).MeanEstimate().Value is { } mean ? new MeasuredCell(mean.Value, mean.StandardError) : values.Length == 1 ? new NumberCell(values[0]) : new MissingCell("one");
}
