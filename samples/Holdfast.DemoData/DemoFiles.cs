namespace Holdfast.DemoData;

/// <summary>Every file of the invented study, as a student would bring them: three dialects of text and a workbook.</summary>
public static class DemoFiles
{
    /// <summary>The files.</summary>
    /// <param name="study">The invented study.</param>
    public static IEnumerable<DemoFile> Of(InventedStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        const string first = "aas-run1";
        yield return SpectrometerRun.Calibrating(first, "2026-03-02", study.Standards, study.IsothermAndDoses).ToText(".csv", Dialect.Semicolon);
        yield return SpectrometerRun.Following("aas-run2", "2026-03-02", first, study.ContactTimes).ToText(".csv", Dialect.Comma);
        var third = SpectrometerRun.Following("aas-run3", "2026-03-02", first, study.Temperatures);
        yield return new(third.Name + ".xlsx", Workbook.Of("Results", third.Table()));
        yield return SpectrometerRun.Following("aas-run4", "2026-03-02", first, study.AcidityAndWaters).ToText(".txt", Dialect.Tab);
        yield return BenchSheets.Vessels(study);
        yield return BenchSheets.Solids(study);
        yield return BenchSheets.Cycles(study);
        yield return BenchSheets.Calcium(study);
        yield return BenchSheets.Mixtures(study);
        yield return ClaimSheet.Of();
        yield return ReuseClaims.Sheet();
        yield return WaterClaims.Sheet();
        yield return ApparatusSheet.Of();
        foreach (var sheet in SensorSheets.Of(study.Sensor))
            yield return sheet;
        foreach (var sheet in LaterSheets.Of(study, first))
            yield return sheet;
        yield return TreatmentClaims.Sheet();
        yield return EmissionSheet.Of(study.Sensor, InventedStudy.Seed);
    }
}
