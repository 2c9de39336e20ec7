using Holdfast.Studies.Properties;

namespace Holdfast.Studies.Tests.Import;

/// <summary>What a rate depends on besides concentration and temperature, as vessel sheets write it.</summary>
public class RateTableTests
{
    // 0.125 mm are 125 µm; 150 rpm are 150 1/min (SI prefixes; one turn a minute).
    [Fact]
    public void SizeAndSpeed_InTheUnitsOfTheBench_AreKept()
    {
        var read = Read.Text("sample,time (min),particle size (mm),stirring (rpm)\nV-1,5,0.125,150\n");
        Assert.False(read.NeedsDecision);
        Assert.Equal(125, read.Value("V-1", BatchProperties.ParticleDiameter.Name)!.Value, 9);
        Assert.Equal(150, read.Value("V-1", BatchProperties.StirringSpeed.Name)!.Value, 9);
        Assert.Equal(2, Read.Text("sample,time after addition (s),F\nV-1,120,800\n").Value("V-1", FluorescenceProperties.TimeAfterAddition.Name)!.Value, 9);
    }
}
