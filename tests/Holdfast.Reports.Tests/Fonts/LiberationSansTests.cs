using System.Text;
using Holdfast.Reports.Fonts;

namespace Holdfast.Reports.Tests.Fonts;

public class LiberationSansTests
{
    // Widths that Liberation Sans shares with Arial, in units of 1/2048 em (Adobe Core 14 AFM of Helvetica gives the same in 1/1000 em: 278, 556, 667, 722, 584).
    [Theory]
    [InlineData(" ", 278)]
    [InlineData("0", 556)]
    [InlineData("A", 667)]
    [InlineData("C", 722)]
    [InlineData("i", 222)]
    [InlineData("−", 584)]
    public void Width_Regular_AgreesWithTheMetricsItWasMadeFor(string letter, double thousandths)
        => Assert.Equal(thousandths, LiberationSans.Face(false, false).Width(letter) * 1000, 0.5);

    [Fact]
    public void Faces_AllFour_HaveWhatFiguresWrite()
    {
        foreach (var face in new[] { (false, false), (false, true), (true, false), (true, true) })
            Assert.All("−·×±≤≥≈°µμΔθλρ\u202F\u00A0–ö→".EnumerateRunes(), c => Assert.True(LiberationSans.Face(face.Item1, face.Item2).Has(c), $"U+{c.Value:X4}"));
    }

    // A typeface that lacks the superscript minus would show a box: raised runs are used instead.
    [Fact]
    public void Regular_SuperscriptMinus_IsMissing() => Assert.False(LiberationSans.Face(false, false).Has(new Rune('\u207B')));

    [Fact]
    public void Licence_TravelsWithTheFiles() => Assert.Contains("SIL OPEN FONT LICENSE Version 1.1", LiberationSans.Licence(), StringComparison.Ordinal);
}
