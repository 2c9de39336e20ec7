using System.Text.Json;
using Holdfast.Amounts;
using Holdfast.Infrared;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Infrared;

public class InfraredSpectrumTests
{
    private static readonly JsonElement Expected = JsonDocument.Parse(
        File.ReadAllText(Repository.Path("reference", "characterisation", "infrared", "numeric-checks.json"))).RootElement;

    // reference/characterisation/infrared/numeric-checks.json: A = −log10 T and u(A) = 0.4343 u(T)/T.
    [Fact]
    public void Transmittance_TheReferenceValues_GiveTheirAbsorbance()
    {
        foreach (var row in Expected.GetProperty("transmittance").EnumerateArray())
            Assert.Equal(row.GetProperty("absorbance").GetDouble(), Transmittance.ToAbsorbance(row.GetProperty("percent_T").GetDouble() / 100)!.Value, 1e-8);
        var example = Expected.GetProperty("transmittance_rules").GetProperty("example");
        var source = new Source("T", "transmittance", example.GetProperty("u_T").GetDouble());
        var absorbance = Transmittance.ToAbsorbance(Measured.From(example.GetProperty("T").GetDouble(), source))!.Value;
        Agree.Digits(9, example.GetProperty("A").GetDouble(), absorbance.Value);
        Agree.Digits(6, example.GetProperty("u_A").GetDouble(), absorbance.U);
    }

    [Theory, InlineData(0), InlineData(-0.01)]
    public void Transmittance_OfNothing_HasNoAbsorbance(double transmittance)
    {
        Assert.Null(Transmittance.ToAbsorbance(transmittance));
        Assert.Null(Transmittance.ToAbsorbance((Measured)transmittance));
    }

    [Fact]
    public void Spectrum_WithSaturatedAndTooBrightPoints_SaysSoAndKeepsTheRest()
    {
        var outcome = InfraredSpectrum.Of(
            Enumerable.Range(0, 100).Select(i => (400.0 + i, i is 3 or 4 ? -0.2 : i == 7 ? 104 : 90.0)), OrdinateScale.PercentTransmittance);
        Assert.Equal(2, outcome.Value!.Saturated);
        Assert.Equal(98, outcome.Value.Wavenumbers.Count);
        Assert.Contains(outcome.Findings, f => f.Sentence.StartsWith("2 points let nothing through", StringComparison.Ordinal));
        Assert.Contains(outcome.Findings, f => f.Sentence.StartsWith("1 points let more than 100 %", StringComparison.Ordinal));
    }

    // Made bands with seeded noise: the truth is what they were made from.
    [Fact]
    public void Bands_OfAMadeSpectrum_AreFoundWithinTheirUncertainty()
    {
        double[] centres = [563, 602, 1041, 1448, 3435], widths = [30, 28, 80, 60, 380], heights = [0.42, 0.36, 0.62, 0.3, 0.32];
        int inside = 0, all = 0;
        for (var seed = 1; seed <= 20; seed++)
        {
            var random = new SeededStream((ulong)seed, "bands");
            var spectrum = InfraredSpectrum.Of(
                Enumerable.Range(0, 1801).Select(i => 400 + 2.0 * i).Select(v => (v, centres.Select((c, k) => heights[k] * Gauss(v, c, widths[k])).Sum() + 0.001 * random.Normal())),
                OrdinateScale.Absorbance, resolution: 4).Value!;
            Assert.Equal(0.001, spectrum.Noise, 0.0004);
            var bands = BandSearch.Of(spectrum);
            Assert.Equal(centres.Length, bands.Count);
            foreach (var (band, centre) in bands.Zip(centres))
            {
                all++;
                inside += Math.Abs(band.Wavenumber - centre) <= 2 * band.U ? 1 : 0;
            }
        }

        // Neighbours pull the two phosphate bands together by a fraction of a wavenumber, which a quarter of the resolution covers.
        Assert.InRange(inside, 0.9 * all, all);
    }

    // Two bands of which the saddle is high: each is read where the curve itself is highest, as computed without noise, and not between the two.
    [Fact]
    public void Bands_ThatOverlap_AreEachReadWhereTheCurveIsHighest()
    {
        static double Curve(double v) => 0.02 + 0.13 * Gauss(v, 1462, 40) + 0.10 * Gauss(v, 1414, 36);
        double Highest(double from, double to) => Enumerable.Range(0, 1000).Select(i => from + (to - from) * i / 1000).MaxBy(Curve);
        var random = new SeededStream(11, "overlap");
        var spectrum = InfraredSpectrum.Of(Enumerable.Range(0, 1801).Select(i => 400 + 2.0 * i).Select(v => (v, Curve(v) + 0.0003 * random.Normal())), OrdinateScale.Absorbance, 4).Value!;
        Assert.Equal([Highest(1400, 1430), Highest(1450, 1475)], BandSearch.Of(spectrum).Where(b => b.Prominence > 0.005).Select(b => b.Wavenumber), (a, b) => Math.Abs(a - b) < 2);
    }

    [Fact]
    public void Bands_OfNoiseAlone_AreHardlyAny()
    {
        var random = new SeededStream(7, "noise");
        var spectrum = InfraredSpectrum.Of(Enumerable.Range(0, 1801).Select(i => (400 + 2.0 * i, 0.1 + 0.001 * random.Normal())), OrdinateScale.Absorbance, 4).Value!;
        Assert.InRange(BandSearch.Of(spectrum).Count, 0, 3);
    }

    // Handbook of the trade: diamond 2.4, sample 1.5, 45°, 1000 cm⁻¹ gives 2.0 µm (common practice); by hand 10/(2π·2.4·√(0.5 − 0.390625)) = 2.005.
    [Fact]
    public void TotalReflection_OfDiamond_HasTheUsualDepth()
    {
        Agree.Digits(4, 2.00518, TotalReflection.Depth(1000)!.Value);
        Assert.Equal(TotalReflection.Depth(500)!.Value, 2 * TotalReflection.Depth(1000)!.Value, 1e-12);
        Assert.Null(TotalReflection.Depth(1000, sample: 1.8));
    }

    [Fact]
    public void Shift_BelowTheResolution_IsNotSeen()
    {
        Assert.False(new BandShift(new(1578, 1, 0.4, 0.4, 40), new(1581, 1, 0.4, 0.4, 40), 4).IsSeen);
        Assert.True(new BandShift(new(1578, 1, 0.4, 0.4, 40), new(1583, 1, 0.4, 0.4, 40), 4).IsSeen);
        Assert.False(new BandShift(new(1578, 2, 0.4, 0.4, 40), new(1583, 2, 0.4, 0.4, 40), 4).IsSeen);
    }

    [Fact]
    public void Air_OfABandAtTheUsualPlaces_IsMarked()
    {
        Assert.Contains(AirBands.For(new(2350, 1, 0.1, 0.1, 30)), a => a.Name == "carbon dioxide");
        Assert.Contains(AirBands.For(new(1635, 1, 0.1, 0.1, 60)), a => a.Name == "water");
        Assert.Contains(AirBands.For(new(2920, 1, 0.1, 0.1, 30)), a => a.Name == "grease");
        Assert.Contains(AirBands.For(new(1700, 1, 0.1, 0.1, 5)), a => a.Name == "water vapour");
        Assert.Empty(AirBands.For(new(1041, 1, 0.1, 0.1, 80)));
    }

    private static double Gauss(double x, double centre, double width) => Math.Exp(-4 * Math.Log(2) * (x - centre) * (x - centre) / (width * width));
}
