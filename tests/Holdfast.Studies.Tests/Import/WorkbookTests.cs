using DocumentFormat.OpenXml.Spreadsheet;
using Cell = DocumentFormat.OpenXml.Spreadsheet.Cell;

namespace Holdfast.Studies.Tests.Import;

public class WorkbookTests
{
    [Fact]
    public void Workbook_WithHiddenSheetAndMergedCells_SaysWhatIsLost()
    {
        // X17.
        var bytes = Workbooks.Of(
        [
            ("Vessels", false, [["sample", "m (mg)", "C0 (mg/L)"], ["V-01", 50.5, 20.0], ["V-02", 49.0, 20.0]]),
            ("Results", false, [["sample", "Abs 1"], ["V-01", 0.1], ["V-02", 0.2]]),
            ("Old", true, [["sample", "Abs 1"], ["V-01", 0.9]]),
        ], merge: "A5:B6");
        var understood = Read.Bytes(bytes, "book.xlsx");
        Assert.Equal(["Vessels", "Results", "Old"], understood.Tables.Select(t => t.Sheet));
        Assert.True(understood.Tables[2].IsHidden);
        Assert.Equal("Vessels: 2 rows: 2 ready; Results: 2 rows: 2 ready; Old: hidden, 2 rows left out", understood.Sentence);
        Assert.Contains(understood.Questions, q => q.Id == "sheet:Old");
        Assert.Equal(["HF-409"], understood.Findings.Select(f => f.Code).Where(c => c != Codes.NothingFollows));
        Assert.Contains(understood.Findings, f => f.Sentence.Contains("1 merged range", StringComparison.Ordinal));
        Assert.Equal([0.1, 0.2], understood.Proposal!.Readings.Select(r => r.Value!.Value));
        Assert.Equal(new Origin(understood.Sha256, "book.xlsx", "Results", 2, "Abs 1"), understood.Proposal.Readings[0].Origin);
        Assert.Equal(3, Read.Bytes(bytes, "book.xlsx", answers: Read.Answer("sheet:Old", "take")).Proposal!.Readings.Length);
    }

    [Fact]
    public void Cells_OfEveryKind_AreReadForWhatTheyAre()
    {
        var rich = new Cell { DataType = CellValues.InlineString, InlineString = new InlineString(new DocumentFormat.OpenXml.Spreadsheet.Run(new Text("C")), new DocumentFormat.OpenXml.Spreadsheet.Run(new Text("0 (mg/L)"))) };
        var formula = new Cell { CellFormula = new CellFormula("1+1"), CellValue = new CellValue(2.5) };
        var unvalued = new Cell { CellFormula = new CellFormula("1+1") };
        var error = new Cell { DataType = CellValues.Error, CellValue = new CellValue("#DIV/0!") };
        // Serial 46084 is 3 March 2026 in the day count from 1899-12-30.
        var date = new Cell { StyleIndex = 1, CellValue = new CellValue(46084) };
        var understood = Read.Bytes(Workbooks.Of(("S", false,
        [
            ["sample", rich, "m (mg)", "V (mL)", "date", "remark"],
            ["V-01", formula, unvalued, error, date, "=2+5"],
            ["V-02", "<0,5", "12,5", 25.0, "2026-03-04", null],
        ])), "book.xlsx");
        Assert.False(understood.NeedsDecision);
        var (first, second) = (understood.Proposal!.Samples[0].Facts, understood.Proposal.Samples[1].Facts);
        Assert.Equal(2.5, first["initial-concentration"].Value);
        Assert.Null(first["mass"].Value);
        Assert.Null(first["volume"].Value);
        Assert.Equal("2026-03-03", first["day"].Words);
        Assert.Equal("=2+5", first["remark"].Words);
        Assert.Equal(0.5, second["initial-concentration"].Below);
        // Text with a comma and typed numbers stand side by side: the comma is the text's decimal mark, the typed number has none.
        Assert.Equal(12.5, second["mass"].Value);
        Assert.Equal(25, second["volume"].Value);
        Assert.Contains(understood.Findings, f => f.Sentence.Contains("1 formulas without a stored result", StringComparison.Ordinal));
        Assert.Equal(["=1+1", "#DIV/0!"], understood.Tables[0].Columns.SelectMany(c => c.Odd).Select(o => o.Text));
    }

    [Fact]
    public void Code_StoredAsADate_IsAskedAbout()
    {
        var understood = Read.Bytes(Workbooks.Of(("S", false, [["sample", "Abs"], [new Cell { StyleIndex = 1, CellValue = new CellValue(46084) }, 0.1], ["V-01", 0.2]])), "book.xlsx", Read.With("V-01", "MAR3"));
        Assert.Equal("MAR3", Assert.Single(understood.Questions).Choices[0]);
    }
}
