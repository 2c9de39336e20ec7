using System.Buffers.Binary;
using Holdfast.Reports.Fonts;

namespace Holdfast.Reports.Tests.Fonts;

public class TypefaceSubsetTests
{
    [Fact]
    public void Of_FewLetters_IsSmallAndKeepsTheirWidths()
    {
        var whole = LiberationSans.Face(false, false);
        var cut = new Typeface(TypefaceSubset.Of(whole, "Langmuir 0123 é".EnumerateRunes()));

        Assert.True(cut.File.Length < 60_000, $"{cut.File.Length} bytes");
        Assert.Equal(whole.Width("Langmuir 0123 é"), cut.Width("Langmuir 0123 é"));
    }

    // OpenType 1.9, "head": with checkSumAdjustment in place the 32-bit words of the file add up to 0xB1B0AFBA.
    [Fact]
    public void Of_AnyLetters_AddsUpToTheNumberOfTheStandard()
    {
        var file = TypefaceSubset.Of(LiberationSans.Face(true, true), "q−é".EnumerateRunes());
        uint sum = 0;
        for (var i = 0; i < file.Length; i += 4)
            sum = unchecked(sum + BinaryPrimitives.ReadUInt32BigEndian(file.AsSpan(i)));

        Assert.Equal(0xB1B0AFBAu, sum);
    }

    // "é" is put together from "e" and an accent (a composite glyph): its parts must come along.
    [Fact]
    public void Of_ComposedLetter_TakesItsPartsAlong()
    {
        var whole = LiberationSans.Face(false, false);
        int Outlines(string letters) => new Typeface(TypefaceSubset.Of(whole, letters.EnumerateRunes())).TableBytes("glyf").Length;

        Assert.True(Outlines("é") > Outlines("e"));
        Assert.Equal(Outlines("é"), Outlines("eé"));
    }
}
