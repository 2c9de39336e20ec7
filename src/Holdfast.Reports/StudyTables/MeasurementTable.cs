using Holdfast.Reports.Tables;
using Holdfast.Studies;
using Holdfast.Studies.Import.Techniques;

namespace Holdfast.Reports.StudyTables;

/// <summary>Measurements of powders as they were taken in.</summary>
public static class MeasurementTable
{
    /// <summary>One row a measurement, in the order they came.</summary>
    /// <param name="study">The study.</param>
    public static Table Of(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new Table(
            "measurements",
            "Measurements of powders as the instrument gave them",
            [
                new Column("measurement", "Measurement") { NamesRows = true },
                new Column("powder", "Powder"),
                new Column("technique", "Technique"),
                new Column("settings", "Settings"),
                new Column("columns", "Columns"),
                new Column("rows", "Rows"),
                new Column("origin", "Origin"),
                new Column("struck", "Struck"),
            ],
            [.. study.Measurements.Select(m => Row.Of(
                m.Id, m.Sample, TechniqueList.Named(m.Technique)?.Title ?? m.Technique, string.Join("; ", m.Settings.Select(s => s.Name + " " + s.Written)),
                string.Join("; ", m.Columns.Select(c => c.Unit.Length > 0 ? $"{c.Name} ({c.Unit})" : c.Name)), new NumberCell(m.Rows()) { Decimals = 0 }, m.Origin.ToString(),
                study.StrikeOf(m)?.Reason ?? "") with { Struck = study.IsStruck(m) })]);
    }
}
