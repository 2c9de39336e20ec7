using System.Globalization;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;
using Holdfast.Studies;

namespace Holdfast.Reports.Tests.StudyTables;

/// <summary>Tables of the invented demo study as files.</summary>
public class ReportTablesTests
{
    [Fact]
    public void All_OfTheDemo_HasEachNameOnceAndWritesEachAsCsv()
    {
        var tables = ReportTables.All(DemoStudy.Dossier);
        Assert.Equal(tables.Length, tables.Select(t => t.Id).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.All(["claims", "deciding-numbers", "calibration", "limits", "vessels", "samples", "readings", "apparatus", "files", "strikes", "findings"],
            id => Assert.Contains(tables, t => t.Id == id));
        Assert.All(tables, t =>
        {
            var csv = TableCsv.Of(t);
            Assert.DoesNotContain("NaN,", csv, StringComparison.Ordinal);
            Assert.DoesNotContain("Infinity", csv, StringComparison.Ordinal);
            Assert.Equal(t.Rows.Count + 1, csv.Split("\r\n").Length - 1);
        });
    }

    [Fact]
    public void All_Vessels_KeepEveryDigitAndTheStandardUncertainty()
    {
        var lines = TableCsv.Of(ReportTables.All(DemoStudy.Dossier).Single(t => t.Id == "vessels")).Split("\r\n");
        var names = lines[0].Split(',');
        var cells = lines.Single(l => l.StartsWith("ISO-20-1,", StringComparison.Ordinal)).Split(',');
        var vessel = DemoStudy.Dossier.Evidence.Vessels.Single(v => v.Code == "ISO-20-1");
        Assert.Equal(vessel.Uptake!.Value.Value, double.Parse(cells[Array.IndexOf(names, "q_mg_per_g")], CultureInfo.InvariantCulture));
        Assert.Equal(vessel.Uptake.Value.U, double.Parse(cells[Array.IndexOf(names, "u_q_mg_per_g")], CultureInfo.InvariantCulture));
    }

    [Fact]
    public void All_OfAnEmptyStudy_StillHasItsHeadings()
        => Assert.All(ReportTables.All(Claims.Dossier.Of(new Study { Title = "empty" })), t => Assert.NotEmpty(TableCsv.Of(t)));

    [Fact]
    public void Levels_BelowTheDetectionLimit_AreLimitsAndNotNumbers()
    {
        var series = DemoStudy.Dossier.Evidence.SeriesNamed("WATER-roof")!;
        var table = LevelTable.Of(series);
        Assert.IsType<CensoredCell>(table.Rows[0].Cells[table.Columns.Select(c => c.Name).ToList().IndexOf("ce")]);
        Assert.IsType<CensoredCell>(table.Rows[0].Cells[table.Columns.Select(c => c.Name).ToList().IndexOf("removal")]);
    }

    [Fact]
    public void Ranking_OfTheDemo_KeepsRefusedCurvesWithTheirReason()
    {
        var fitted = DemoStudy.Dossier.Evidence.Kinetics.Concat(DemoStudy.Dossier.Evidence.Isotherms).ToArray();
        Assert.Contains(fitted, f => f.Fits.Any(c => !c.IsFit));
        Assert.All(fitted, f =>
        {
            var rows = RankingTable.Of("r", "ranking", f.Fits, "mg/g").Rows;
            Assert.Equal(f.Fits.Length, rows.Count);
            Assert.All(rows, r => Assert.NotEmpty(Assert.IsType<TextCell>(r.Cells[^1]).Text.Plain));
        });
    }
}
