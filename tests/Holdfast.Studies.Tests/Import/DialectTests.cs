using System.Text;
using Holdfast.Amounts;

namespace Holdfast.Studies.Tests.Import;

public class DialectTests
{
    public static TheoryData<string, string, string> Dialects()
    {
        var data = new TheoryData<string, string, string>();
        foreach (var encoding in new[] { "utf-8", "utf-8-bom", "utf-16", "utf-16-be", "utf-16-bare", "windows-1252" })
        {
            foreach (var separator in new[] { ";", "\t", "|", "  " })
            {
                data.Add(encoding, separator, ",");
                data.Add(encoding, separator, ".");
            }
            data.Add(encoding, ",", ".");
        }
        return data;
    }

    [Theory, MemberData(nameof(Dialects))]
    public void SameTable_InAnyDialect_GivesTheSameNumbers(string encoding, string separator, string mark)
    {
        string[][] rows = [["sample", "C0 (µg/mL)", "V (mL)", "m (mg)", "temperature (°C)"], ["V-01", "20.5", "25.00", "50.125", "25"], ["V-02", "1.5e1", "25.05", "−0.0", "30.25"]];
        var text = "Instrument" + separator + "balance\n\n" + string.Join('\n', rows.Select(r => string.Join(separator, r.Select((c, i) => i == 0 || r == rows[0] ? c : c.Replace(".", mark, StringComparison.Ordinal)))));
        if (encoding == "windows-1252")
            text = text.Replace('−', '-');
        var understood = Read.Bytes(Encode(text, encoding));
        Assert.Empty(understood.Questions);
        Assert.Equal(20.5, understood.Value("V-01", "initial-concentration"));
        Assert.Equal(15, understood.Value("V-02", "initial-concentration"));
        Assert.Equal(25.05, understood.Value("V-02", "volume"));
        Assert.Equal(50.125, understood.Value("V-01", "mass"));
        // Zero Celsius is 273.15 K exactly: SI Brochure, 9th edition, 2.3.1.
        Assert.Equal(303.4, understood.Value("V-02", "temperature")!.Value, 12);
        Assert.Equal(mark == "," ? DecimalMark.Comma : DecimalMark.Point, understood.Tables[0].Decimal);
        Assert.Equal("2 rows: 2 ready", understood.Sentence);
        Assert.Equal("balance", understood.Tables[0].Details["Instrument"]);
    }

    [Theory]
    [InlineData("sample,C0 (mg/L)\r\nV-01,20\r\n")]
    [InlineData("sample,C0 (mg/L)\rV-01,20\r")]
    [InlineData("sample,C0 (mg/L)\nV-01,20")]
    [InlineData("sep=,\nsample,C0 (mg/L)\nV-01,20\n")]
    [InlineData("\"sample\",\"C0 (mg/L)\"\n\"V-01\",\"20\"\n")]
    [InlineData("sample,C0 (mg/L),,,\nV-01,20,,,\n,,,,\n")]
    [InlineData("sample;C0\n;mg/L\nV-01;20")]
    [InlineData("sample  C0 / mg L-1\nV-01    20")]
    [InlineData("sample\tC0 [mg·L⁻¹]\nV-01\t20")]
    [InlineData("sample C0 (mg/L)\nV-01 20")]
    [InlineData("sample C0 (mg/L) V (mL)\nV-01 20,0 25,0\nV-02 21,5 25,0")]
    [InlineData("sample,C0 (mg/L),V (mL),remark\nV-01,20,25,a b c\nV-02,20,25\nV-03,20,25,a b c\nV-04,20")]
    [InlineData("sample,C0 (mg/L)\nsample,C0 (mg/L)\nV-01,20")]
    public void SmallTable_WrittenInManyWays_IsRead(string text)
    {
        var understood = Read.Text(text);
        Assert.Empty(understood.Questions);
        Assert.Equal(20, understood.Value("V-01", "initial-concentration"));
    }

    [Fact]
    public void QuotedCell_WithSeparatorQuoteAndLineBreak_KeepsLineNumbers()
    {
        // RFC 4180, section 2, rules 5 to 7.
        var understood = Read.Text("sample,remark,m (mg)\nV-01,\"a \"\"b\"\", c\nd\",50\nV-02,x,51\n");
        Assert.Equal("a \"b\", c\nd", understood.Proposal!.Samples[0].Facts["remark"].Words);
        Assert.Equal(4, understood.Proposal.Samples[1].Facts["mass"].Origin.Row);
    }

    [Fact]
    public void QuotationMark_NeverClosed_IsSaidAndSwallowsNothing()
    {
        var understood = Read.Text("sample,remark,m (mg)\nV-01,\"open,50\nV-02,x,51\n");
        Assert.Contains(understood.Findings, f => f.Sentence.Contains("Line 2", StringComparison.Ordinal));
        Assert.Equal(51, understood.Value("V-02", "mass"));
    }

    [Fact]
    public void RaggedAndBlankRows_AreCountedAndNamed()
    {
        var understood = Read.Text("sample,m (mg),V (mL)\nV-01,50\n\nV-02,51,25,26\nV-03,52,25\n,53,25\n");
        Assert.Equal("5 rows: 2 ready, 2 need a decision, 1 blank line left out", understood.Sentence);
        Assert.Equal(["rows:no-code", "rows:too-long"], understood.Questions.Select(q => q.Id));
        var settled = Read.Text("sample,m (mg),V (mL)\nV-01,50\n\nV-02,51,25,26\nV-03,52,25\n,53,25\n",
            answers: Read.Answer("rows:no-code", "leave-out").With("rows:too-long", "take-first"));
        Assert.Equal("5 rows: 3 ready, 1 blank line left out, 1 row left out", settled.Sentence);

        // Words there are the rest of a remark.
        var words = Read.Text("sample,m (mg),V (mL)\nV-01,50\n\nV-02,51,25,extra\nV-03,52,25\n");
        Assert.Equal("4 rows: 3 ready, 1 blank line left out", words.Sentence);
        Assert.Contains(words.Findings, f => f.Sentence == "Not used: what stands beyond the last heading in row 4.");
    }

    [Fact]
    public void Dialect_UnderAGermanMachine_IsTheSame()
    {
        const string Text = "sample;C0 (mg/L);t (min)\nV-01;12,5;1440\nV-02;0,125;90\n";
        var expected = Read.Text(Text).Proposal!;
        foreach (var culture in new[] { "de-DE", "tr-TR", "ar-SA" })
        {
            In.Culture(culture, () =>
            {
                var proposal = Read.Text(Text).Proposal!;
                Assert.Equal(Studies.History.EntryText.Write(2, default, "Ada", expected), Studies.History.EntryText.Write(2, default, "Ada", proposal));
                Assert.Equal(12.5, proposal.Samples[0].Facts["initial-concentration"].Value);
            });
        }
    }

    private static byte[] Encode(string text, string encoding) => encoding switch
    {
        "utf-8-bom" => [.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(text)],
        "utf-16" => [.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(text)],
        "utf-16-be" => [.. Encoding.BigEndianUnicode.GetPreamble(), .. Encoding.BigEndianUnicode.GetBytes(text)],
        "utf-16-bare" => Encoding.Unicode.GetBytes(text),
        "windows-1252" => CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetBytes(text),
        _ => Encoding.UTF8.GetBytes(text),
    };
}
