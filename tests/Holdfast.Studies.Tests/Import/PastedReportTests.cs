using System.Text;
using Holdfast.Studies.Import;

namespace Holdfast.Studies.Tests.Import;

/// <summary>Text copied out of reports and messages: columns set with blanks, marks of quotation, commas within numbers. Invented.</summary>
public class PastedReportTests
{
    // A short line has its cells under the columns where they stand: a unit without a cell before it, a reading that is missing.
    [Fact]
    public void ColumnsOfBlanks_KeepTheirPlaces()
    {
        var grid = Read(
            "Laboratory report\n\n"
            + "  Vial      mass        Ce        remark\n"
            + "             mg        mg/L\n"
            + "   A1       20.1       3.41\n"
            + "   A2       20.3       4.20\n"
            + "   A3                  5.75\n"
            + "   A4       19.8       6.01\n"
            + "   A5       20.0       7.33\n"
            + "   A6       20.2       8.10\n");
        Assert.Equal("spaces", grid.Separator);
        Assert.Equal(["", "mg", "mg/L"], grid.Rows[3].Cells.Select(c => c.Text));
        Assert.Equal(["A3", "", "5.75"], grid.Rows[6].Cells.Select(c => c.Text));
    }

    // A comma that only groups or parts digits parts no cells, whatever lines of words do.
    [Theory]
    [InlineData("tab", "\t")]
    [InlineData("spaces", "    ")]
    public void CommasInNumbers_PartNoCells(string separator, string gap)
    {
        var rows = Enumerable.Range(1, 12).Select(i => $"{i}{gap}{1000 + 7 * i:#,##0}{gap}0,{i:00}5\n".Replace('.', ','));
        var grid = Read("Measured on Monday, in the cellar, by hand\nunder nitrogen, 3 h, 25 °C\n" + string.Concat(rows));
        Assert.Equal(separator, grid.Separator);
        Assert.All(grid.Rows.Skip(2).Where(r => !r.IsBlank), r => Assert.Equal(3, r.Filled));
    }

    [Fact]
    public void QuotedMessage_IsReadWithoutItsMarks()
    {
        var grid = Read("Hello,\n\n> Dear all,\n>\n> here are the vials of today.\n>\n> vial;mass (mg);Ce (mg/L)\n> A1;20.1;3.41\n> A2;20.3;4.20\n>> A3;19.9;5.75\n> regards\n");
        Assert.Equal(["vial", "mass (mg)", "Ce (mg/L)"], grid.Rows[6].Cells.Select(c => c.Text));
        Assert.Equal(["A3", "19.9", "5.75"], grid.Rows[9].Cells.Select(c => c.Text));
        Assert.Equal(10, grid.Rows[9].Number);
    }

    // Results above a limit begin with the same mark and are no message.
    [Fact]
    public void ResultsAboveALimit_KeepTheirMark()
        => Assert.Equal("> 5", Read("Ce;vial\n> 5;A1\n> 5;A2\n> 5;A3\n> 5;A4\n> 5;A5\n> 5;A6\n").Rows[1].At(0).Text);

    private static Grid Read(string text) => new DelimitedText().Read(Encoding.UTF8.GetBytes(text), "report.txt", Answers.None, TestContext.Current.CancellationToken)[0];
}
