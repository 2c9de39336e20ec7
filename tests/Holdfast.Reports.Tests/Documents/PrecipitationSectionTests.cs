using Holdfast.Reports.Documents;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Markup;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.StudyTables;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.Tests.Documents;

/// <summary>Sorption or precipitation, limits and cautions, as a reader of the invented study meets them.</summary>
public class PrecipitationSectionTests
{
    [Fact]
    public void Section_OfTheDemo_SaysSolidsVerdictsAndWhatIsLeftOut()
    {
        var text = string.Concat(ResultSections.OnPage(DemoStudy.Dossier, new PageLinks(_ => null, _ => null, f => Html.Element("p", f.Id)))
            .Single(s => s.Id == "precipitation").Content.Select(n => n.ToHtml()));
        Assert.Contains("Ni(OH)<sub>2</sub> fresh", text, StringComparison.Ordinal);
        Assert.Contains("from memory", text, StringComparison.Ordinal);
        Assert.Contains("No pH was recorded, so precipitation cannot be excluded", text, StringComparison.Ordinal);
        Assert.Contains("phosphate", text, StringComparison.Ordinal);
    }

    // Nickel at 20 mg/L: two onset ranges, four species, and only vessels whose end pH was recorded.
    [Fact]
    public void SpeciesFigure_OfTheDemo_ShowsOnsetsAndVesselsWithAnEndPh()
    {
        var figure = Assert.Single(new SpeciesFigure().Of(DemoStudy.Dossier));
        Assert.Equal(2, figure.Panels[0].Layers.OfType<Zone>().Count());
        Assert.Equal(4, figure.Panels[0].Layers.OfType<ModelCurve>().Count());
        Assert.All(figure.Panels[1].AllMarks, m => Assert.True(m.Id!.StartsWith("PH", StringComparison.Ordinal) || m.Id.StartsWith("ISO-20", StringComparison.Ordinal), m.Id));
        Assert.Equal(24, figure.Panels[1].AllMarks.Count());
    }

    [Fact]
    public void VialTable_ForFiles_HasOneRowAVessel()
    {
        var table = ReportTables.All(DemoStudy.Dossier).Single(t => t.Id == "precipitation");
        Assert.Equal(163 + 60, table.Rows.Count);
        Assert.Contains(table.Rows, r => r.Cells[0] is TextCell { Text.Plain: "PH9-1" } && r.Cells[4] is TextCell { Text.Plain: "contradicted" });
    }

    [Fact]
    public void LimitTable_OfAMetal_KeepsTheStatusOfEachValue()
    {
        var table = LimitTable.Of("Ni");
        Assert.All(table.Rows, r => Assert.IsType<TextCell>(r.Cells[^1]));
        Assert.Contains(table.AllNotes, n => n.Plain.Contains("Local codes prevail", StringComparison.Ordinal));
    }

    [Fact]
    public void StudyCautions_OfTheDemo_NameItsMetalItsSaltAndItsPowder()
        => Assert.Superset(
            new HashSet<string>(["nickel salt", "nitrate", "fine powder"], StringComparer.Ordinal),
            StudyCautions.Of(DemoStudy.Dossier.Evidence.Study).Select(c => c.Class).ToHashSet(StringComparer.Ordinal));
}
