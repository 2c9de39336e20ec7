using Holdfast.Calibration;
using Holdfast.Testing;

namespace Holdfast.Tests.Calibration;

/// <summary>reference/measurement/calibration-*.csv and the invented readings of reference/design.</summary>
internal static class CheckedCalibration
{
    private static readonly IReadOnlyList<ReferenceRow> Data = ReferenceTable.Read("measurement", "calibration-data.csv");
    private static readonly IReadOnlyList<ReferenceRow> Invented = ReferenceTable.Read("design", "demo-seed-1589-values.csv");

    public static StandardReading[] Standards(string dataset)
        => [.. Data.Where(r => r["dataset"] == dataset).Select(r => new StandardReading(r.Number("x"), r.Number("y")))];

    public static double[] Sds(string dataset) => [.. Data.Where(r => r["dataset"] == dataset).Select(r => r.Number("sd_of_y"))];

    public static StandardReading[] InventedStandards()
        => [.. Invented.Where(r => r["series"] == "AAS-CAL").Select(r => new StandardReading(
            double.Parse(r["level"].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture), r.Number("value"), $"{r["level"]} #{r["replicate"]}"))];

    public static double[] InventedBlanks() => [.. Invented.Where(r => r["series"] == "AAS-BLANK").Select(r => r.Number("value"))];
}
