using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;

namespace Holdfast.Reports.Tests.StudyFigures;

/// <summary>The figure beside each claim of the invented demo study.</summary>
public class ClaimFigureTests
{
    private static readonly Figure[] Figures = [.. StudyFigure.All(DemoStudy.Dossier)];

    // What each claim speaks of: series, run or cycles, as the scenario names them.
    [Theory]
    [InlineData("equilibrium-reached-kin-20-120-min", "kinetics-kin-20")]
    [InlineData("equilibrium-reached-kin-05-120-min", "kinetics-kin-05")]
    [InlineData("optimum-dose-dose-3-g-l", "dose-dose")]
    [InlineData("favourable-iso-298", "isotherm-iso-298")]
    [InlineData("linear-calibration-aas-run1-4-mg-l", "calibration-aas-run1")]
    [InlineData("sensor-linear-fluor-80-µmol-l", "quenching-fluor")]
    [InlineData("selective", "selectivity")]
    [InlineData("reusable-reuse-5", "cycles-reuse")]
    [InlineData("spontaneous-and-endothermic-temp-298-temp-308-temp-318-endothermic", "van-t-hoff-temp-298")]
    [InlineData("bed-of-4-cm", "breakthrough-bed-4a")]
    public void Of_AClaim_ShowsTheSamplesItRestsOn(string claim, string figure) => Assert.Equal(figure, Of(claim)?.Id);

    [Fact]
    public void Of_AClaimWithSettingsYetToRun_DrawsThemOnTheAxisThatTheyBelongTo()
    {
        var lines = Of("equilibrium-reached-kin-20-120-min")!.Panels[0].Layers.OfType<ReferenceLine>().ToArray();
        Assert.Equal([120, 240, 480], lines.Select(l => l.Value));
        Assert.Equal("240 min to run", lines[1].Label.Plain);
        Assert.All(lines, l => Assert.Equal(AxisName.X, l.At));
    }

    // A start concentration has no place on an axis of concentrations that were left.
    [Fact]
    public void Of_AClaimWhoseSettingsAreNotOnTheAxis_DrawsNoLine()
        => Assert.Empty(Of("monolayer-iso-298")!.Panels[0].Layers.OfType<ReferenceLine>());

    [Fact]
    public void Of_AClaimThatRestsOnNothingShown_IsNone()
    {
        var claim = DemoStudy.Dossier.Verdicts.First(v => v.Claim.Id == "selective");
        Assert.Null(ClaimFigure.Of(claim, DemoStudy.Dossier.Evidence.Study, [.. Figures.Where(f => f.Id.StartsWith("calibration", StringComparison.Ordinal))]));
    }

    private static Figure? Of(string claim)
        => ClaimFigure.Of(DemoStudy.Dossier.Verdicts.Single(v => v.Claim.Id == claim), DemoStudy.Dossier.Evidence.Study, Figures);
}
