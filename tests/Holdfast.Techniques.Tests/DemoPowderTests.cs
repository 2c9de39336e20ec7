using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Studies;
using Holdfast.Techniques.NitrogenSorption;
using Holdfast.Techniques.PowderDiffraction;
using Holdfast.Testing;

namespace Holdfast.Techniques.Tests;

/// <summary>
/// The invented powders of the demo, taken in without an answer: each planted weakness is caught. Numbers from the demo scenario and its independent program
/// (reference/design/demo-seed-1589-values.csv and demo-seed-1589-verdicts.csv).
/// </summary>
public class DemoPowderTests
{
    private static readonly Lazy<Dossier> Worked = new(() => Dossier.Of(Reading.Taken(
        null, Directory.EnumerateFiles(Repository.Path("samples", "demo-powder")).Order(StringComparer.Ordinal).Select(p => (Path.GetFileName(p), File.ReadAllBytes(p))))));

    // A line through 0.05 to 0.26 of each portion would give the areas drawn; the window of the criteria may move one by 1 %.
    [Theory]
    [InlineData("HA-0", 79.20826487, 77.92500792, 74.63684203)]
    [InlineData("EHA-2", 71.12793369, 74.37028949, 74.57306127)]
    public void Areas_OfThreePortions_AreThoseDrawn(string powder, double first, double second, double third)
    {
        var areas = SorptionStudy.Of(Worked.Value.Evidence).Powder(powder)!.WithArea.Select(i => i.Area!.Value.Value).Order().ToArray();
        Assert.All(areas.Zip(new[] { first, second, third }.Order()), a => Assert.Equal(1, a.First / a.Second, 0.01));
    }

    // The scenario's calcite 104 at 29.40 degrees with a signal of about 6 over the noise, and cells a 9.412, c 6.880 Å against 9.418, 6.884 Å.
    [Fact]
    public void Pattern_OfTheDopedPowder_ShowsTheStrangeLineAndTheCell()
    {
        var pattern = DiffractionStudy.Of(Worked.Value.Evidence).Of("EHA-2")!;
        Assert.Equal(29.40, Assert.Single(pattern.Strangers).TwoTheta, 0.05);
        Assert.Empty(DiffractionStudy.Of(Worked.Value.Evidence).Of("HA-0")!.Strangers);
        Assert.Equal(9.412, pattern.Lattice!.Parameters[0].Value, 0.008);
        Assert.Equal(6.880, pattern.Lattice.Parameters[1].Value, 0.008);
    }

    [Theory]
    [InlineData("phase-pure", Ruling.Contradicted, "the claim says 0.5 %")]
    [InlineData("entered-lattice", Ruling.NotShownYet, "2 contents")]
    [InlineData("crystallite-size", Ruling.NotShownYet, "larger than")]
    [InlineData("particles-unchanged", Ruling.NotShownYet, "0.9528")]
    [InlineData("area-decreased", Ruling.NotShownYet, "−8.98")]
    [InlineData("composition-matches", Ruling.NotShownYet, "1.604")]
    [InlineData("band-shifts", Ruling.NotShownYet, "preparations")]
    public void Claim_OfTheStudent_IsJudgedAsTheScenarioSays(string rule, Ruling ruling, string because)
    {
        var verdict = Assert.Single(Worked.Value.Verdicts, v => v.Claim.Stated && v.Claim.Rule == rule);
        Assert.Equal(ruling, verdict.Ruling);
        Assert.Contains(because, verdict.Reason, StringComparison.Ordinal);
        Assert.True(ruling == Ruling.Holds || verdict.Next is not null);
    }

    [Fact]
    public void Figures_OfThePowders_AreDrawnInTheReportAndAsFiles()
    {
        var figures = StudyFigure.All(Worked.Value);
        Assert.Contains(figures, f => f.Id.StartsWith("pattern-", StringComparison.Ordinal) && f.Panels[0].Layers.OfType<Sticks>().Any(s => s.Hang));
        Assert.All(figures, f =>
        {
            Assert.True(SvgFigure.File(f, FigureFormat.FullWidth).Length > 1000);
            Assert.NotEmpty(PngFigure.File(f, new FigureFormat(85)));
            Assert.NotEmpty(PdfFigure.File(f, new FigureFormat(85)));
        });
        Assert.DoesNotContain("HF-451", StudyReport.Html(Worked.Value), StringComparison.Ordinal);
    }

    // A band of water is no amide; hydroxide of the lattice has both of its bands.
    [Theory]
    [InlineData("amide", Ruling.NotShownYet, "may be water")]
    [InlineData("structural hydroxide", Ruling.Holds, "libration")]
    public void Group_Claimed_NeedsBandsOfItsOwn(string group, Ruling ruling, string because)
    {
        var verdict = Assert.Single(Worked.Value.Verdicts, v => v.Claim.Stated && v.Claim.Rule == "group-shown" && v.Claim.Words("group") == group);
        Assert.Equal(ruling, verdict.Ruling);
        Assert.Contains(because, verdict.Reason, StringComparison.Ordinal);
    }
}
