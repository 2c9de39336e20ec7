using Holdfast.Reports.Documents;
using Holdfast.Reports.Markup;

namespace Holdfast.Reports.Tests.Documents;

/// <summary>The results of the invented demo study, section by section.</summary>
public class ResultSectionsTests
{
    [Fact]
    public void Kinds_AreTheOnesThatAReaderExpects()
        => Assert.Equal(
            ["CalibrationSection", "ConcentrationSection", "DoseSection", "KineticsSection", "IsothermSection", "PhSection", "PrecipitationSection", "SurfaceChargeSection",
                "TemperatureSection", "CompetitionSection", "ReuseSection", "TreatmentSection", "WaterSection", "SensorSection"],
            ResultSections.Kinds.Select(k => k.GetType().Name));

    [Fact]
    public void OnPage_OfTheDemo_LeadsToTrailsAndFilesAndNumbersNothing()
    {
        var links = new PageLinks(a => "/t/" + a, id => "/m/" + id, f => Html.Element("p", [("class", "files")], f.Id));
        var sections = ResultSections.OnPage(DemoStudy.Dossier, links);
        var text = string.Concat(sections.SelectMany(s => s.Content).Select(n => n.ToHtml()));
        Assert.Equal(sections.Length, sections.Select(s => s.Id).Distinct().Count());
        Assert.Contains("href=\"/t/q:ISO-20-1\"", text, StringComparison.Ordinal);
        Assert.Contains("<p class=\"files\">isotherm-iso-298</p>", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Table 1.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Figure 1.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("href=\"#trail", text, StringComparison.Ordinal);
    }
}
