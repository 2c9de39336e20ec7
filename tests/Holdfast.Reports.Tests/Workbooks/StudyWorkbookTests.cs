using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using DocumentFormat.OpenXml.Validation;
using Holdfast.Claims;
using Holdfast.Reports.Workbooks;
using Holdfast.Studies;
using Holdfast.Testing;

namespace Holdfast.Reports.Tests.Workbooks;

/// <summary>The workbook of a study: live formulas that give the dossier's numbers, words that stay words.</summary>
public class StudyWorkbookTests
{
    private static readonly Lazy<byte[]> Demo = new(() => StudyWorkbook.Of(DemoStudy.Dossier));

    [Fact]
    public void Workbook_OfTheDemo_IsValid() => Assert.Empty(Errors(Demo.Value));

    [Fact]
    public void Workbook_OfTheSameStudy_IsTheSameToTheByte() => Assert.Equal(Demo.Value, StudyWorkbook.Of(DemoStudy.Dossier));

    [Fact]
    public void Workbook_OfNothing_IsValid() => Assert.Empty(Errors(StudyWorkbook.Of(Dossier.Of(new Study { Title = "" }))));

    // From typed readings, coefficients, masses and volumes alone, every formula gives what stands beside it.
    [Fact]
    public void Formulas_OfTheDemo_GiveWhatTheyRemember()
    {
        using var file = Open(Demo.Value);
        var book = new SheetFormulas(file);
        var all = book.All.ToArray();
        Assert.True(all.Length > 1500, all.Length.ToString(CultureInfo.InvariantCulture));
        Assert.All(all, f => Agree.Relative(1e-9, f.Remembered, book.Of(f.Sheet, f.Cell)));
    }

    // q of each vessel of the demo that was read follows by formulas from its readings, and equals the dossier's.
    [Fact]
    public void Uptake_OfEveryVessel_IsWorkedOutAndEqualsTheDossiers()
    {
        using var file = Open(Demo.Value);
        var book = new SheetFormulas(file);
        var formulas = book.All.ToDictionary(f => (f.Sheet, f.Cell), f => f.Formula);
        var vessels = DemoStudy.Dossier.Evidence.Vessels;
        var live = 0;
        for (var i = 0; i < vessels.Length; i++)
        {
            var row = (BookSheet.FirstRow + i).ToString(CultureInfo.InvariantCulture);
            Assert.Equal(vessels[i].Code, book.Words("Vessels", "A" + row));
            if (vessels[i].Uptake is not { } uptake)
                continue;
            Agree.Relative(1e-9, uptake.Value, book.Of("Vessels", "S" + row));
            if (vessels[i].End is not { Value: { } left, Readings.Length: > 0 })
                continue;
            Agree.Relative(1e-9, left.Value, book.Of("Vessels", "L" + row));
            Assert.Contains(("Vessels", "L" + row), formulas);
            Assert.Contains(("Vessels", "S" + row), formulas);
            live++;
        }

        Assert.True(live > 200, live.ToString(CultureInfo.InvariantCulture));
    }

    // 20 − 5 mg/L in 25 mL on 50 mg: (20 − 5)·25/50 = 7.5 mg/g, by hand.
    [Fact]
    public void Uptake_OfAVesselMadeByHand_IsAsByHand()
    {
        using var file = Open(StudyWorkbook.Of(Dossier.Of(SmallStudy.Of(5))));
        var book = new SheetFormulas(file);
        Agree.Relative(1e-12, 7.5, book.Of("Vessels", "S3"));
        Assert.Equal("(E3-L3)*G3/H3", book.All.Single(f => f is { Sheet: "Vessels", Cell: "S3" }).Formula);
        Assert.Equal("mg/g", book.Words("Vessels", "S2"));
    }

    [Fact]
    public void Sheets_HaveHeadingsAndUnitsThatStayInSight()
    {
        using var file = Open(Demo.Value);
        var sheets = file.WorkbookPart!.Workbook!.Sheets!.Elements<Sheet>().ToArray();
        Assert.True(sheets.Length > 30, sheets.Length.ToString(CultureInfo.InvariantCulture));
        Assert.Equal(sheets.Length, sheets.Select(s => s.Name!.Value!).Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.All(sheets, s =>
        {
            Assert.InRange(s.Name!.Value!.Length, 1, 31);
            var pane = ((WorksheetPart)file.WorkbookPart.GetPartById(s.Id!.Value!)).Worksheet!.Descendants<Pane>().Single();
            Assert.Equal((2d, PaneStateValues.Frozen), (pane.VerticalSplit!.Value, pane.State!.Value));
        });
        var names = file.WorkbookPart.Workbook.DefinedNames!.Elements<DefinedName>().Select(n => n.Name!.Value!).ToArray();
        Assert.Contains("vessel_q", names);
        Assert.Contains("slope_aas_run1", names);
    }

    // OWASP, "CSV injection": words that begin like a formula stay words, and no formula holds a person's words.
    [Fact]
    public void Words_ThatBeginLikeAFormula_StayWords()
    {
        string[] nasty = ["=2+5", "+cmd", "-1+1", "@SUM(A1)", "=HYPERLINK(\"http://a\")"];
        var study = SmallStudy.Of(5, 5.2, 4.9);
        foreach (var word in nasty)
        {
            var changed = study with { Title = word, Details = study.Details.SetItem("author", word), Samples = [.. study.Samples.Select(s => s with { Code = word + s.Code })], Readings = [.. study.Readings.Select(r => r with { Sample = word + r.Sample, Run = word })], Runs = [.. study.Runs.Select(r => r with { Id = word })] };
            var bytes = StudyWorkbook.Of(Dossier.Of(changed));
            Assert.Empty(Errors(bytes));
            using var file = Open(bytes);
            var book = new SheetFormulas(file);
            Assert.NotEmpty(book.All);
            Assert.All(book.All, f => Assert.DoesNotContain(word, f.Formula, StringComparison.Ordinal));
            Assert.Equal(word + "V-1", book.Words("Vessels", "A3"));
            var cell = file.WorkbookPart!.WorksheetParts.SelectMany(p => p.Worksheet!.Descendants<Cell>()).First(c => c.InlineString?.InnerText == word + "V-1");
            var format = file.WorkbookPart.WorkbookStylesPart!.Stylesheet!.CellFormats!.Elements<CellFormat>().ElementAt((int)cell.StyleIndex!.Value);
            Assert.True(format.QuotePrefix!.Value);
        }
    }

    private static SpreadsheetDocument Open(byte[] bytes) => SpreadsheetDocument.Open(new MemoryStream(bytes, writable: false), isEditable: false);

    private static string[] Errors(byte[] bytes)
    {
        using var file = Open(bytes);
        return [.. new OpenXmlValidator(FileFormatVersions.Microsoft365).Validate(file).Take(8).Select(e => $"{e.Part?.Uri} {e.Path?.XPath}: {e.Description}")];
    }
}
