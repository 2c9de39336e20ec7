using System.Text.Json;
using Holdfast.Diffraction;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Diffraction;

/// <summary>Single formulas, against reference/characterisation/xrd/scalar-checks.json and baseline-checks.json.</summary>
public class ScalarTests
{
    private static readonly JsonElement Checks = Patterns.Checks("scalar-checks.json");
    private static readonly JsonElement Baselines = Patterns.Checks("baseline-checks.json");

    [Fact]
    public void Spacing_OfAnAngle_AndBack_Agree()
    {
        foreach (var row in Checks.GetProperty("bragg").EnumerateArray())
        {
            var (angle, wavelength, d) = (Of(row, "two_theta_deg"), Of(row, "wavelength_angstrom"), Of(row, "d_angstrom"));
            Assert.Equal(d, Bragg.Spacing(angle, wavelength), 1e-6);
            Assert.Equal(angle, Bragg.TwoTheta(Bragg.Spacing(angle, wavelength), wavelength)!.Value, 1e-9);
        }

        Assert.Null(Bragg.TwoTheta(0.7, 1.5406));
    }

    [Fact]
    public void Ka2_LiesWhereTheSecondWavelengthPutsIt()
    {
        foreach (var row in Checks.GetProperty("ka2_position").EnumerateArray())
            Assert.Equal(Of(row, "two_theta_ka2_deg"), Bragg.Moved(Of(row, "two_theta_ka1_deg"), Patterns.Copper.Ka1, Patterns.Copper.Ka2!.Value)!.Value, 1e-5);
    }

    // International Tables for Crystallography C (2006), table 4.2.2.6: Cu and Mo Kα1; the weighted mean 1.54187 is common practice.
    [Fact]
    public void Wavelengths_OfTheTable_AreTheKnownOnes()
    {
        Assert.Equal(1.54059292, Radiation.Of("Cu")!.Ka1, 1e-9);
        Assert.Equal(0.70931713, Radiation.Of("mo")!.Ka1, 1e-9);
        Assert.Equal(1.54187, Radiation.Of("Cu")!.Mean, 5e-6);
        Assert.Equal(1.789, Radiation.Of("Co")!.Ka1, 1e-4);
        Assert.Null(Radiation.Of("Xx"));
        foreach (var (stated, anode) in new[] { (1.5406, "Cu"), (1.54056, "Cu"), (1.5418, "Cu"), (1.789, "Co"), (1.7903, "Co"), (0.7107, "Mo"), (0.7093, "Mo"), (1.936, "Fe"), (2.2897, "Cr") })
            Assert.Equal(anode, Radiation.Near(stated)?.Anode);
        Assert.Null(Radiation.Near(1.2));
    }

    [Fact]
    public void Displacement_MovesByTheCosine()
    {
        foreach (var row in Checks.GetProperty("displacement").EnumerateArray())
        {
            // The formula of the refinement, D·cos θ with D = −2s/R, against the printed shift.
            var amplitude = -2 * Of(row, "displacement_mm") / Of(row, "radius_mm") * 180 / Math.PI;
            Assert.Equal(Of(row, "shift_deg"), amplitude * Math.Cos(Bragg.Theta(Of(row, "two_theta_deg"))), 1e-5);
        }
    }

    [Fact]
    public void Scherrer_OfABreadth_Agrees()
    {
        foreach (var row in Checks.GetProperty("scherrer").EnumerateArray())
            Agree.Relative(1e-6, Of(row, "size_nm"), Scherrer.Size(Of(row, "fwhm_deg"), Of(row, "two_theta_deg"), Of(row, "wavelength_angstrom"), Of(row, "K")));
    }

    [Fact]
    public void Scherrer_WithTheInstrumentTakenOff_GivesTheBracketOrRefuses()
    {
        var rows = Checks.GetProperty("instrument_correction").EnumerateArray().ToArray();
        var size = Scherrer.Of(Line(Of(rows[0], "two_theta_deg"), Of(rows[0], "observed_fwhm_deg")), 1.54059292, Of(rows[0], "instrument_fwhm_deg"));
        Agree.Relative(1e-5, Of(rows[0], "size_lorentzian_nm"), size.Largest!.Value);
        Agree.Relative(1e-5, Of(rows[0], "size_gaussian_nm"), size.Smallest);
        var refused = Scherrer.Of(Line(Of(rows[1], "two_theta_deg"), Of(rows[1], "observed_fwhm_deg")), 1.54059292, Of(rows[1], "instrument_fwhm_deg"));
        Assert.Null(refused.Largest);
        // Both sides of the limit 0.2·b, and no instrument width at all.
        Assert.Null(Scherrer.Of(Line(38.2, 0.12 * 1.199), 1.5406, 0.12).Largest);
        Assert.NotNull(Scherrer.Of(Line(38.2, 0.12 * 1.201), 1.5406, 0.12).Largest);
        var without = Scherrer.Of(Line(38.2, 0.5), 1.54059292, null);
        Assert.Null(without.Largest);
        Assert.Equal(16.81414, without.Smallest, 1e-4);
    }

    [Fact]
    public void WilliamsonHall_OfExactAndNoisyWidths_Agrees()
    {
        foreach (var name in new[] { "williamson_hall_exact", "williamson_hall_noisy" })
        {
            var c = Checks.GetProperty(name);
            var u = c.TryGetProperty("u_fwhm_deg", out var given) ? given.GetDouble() : 0.004;
            var fit = WilliamsonHall.Of([.. Array(c, "two_theta_deg").Zip(Array(c, "sample_fwhm_deg"), (x, b) => (x, b, u))], 1.54059292)!;
            Agree.Relative(1e-6, Of(c, "size_nm"), fit.Size!.Value);
            Agree.Relative(2e-6, Of(c, "strain"), fit.Strain);
            Assert.False(fit.IsImpossible);
            if (!c.TryGetProperty("u_size_nm", out var size))
                continue;
            Agree.Relative(1e-5, size.GetDouble(), fit.SizeU);
            Agree.Relative(1e-5, Of(c, "u_strain"), fit.StrainU);
        }

        Assert.Null(WilliamsonHall.Of([(30, 0.3, 0.01), (40, 0.3, 0.01), (50, 0.3, 0.01), (60, 0.3, 0.01)], 1.54));
        Assert.True(WilliamsonHall.Of([.. Enumerable.Range(3, 6).Select(k => (10.0 * k, 0.5 - 0.05 * k, 0.005))], 1.54)!.IsImpossible);
    }

    [Fact]
    public void InstrumentWidth_ThroughTheWidthsOfAStandard_IsFoundAgain()
    {
        var c = Checks.GetProperty("caglioti");
        var lines = Array(c, "two_theta_deg").Zip(Array(c, "fwhm_deg"), Line).ToArray();
        var fit = InstrumentWidth.Of(lines)!;
        Assert.Equal(Of(c, "U"), fit.U, 2e-6);
        Assert.Equal(Of(c, "V"), fit.V, 2e-6);
        Assert.Equal(Of(c, "W"), fit.W, 2e-6);
        Assert.Null(InstrumentWidth.Of(lines[..3]));
    }

    [Fact]
    public void CubicIndexing_OfKnownLines_FindsEveryCellThatFits()
    {
        foreach (var c in Checks.GetProperty("cubic_indexing").EnumerateArray())
        {
            var found = CubicIndexing.Of(Array(c, "two_theta_deg"), 0.005, 1.5405929);
            if (!c.TryGetProperty("N", out var n))
            {
                Assert.Empty(found);
                continue;
            }

            var cell = Assert.Single(found, f => f.Lattice == c.GetProperty("centring").GetString() && Math.Abs(f.A - Of(c, "a_angstrom")) < 2e-4);
            Assert.Equal(n.EnumerateArray().Select(x => x.GetInt32()), cell.N);
        }

        // Five lines of I also fit P with a/√2.
        var iron = CubicIndexing.Of([44.6714, 65.0201, 82.3309, 98.9399, 116.3753], 0.005, 1.5405929);
        Assert.Contains(iron, f => f.Lattice == "P" && Math.Abs(f.A - 2.8665 / Math.Sqrt(2)) < 2e-3);
        Assert.Contains(iron, f => f.Lattice == "I");
    }

    [Fact]
    public void SavitzkyGolay_Weights_AndEnds_Agree()
    {
        var c = Baselines.GetProperty("savitzky_golay");
        // The middle of a smoothed spike of 1 is the weight of that place.
        static IEnumerable<double> Middle(int window, int order) => Enumerable.Range(0, window).Select(k => SavitzkyGolay.Smooth([.. Enumerable.Range(0, window).Select(i => i == k ? 1.0 : 0)], window, order)[window / 2]);
        Assert.Equal(Array(c, "coefficients"), Middle(9, 2), (a, b) => Math.Abs(a - b) < 1e-11);
        Assert.Equal(Array(c, "window_7_order_3"), Middle(7, 3), (a, b) => Math.Abs(a - b) < 1e-11);
        Assert.Equal(Array(c, "example_window_7_order_2_interp"), SavitzkyGolay.Smooth(Array(c, "example_input"), 7, 2), (a, b) => Math.Abs(a - b) < 1e-8);
    }

    private static FittedLine Line(double twoTheta, double width)
        => new(twoTheta, 0.001, Bragg.Spacing(twoTheta, 1.54059292), 1e-5, 1000, width, 0.01 * width, 0.5, 500, 5, 100, 1, LineDoubts.None);

    private static double Of(JsonElement e, string name) => e.GetProperty(name).GetDouble();

    private static double[] Array(JsonElement e, string name) => [.. e.GetProperty(name).EnumerateArray().Select(x => x.GetDouble())];
}
