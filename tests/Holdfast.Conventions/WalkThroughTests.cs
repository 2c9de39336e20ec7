using System.Text.RegularExpressions;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Trails;
using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Store;
using Holdfast.Testing;
using static System.FormattableString;

namespace Holdfast.Conventions;

/// <summary>Walks the way that docs/how-data-flows.md describes, with the reading it names.</summary>
public sealed class WalkThroughTests : IDisposable
{
    private const string Page = "docs/how-data-flows.md";
    private readonly string folder = Path.Combine(Path.GetTempPath(), Invariant($"holdfast-walk-{Environment.ProcessId}"));

    /// <inheritdoc/>
    public void Dispose()
    {
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void Page_FilesAndTypesItNames_AreThere()
    {
        var named = Regex.Matches(Sources.Text(Page), @"(?:\| `(?<type>[A-Za-z]+)` )?\| `(?<file>(?:src|samples|tests)/[^`]+)` \|", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5));
        Assert.True(named.Count >= 15);
        foreach (Match step in named)
        {
            var file = step.Groups["file"].Value;
            Assert.True(File.Exists(Repository.Path(file.Split('/'))), $"{Page} names {file}, which is gone.");
            if (step.Groups["type"].Success)
                Assert.Matches($@"\b(class|record|struct|interface) {step.Groups["type"].Value}\b", Sources.Text(file));
        }
    }

    [Fact]
    public void Page_FindingsItNames_HaveTheirPages()
        => Assert.All(
            Regex.Matches(Sources.Text(Page), @"HF-\d{3}", RegexOptions.None, TimeSpan.FromSeconds(5)).Select(m => m.Value),
            code => Assert.True(File.Exists(Repository.Path("docs", "findings", code + ".md")), $"{Page} names {code}, which has no page."));

    // The numbers: rows ISO-298, 20 mg/L, replicate 1 of reference/design/demo-seed-1589-values.csv, computed by an independent program.
    [Fact]
    public void OneReading_FromItsCellToTheVerdict_KeepsItsValueAndItsOrigin()
    {
        using var study = StudyFolder.Begin(folder, "walker", TimeProvider.System, new StudyBegun("walk", "Ni", Invented: true));
        string[] files = ["aas-run1.csv", "vessels.csv", "apparatus.csv", "claims.csv"];
        var taken = Take.Files(
            study, [.. files.Select(f => Repository.Path("samples", "demo", f))], new TakeOptions(), "walker", TestContext.Current.CancellationToken);
        Assert.NotNull(taken.Entry);

        var reading = study.Study.Readings.First(r => r.Sample == "ISO-20-1");
        Assert.Equal(("aas-run1.csv", 39, "Abs 1"), (reading.Origin.FileName, reading.Origin.Row, reading.Origin.Column));
        Assert.Contains(Invariant($"row {reading.Origin.Row} "), Sources.Text(Page), StringComparison.Ordinal);
        Assert.Contains($"`{reading.Written}`", Sources.Text(Page), StringComparison.Ordinal);
        Assert.Equal(2, reading.Dilution);
        Agree.Relative(1e-9, Value("absorbance reading 1 (dilution 2)"), reading.Value!.Value, "reading");

        var dossier = Dossier.Of(study.Study);
        var evidence = dossier.Evidence;
        var vessel = evidence.Vessels.Single(v => v.Code == "ISO-20-1");
        // The independent program took the line with equal weights; told so, the study gives its numbers. By itself it weighs by scatter, within the uncertainty.
        var told = Evidence.Of(study.Study with { Runs = [.. study.Study.Runs.Select(r => r with { Details = r.Details.SetItem("Calibration weights", "equal") })] })
            .Vessels.Single(v => v.Code == "ISO-20-1");
        Agree.Relative(1e-9, Value("measured concentration mg/L"), told.End!.Value!.Value.Value, "concentration");
        Agree.Relative(1e-9, Value("q mg/g"), told.Uptake!.Value.Value, "uptake");
        Assert.Equal(told.End.Value.Value.Value, vessel.End!.Value!.Value.Value, 2 * vessel.End.Value.Value.U);
        Assert.True(vessel.Uptake!.Value.U > 0);
        Assert.Contains(reading, vessel.End.Readings);

        var isotherm = evidence.Isotherms.Single(f => f.Series.Name == "ISO-298");
        Assert.Contains(vessel, isotherm.Series.Vessels);
        Assert.NotNull(isotherm.Best);

        var verdict = dossier.Verdicts.Single(v => v.Claim.Rule == "capacity");
        Assert.Contains("ISO-20-1", verdict.Data);
        Assert.Contains(reading, NumberTrail.Of(evidence, "q:ISO-20-1")!.Readings);
        Assert.Contains(verdict.Sentence, StudyReport.Html(dossier), StringComparison.Ordinal);
    }

    private static double Value(string quantity) => ReferenceTable.Read("design", "demo-seed-1589-values.csv")
        .Single(r => r["series"] == "ISO-298" && r["level"] == "20 mg/L" && r["replicate"] == "1" && r["quantity"] == quantity).Number("value");
}
