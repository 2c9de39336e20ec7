using System.Globalization;
using Holdfast.Claims.Analyses;
using Holdfast.Studies.Import;
using Holdfast.Techniques.Infrared;

namespace Holdfast.Techniques.Tests.Infrared;

/// <summary>One invented spectrum written as different people write it: it is recognised by what its columns mean, or asked about.</summary>
public class InfraredFileTests
{
    private static readonly Func<double, double> Absorbance = a => a, Fraction = a => Math.Pow(10, -a), Percent = a => 100 * Math.Pow(10, -a);

    [Theory]
    [InlineData("Wellenzahl [cm-1];Extinktion\n", ";", "A", true)]
    [InlineData("Wavenumber (cm-1),Absorbance (a.u.)\n", ",", "A", false)]
    [InlineData("# FTIR, KBr pellet\n# resolution 4 cm-1\ncm^-1\tAbs\n", "\t", "A", false)]
    [InlineData("Numero de onda (cm-1);Transmitancia (%)\n", ";", "%", true)]
    [InlineData("Nombre d'onde (cm⁻¹)\tTransmittance (%)\n", "\t", "%", false)]
    [InlineData("波数 (cm-1),透过率 (%)\n", ",", "%", false)]
    [InlineData("Dalga sayısı (cm-1);Geçirgenlik (%T)\n", ";", "%", true)]
    [InlineData("wavenumber,T\n1/cm,\n", ",", "T", false)]
    [InlineData("X;Y\ncm-1;%T\n", ";", "%", true)]
    [InlineData("ATR spectrum of HAp\nWavenumbers [1/cm],Transmittance\n", ",", "T", false)]
    public void Spectrum_AsPeopleWriteIt_IsReadWithItsBands(string head, string separator, string scale, bool comma)
    {
        var understood = Reading.Of("HAp-1.csv", Made.Text(head, separator, scale switch { "A" => Absorbance, "%" => Percent, _ => Fraction }, comma));
        Assert.False(understood.NeedsDecision, understood.Said());
        var measurement = Assert.Single(understood.Measurements());
        Assert.Equal("infrared", measurement.Technique);
        Assert.Equal(1801, measurement.Rows());
        Assert.Equal("HAp-1", measurement.Sample);
        HasBands(understood);
    }

    // Light of 2.5 to 25 µm: the wavelengths of no emission and of no cuvette.
    [Theory]
    [InlineData("Wellenlänge / µm;Transmission / %\n", ";", "%", 1e4)]
    [InlineData("wavelength (nm),Absorbance\n", ",", "A", 1e7)]
    public void Spectrum_OverWavelengths_IsReadWithItsBands(string head, string separator, string scale, double factor)
    {
        var understood = Reading.Of("HAp-1.csv", Made.Text(head, separator, scale == "%" ? Percent : Absorbance, x: v => factor / v));
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal("infrared", Assert.Single(understood.Measurements()).Technique);
        HasBands(understood);
    }

    // The number of the point under the heading of wavenumbers: nothing is read before its range is told.
    [Fact]
    public void NumbersOfPoints_AreNoWavenumbers()
    {
        var i = 0;
        var text = "Sample: HAp-1\nRange: 4000 - 400 cm-1\n" + Made.Text("Wavenumber (cm-1),Absorbance\n", ",", Absorbance, x: _ => ++i).Replace(".0000,", ",", StringComparison.Ordinal);
        var question = Assert.Single(Reading.Of("HAp-1.csv", text).Questions, q => q.IsOpen);
        Assert.Equal(("range", "4000 to 400"), (question.Id, question.Choices[0]));
        HasBands(Reading.Of("HAp-1.csv", text, Answers.None.With("range", "4000 to 400")));
    }

    // The empty beam stands beside two powders whose names are over the columns; one of them has a unit nobody writes out.
    [Fact]
    public void EmptyBeam_IsNoSample_AndNamesStandOverPairs()
    {
        var rows = Made.Spectrum().Select(p => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{p.X:0},{9000 * Math.Pow(10, -p.A):0.0},{100 * Math.Pow(10, -p.A):0.000}\n"));
        var understood = Reading.Of("both.csv", "Infrared\nwavenumber,background,HAp-1\ncm-1,a. u.,% T\n" + string.Concat(rows));
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal("percent-transmittance", Assert.Single(understood.Measurements()).Setting("scale")!.Written);
        var pairs = Made.Spectrum().Select(p => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{p.X:0},{p.A:0.0000},,{p.X:0},{1.02 * p.A:0.0000}\n"));
        Assert.Equal(["apatite HAp-1", "apatite HAp-2"], Reading.Of("p.csv", "spectra, KBr\napatite HAp-1,,,apatite HAp-2,\nWavenumber [cm-1],Absorbance,,Wavenumber [cm-1],Absorbance\n" + string.Concat(pairs)).Measurements().Select(m => m.Sample));
    }

    [Theory]
    [InlineData("wavenumber (cm-1),Absorbance\n", "T")]
    [InlineData("wavenumber (cm-1),Absorbance\n", "%")]
    [InlineData("wavenumber (cm-1),%T\n", "T")]
    [InlineData("wavenumber (cm-1),%T\n", "A")]
    [InlineData("wavenumber (cm-1),Transmittance\n", "A")]
    public void Spectrum_UnderAWrongHeading_IsAskedAbout(string head, string scale)
    {
        var text = Made.Text(head, ",", scale switch { "A" => Absorbance, "%" => Percent, _ => Fraction });
        var understood = Reading.Of("HAp-1.csv", text);
        var question = Assert.Single(understood.Questions, q => q.IsOpen);
        Assert.Empty(understood.Measurements());
        Assert.All(question.Consequences, c => Assert.NotEmpty(c));

        // The likeliest answer stands first, and is the true one.
        HasBands(Reading.Of("HAp-1.csv", text, Answers.None.With(question.Id, question.Choices[0])));
    }

    [Fact]
    public void Spectrum_WithoutHeadings_IsAskedAboutBeforeAnythingIsTaken()
    {
        var text = Made.Text("", " ", Percent);
        var understood = Reading.Of("scan7.txt", text);
        Assert.True(understood.NeedsDecision);
        Assert.Contains("infrared", understood.Said(), StringComparison.Ordinal);
        var answered = Reading.Of("scan7.txt", text, Answers.None.With("technique", "infrared"));
        Assert.False(answered.NeedsDecision, answered.Said());
        Assert.Contains(answered.Questions, q => q.Id == "scale" && q.Assumed == "percent-transmittance");
        HasBands(answered);
    }

    [Fact]
    public void Spectra_SideBySide_AreOnePowderEach()
    {
        var rows = Made.Spectrum(1).Zip(Made.Spectrum(2, shift: 9));
        var text = "Wavenumber (cm-1),HAp,HAp loaded\n" + string.Concat(rows.Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.First.X:F1},{r.First.A:F5},{r.Second.A:F5}\n")));
        var understood = Reading.Of("both.csv", text);
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal(["HAp", "HAp loaded"], understood.Measurements().Select(m => m.Sample));
    }

    [Fact]
    public void Spectra_InPairsOfColumns_KeepTheirOwnWavenumbers()
    {
        var rows = Made.Spectrum(1).Zip(Made.Spectrum(2));
        var text = "cm-1,parent %T,cm-1,doped %T\n" + string.Concat(rows.Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.First.X:F1},{Percent(r.First.A):F3},{r.Second.X + 1:F1},{Percent(r.Second.A):F3}\n")));
        var understood = Reading.Of("pairs.csv", text);
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal(["parent", "doped"], understood.Measurements().Select(m => m.Sample));
        Assert.Equal(4001, understood.Measurements()[1].Column("wavenumber")!.Numbers!.Value[0]);
    }

    [Fact]
    public void Spectrum_OverWavelengths_IsTurnedToWavenumbers()
    {
        var understood = Reading.Of("HAp-1.csv", Made.Text("FTIR of HAp-1\nWavelength (µm),Transmittance (%)\n", ",", Percent, x: v => 1e4 / v));
        Assert.False(understood.NeedsDecision, understood.Said());
        HasBands(understood);
    }

    // JCAMP-DX 4.24 as the standard has it: labels, then equally spaced ordinates.
    [Fact]
    public void Spectrum_InJcamp_IsRead()
    {
        var points = Made.Spectrum().ToArray();
        var text = "##TITLE=HAp-1\n##JCAMP-DX=4.24\n##DATA TYPE=INFRARED SPECTRUM\n##XUNITS=1/CM\n##YUNITS=TRANSMITTANCE\n##RESOLUTION=4\n##FIRSTX=4000\n##LASTX=400\n##NPOINTS=1801\n##XFACTOR=1\n##YFACTOR=0.0001\n##XYDATA=(X++(Y..Y))\n"
            + string.Concat(points.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.X:F0} {Math.Round(1e4 * Fraction(p.A)):F0}\n"))) + "##END=\n";
        var understood = Reading.Of("hap.jdx", text);
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal("HAp-1", Assert.Single(understood.Measurements()).Sample);
        Assert.Equal(4, understood.Measurements()[0].Setting("resolution")?.Value);
        HasBands(understood);
    }

    [Theory]
    [InlineData("Raman shift (cm-1),Intensity\n")]
    [InlineData("2theta,counts\n")]
    [InlineData("Wavelength (nm),Intensity\n")]
    public void OtherScans_AreNotTakenForInfrared(string head)
        => Assert.DoesNotContain(Reading.Of("scan.csv", Made.Text(head, ",", Absorbance, x: v => v / 10)).Measurements(), m => m.Technique == "infrared");

    private static void HasBands(Understanding understood)
    {
        var study = Holdfast.Studies.History.Fold.After(Reading.Empty, understood.Proposal! with { Files = [] }, 1, default, "");
        var spectrum = Assert.Single(InfraredStudy.Of(Evidence.Of(study)).Spectra);
        foreach (var (centre, _, width) in Made.Bands)
            Assert.Contains(spectrum.Bands, b => Math.Abs(b.Band.Wavenumber - centre) <= Math.Max(3, 0.03 * width));
    }
}
