using Holdfast.Testing;

namespace Holdfast.Tests.Statistics;

/// <summary>reference/measurement/statistics-*.csv: R 4.2.2 and scipy 1.10.1; sources of the data sets stand in the rows.</summary>
internal static class CheckedStatistics
{
    private static readonly IReadOnlyList<ReferenceRow> Data = ReferenceTable.Read("measurement", "statistics-data.csv");
    private static readonly IReadOnlyList<ReferenceRow> Expected = ReferenceTable.Read("measurement", "statistics-expected.csv");

    public static double[] Values(string dataset, string? group = null)
        => [.. Data.Where(r => r["dataset"] == dataset && (group is null || r["group_or_x"] == group)).Select(r => r.Number("value"))];

    public static double[] Levels(string dataset) => [.. Data.Where(r => r["dataset"] == dataset).Select(r => r.Number("group_or_x"))];

    public static double Of(string dataset, string test, string quantity)
        => Expected.Single(r => r["dataset"] == dataset && r["test"] == test && r["quantity"] == quantity).Number("value");
}
