using System.Collections.Immutable;
using Holdfast.Studies.Import.Cif;
using Holdfast.Testing;

namespace Holdfast.Studies.Tests.Import.Cif;

/// <summary>CIF 1.1 syntax: International Tables for Crystallography G (2005), chapter 2.2, from memory; the grammar is proven on files of others.</summary>
public class CifTextTests
{
    private const string Sample = """
        # a comment before the block
        DATA_powder
        _Cell_Length_A  5.12(1)
        _name 'a dog''s life'
        _other "two "quoted"words here" # said once
        _empty ?
        _none .
        _quoted '?'
        _text
        ;first line
         ; inside
         ;second
        ;
        loop_
        _atom_site_label
        _ATOM_SITE_occupancy
        Si1 1
        O1 0.5(2)
        'O;2' .
        data_second
        _cell_length_a 3
        """;

    [Fact]
    public void Read_BlocksItemsAndTables_KeepsAllOfThem()
    {
        var blocks = Read(Sample);
        Assert.Equal(["powder", "second"], blocks.Select(b => b.Name));
        var first = blocks[0];
        Assert.Equal(new(5.12, 0.01), first.Items["_cell_length_a"].Number);
        Assert.Equal("a dog''s life", first.Items["_NAME"].Text);
        Assert.Equal("two \"quoted\"words here", first.Items["_other"].Text);
        Assert.True(first.Items["_empty"].IsUnknown);
        Assert.True(first.Items["_none"].IsNotApplicable);
        Assert.False(first.Items["_quoted"].IsUnknown);
        Assert.Equal("first line\n ; inside\n ;second", first.Items["_text"].Text);
        var loop = Assert.Single(first.Loops);
        Assert.Equal(3, loop.Rows);
        Assert.Equal(["Si1", "O1", "O;2"], loop.Column("_atom_site_label")!.Value.Select(v => v.Text));
        Assert.Equal(new(0.5, 0.2), loop.Column("_atom_site_occupancy")!.Value[1].Number);
        Assert.Null(loop.Column("_atom_site_fract_x"));
        Assert.Equal(14, loop.Line);
        Assert.Equal(3, blocks[1].Said("_cell_length_a")!.Value.Number!.Value.Value);
    }

    [Theory]
    [InlineData("5.12(1)", 5.12, 0.01)]
    [InlineData("34.5(12)", 34.5, 1.2)]
    [InlineData("-7", -7.0, null)]
    [InlineData(".5", 0.5, null)]
    [InlineData("0.", 0.0, null)]
    [InlineData("1.5E3(2)", 1500.0, 200.0)]
    [InlineData("12(3)", 12.0, 3.0)]
    [InlineData("+3.0e-2", 0.03, null)]
    public void Number_WithItsUncertainty_IsRead(string text, double value, double? uncertainty)
    {
        var number = CifNumber.Of(text)!.Value;
        Assert.Equal(value, number.Value, 1e-12);
        Assert.Equal(uncertainty ?? -1, number.Uncertainty ?? -1, 1e-12);
    }

    [Theory]
    [InlineData("")]
    [InlineData("Si4+")]
    [InlineData("5.12(")]
    [InlineData("5.12()")]
    [InlineData("5.12(1")]
    [InlineData("5.12(x)")]
    [InlineData("5,12")]
    [InlineData("Infinity")]
    [InlineData("NaN")]
    [InlineData("1e999")]
    [InlineData("0e99999999999(1)")]
    [InlineData("e5")]
    [InlineData("1.2.3")]
    public void Number_ThatIsNone_IsNull(string text) => Assert.Null(CifNumber.Of(text));

    [Theory]
    [InlineData("data_a\n_x 'open\n", "line 2: a quote (') is not closed")]
    [InlineData("data_a\n_x\n;text\nmore", "line 3: a text begins with a semicolon")]
    [InlineData("data_a\nloop_\n_x\n_y\n1 2\n3\n_z 4", "line 2: the table (loop_) has 2 columns and 3 values")]
    [InlineData("data_a\nloop_\n1 2", "line 3: the value \"1\" belongs to no tag")]
    [InlineData("data_a\n_x\n_y 1", "line 2: _x has no value")]
    [InlineData("data_a\n_x 1 2", "line 2: the value \"2\" belongs to no tag")]
    [InlineData("_x 1", "line 1: \"_x\" stands before the first \"data_\"")]
    [InlineData("# nothing\n", "line 1: there is no \"data_\" heading")]
    [InlineData("data_a\n_x 1\n_X 2", "line 3: _x is there a second time")]
    [InlineData("data_a\nsave_frame", "line 2: \"save_frame\" belongs in a dictionary")]
    [InlineData("data_a\r\n_x\r\n;two\r\nlines\r\n;\r\n_y\r\ndata_b", "line 6: _y has no value")]
    [InlineData("data_a\nloop_\nloop_\n", "line 2: a table (loop_) names no columns")]
    public void Read_ADamagedFile_SaysWhere(string text, string words)
    {
        var refused = Assert.Throws<StudyException>(() => Read(text));
        Assert.Equal("HF-406", refused.Code);
        Assert.Contains(words, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_AFoldedText_IsJoined()
        => Assert.Equal("one long line\nsecond", Read("data_a\n_x\n;\\\none long \\\nline\nsecond\n;\n")[0].Items["_x"].Text);

    [Fact]
    public void Said_OfSeveralTags_TakesTheFirstThatSaysSomething()
    {
        var block = Read("data_a\n_old 1\n_new ?\nloop_\n_single\n7\n")[0];
        Assert.Equal("1", block.Said("_new", "_old")!.Value.Text);
        Assert.Equal("7", block.Said("_single")!.Value.Text);
        Assert.Null(block.Said("_new", "_missing"));
    }

    [Theory]
    [InlineData("# head\n\n  Data_x\n", true)]
    [InlineData("\uFEFFdata_x", true)]
    [InlineData("2theta,counts\n", false)]
    [InlineData("", false)]
    public void Recognises_ByItsFirstWord(string text, bool cif) => Assert.Equal(cif, CifText.Recognises(text));

    // Cut, doubled and swapped pieces of a good file: read or refused with a line, never anything else. The seed is fixed.
    [Fact]
    public void Read_MutatedText_IsReadOrRefusedWithALine()
    {
        var random = new Random(20260);
        string[] pieces = ["'", "\"", "\n;", ";", "\n", "loop_", "data_", "_x", "#", "(", " ", "\r", "?", "\\", "save_", "é", "\0", "1e9(9)"];
        int read = 0, refused = 0;
        for (var i = 0; i < 3000; i++)
        {
            var text = Sample;
            for (var k = random.Next(1, 6); k > 0; k--)
            {
                var at = random.Next(text.Length + 1);
                var length = Math.Min(random.Next(0, 12), text.Length - at);
                text = text[..at] + (random.Next(3) == 0 ? text[at..(at + length)] : "") + pieces[random.Next(pieces.Length)] + text[(at + length)..];
            }

            try
            {
                foreach (var value in Read(text).SelectMany(b => b.Items.Values.Concat(b.Loops.SelectMany(l => l.Values))))
                    _ = value.Number;
                read++;
            }
            catch (StudyException e)
            {
                Assert.Matches(@", line \d+: ", e.Message);
                refused++;
            }
        }

        Assert.True(read > 100 && refused > 100, $"{read} read, {refused} refused");
    }

    // Work grows with the length: ten times the text in well under a hundred times the time, even where nothing is closed.
    [Theory]
    [InlineData("_x ")]
    [InlineData("' ")]
    [InlineData("\n;")]
    [InlineData("loop_\n_a\n")]
    [InlineData("'a 'b\n")]
    public void Read_ALongRunOfOneThing_Ends(string piece)
    {
        var text = "data_a\n" + string.Concat(Enumerable.Repeat(piece, 200_000));
        var clock = System.Diagnostics.Stopwatch.StartNew();
        try
        {
            Read(text);
        }
        catch (StudyException e)
        {
            Assert.Equal("HF-406", e.Code);
        }

        Assert.True(clock.Elapsed < TimeSpan.FromSeconds(30));
    }

    // Nine structures of the Crystallography Open Database (public domain), seven written cells, two powder scans, eight isotherms of others.
    [Theory]
    [InlineData("xrd/cif", "*.cif", 16)]
    [InlineData("xrd/synthetic", "*.cif", 2)]
    [InlineData("sorption/isotherms", "*.aif", 8)]
    public void Read_FilesOfOthers_AreRead(string folder, string pattern, int count)
    {
        var files = Directory.GetFiles(Repository.Verbatim("characterisation", folder), pattern);
        Assert.Equal(count, files.Length);
        foreach (var file in files)
        {
            var block = Assert.Single(CifText.Read(File.ReadAllText(file), Path.GetFileName(file), TestContext.Current.CancellationToken));
            Assert.NotEmpty(block.Loops);
            Assert.True(block.Loops.All(l => l.Rows > 0), file);
        }
    }

    private static ImmutableArray<CifBlock> Read(string text) => CifText.Read(text, "some.cif", TestContext.Current.CancellationToken);
}
