using Holdfast.Studies.History;
using Holdfast.Studies.Import;
using Holdfast.Studies.Package;
using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Tests.Import;

/// <summary>Whole spectra tied to samples: wide tables and JCAMP-DX files. Expected numbers are the files' own, read by eye.</summary>
public class SpectraTableTests
{
    private const string Wide = "Excitation,394 nm\nwavelength (nm),FL00-1,FL20-1\n612,800,600.5\n613,900,675\n614,1000,750\n615,900,675\n616,800,600\n";

    private const string Jcamp = "##TITLE= FL20-1\n##JCAMP-DX= 4.24\n##DATA TYPE= EMISSION SPECTRUM\n##XUNITS= NANOMETERS\n##YUNITS= ARBITRARY UNITS\n"
        + "##FIRSTX= 612\n##LASTX= 616\n##NPOINTS= 5\n##XFACTOR= 1\n##YFACTOR= 0.5\n##XYDATA= (X++(Y..Y))\n612 1200 1350 1500\n615 1350 1200\n##END=\n";

    private static readonly Study Known = Read.With("FL00-1", "FL20-1");

    [Fact]
    public void WideTable_HeadedByCodes_GivesOneReadingForEachColumn()
    {
        var read = Read.Text(Wide, "scan.csv", Known);
        Assert.False(read.NeedsDecision);
        Assert.Equal("2 spectra: 2 ready", read.Sentence);
        var (first, second) = (read.Proposal!.Readings[0], read.Proposal.Readings[1]);
        Assert.Equal(["FL00-1", "FL20-1"], read.Proposal.Readings.Select(r => r.Sample));
        Assert.Equal([1, 2], read.Proposal.Readings.Select(r => r.Order));
        Assert.Equal([612, 613, 614, 615, 616], first.Spectrum!.Wavelengths);
        Assert.Equal([600.5, 675, 750, 675, 600], second.Spectrum!.Intensities);
        Assert.Equal("5 points, 612 to 616 nm", first.Written);
        Assert.Equal("scan.csv, column FL20-1", second.Origin.ToString());
        Assert.Equal("394 nm", Assert.Single(read.Proposal.Runs).Details["Excitation"]);
        Assert.Equal(FluorescenceProperties.Emission.Name, read.Proposal.Runs[0].Signal);
    }

    [Fact]
    public void WideTable_WithSemicolonsDecimalCommasAndAUnitLine_IsTheSame()
    {
        var read = Read.Text("Excitation;394 nm\nwavelength;FL00-1;FL20-1\nnm;a.u.;a.u.\n612,5;800,25;600\n613,5;900,5;675\n614,5;1000;750\n615,5;900;675\n616,5;800;600\n", "scan.csv", Known);
        Assert.False(read.NeedsDecision);
        Assert.Equal([612.5, 613.5, 614.5, 615.5, 616.5], read.Proposal!.Readings[0].Spectrum!.Wavelengths);
        Assert.Equal(800.25, read.Proposal.Readings[0].Spectrum!.Intensities[0]);
    }

    // 0.612 µm are 612 nm (SI prefixes).
    [Fact]
    public void Wavelengths_WithoutAUnit_AreAskedAbout_AndKeptInNanometres()
    {
        var text = "Excitation,394 nm\nwavelength,FL00-1,FL20-1\n0.612,8,6\n0.613,9,7\n0.614,10,8\n0.615,9,7\n0.616,8,6\n";
        var open = Read.Text(text, "scan.csv", Known);
        Assert.Equal("unit:wavelength", Assert.Single(open.Questions, q => q.IsOpen).Id);
        var read = Read.Text(text, "scan.csv", Known, Read.Answer("unit:wavelength", "µm"));
        Assert.False(read.NeedsDecision);
        Assert.Equal(612, read.Proposal!.Readings[0].Spectrum!.Wavelengths[0], 9);
    }

    [Fact]
    public void Scan_OfNobodySaysWhat_IsAskedAbout()
    {
        var text = Wide.Replace("Excitation,394 nm\n", "", StringComparison.Ordinal);
        var open = Read.Text(text, "scan.csv", Known);
        Assert.Equal("spectra", Assert.Single(open.Questions, q => q.IsOpen).Id);
        Assert.Equal("2 spectra: 0 ready, 2 need a decision", open.Sentence);
        Assert.Equal(2, Read.Text(text, "scan.csv", Known, Read.Answer("spectra", "emission")).Proposal!.Readings.Length);
        var left = Read.Text(text, "scan.csv", Known, Read.Answer("spectra", "leave-out"));
        Assert.Empty(left.Proposal!.Readings);
        Assert.Equal("2 spectra: 0 ready, 2 spectra left out", left.Sentence);
    }

    [Fact]
    public void Scan_OfAbsorbance_StaysPointsForAFit()
    {
        var read = Read.Text("wavelength (nm),absorbance\n400,0.1\n410,0.2\n420,0.3\n430,0.2\n440,0.1\n");
        Assert.Equal(TableKind.Points, Assert.Single(read.Tables).Kind);
        Assert.Null(read.Proposal);
    }

    // The rules of matching are those of every table: exact, then alike in letters and numbers; anything else is asked about.
    [Fact]
    public void Codes_WrittenDifferently_AreMatched_AndStrangersAreAskedAbout()
    {
        var read = Read.Text(Wide.Replace("FL00-1,FL20-1", "fl0-1,FL99-9", StringComparison.Ordinal), "scan.csv", Known);
        Assert.Equal("FL00-1", read.Proposal!.Readings[0].Sample);
        Assert.Contains("FL99-9", Assert.Single(read.Questions, q => q.IsOpen).Text, StringComparison.Ordinal);
        var matched = Read.Text(Wide.Replace("FL00-1,FL20-1", "fl0-1,FL99-9", StringComparison.Ordinal), "scan.csv", Known, Read.Answer("match:FL99-9", "FL20-1"));
        Assert.Equal(["FL00-1", "FL20-1"], matched.Proposal!.Readings.Select(r => r.Sample));
    }

    [Fact]
    public void Column_OfTheLiquidAlone_IsASolvent()
    {
        var read = Read.Text(Wide.Replace("FL00-1,FL20-1", "solvent,FL20-1", StringComparison.Ordinal), "scan.csv", Known);
        Assert.False(read.NeedsDecision);
        Assert.Equal(SampleRole.Solvent, read.Proposal!.Samples.Single(s => s.Code == "solvent").Role);
    }

    // 1200·0.5 = 600: YFACTOR of the format (R. S. McDonald and P. A. Wilks 1988, from memory).
    [Theory]
    [InlineData("FL20-1", "scan7.dx")]
    [InlineData("dispersion of Tuesday", "fl20-1.dx")]
    public void Jcamp_NamedByTitleOrByFile_IsThatSamples(string title, string file)
    {
        var read = Read.Text(Jcamp.Replace("TITLE= FL20-1", "TITLE= " + title, StringComparison.Ordinal), file, Known);
        Assert.False(read.NeedsDecision);
        var reading = Assert.Single(read.Proposal!.Readings);
        Assert.Equal("FL20-1", reading.Sample);
        Assert.Equal([612, 613, 614, 615, 616], reading.Spectrum!.Wavelengths);
        Assert.Equal([600, 675, 750, 675, 600], reading.Spectrum.Intensities);
    }

    [Fact]
    public void Jcamp_OfNoKnownSample_IsAskedAbout()
    {
        var read = Read.Text(Jcamp.Replace("TITLE= FL20-1", "TITLE= dispersion of Tuesday", StringComparison.Ordinal), "scan7.dx", Known);
        Assert.Contains("dispersion of Tuesday", Assert.Single(read.Questions, q => q.IsOpen).Text, StringComparison.Ordinal);
        Assert.Equal("FL20-1", Read.Text(Jcamp.Replace("TITLE= FL20-1", "TITLE= dispersion of Tuesday", StringComparison.Ordinal), "scan7.dx", Known,
            Read.Answer("match:dispersion of Tuesday", "FL20-1")).Proposal!.Readings[0].Sample);
    }

    // An infrared spectrum is no spectrum of emission: it stays what it was.
    [Fact]
    public void Jcamp_OverWavenumbers_StaysPointsForAFit()
    {
        var read = Read.Text(Jcamp.Replace("NANOMETERS", "1/CM", StringComparison.Ordinal), "scan7.dx", Known);
        Assert.Equal(TableKind.Points, Assert.Single(read.Tables).Kind);
    }

    [Fact]
    public void Wavelengths_ThatTurnBack_AreRefused_NamingTheRow()
    {
        var read = Read.Text(Wide.Replace("615,900,675", "613,900,675", StringComparison.Ordinal), "scan.csv", Known);
        var stop = Assert.Single(read.Findings, f => f.Weight == Weight.Stop);
        Assert.Contains("Row 6", stop.Sentence, StringComparison.Ordinal);
        Assert.Empty(read.Proposal!.Readings);
    }

    [Fact]
    public void Cells_WithoutANumber_AreGapsThatAreSaid()
    {
        var read = Read.Text(Wide.Replace("614,1000,750", "614,over,750", StringComparison.Ordinal) + "617,700,500\n", "scan.csv", Known);
        Assert.Equal([612, 613, 615, 616, 617], read.Proposal!.Readings[0].Spectrum!.Wavelengths);
        Assert.Equal(6, read.Proposal.Readings[1].Spectrum!.Wavelengths.Length);
        Assert.Contains(read.Findings, f => f.Code == "HF-408" && f.Sentence.Contains("gaps in FL00-1", StringComparison.Ordinal));
    }

    [Fact]
    public void Column_WithFewerThanFivePoints_IsLeftOut()
    {
        var read = Read.Text(Wide.Replace("614,1000,750", "614,,750", StringComparison.Ordinal), "scan.csv", Known);
        Assert.Equal("FL20-1", Assert.Single(read.Proposal!.Readings).Sample);
        Assert.Contains(read.Findings, f => f.Sentence.Contains("holds 4 points", StringComparison.Ordinal));
    }

    [Fact]
    public void Spectrum_TakenInBefore_IsAskedAbout()
    {
        var after = Read.After(Known, Read.Text(Wide, "scan.csv", Known));
        var again = Read.Text(Wide + "\n", "again.csv", after);
        Assert.Equal("overlap", Assert.Single(again.Questions, q => q.IsOpen).Id);
        Assert.Empty(Read.Text(Wide + "\n", "again.csv", after, Read.Answer("overlap", "leave-out")).Proposal!.Readings);
        Assert.Equal(["R-0003", "R-0004"], Read.Text(Wide + "\n", "again.csv", after, Read.Answer("overlap", "take")).Proposal!.Readings.Select(r => r.Id));
    }

    [Fact]
    public void History_KeepsEveryPoint_AndThePlainPackageShowsThem()
    {
        using var bench = new Bench();
        using var study = bench.Begin();
        var file = Path.Combine(bench.Root, "scan.csv");
        File.WriteAllText(file, Wide);
        Assert.NotNull(Take.Files(study, [file], new TakeOptions { Answers = Read.Answer("unknown", "add") }, "Ada", TestContext.Current.CancellationToken).Entry);
        study.Close();
        var taken = (TakenIn)EntryText.Read(study.Daybook.Entries[^1].Bytes.AsSpan(), study.Daybook.Entries[^2].Hash).Change;
        Assert.Equal([600.5, 675, 750, 675, 600], taken.Readings[1].Spectrum!.Intensities);
        var lines = System.Text.Encoding.UTF8.GetString(PlainPackage.Files(study.Daybook)["spectra.csv"]).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal("reading,point,wavelength_nm,intensity", lines[0]);
        Assert.Equal("R-0002,1,612,600.5", lines[6]);
        Assert.Equal(1 + 10, lines.Length);
    }
}
