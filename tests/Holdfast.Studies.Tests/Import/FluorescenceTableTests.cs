using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Tests.Import;

/// <summary>Sheets of a sensing experiment: signals, quencher, absorbances, other ions, spiked waters.</summary>
public class FluorescenceTableTests
{
    [Fact]
    public void Signals_WithTheirQuencher_BecomeReadingsAndFacts()
    {
        var read = Read.Text("sample;series;Q (µmol/L);F1;F2;A_ex;A_em\nFL-1;FLUOR;0;1000,5;998,2;0,01;0\nFL-2;FLUOR;20;752,1;749,9;0,02;0\n", "fluor.csv");
        Assert.False(read.NeedsDecision);
        Assert.Equal([1000.5, 998.2, 752.1, 749.9], read.Proposal!.Readings.Select(r => r.Value!.Value));
        Assert.All(read.Proposal.Readings, r => Assert.Equal(FluorescenceProperties.Intensity.Name, r.Signal));
        Assert.Equal(20, read.Value("FL-2", "quencher"));
        Assert.Equal(0.02, read.Value("FL-2", "absorbance-excitation"));
    }

    // 20 µmol/L of nickel is 20·58.693/1000 = 1.17386 mg/L (CIAAW 2024, abridged): the way back gives 20.
    [Fact]
    public void Quencher_InMilligrams_IsKeptInMicromoles()
        => Assert.Equal(20, Read.Text("sample,quencher (mg/L),F\nFL-1,1.17386,752.1\n").Value("FL-1", "quencher")!.Value, 9);

    [Fact]
    public void Lifetimes_InNanoseconds_AreKeptInMilliseconds()
        => Assert.Equal(0.92, Read.Text("sample,Q (umol/L),lifetime (ns)\nLT-1,0,920000\n").Proposal!.Readings[0].Value!.Value, 12);

    // Milligrams of calcium are no milligrams of nickel: without "as Ca" they cannot become moles, with it they do (40.08 mg/L are 1000 µmol/L).
    [Theory]
    [InlineData("mg/L", null)]
    [InlineData("mmol/L", 40078.0)]
    [InlineData("mg/L as Ca", 1000.0)]
    public void OtherIon_InMilligrams_NeedsItsOwnName(string unit, double? expected)
    {
        var read = Read.Text($"sample,other ion,other ion concentration ({unit}),F\nIF-1,Ca,40.078,990\n");
        var found = read.Value("IF-1", "interferent-concentration");
        if (expected is { } value)
            Assert.Equal(value, found!.Value, 6);
        else
            Assert.Null(found);
        Assert.Equal(expected is null, read.Findings.Any(f => f.Code == "HF-401"));
    }

    [Fact]
    public void Spikes_AddedAndFound_AreFacts()
    {
        var read = Read.Text("sample,series,role,added (umol/L),found (umol/L)\nSP-1,SPIKE-roof,spike,10,12.01\n");
        Assert.Equal(10, read.Value("SP-1", "added"));
        Assert.Equal(12.01, read.Value("SP-1", "found"));
    }
}
