using System.Globalization;
using Holdfast.Reports.Figures;

namespace Holdfast.Reports.Tests.Figures;

public class PaletteTests
{
    // M. Okabe, K. Ito, Color Universal Design (2002, revised 2008), as listed by B. Wong, Nature Methods 8 (2011) 441; codes checked by hand against the handbook.
    [Fact]
    public void Constants_AreTheEightPublishedOnes()
    {
        Assert.Equal("#000000", Palette.Black);
        Assert.Equal("#E69F00", Palette.Orange);
        Assert.Equal("#56B4E9", Palette.SkyBlue);
        Assert.Equal("#009E73", Palette.BluishGreen);
        Assert.Equal("#F0E442", Palette.Yellow);
        Assert.Equal("#0072B2", Palette.Blue);
        Assert.Equal("#D55E00", Palette.Vermilion);
        Assert.Equal("#CC79A7", Palette.ReddishPurple);
    }

    // WCAG 2.2, 1.4.3 and 1.4.11: text 4.5:1, parts of a graphic that carry meaning 3:1.
    [Theory]
    [InlineData(Tone.Text, 4.5)]
    [InlineData(Tone.Grey, 4.5)]
    [InlineData(Tone.Line, 4.5)]
    [InlineData(Tone.Series1, 3)]
    [InlineData(Tone.Series2, 3)]
    [InlineData(Tone.Series3, 3)]
    [InlineData(Tone.Series4, 3)]
    public void Tones_OnTheirSheet_KeepTheirContrast(Tone tone, double least)
    {
        Assert.True(Contrast(Palette.Light(tone), Palette.Light(Tone.Paper)) >= least, "light");
        Assert.True(Contrast(Palette.Dark(tone), Palette.Dark(Tone.Paper)) >= least, "dark");
    }

    // Contrast of the light series colours on white as worked out in the handbook, experience section 6.
    [Theory]
    [InlineData(Palette.Blue, 5.19)]
    [InlineData(Palette.Vermilion, 3.87)]
    [InlineData(Palette.BluishGreen, 3.42)]
    [InlineData(Palette.ReddishPurple, 3.06)]
    public void Contrast_OnWhite_AgreesWithTheHandbook(string colour, double ratio) => Assert.Equal(ratio, Contrast(colour, "#FFFFFF"), 0.006);

    // WCAG 2.2, definition of contrast ratio and relative luminance.
    private static double Contrast(string a, string b)
    {
        var (x, y) = (Luminance(a), Luminance(b));
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    private static double Luminance(string code)
    {
        double Part(int at)
        {
            var v = int.Parse(code.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return v <= 0.04045 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4);
        }

        return 0.2126 * Part(1) + 0.7152 * Part(3) + 0.0722 * Part(5);
    }
}
