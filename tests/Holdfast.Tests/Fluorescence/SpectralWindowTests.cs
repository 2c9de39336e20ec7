using Holdfast.Fluorescence;

namespace Holdfast.Tests.Fluorescence;

/// <summary>Where intensities are read in spectra, against bands whose peak and area are known in closed form.</summary>
public class SpectralWindowTests
{
    // The area below A·exp(−(λ − m)²/(2s²)) between limits is A·s·√(π/2)·(erf(b) − erf(a)); far out it is A·s·√(2π). Trapezoids at 1 nm over ten
    // sd meet the latter to rounding (Euler and Maclaurin: every derivative vanishes at the ends).
    [Fact]
    public void Area_OfAGaussianBand_IsTheClosedForm()
    {
        var band = Scan(560, 672, 1, w => 1000 * Math.Exp(-Math.Pow((w - 616) / 5, 2) / 2));
        Assert.Equal(1000 * 5 * Math.Sqrt(2 * Math.PI), SpectralWindow.Area(566, 666).Of(band)!.Value, 6);
    }

    // A triangle of height 100 and half-width 10: 1000 in all, and by similar triangles 1000 − 2·(5·50/2) between the half-heights.
    [Fact]
    public void Area_OfATriangle_IsItsGeometry()
    {
        var band = Scan(590, 640, 1, w => Math.Max(0, 100 - 10 * Math.Abs(w - 616)));
        Assert.Equal(1000, SpectralWindow.Area(600, 632).Of(band)!.Value, 9);
        Assert.Equal(750, SpectralWindow.Area(611, 621).Of(band)!.Value, 9);
        Assert.Null(SpectralWindow.Area(580, 621).Of(band));
    }

    // The blank fixes the place: a spectrum whose own maximum lies elsewhere is read where the blank's is. (0 + 1 + 4 + 1 + 0 of a parabola, by hand.)
    [Fact]
    public void Peak_OfAnotherSpectrum_IsReadWhereTheBlankHasItsMaximum()
    {
        var blank = Scan(600, 640, 1, w => 1000 - 10 * (w - 616) * (w - 616));
        var window = SpectralWindow.OnBlank(blank, 600, 640).Value!;
        Assert.Equal((614.0, 618.0, 616.0), (window.From, window.To, window.Maximum!.Value));
        Assert.Equal(980, window.Of(blank)!.Value, 9);
        var shifted = Scan(600, 640, 1, w => 1000 - 10 * (w - 620) * (w - 620));

        // Distances 6, 5, 4, 3, 2 from its own maximum: 1000 − 10·(36 + 25 + 16 + 9 + 4)/5.
        Assert.Equal(820, window.Of(shifted)!.Value, 9);
    }

    [Fact]
    public void Peak_AtAnotherStepOrWithAGap_IsNone()
    {
        var blank = Scan(600, 640, 1, w => 1000 - 10 * (w - 616) * (w - 616));
        var window = SpectralWindow.OnBlank(blank, 600, 640).Value!;
        var coarse = Scan(600, 640, 2, w => 1000 - 10 * (w - 616) * (w - 616));
        Assert.Null(window.Of(coarse));
        Assert.False(window.IsAlike(blank, coarse));
        Assert.Null(window.Of(Scan(600, 640, 1, _ => 1, without: 615)));
        Assert.NotNull(window.Of(Scan(600, 640, 1, _ => 1, without: 630)));
    }

    // Excited at 300 nm, the second order stands at 600 nm, ten times as bright as the band at 640 nm.
    [Fact]
    public void Window_OnABlankWithSecondOrderScatter_KeepsClearOfIt()
    {
        var blank = Scan(570, 690, 1, w => 10000 * Math.Exp(-Math.Pow((w - 600) / 3, 2)) + 1000 * Math.Exp(-Math.Pow((w - 640) / 6, 2)));
        Assert.Equal(600, SpectralWindow.OnBlank(blank, 570, 690).Value!.Maximum);
        Assert.Equal(640, SpectralWindow.OnBlank(blank, 570, 690, excitation: 300).Value!.Maximum);
        Assert.Equal("HF-582", Assert.Single(SpectralWindow.OnBlank(blank, 620, 641).Findings).Code);
    }

    // Water excited at 350 nm shows its Raman line at 397 nm, the common check of a fluorometer (common practice).
    [Fact]
    public void RamanLine_OfWaterExcitedAt350_StandsAt397()
        => Assert.Equal(397, Math.Round(ScatteredLight.RamanOfWater(350)));

    [Fact]
    public void Mean_OfSpectra_IsPointByPoint_AndNeedsOneSetOfWavelengths()
    {
        var mean = EmissionSpectrum.Mean([Scan(600, 604, 1, w => w), Scan(600, 604, 1, w => w + 2)]);
        Assert.Equal([601, 602, 603, 604, 605], mean.Intensities);
        Assert.Throws<ArgumentException>(() => EmissionSpectrum.Mean([Scan(600, 604, 1, w => w), Scan(600, 608, 2, w => w)]));
        Assert.Throws<ArgumentException>(() => EmissionSpectrum.Mean([]));
    }

    private static EmissionSpectrum Scan(double from, double to, double step, Func<double, double> light, double? without = null)
    {
        double[] w = [.. Enumerable.Range(0, (int)Math.Round((to - from) / step) + 1).Select(i => from + i * step).Where(v => v != without)];
        return new(w, [.. w.Select(light)]);
    }
}
