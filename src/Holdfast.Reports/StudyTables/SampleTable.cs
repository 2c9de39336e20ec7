using Holdfast.Reports.Tables;
using Holdfast.Studies;

namespace Holdfast.Reports.StudyTables;

/// <summary>Samples and readings as they were taken in.</summary>
public static class SampleTable
{
    /// <summary>One row a sample: code, role, series and every recorded fact as it was written.</summary>
    /// <param name="study">The study.</param>
    public static Table Of(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new Table(
            "samples",
            "Samples as they were recorded",
            [
                new Column("sample", "Sample") { NamesRows = true },
                new Column("role", "Role"),
                new Column("series", "Series"),
                new Column("recorded", "Recorded"),
                new Column("readings", "Readings"),
                new Column("struck", "Struck"),
            ],
            [.. study.Samples.Select(s => Row.Of(
                s.Code,
                InWords.Of(s.Role),
                s.Series ?? "",
                string.Join("; ", s.Facts.Values.Where(f => f.Value is not null || f.Below is not null).Select(f => (Property.Named(f.Property)?.Title ?? f.Property) + " " + f.Written)),
                new NumberCell(study.Readings.Count(r => r.Sample == s.Code)) { Decimals = 0 },
                study.StrikeOf(s)?.Reason ?? "") with { Struck = study.IsStruck(s) })]);
    }

    /// <summary>One row a reading, in the order they came.</summary>
    /// <param name="study">The study.</param>
    public static Table Readings(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new Table(
            "readings",
            "Readings as the instrument gave them",
            [
                new Column("reading", "Reading") { NamesRows = true },
                new Column("sample", "Sample"),
                new Column("run", "Run"),
                new Column("order", "Order"),
                new Column("signal", "Signal"),
                new Column("shown", "Shown"),
                new Column("dilution", "Dilution"),
                new Column("origin", "Origin"),
                new Column("struck", "Struck"),
            ],
            [.. study.Readings.Select(r => Row.Of(
                r.Id, r.Sample, r.Run, new NumberCell(r.Order) { Decimals = 0 }, r.Signal, r.Written, new NumberCell(r.Dilution), r.Origin.ToString(),
                study.StrikeOf(r)?.Reason ?? "") with { Struck = study.IsStruck(r) })]);
    }
}
