using System.Net;
using System.Text.RegularExpressions;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyTables;
using Holdfast.Studies;

namespace Holdfast.Reports.Tests.Documents;

/// <summary>What the report of the invented demo study says of its sensor.</summary>
public class SensorSectionTests
{
    private static readonly PageLinks Page = new(_ => null, _ => null, f => Html.Element("p", f.Id));

    // Numbers as in reference/design/demo-seed-1589-verdicts.csv and in the scenario: drift −4 %, kq 1.8e7, slope 0.829 in rinse water.
    [Fact]
    public void Section_OfTheDemo_SaysWhatTheSensorShowsAndWhatItDoesNot()
    {
        var text = Text(DemoStudy.Dossier);
        Assert.All(
            [
                "Accessible fraction loses least", "F0/F is straight up to 60 µmol/L", "there is one smooth curve", "kq is 1.8e7 L/(mol·s), below 2e10: that decides nothing",
                "Every ion was read alone", "found rises 0.829 (0.797 to 0.860) per added", "use standard additions", "the levels were read in rising order",
                "takes up 52 % of the quencher", "40 vessels and blanks were read from whole spectra", "from 614 nm to 618 nm (nobody fixed it: the maximum of 10 blanks), less the liquid alone",
                "40 samples have an intensity that was typed and a spectrum", "scatter within a day and between days is not told apart",
                "No vessel was read over time after an addition",
            ],
            words => Assert.Contains(words, text, StringComparison.Ordinal));
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
    }

    // What samples/demo says of the fluorometer, and what its files leave out.
    [Fact]
    public void Methods_OfTheDemo_SayWhatTheFluorometersFilesSay()
    {
        var text = WebUtility.HtmlDecode(Regex.Replace(string.Concat(FluorometerText.Of(DemoStudy.Dossier.Evidence).Select(s => Prose.Paragraph(s).ToHtml())), "<[^>]+>", "", RegexOptions.None, TimeSpan.FromSeconds(5))).Replace('\u00A0', ' ');
        Assert.Contains("fluor-spectra: spectrofluorometer (invented), excited at 394 nm, emission read from 580 to 640 nm, slits 5 nm for excitation and emission, read on [not recorded].", text, StringComparison.Ordinal);
        Assert.Contains("emission read at 616 nm, slits [not recorded]", text, StringComparison.Ordinal);
        Assert.Contains("Dispersions held 0.2 g/L of powder in demineralised water", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Section_OfAStudyWithoutSensing_IsNotThere()
        => Assert.DoesNotContain(ResultSections.OnPage(Dossier.Of(new Study { Title = "empty" }), Page), s => s.Id == "sensor");

    [Fact]
    public void Tables_OfTheDemo_AreThese()
        => Assert.Equal(
            ["sensor-levels-fluor", "quenching-laws-fluor", "quenching-parameters-fluor", "sensor-limits-fluor", "other-ions-interference", "recoveries"],
            SensorTables.All(Sensing.Of(DemoStudy.Dossier.Evidence)).Select(t => t.Id));

    private static string Text(Dossier dossier)
    {
        var (_, _, content) = ResultSections.OnPage(dossier, Page).Single(s => s.Id == "sensor");
        return WebUtility.HtmlDecode(Regex.Replace(string.Concat(content.Select(n => n.ToHtml())), "<[^>]+>", "", RegexOptions.None, TimeSpan.FromSeconds(5))).Replace('\u00A0', ' ');
    }
}
