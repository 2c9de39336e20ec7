using Holdfast.Fluorescence;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Fluorescence;

public class SpectrumTests
{
    // Coefficients for 9 points, order 2 and 7 points, order 3, as printed in any table of them: 59/231 = 0.2554 and 7/21 in the middle (A. Savitzky and
    // M. J. E. Golay 1964, from memory; numpy 1.24.2 gives the same).
    [Theory]
    [InlineData(9, 2, new[] { -21.0, 14, 39, 54, 59, 54, 39, 14, -21 }, 231.0)]
    [InlineData(7, 3, new[] { -2.0, 3, 6, 7, 6, 3, -2 }, 21.0)]
    public void Smooth_OfASpike_ShowsThePrintedCoefficients(int window, int order, double[] coefficients, double divisor)
    {
        var spike = new double[31];
        spike[15] = divisor;
        var smooth = SavitzkyGolay.Smooth(spike, window, order);
        for (var k = 0; k < window; k++)
            Assert.Equal(coefficients[k], smooth[15 - window / 2 + k], 9);
    }

    // A parabola is left as it is, ends included (order 2 holds it exactly).
    [Fact]
    public void Smooth_AParabola_IsLeftAlone()
    {
        double[] y = [.. Enumerable.Range(0, 20).Select(i => 3.0 + 2 * i - 0.25 * i * i)];
        Assert.All(SavitzkyGolay.Smooth(y, 7, 2).Zip(y), p => Assert.Equal(p.Second, p.First, 9));
    }

    [Fact]
    public void Peak_OfABand_IsTheMeanOfFive()
    {
        double[] wavelengths = [.. Enumerable.Range(0, 21).Select(i => 606.0 + i)];
        var spectrum = new EmissionSpectrum(wavelengths, [.. wavelengths.Select(w => 1000 - 10 * (w - 616) * (w - 616))]);
        var (index, finding) = spectrum.Maximum(606, 626);
        Assert.Null(finding);
        Assert.Equal(616, spectrum.Wavelengths[index!.Value]);

        // (1000·5 − 10·(4 + 1 + 0 + 1 + 4))/5 by hand.
        Assert.Equal(980, spectrum.Peak(index.Value), 9);
        Assert.Equal("HF-582", spectrum.Maximum(606, 616).Finding?.Code);
        Assert.Equal("HF-582", spectrum.Maximum(606, 608).Finding?.Code);
    }

    // A straight line has its trapezoid as area, at any limits; falling wavelengths are the same spectrum.
    [Fact]
    public void Integral_OfALine_IsItsArea()
    {
        double[] wavelengths = [620, 615, 610, 605, 600];
        var spectrum = new EmissionSpectrum(wavelengths, [.. wavelengths.Select(w => w - 600)]);
        Assert.Equal((2.5 + 17.5) / 2 * 15, spectrum.Integral(602.5, 617.5), 9);
        Assert.Equal(0, spectrum.Less(spectrum).Integral(600, 620), 12);
        Assert.Throws<ArgumentOutOfRangeException>(() => spectrum.Integral(590, 610));
    }

    // With λ² the area over energy is the area over wavelength (change of variable), which a plain change of axis does not keep.
    [Fact]
    public void OverEnergy_KeepsTheArea()
    {
        double[] wavelengths = [.. Enumerable.Range(0, 2001).Select(i => 560 + 0.05 * i)];
        var spectrum = new EmissionSpectrum(wavelengths, [.. wavelengths.Select(w => Math.Exp(-Math.Pow((w - 616) / 12, 2)))]);
        var energy = spectrum.OverEnergy;
        var area = Enumerable.Range(0, energy.Count - 1).Sum(i => (energy[i].PerEv + energy[i + 1].PerEv) / 2 * (energy[i].EnergyEv - energy[i + 1].EnergyEv));
        Agree.Digits(6, spectrum.Integral(560, 660), area);
        Agree.Digits(6, 1239.841984 / 616, energy[1120].EnergyEv);
    }

    [Fact]
    public void Spectrum_WithARepeatedWavelength_IsRefused()
        => Assert.Throws<ArgumentException>(() => new EmissionSpectrum([600, 601, 601, 602, 603], [1, 2, 3, 4, 5]));
}
