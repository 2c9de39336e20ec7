using System.Globalization;
using Holdfast.Studies.Import;
using Holdfast.Studies.Properties;
using Holdfast.Testing;

namespace Holdfast.Studies.Tests.Import;

/// <summary>The invented demo study, dropped as a folder: files in several dialects.</summary>
public class DemoTakeTests
{
    [Fact]
    public void Demo_DroppedAsAFolder_IsTakenInWholeWithoutAQuestion()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        var taken = Take.Files(study, [Repository.Path("samples", "demo")], new TakeOptions(), "Ada", TestContext.Current.CancellationToken);
        Assert.NotNull(taken.Entry);
        Assert.Empty(taken.Open);

        // The files' own lines, counted without any reader.
        string[] vessels =
            [.. Lines("vessels.csv", 1), .. Lines("fluor.csv", 5), .. Lines("fluor-drift.csv", 5), .. Lines("lifetimes.csv", 5), .. Lines("interference.csv", 5), .. Lines("spikes.csv", 1),
                .. Lines("warm-cold.csv", 1), .. Lines("beds.csv", 1), .. Lines("zero-charge.csv", 1)];
        Assert.Equal(vessels.Select(l => l.Split(',')[0]).Order(StringComparer.Ordinal),
            study.Study.Samples.Where(s => s.Series is not null).Select(s => s.Code).Order(StringComparer.Ordinal));
        Assert.Equal(Files("claims*.csv").Sum(f => Lines(f, 1).Length), study.Study.Claims.Length);
        Assert.Equal(Lines("apparatus.csv", 1).Length, study.Study.Apparatus.Length);
        Assert.Equal(
            ["aas-run1", "aas-run2", "aas-run3", "aas-run4", "aas-run5", "cycles", "fluor", "fluor-drift", "fluor-spectra", "interference", "lifetimes"],
            study.Study.Runs.Select(r => r.Id).Order(StringComparer.Ordinal));
        Assert.Equal(Files("*").Length - 1, study.Study.Originals.Length);
        Assert.Equal(3, study.Study.Samples.Count(s => s.Role == SampleRole.Digest));
        Assert.Equal(7, study.Study.Samples.Count(s => s.Role == SampleRole.Standard));
        Assert.Equal(10 + 10 + 6, study.Study.Samples.Count(s => s.Role == SampleRole.Blank));

        // 25 °C is 298.15 K: SI Brochure, 9th edition, 2.3.1.
        Assert.Equal(298.15, study.Study.Sample("ISO-02-1")!.Number(BatchProperties.Temperature));
        // 0.5 % stands as a fraction.
        Assert.Equal(0.005, study.Study.Apparatus.Single(a => a.Serves == "initial-concentration").RelativeU!.Value, 12);
        Assert.Equal("2 mg/L", study.Study.Runs.Single(r => r.Id == "aas-run1").Details["Calibrated to"]);
    }

    [Fact]
    public void Run_WithDecimalCommaAndPreamble_IsRightToTheLastDigit()
    {
        // X13, against the file's own text: commas become points, nothing else.
        using var bench = new Bench();
        using var study = bench.Begin();
        Take.Files(study, [Repository.Path("samples", "demo")], new TakeOptions(), "Ada", TestContext.Current.CancellationToken);
        var expected = Lines("aas-run1.csv", 9).SelectMany(l => l.Split(';')[5..8]).Where(c => c.Length > 0).ToList();
        var readings = study.Study.Readings.Where(r => r.Run == "aas-run1").OrderBy(r => r.Order).ToList();
        Assert.Equal(expected, readings.Select(r => r.Written));
        Assert.Equal(expected.Select(c => double.Parse(c.Replace(',', '.'), CultureInfo.InvariantCulture)), readings.Select(r => r.Value!.Value));
        Assert.Equal(new Origin(readings[0].Origin.Original, "aas-run1.csv", null, 10, "Abs 1"), readings[0].Origin);
    }

    private static string[] Files(string pattern)
        => [.. Directory.EnumerateFiles(Repository.Path("samples", "demo"), pattern).Select(f => Path.GetFileName(f))];

    private static string[] Lines(string file, int skip)
        => [.. File.ReadAllLines(Repository.Path("samples", "demo", file)).Skip(skip).Where(l => l.Trim().Length > 0)];
}
