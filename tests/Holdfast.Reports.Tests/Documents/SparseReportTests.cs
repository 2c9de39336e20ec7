using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Studies;

namespace Holdfast.Reports.Tests.Documents;

/// <summary>Reports of studies that hold little or nothing: they say what is missing and do not fail.</summary>
public class SparseReportTests
{
    [Fact]
    public void Html_OfAnEmptyStudy_SaysWhatIsMissing()
    {
        var page = ReportPage.Read(StudyReport.Html(Dossier.Of(new Study { Title = "" })));
        Assert.Equal("Untitled study", page.All("h1").Single().Value);
        var words = page.Words();
        Assert.Contains("No vessel was recorded.", words, StringComparison.Ordinal);
        Assert.Contains("No run of readings was taken in", words, StringComparison.Ordinal);
        Assert.Contains("Nothing was struck", words, StringComparison.Ordinal);
        Assert.DoesNotContain("  ", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_OfOneVessel_GivesItsUptakeAndItsGaps()
    {
        // 20 − 5 mg/L in 25 mL on 50 mg: (20 − 5)·0.025/0.050 = 7.5 mg/g, by hand.
        var page = ReportPage.Read(StudyReport.Html(Dossier.Of(SmallStudy.Of(5))));
        var words = page.Words();
        Assert.Contains("vessel V-1 took up 7.50", words, StringComparison.Ordinal);
        Assert.Contains("The study holds 1 vessel, 1 reading in 1 run, and no strike.", words, StringComparison.Ordinal);
        Assert.Contains(page.All("mark"), m => m.Value == "[not recorded]");
    }

    [Fact]
    public void Html_WithFactsMissing_PrintsAGapAndWithThemNone()
    {
        var bare = SmallStudy.Of(5, 5.2, 4.9);
        Assert.Contains("shaken at [not recorded] and [not recorded] for 60 min", Methods(bare), StringComparison.Ordinal);
        var told = bare with { Details = bare.Details.SetItem("shaking", "150 rpm on a 25 mm orbit").SetItem("separation", "a 0.45 µm filter") };
        Assert.Contains("shaken at 150 rpm on a 25 mm orbit and [not recorded] for 60 min", Methods(told), StringComparison.Ordinal);
        Assert.Contains("separated by a 0.45 µm filter", Methods(told), StringComparison.Ordinal);
    }

    [Fact]
    public void Html_WithAStrike_ShowsItWithItsReasonAndCountsItOut()
    {
        var study = SmallStudy.Of(5, 5.2, 12);
        study = study with { Strikes = [new Strike("V-3", "stopper leaked", 3, new DateTimeOffset(2026, 5, 12, 12, 0, 0, TimeSpan.Zero), "Ada")] };
        var page = ReportPage.Read(StudyReport.Html(Dossier.Of(study)));
        Assert.Contains("stopper leaked", page.All("table").Single(t => (string?)t.Attribute("id") == "strikes").Value, StringComparison.Ordinal);
        Assert.Contains("1 sample or reading was excluded (stopper leaked)", Methods(study), StringComparison.Ordinal);
        Assert.Contains(page.All("tr"), r => (string?)r.Attribute("class") == "struck" && r.Value.Contains("V-3", StringComparison.Ordinal));
    }

    [Fact]
    public void Html_WithMarkupInItsWords_ShowsItAsWords()
    {
        var page = StudyReport.Html(Dossier.Of(new Study { Title = "<b>bold</b> & more" }));
        Assert.Equal("<b>bold</b> & more", ReportPage.Read(page).All("h1").Single().Value);
    }

    [Fact]
    public void Html_WithADate_PrintsItAndWithoutNone()
    {
        var dossier = Dossier.Of(new Study { Title = "dated" });
        Assert.Contains("30 March 2026", StudyReport.Html(dossier, new ReportOptions { Date = new DateOnly(2026, 3, 30) }), StringComparison.Ordinal);
        Assert.DoesNotContain("<dt>Date</dt>", StudyReport.Html(dossier), StringComparison.Ordinal);
    }

    private static string Methods(Study study)
        => ReportPage.Read(StudyReport.Html(Dossier.Of(study))).All("section").Single(s => (string?)s.Attribute("id") == "section-methods").Words().Replace('\u00A0', ' ');
}
