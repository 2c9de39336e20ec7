using System.Globalization;
using System.Xml.Linq;
using CsCheck;
using Holdfast.Amounts;
using Holdfast.Reports.Figures;
using Holdfast.Reports.Tables;

namespace Holdfast.Reports.Tests.Tables;

public class TableTests
{
    private static readonly Column Vessel = new("vessel", "vessel") { NamesRows = true };
    private static readonly Column Ce = Column.Of("ce", "c_e", "mg/L", "concentration at equilibrium");
    private static readonly Column Q = Column.Of("q", "q_e", "mg g^-1", "loading at equilibrium");
    private static readonly SortedDictionary<string, string> Codes = new(StringComparer.Ordinal) { ["n.m."] = "not measured" };

    private static Table Sample() => new(
        "vessels",
        RichText.Parse("Vessels at *T* = 298 K"),
        [Vessel, Ce, Q],
        [
            Row.Of("V-1", new MeasuredCell(6.2034, 0.2), new MeasuredCell(42.25, 0.6) { Address = "/trail/q:V-1" }),
            Row.Of("V-2", new CensoredCell(CensoredSide.Below, 0.05, "LOD"), new MeasuredCell(19.0491, 1.23)),
            Row.Of("V-3", new MissingCell("n.m."), new NumberCell(7) { Decimals = 2 }) with { Struck = true },
        ],
        Codes)
    {
        Notes = ["± is the standard uncertainty (k = 1)."],
    };

    [Fact]
    public void Html_Table_HasCaptionScopesUnitsAndSpokenHeadings()
    {
        var table = XElement.Parse(TableHtml.Of(Sample()).ToXml()).Element("table")!;
        var headings = table.Element("thead")!.Descendants("th").ToArray();

        Assert.Equal("Vessels at T = 298 K", table.Element("caption")!.Value);
        Assert.All(headings, h => Assert.Equal("col", h.Attribute("scope")!.Value));
        Assert.Equal("ce\u00A0/ (mg\u00A0L−1)", headings[1].Value);
        Assert.Equal("concentration at equilibrium, in milligrams per litre", headings[1].Attribute("aria-label")!.Value);
        Assert.Equal(["V-1", "V-2", "V-3"], table.Element("tbody")!.Descendants("th").Where(h => h.Attribute("scope")!.Value == "row").Select(h => h.Value));
    }

    [Fact]
    public void Html_Cells_AreRoundedByTheirUncertaintyAndLinkToTheirTrail()
    {
        var rows = XElement.Parse(TableHtml.Of(Sample()).ToXml()).Descendants("tbody").Single().Elements("tr").ToArray();

        Assert.Equal("6.20 ± 0.20", rows[0].Elements("td").First().Value);
        Assert.Equal("/trail/q:V-1", rows[0].Descendants("a").Single().Attribute("href")!.Value);
        Assert.Equal("< 0.05 (LOD)", rows[1].Elements("td").First().Value);
        Assert.Equal("n.m.", rows[2].Elements("td").First().Value);
        Assert.Equal("7.00", rows[2].Descendants("s").Last().Value);
        Assert.Equal("struck", rows[2].Attribute("class")!.Value);
    }

    // Figures of one width: then marks stand in line when every cell is as long from its mark on.
    [Fact]
    public void Html_NumbersOfOneColumn_ReachEquallyFarBehindTheMark()
    {
        var table = new Table("t", "t", [new("a", "a")], new[] { 1.5, 12.25, 3, 100.125 }.Select(v => Row.Of(new NumberCell(v))).ToArray());
        var cells = XElement.Parse(TableHtml.Of(table).ToXml()).Descendants("td").Select(c => c.Value).ToArray();

        Assert.Equal(["1.5\u2007", "12.25", "3\u2008\u2007\u2007", "100.1\u2007"], cells);
    }

    [Fact]
    public void Notes_OfATable_ExplainCodesAndLines()
        => Assert.Equal(
            ["± is the standard uncertainty (k = 1).", "n.m.: not measured.", "Line through: struck, shown but not used."],
            Sample().AllNotes.Select(n => n.Plain));

    // RFC 4180: CRLF after each record, commas between fields.
    [Fact]
    public void Csv_Table_HasEveryDigitTheUnitInItsNamesAndUncertaintiesOfTheirOwn()
        => Assert.Equal(
            "vessel,ce_mg_per_L,u_ce_mg_per_L,limit_ce_mg_per_L,status_ce,q_mg_per_g,u_q_mg_per_g,struck\r\n"
            + "V-1,6.2034,0.2,,,42.25,0.6,false\r\n"
            + "V-2,,,0.05,below,19.0491,1.23,false\r\n"
            + "V-3,,,,n.m.,7,,true\r\n",
            TableCsv.Of(Sample()));

    [Fact]
    public void Csv_DecimalComma_SeparatesFieldsBySemicolons()
        => Assert.Contains("V-1;6,2034;0,2;;;42,25;0,6;false\r\n", TableCsv.Of(Sample(), DecimalMark.Comma), StringComparison.Ordinal);

    // OWASP, "CSV injection": fields that begin with = + - @ tab or carriage return.
    [Theory]
    [InlineData("=2+5")]
    [InlineData("+2")]
    [InlineData("-2")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=2")]
    public void Csv_WordsThatLookLikeAFormula_ArriveAsWords(string words)
    {
        var csv = TableCsv.Of(new Table("t", "t", [new("note", "note")], [Row.Of(words)]));

        Assert.Contains("'" + words, csv, StringComparison.Ordinal);
    }

    [Fact]
    public void Csv_NegativeNumber_StaysANumber()
        => Assert.Equal("a\r\n-2.5\r\n", TableCsv.Of(new Table("t", "t", [new("a", "a")], [Row.Of(new NumberCell(-2.5))])));

    [Fact]
    public void Csv_SeparatorsQuotesAndLines_AreQuoted()
        => Assert.Equal("note\r\n\"a, \"\"b\"\"\nc\"\r\n", TableCsv.Of(new Table("t", "t", [new("note", "note")], [Row.Of("a, \"b\"\nc")])));

    [Fact]
    public void Csv_AnyNumber_ReadsBackAsItself()
        => Gen.Double.Where(double.IsFinite).Sample(value =>
        {
            var csv = TableCsv.Of(new Table("t", "t", [new("a", "a")], [Row.Of(new NumberCell(value))]));
            Assert.Equal(value, double.Parse(csv.Split("\r\n")[1], CultureInfo.InvariantCulture));
        });

    [Fact]
    public void Table_CodeWithoutMeaning_IsRefused()
        => Assert.Throws<ArgumentException>(() => new Table("t", "t", [Vessel], [Row.Of(new MissingCell("?"))]));

    [Fact]
    public void Table_RowOfAnotherLength_IsRefused()
        => Assert.Throws<ArgumentException>(() => new Table("t", "t", [Vessel, Ce], [Row.Of("V-1")]));

    [Theory]
    [InlineData("µmol L^-1", "x_umol_per_L")]
    [InlineData("%", "x_percent")]
    [InlineData("m2/g", "x_m2_per_g")]
    [InlineData("g mg^-1 min^-1", "x_g_per_mg_per_min")]
    [InlineData(null, "x")]
    public void DataName_OfAUnit_HasLettersDigitsAndUnderscoresOnly(string? unit, string name)
        => Assert.StartsWith(name + "\r\n", TableCsv.Of(new Table("t", "t", [new("x", "x") { Unit = unit }], [])), StringComparison.Ordinal);

    [Fact]
    public void Number_ThatIsNone_IsRefused() => Assert.Throws<ArgumentOutOfRangeException>(() => new NumberCell(double.NaN));
}
