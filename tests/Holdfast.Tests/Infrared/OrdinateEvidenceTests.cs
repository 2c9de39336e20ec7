using Holdfast.Infrared;
using Holdfast.Statistics;

namespace Holdfast.Tests.Infrared;

/// <summary>Made spectra (bands as in any oxide, seeded noise), written in each scale: the numbers alone must tell which it is, or leave the choice open.</summary>
public class OrdinateEvidenceTests
{
    [Theory, InlineData(0.0), InlineData(0.4)]
    public void Possible_OfASpectrumInEachScale_HoldsThatScale(double slope)
    {
        foreach (var (scale, write) in new (OrdinateScale, Func<double, double>)[]
        {
            (OrdinateScale.Absorbance, a => a),
            (OrdinateScale.Transmittance, a => Math.Pow(10, -a)),
            (OrdinateScale.PercentTransmittance, a => 100 * Math.Pow(10, -a)),
        })
            Assert.Contains(scale, OrdinateEvidence.Of(Made(slope, write)).Possible);
    }

    [Fact]
    public void Possible_OfPercent_IsNoAbsorbance()
        => Assert.Equal([OrdinateScale.PercentTransmittance], OrdinateEvidence.Of(Made(0.1, a => 100 * Math.Pow(10, -a))).Possible);

    [Fact]
    public void Possible_OfAFractionOfLight_IsNoAbsorbance()
    {
        var evidence = OrdinateEvidence.Of(Made(0.1, a => Math.Pow(10, -a)));
        Assert.Equal(-1, evidence.Direction);
        Assert.Equal([OrdinateScale.Transmittance], evidence.Possible);
    }

    [Fact]
    public void Possible_OfAbsorbance_IsNoTransmittance()
        => Assert.Equal([OrdinateScale.Absorbance], OrdinateEvidence.Of(Made(0.1, a => a)).Possible);

    [Fact]
    public void Direction_OfANoisyLine_IsNotClear()
    {
        var random = new SeededStream(3, "line");
        Assert.Equal(0, OrdinateEvidence.Of([.. Enumerable.Range(0, 1800).Select(_ => 0.9 + 0.01 * random.Normal())]).Direction);
    }

    private static double[] Made(double slope, Func<double, double> write)
    {
        var random = new SeededStream(11, "scale");
        (double Centre, double Height, double Width)[] bands = [(563, 0.4, 30), (602, 0.36, 28), (1041, 0.62, 80), (1448, 0.3, 60), (1632, 0.14, 70), (3435, 0.32, 380)];
        return
        [
            .. Enumerable.Range(0, 1801).Select(i => 400 + 2.0 * i).Select(v => write(
                0.05 + slope * v / 4000 + bands.Sum(b => b.Height * Math.Exp(-4 * Math.Log(2) * Math.Pow((v - b.Centre) / b.Width, 2))) + 0.0005 * random.Normal())),
        ];
    }
}
