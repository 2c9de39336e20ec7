using System.Globalization;
using Holdfast.Techniques.NitrogenSorption;
using static Holdfast.Techniques.Tests.NitrogenSorption.InventedIsotherm;

namespace Holdfast.Techniques.Tests.NitrogenSorption;

/// <summary>Several powders in one file, and amounts that a file gives twice: the invented isotherm and one of half its amounts.</summary>
public class BlocksTests
{
    [Fact]
    public void PowdersBelowEachOther_AreReadApart_AndLendNoMass()
    {
        var text = "Nitrogen at 77 K, measured on Tuesday\nGas: N2\n\nSample: ZX-1\nSample mass: 0.1034 g\np/p0,Quantity adsorbed (mmol/g)\n" + Lines(Stacked)
            + "end of run 05:12\n\nSample: ZX-2\np/p0,Quantity adsorbed (mmol/g)\n" + Lines(Stacked, nScale: 0.5);
        var taken = Taken.Text("both.csv", text);
        Assert.Empty(taken.Open);
        var found = SorptionStudy.Of(taken.Evidence).Isotherms;
        Assert.Equal(["ZX-1", "ZX-2"], found.Select(i => i.Measurement.Sample));
        Assert.Equal(Area, found[0].Bet!.Chosen!.Area, 0.003 * Area);
        Assert.Equal(Area / 2, found[1].Bet!.Chosen!.Area, 0.003 * Area);
        Assert.Equal(0.1034, found[0].Mass);
        Assert.Null(found[1].Mass);
        Assert.All(found, i => Assert.Equal((Adsorption.Count, Desorption.Count), (i.Branches.Adsorption.Length, i.Branches.Desorption.Length)));
    }

    // Branches below each other, under no second name, stay one powder.
    [Fact]
    public void BranchesBelowEachOther_AreOnePowder()
    {
        var text = "Sample: ZX-1\nGas: N2\nAdsorption\np/p0,Quantity adsorbed (mmol/g)\n" + Lines(Adsorption) + "\nDesorption\np/p0,Quantity adsorbed (mmol/g)\n" + Lines(Desorption);
        Assert.Equal(Area, Assert.Single(SorptionStudy.Of(Taken.Text("a.csv", text).Evidence).Isotherms).Bet!.Chosen!.Area, 0.003 * Area);
    }

    [Theory, InlineData(true), InlineData(false)]
    public void PowdersSideBySide_HaveTheirOwnMassAndSaturationPressure(bool keyed)
    {
        var rows = Stacked.Select((p, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1};{p.X * 101:0.#####};{p.N:0.#####};;{p.X * 100:0.#####};{p.N / 2:0.#####}\n"));
        var text = (keyed ? "Sample;ZX-1;;;ZX-2\n" : ";ZX-1;;;ZX-2\n") + "mass of dry powder (mg);103.4;;;88.1\nsaturation pressure (kPa);101;;;100\n\nNo.;p (kPa);adsorbed N2 (mmol/g);;p (kPa);adsorbed N2 (mmol/g)\n" + string.Concat(rows);
        var taken = Taken.Text("pair.csv", text);
        Assert.Empty(taken.Open);
        var found = SorptionStudy.Of(taken.Evidence).Isotherms;
        Assert.Equal(["ZX-1", "ZX-2"], found.Select(i => i.Measurement.Sample));
        Assert.Equal([0.1034, 0.0881], found.Select(i => i.Mass!.Value), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal(Area, found[0].Bet!.Chosen!.Area, 0.003 * Area);
        Assert.Equal(Area / 2, found[1].Bet!.Chosen!.Area, 0.003 * Area);
    }

    // 1 mmol is 22.41 cm³ of the gas and 0.0347 cm³ of the liquid: columns that say so agree, others are asked about.
    [Theory]
    [InlineData("Adsorbed (cm3(STP)/g)", 22.41396954, "Adsorbed (mmol/g)", 1, false)]
    [InlineData("Adsorbed (cm3(STP)/g)", 22.41396954, "Liquid volume (cm3/g)", 0.03467, false)]
    [InlineData("Adsorbed (cm3(STP)/g)", 1, "Liquid volume (cm3/g)", 0.03467, true)]
    [InlineData("Adsorbed (mmol/g)", 22.41396954, "Adsorbed again (mg/g)", 28.0134, true)]
    public void AmountsGivenTwice_MustAgree(string first, double scale, string second, double secondScale, bool asks)
    {
        var text = $"Sample,ZX-1\nGas,N2\np/p0,{first},{second}\n" + string.Concat(Stacked.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.X:0.####},{p.N * scale:0.######},{p.N * secondScale:0.######}\n")));
        var taken = Taken.Text("twice.csv", text);
        if (!asks)
        {
            Assert.Empty(taken.Open);
            Assert.Equal(Area, SorptionStudy.Of(taken.Evidence).Isotherms[0].Bet!.Chosen!.Area, 0.003 * Area);
            return;
        }

        var question = Assert.Single(taken.Open);
        Assert.Contains(first, question.Text, StringComparison.Ordinal);
        Assert.Contains(second, question.Text, StringComparison.Ordinal);
        Assert.Empty(taken.Study.Measurements);
        Assert.Equal(Area, SorptionStudy.Of(Taken.Text("twice.csv", text, (question.Id, question.Choices[0])).Evidence).Isotherms[0].Bet!.Chosen!.Area, 0.003 * Area);
    }

    // Liquid alone: 0.0347 cm³ of it is a millimole, not a drop of gas.
    [Fact]
    public void VolumeOfLiquid_IsNoGas()
        => Assert.Equal(Area, SorptionStudy.Of(Taken.Text("l.csv", "Sample,ZX-1\nGas,N2\np/p0,adsorbed liquid volume (cm3/g)\n" + Lines(Stacked, nScale: 0.034670)).Evidence).Isotherms[0].Bet!.Chosen!.Area, 0.003 * Area);

    [Fact]
    public void Branch_NamedOnItsFirstLine_HoldsUntilTheNext()
    {
        var text = "Sample,ZX-1\nGas,N2\nbranch,p/p0,n (mmol/g)\n" + string.Concat(Adsorption.Select((p, i) => string.Create(CultureInfo.InvariantCulture, $"{(i == 0 ? "adsorption" : "")},{p.X:0.####},{p.N:0.######}\n")))
            + string.Concat(Desorption.Select((p, i) => string.Create(CultureInfo.InvariantCulture, $"{(i == 0 ? "desorption" : "")},{p.X:0.####},{p.N:0.######}\n")));
        var one = Assert.Single(SorptionStudy.Of(Taken.Text("first.csv", text).Evidence).Isotherms);
        Assert.Equal((Adsorption.Count, Desorption.Count), (one.Branches.Adsorption.Length, one.Branches.Desorption.Length));
    }

    // The file's own summary says what the unit must be; a number near ours says nothing.
    [Theory]
    [InlineData("BET surface area: 29.3 m2/g", 22.41396954, true)]
    [InlineData("Specific surface | 29.3 | m2/g", 22.41396954, true)]
    [InlineData("BET surface area: 32 m2/g", 1, false)]
    public void SummaryThatContradictsTheAmounts_IsAskedAbout(string line, double scale, bool asks)
    {
        var text = "Sample;ZX-1\nGas;N2\n" + line.Replace(" | ", ";", StringComparison.Ordinal) + "\np/p0;n (mmol/g)\n" + Lines(Stacked, ";", nScale: scale / 5);
        var taken = Taken.Text("s.csv", text);
        Assert.Equal(asks ? 1 : 0, taken.Open.Count());
        if (!asks)
            return;
        Assert.Contains("cm3(STP)/g", taken.Open.Single().Text, StringComparison.Ordinal);
        Assert.Equal(Area / 5, SorptionStudy.Of(Taken.Text("s.csv", text, (taken.Open.Single().Id, "cm3(STP)/g")).Evidence).Isotherms[0].Bet!.Chosen!.Area, 0.003 * Area);
    }

    [Theory, InlineData("0.0920", true), InlineData("0.1020", false)]
    public void MassAfterOutgassingThatDiffers_IsAskedAbout(string after, bool asks)
    {
        var taken = Taken.Text("m.csv", $"Sample: ZX-1\nSample mass: 0.1034 g\nGas: N2\np/p0,n (mmol/g)\n{Lines(Stacked)}\nsample after outgassing: {after}\n");
        Assert.Equal(asks, taken.Open.Any());
        if (asks)
            Assert.Contains(after, taken.Open.Single().Text, StringComparison.Ordinal);
    }

    // Headings again on each page, two lines of units, thousands grouped, dots up to the value.
    [Fact]
    public void ReportOfSeveralPages_IsOneIsotherm()
    {
        const string head = "  No.   Rel. pressure    Abs. pressure    Quantity adsorbed\n           p/p0               Pa            cm3/g (STP)\n         (none)            (gauge)          (per gram)\n";
        var rows = Stacked.Select((p, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1,5}{p.X,14:0.00000}{p.X * 101325,18:#,##0.0}{p.N * 22.41396954,18:0.000}\n")).ToArray();
        var text = "REPORT 12                                   nitrogen, 77.3 K\nSample ..... ZX-1 (invented, calcined 350 C)\nSaturation pressure ..... 101,325 Pa\n\n" + head + string.Concat(rows[..25]) + "\nREPORT 12                                     page 1 of 2\n" + head + string.Concat(rows[25..]) + "\nEnd of table.\n";
        var taken = Taken.Text("report.txt", text);
        Assert.Empty(taken.Open);
        var one = Assert.Single(SorptionStudy.Of(taken.Evidence).Isotherms);
        Assert.Contains("ZX-1", one.Measurement.Sample, StringComparison.Ordinal);
        Assert.Equal(Area, one.Bet!.Chosen!.Area, 0.003 * Area);
        Assert.Equal((Adsorption.Count, Desorption.Count), (one.Branches.Adsorption.Length, one.Branches.Desorption.Length));
    }
}
