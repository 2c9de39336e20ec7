using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Holdfast.Studies.Import;

namespace Holdfast.Studies.Tests.Import;

/// <summary>Small spectra written here in every form of JCAMP-DX; the meaning of each letter as in McDonald and Wilks 1988 (from memory).</summary>
public class JcampTests
{
    private static readonly double[] Ordinates = [0, -9, 9, 212, 212, 212, 224, 40, 40, 40, 35, -97];

    // The same twelve ordinates by hand: numbers, numbers run together, squeezed, differences, differences with repeats.
    [Theory]
    [InlineData("600 0 -9 9 212 212 212 224\n607 40 40 40 35 -97")]
    [InlineData("600 0,-9;9\t212 212 212 224\n607 40 40 40 35 -97")]
    [InlineData("600+0-9+9+212+212+212+224\n607+40+40+40+35-97")]
    [InlineData("600@iIB12B12B12B24\n607D0D0D0C5i7")]
    [InlineData("600@iIB12UB24\n607D0UC5i7")]
    [InlineData("600@rJ8K03%%J2\n606B24j84%%nj32\n611i7")]
    [InlineData("600@rJ8K03%TJ2\n606B24j84%Tnj32\n611i7")]
    public void Read_AnyForm_GivesTheSameOrdinates(string data)
    {
        var grid = Assert.Single(Of(Spectrum(data)));
        Assert.Empty(grid.Findings);
        Assert.Equal(Ordinates.Select(v => (double?)(v * 0.5)), Y(grid));
        Assert.Equal(Enumerable.Range(600, 12).Select(v => (double?)v), X(grid));
    }

    // T repeats once more, S not at all, V0 forty times in all; after a difference the difference is repeated, so that values climb.
    [Fact]
    public void Read_Repeats_CountInTotal()
    {
        Assert.Equal([5, 5, 5, 7, 9, 11], Y(Assert.Single(Of(Spectrum("600EUSKU", points: 6, last: 605, factor: 1)))));
        Assert.Equal(40, Y(Assert.Single(Of(Spectrum("600 3V0", points: 40, last: 639, factor: 1)))).Count(v => v == 3));
    }

    // E with a sign is an exponent; without one it is the letter of a squeezed 5 (E407 is 5407).
    [Fact]
    public void Read_LetterE_IsExponentOnlyWithASign()
        => Assert.Equal([0.12, 5407, -1200], Y(Assert.Single(Of(Spectrum("600 1.2E-01E407-1.2e+03", points: 3, last: 602, factor: 1)))));

    [Fact]
    public void Read_DescendingWithFactors_PlacesEveryPointFromBothEnds()
    {
        var text = "##TITLE= down\n##JCAMP-DX= 4.24\n##DATA TYPE= UV-VISIBLE SPECTRUM\n##XUNITS= NANOMETERS\n##YUNITS= ABSORBANCE\n##XFACTOR= .1\n##YFACTOR= .001\n"
            + "##FIRSTX= 470\n##LASTX= 468.5\n##NPOINTS= 4\n##FIRSTY= 1.001\n##XYDATA= (X++(Y..Y))\n4700 1001 1002\n4690 1003 1004\n##END=\n";
        var grid = Assert.Single(Of(text));
        Assert.Empty(grid.Findings);
        Assert.Equal([470, 469.5, 469, 468.5], X(grid));
        Assert.Equal("wavelength (nm)", grid.Rows.First(r => r.Number == 12).Cells[0].Text);
        var read = Holdfast.Studies.Tests.Import.Read.Text(text, "down.jdx");
        Assert.Equal("JCAMP-DX spectrum", read.Reader);
        var points = Assert.Single(read.Points);
        Assert.Equal("wavelength", points.Columns[0].Heading);
        Assert.Equal("nm", points.Columns[0].Unit?.Plain);
        Assert.Equal(1.004, points.Columns[1].Values[3]!.Value, 12);
        Assert.Equal("UV-VISIBLE SPECTRUM", Assert.Single(read.Tables).Details["DATA TYPE"]);
    }

    [Fact]
    public void Read_LabelsWrittenFreelyWithCommentsAndCarriageReturns_AreTheSame()
    {
        var text = "##title= free\r\n$$ a comment\r\n##jcamp_dx= 4.24\r\n##Data_Type = x\r\n\r\n##x units= 1/cm $$ said so\r\n##First X= 600\r\n##LASTX= 602\r\n##nPoints= 3\r\n##XYDATA= (X++(Y..Y))\r\n600 1 2 3 $$ three\r\n##End= $$ end\r\n";
        var grid = Assert.Single(Of(text));
        Assert.Empty(grid.Findings);
        Assert.Equal([1, 2, 3], Y(grid));
    }

    [Fact]
    public void Read_Pairs_AreTakenTwoByTwo()
    {
        var grid = Assert.Single(Of("##TITLE= peaks\n##JCAMP-DX= 5\n##XUNITS= m/z\n##YUNITS= relative abundance\n##XFACTOR= 2\n##PEAK TABLE= (XY..XY)\n0,0 41,98 51,109\n55,238\n##END=\n"));
        Assert.Equal([0, 82, 102, 110], X(grid));
        Assert.Equal([0, 98, 109, 238], Y(grid));
    }

    [Fact]
    public void Read_LinkedBlocks_AreOneTableEach()
    {
        var block = "##TITLE= run\n##XUNITS= nm\n##YUNITS= A\n##FIRSTX= 600\n##LASTX= 602\n##NPOINTS= 3\n##XYDATA= (X++(Y..Y))\n600 1 2 3\n##END=\n";
        var grids = Of("##TITLE= linked\n##JCAMP-DX= 4.24\n##DATA TYPE= LINK\n##BLOCKS= 2\n" + block + block + "##END=\n");
        Assert.Equal(["run", "run (2)"], grids.Select(g => g.Sheet));
        Assert.All(grids, g => Assert.Equal([1, 2, 3], Y(g)));
    }

    // A check that fails, a count that is wrong, an axis that contradicts itself, gaps, an end cut off: said with the line, nothing dropped.
    [Theory]
    [InlineData("600@rJ8K03%%J2\n606B27j84%%nj32\n611i7", 12, 611, "Line 14 begins with 227", 12)]
    [InlineData("600 0 -9 9 212 212 212 224\n607 40 40 40 35 -97", 13, 611, "NPOINTS says 13, 12 ordinates", 12)]
    [InlineData("600 0 -9 9 212 212 212 224\n607 40 40 40 35 -97", 12, 640, "contradicts LASTX 640", 12)]
    [InlineData("600 0 ? 9 212 ? 212 224\n607 40 40 40 35 -97", 12, 611, "2 ordinates are missing", 12)]
    public void Read_AFaultySpectrum_SaysWhatIsWrong(string data, int points, double last, string words, int count)
    {
        var grid = Assert.Single(Of(Spectrum(data, points, last)));
        Assert.Contains(words, Assert.Single(grid.Findings).Sentence, StringComparison.Ordinal);
        Assert.Equal("HF-408", grid.Findings[0].Code);
        Assert.Equal(count, Y(grid).Length);
    }

    [Fact]
    public void Read_WithoutAnEnd_SaysThatItMayBeCutOff()
        => Assert.Contains("without END", Assert.Single(Assert.Single(Of(Spectrum("600 0 -9 9 212 212 212 224\n607 40 40 40 35 -97").Replace("##END=\n", "", StringComparison.Ordinal))).Findings).Sentence, StringComparison.Ordinal);

    [Theory]
    [InlineData("600 1 2 3\n609 4 5 6", "lines are missing")] // a line between them is gone
    [InlineData("600 1 2 *", "Line 13 of spectrum.jdx holds '*'")]
    [InlineData("600J2", "holds 'J'")]
    [InlineData("600T", "holds 'T'")]
    [InlineData("abc", "holds 'a'")]
    [InlineData("", "without points")]
    [InlineData("600 1V000000000", "past the limit")]
    public void Read_WhatCannotBeASpectrum_IsRefusedInWords(string data, string words)
        => Assert.Contains(words, Assert.Throws<StudyException>(() => Of(Spectrum(data))).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("##TITLE= x\n##NTUPLES= a\n##END=\n", "NTUPLES")]
    [InlineData("##TITLE= x\n##END=\n", "no spectrum")]
    [InlineData("##TITLE= x\n##FIRSTX= 1\n##NPOINTS= 2\n##XYDATA= (X++(Y..Y))\n1 2 3\n##END=\n", "LASTX")]
    [InlineData("##TITLE= x\n##XYPOINTS= (XY..XY)\n1 2 3\n##END=\n", "without its y")]
    [InlineData("##TITLE= x\n##XYPOINTS= (XY..XY)\n1 two\n##END=\n", "'two'")]
    public void Read_WithoutWhatIsNeeded_IsRefusedInWords(string text, string words)
        => Assert.Contains(words, Assert.Throws<StudyException>(() => Of(text)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("##TITLE= x", true)]
    [InlineData("$$ comment\n  ##Title =x", true)]
    [InlineData("sample,m (mg)\nV-1,50", false)]
    [InlineData("## a heading", false)]
    public void Recognises_ByItsFirstLabel(string text, bool expected) => Assert.Equal(expected, new JcampFile().Recognises(Encoding.ASCII.GetBytes(text)));

    /// <summary>A whole file around data lines, which begin at line 13.</summary>
    private static string Spectrum(string data, int points = 12, double last = 611, double factor = 0.5)
        => string.Create(CultureInfo.InvariantCulture, $"##TITLE= made here\n##JCAMP-DX= 4.24\n##DATA TYPE= EMISSION SPECTRUM\n##ORIGIN= a test\n##OWNER= public domain\n##XUNITS= NANOMETERS\n##YUNITS= ARBITRARY UNITS\n##FIRSTX= 600\n##LASTX= {last}\n##YFACTOR= {factor}\n##NPOINTS= {points}\n##XYDATA= (X++(Y..Y))\n{data}\n##END=\n");

    private static ImmutableArray<Grid> Of(string text) => new JcampFile().Read(Encoding.Latin1.GetBytes(text), "spectrum.jdx", Answers.None, TestContext.Current.CancellationToken);

    private static double?[] X(Grid grid) => Column(grid, 0);

    private static double?[] Y(Grid grid) => Column(grid, 1);

    private static double?[] Column(Grid grid, int index)
        => [.. grid.Rows.Where(r => r.Cells[0].Kind == CellKind.Number).Select(r => r.At(index).IsBlank ? (double?)null : double.Parse(r.At(index).Text, CultureInfo.InvariantCulture))];
}
