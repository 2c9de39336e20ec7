using Holdfast.Studies.Import;
using Holdfast.Techniques.NitrogenSorption;

namespace Holdfast.Techniques.Tests.NitrogenSorption;

/// <summary>Of what and per what an amount is, which gas it is of, and which mass belongs to which powder. All invented.</summary>
public class AmountTests
{
    [Theory]
    [InlineData("V ads. (cm³ TPN par g)", "cm3(STP)/g")]
    [InlineData("captado / mg N2 por g", "mg/g")]
    [InlineData("ml N₂ g⁻¹", "cm3(STP)/g")]
    [InlineData("mmol gas adsorbed/g", "mmol/g")]
    [InlineData("ccm (CNTP) por grama", "cm3(STP)/g")]
    [InlineData("mmol N2 kg-1", "mmol/kg")]
    [InlineData("volume adsorbito (cm³ STP, non per grammo!)", "cm3(STP)")]
    [InlineData("cm3 N2", "cm3(STP)")]
    [InlineData("mmol mg-1", "mmol")]
    public void Amount_WithWhatItIsOf_IsPerWhatItSays(string heading, string unit) => Assert.Equal(unit, AmountUnit.In(heading)!.Name);

    // As gas less than a few m²/g, as liquid an ordinary powder; above the limit gas is taken, as usual.
    [Theory]
    [InlineData(2.9, true)]
    [InlineData(3.1, false)]
    public void Volume_AsSmallAsPores_IsAskedAbout(double largest, bool asked)
    {
        var scale = largest / InventedIsotherm.Stacked.Max(p => p.N);
        var understood = Reading.Of("SG-2.csv", "silica SG-2 nitrogen\np/p0,V (cm3/g)\n" + InventedIsotherm.Lines(InventedIsotherm.Stacked, nScale: scale));
        Assert.Equal(asked, understood.NeedsDecision);
        if (asked)
            Assert.Equal("volume-is", Assert.Single(understood.Questions, q => q.IsOpen).Id);
    }

    [Fact]
    public void Volume_OfLiquid_GivesTheAreaOfTheGas()
    {
        var text = "silica SG-2 nitrogen\np/p0,V (cm3/g)\n" + InventedIsotherm.Lines(InventedIsotherm.Stacked, nScale: 0.0346700);
        var study = Reading.Taken(Answers.None.With("volume-is", "liquid"), ("SG-2.csv", text));
        Assert.Equal(InventedIsotherm.Area, SorptionStudy.Of(Claims.Analyses.Evidence.Of(study)).Isotherms[0].Area!.Value.Value, 0.02 * InventedIsotherm.Area);
    }

    [Theory]
    [InlineData("gas;CO2\n", "LC-3.csv", null)]
    [InlineData("Adsorptiv: Argon\n", "LC-3.csv", null)]
    [InlineData("CO2 uptake of peel carbon at 0 °C\n", "LC-3.csv", "gas")]
    [InlineData("peel carbon\n", "LC-3 CO2 273 K.csv", "gas")]
    [InlineData("Kohlendioxid, Eiswasser\n", "LC-3.csv", "gas")]
    public void Gas_OtherThanNitrogen_GivesNoAreaByItself(string line, string file, string? question)
    {
        var understood = Reading.Of(file, line + "p/p0;n (mmol/g)\n" + InventedIsotherm.Lines(InventedIsotherm.Stacked, ";"));
        if (question is not null)
        {
            Assert.Equal(question, Assert.Single(understood.Questions, q => q.IsOpen).Id);
            understood = Reading.Of(file, line + "p/p0;n (mmol/g)\n" + InventedIsotherm.Lines(InventedIsotherm.Stacked, ";"), Answers.None.With("gas", "other"));
        }

        Assert.NotNull(SorptionIsotherm.Of(Assert.Single(understood.Measurements())).Refused);
    }

    [Theory]
    [InlineData("weighed after drying: bare 0.2210 g, with iron 0.1984 g")]
    [InlineData("masses 221.0 mg (bare) and 198.4 mg (with iron)")]
    [InlineData("with iron: 198.4 mg; bare: 221.0 mg")]
    [InlineData("0.2210 g and 0.1984 g")]
    public void Masses_OfTwoPowdersInOneLine_AreOfEach(string line)
    {
        var rows = string.Concat(InventedIsotherm.Adsorption.Select(p => FormattableString.Invariant($"{100 * p.X:0.####}\t{p.N:0.#####}\t\t{100 * p.X:0.####}\t{0.8 * p.N:0.#####}\n")));
        var study = Reading.Taken(null, ("two.tsv", $"nitrogen, both dried\n\nbare\t\t\twith 3 % iron\t\nrel. pressure\ttaken up\t\trel. pressure\ttaken up\n%\tmmol/g\t\t%\tmmol/g\n{rows}\n{line}\n"));
        Assert.Equal([("bare", 0.221), ("with 3 % iron", 0.1984)], study.Measurements.Select(m => (m.Sample, Math.Round(SorptionIsotherm.Of(m).Mass!.Value, 6))));
    }
}
