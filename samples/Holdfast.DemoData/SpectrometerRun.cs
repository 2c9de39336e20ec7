using System.Collections.Immutable;
using Holdfast.Statistics;

namespace Holdfast.DemoData;

/// <summary>One sitting at the spectrometer: what its program printed above the table, and the table.</summary>
/// <param name="Name">Name of the run: "aas-run1".</param>
/// <param name="Preamble">Key and words, line by line.</param>
/// <param name="Rows">Rows in the order they were read.</param>
public sealed record SpectrometerRun(string Name, ImmutableArray<(string Key, string Words)> Preamble, ImmutableArray<SpectrometerRow> Rows)
{
    private const double CheckLevel = 1.5;

    private static readonly string[] Headings = ["position", "label", "type", "standard (mg/L)", "dilution", "Abs 1", "Abs 2", "Abs 3"];

    /// <summary>The run that calibrates: standards, blanks, then vessels.</summary>
    /// <param name="name">Name of the run.</param>
    /// <param name="date">Day of the run, as the program prints it.</param>
    /// <param name="standards">Standards and blanks.</param>
    /// <param name="vessels">Vessels.</param>
    public static SpectrometerRun Calibrating(string name, string date, Standards standards, IEnumerable<Vessel> vessels)
    {
        ArgumentNullException.ThrowIfNull(standards);
        return new(
            name,
            [.. About(date), ("Calibrated to", Dialect.Number(Standards.HighestUsed) + " mg/L")],
            [
                .. standards.Readings.GroupBy(r => r.C).Select(Standard),
                .. standards.Blanks.Select((a, i) => new SpectrometerRow(FormattableString.Invariant($"BLK-{i + 1:00}"), "blank", null, 1, [a])),
                .. vessels.Select(Sample),
                Check(name),
            ]);
    }

    /// <summary>A later run that uses the line of an earlier one.</summary>
    /// <param name="name">Name of the run.</param>
    /// <param name="date">Day of the run, as the program prints it.</param>
    /// <param name="calibration">Name of the run whose line is used.</param>
    /// <param name="vessels">Vessels.</param>
    public static SpectrometerRun Following(string name, string date, string calibration, IEnumerable<Vessel> vessels)
        => new(name, [.. About(date), ("Calibration", calibration)], [.. vessels.Select(Sample), Check(name)]);

    /// <summary>The rows of the whole file: preamble, an empty row, headings, readings.</summary>
    public IEnumerable<object?[]> Table()
    {
        foreach (var (key, words) in Preamble)
            yield return [key, words];
        yield return [];
        yield return [.. Headings];
        for (var i = 0; i < Rows.Length; i++)
            yield return [i + 1, Rows[i].Label, Rows[i].Type, Rows[i].Standard, Rows[i].Dilution, .. Padded(Rows[i].Readings)];
    }

    /// <summary>The file as text.</summary>
    /// <param name="extension">Ending of the file's name, with its dot.</param>
    /// <param name="dialect">How the table is written.</param>
    public DemoFile ToText(string extension, Dialect dialect)
    {
        ArgumentNullException.ThrowIfNull(dialect);
        return DemoFile.Text(Name + extension, Table().Select(dialect.Line));
    }

    private static IEnumerable<(string Key, string Words)> About(string date) =>
    [
        ("Remark", "INVENTED demo data: nothing was measured"),
        ("Instrument", "flame atomic absorption spectrometer (invented)"),
        ("Element", "Ni"),
        ("Wavelength", "232.0 nm"),
        ("Flame", "air-acetylene"),
        ("Date", date),
    ];

    private static SpectrometerRow Standard(IGrouping<double, (double C, double A)> level)
        => new("STD-" + level.Key.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture), "standard", level.Key, 1, [.. level.Select(r => r.A)]);

    // From another stock than the standards, at the end of the run: without it nobody knows whether the line still held.
    private static SpectrometerRow Check(string name)
    {
        var chance = new SeededStream(InventedStudy.Seed, "CHECK " + name);
        return new(name.Replace("aas-run", "QC-", StringComparison.Ordinal), "check", CheckLevel, 1, [.. Enumerable.Range(0, 3).Select(_ => Flame.Read(chance, CheckLevel))]);
    }

    private static SpectrometerRow Sample(Vessel vessel)
    {
        var portion = vessel.Portion ?? throw new ArgumentException($"Vessel {vessel.Code} was not read.", nameof(vessel));
        return new(vessel.Code, vessel.Role, null, portion.Dilution, portion.Readings);
    }

    private static IEnumerable<object?> Padded(ImmutableArray<double> readings)
        => [.. readings.Select(a => (object?)a), .. Enumerable.Repeat<object?>(null, 3 - readings.Length)];
}

/// <summary>One row of a run.</summary>
/// <param name="Label">Code on the vial.</param>
/// <param name="Type">What the vial is for.</param>
/// <param name="Standard">Concentration of a standard in mg/L, or null.</param>
/// <param name="Dilution">How many times it was diluted.</param>
/// <param name="Readings">One to three absorbances.</param>
public sealed record SpectrometerRow(string Label, string Type, double? Standard, int Dilution, ImmutableArray<double> Readings);
