using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Trails;

namespace Holdfast.Techniques.Tests.NitrogenSorption;

public class ReportTests
{
    private static readonly Lazy<Dossier> Worked = new(() => Dossier.Of(RuleTests.Study(("A parent", 1), ("A doped", 0.85))));

    [Fact]
    public void Figures_OfAnIsotherm_HoldBothBranchesTheLineAndTheSizes()
    {
        var figures = StudyFigure.All(Worked.Value);
        var isotherm = figures.First(f => f.Id.StartsWith("nitrogen-isotherm", StringComparison.Ordinal));
        Assert.Equal([InventedIsotherm.Adsorption.Count, InventedIsotherm.Desorption.Count], isotherm.Panels[0].Layers.OfType<Marks>().Select(m => m.Points.Count));
        Assert.NotNull(isotherm.Panels[1].Residuals);
        Assert.Contains(isotherm.Panels[1].Layers, l => l is ModelCurve);
        var sizes = figures.First(f => f.Id.StartsWith("pore-sizes", StringComparison.Ordinal));
        Assert.Equal(AxisScale.Logarithmic, sizes.Panels[0].X.Scale);
        Assert.Equal(2, sizes.Panels[0].Layers.OfType<Marks>().Count());
        Assert.Empty(StudyFigure.Fallen(Worked.Value));
    }

    [Fact]
    public void Trail_OfAnArea_LeadsToItsPointsAndPortions()
    {
        var trail = NumberTrail.Of(Worked.Value.Evidence, "bet-area:M-0001")!;
        Assert.Equal(InventedIsotherm.Area, trail.Value.Value, 0.003 * InventedIsotherm.Area);
        Assert.True(trail.Fit!.Points.Length >= 10);
        Assert.Contains("2 % of the area", trail.Text(), StringComparison.Ordinal);
        Assert.Equal("bet-area:M-0001", Assert.Single(NumberTrail.Of(Worked.Value.Evidence, "bet-area:A parent")!.Inputs).Trail);
        Assert.All(["pore-volume:M-0001", "external-area:M-0001", "micropore-volume:M-0001"], a => Assert.NotNull(NumberTrail.Of(Worked.Value.Evidence, a)));
    }

    [Fact]
    public void Section_OfTheReport_SaysHowTheAreaWasChosen()
    {
        var (_, title, content) = ResultSections.OnPage(Worked.Value, new PageLinks(_ => null, _ => null, _ => "")).Single(s => s.Id == "nitrogen-sorption");
        var text = string.Concat(content.Select(n => Reports.Markup.NodeWriter.Write(n, Reports.Markup.Syntax.Html)));
        Assert.Equal("Nitrogen sorption", title);
        Assert.Contains("windows meet all criteria", text, StringComparison.Ordinal);
        Assert.Contains("the usual window, 0.05 to 0.30, gives", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Tables_ForFiles_HoldEveryIsothermAndNumber()
    {
        var tables = ReportTables.All(Worked.Value);
        Assert.Equal(2, tables.Single(t => t.Id == "nitrogen-sorption").Rows.Count);
        Assert.Equal(2, tables.Single(t => t.Id == "measurements").Rows.Count);
    }
}
