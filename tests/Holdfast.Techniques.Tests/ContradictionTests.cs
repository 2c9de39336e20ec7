using System.Globalization;
using Holdfast.Studies.Import;
using Holdfast.Techniques.NitrogenSorption;
using Holdfast.Techniques.Particles;
using Holdfast.Techniques.Tests.NitrogenSorption;

namespace Holdfast.Techniques.Tests;

/// <summary>Two things in one file that cannot both be true: asked about before any number follows. All files are invented; common practice says what each contradiction means.</summary>
public class ContradictionTests
{
    private static readonly double[] Sizes = Made.Sizes(60, 80, 0.2, 5);

    // p/p0 made with another saturation pressure than the one beside it; a factor as between units is another matter, and a small one is none.
    [Theory]
    [InlineData(1.04, false, false)]
    [InlineData(1.06, true, false)]
    [InlineData(1.24, true, false)]
    [InlineData(1.333, false, true)]
    public void RelativePressure_ThatIsNotPByP0_IsAskedAbout(double ratio, bool isAsked, bool isNoted)
    {
        var rows = string.Concat(InventedIsotherm.Stacked.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.X * 95:R},95,{p.X / ratio:R},{p.N:R}\n")));
        var text = "powder TiP-8, nitrogen 77 K, mass 0.0931 g\np (kPa),p0 (kPa),p/p0,n (mmol/g)\n" + rows;
        var understood = Reading.Of("TiP-8.csv", text);
        Assert.Equal(isAsked ? ["relative"] : [], understood.Questions.Where(q => q.IsOpen).Select(q => q.Id));
        Assert.Equal(isNoted, understood.Said().Contains("in another unit", StringComparison.Ordinal));
        if (!isAsked)
            return;
        double? Highest(string answer) => Assert.Single(Reading.Of("TiP-8.csv", text, Answers.None.With("relative", answer)).Measurements()).Column(SorptionReading.Relative)!.Numbers!.Value.Max();
        var top = InventedIsotherm.Stacked.Max(p => p.X);
        Assert.Equal(top, Highest("p-by-p0")!.Value, 1e-9);
        Assert.Equal(top / ratio, Highest("p/p0")!.Value, 1e-9);
    }

    [Fact]
    public void Masses_BeforeAndAfterOutgassing_InWords_AreAskedAbout()
    {
        var text = "Gel beads GB-2, nitrogen at 77 K\ntube + powder before degassing: powder 0.1620 g\ntube + powder after degassing:  powder 0.1083 g\np/p0,V / cm3 STP per g\n" + InventedIsotherm.Lines(InventedIsotherm.Stacked, nScale: 22.414);
        Assert.Contains(Reading.Of("GB-2.csv", text).Questions, q => q is { IsOpen: true, Id: "mass" });
    }

    // What is left after outgassing is a twentieth less or more; a hundredth less is none, a tube is no powder, and a loss no mass.
    [Theory]
    [InlineData("sample mass: 0.1250 g\nweighed again after outgassing: 0.1013 g (much water)", true)]
    [InlineData("mass 0.1250 g\nnach dem Ausheizen noch 101,3 mg", true)]
    [InlineData("masse : 0,1250 g\nmasse après dégazage : 0,1013 g", true)]
    [InlineData("massa: 0.1250 g\npeso seco depois de desgaseificado: 101.3 mg", true)]
    [InlineData("mass: 0.1250 g\nmass: 0.1013 g", true)]
    [InlineData("mass: 0.1250 g\nafter outgassing: 0.1238 g", false)]
    [InlineData("mass: 0.1250 g\ntube after outgassing: 24.1013 g", false)]
    [InlineData("mass: 0.1250 g\nmass loss after outgassing: 0.1013 g", false)]
    [InlineData("mass after outgassing: 0.1013 g", false)]
    public void Masses_ThatDiffer_AreAskedAbout(string lines, bool isAsked)
    {
        var text = $"Powder GB-2, nitrogen at 77 K\n{lines}\n\np/p0;V / cm3 STP per g\n" + InventedIsotherm.Lines(InventedIsotherm.Stacked, ";", nScale: 22.414);
        Assert.Equal(isAsked ? ["mass"] : [], Reading.Of("GB-2.csv", text).Questions.Where(q => q.IsOpen).Select(q => q.Id));
    }

    // Amounts of the whole sample are divided by what was measured, and that is said.
    [Fact]
    public void AmountsOfTheSample_AreDividedByTheMassAfterOutgassing()
    {
        var understood = Reading.Of("GB-2.csv", "Powder GB-2, nitrogen at 77 K\nmass: 0.1250 g\nmass after outgassing: 0.1013 g\n\np/p0,V whole sample (cm3 STP)\n" + InventedIsotherm.Lines(InventedIsotherm.Stacked, nScale: 22.414));
        Assert.Contains("0.1013 g", understood.Said(), StringComparison.Ordinal);
        Assert.Equal(0.1013, Assert.Single(understood.Measurements()).Setting("mass")!.Value!.Value, 1e-9);
    }

    // The whole isotherm in kPa under Torr ends at a seventh of p0; one that was stopped early ends where no other unit would make it whole.
    [Theory]
    [InlineData("Torr", "p0 = 762.4 Torr", 101.6, "kPa")]
    [InlineData("mbar", "p0 = 1016 mbar", 101.6, "kPa")]
    [InlineData("bar", "p0: 101.6 kPa", 101.6, "kPa")]
    [InlineData("kPa", "p0: 101.6 kPa", 101.6, null)]
    [InlineData("kPa", "p0: 101.6 kPa", 30.5, null)]
    [InlineData("Torr", "p0 = 762.4 Torr", 228.7, null)]
    public void Pressures_ThatReachTooLittle_AreAskedAbout(string unit, string line, double scale, string? other)
    {
        var text = $"Powder TF-9, nitrogen 77 K, mass 0.0974 g\n{line}\n\nP ({unit}),n (mmol/g)\n" + InventedIsotherm.Lines(InventedIsotherm.Stacked, xScale: scale);
        var open = Reading.Of("TF-9.csv", text).Questions.Where(q => q.IsOpen).ToList();
        Assert.Equal(other is null ? [] : ["pressure"], open.Select(q => q.Id));
        if (other is not null)
        {
            Assert.Equal(other, open[0].Choices[0]);
            Assert.Single(Reading.Of("TF-9.csv", text, Answers.None.With("pressure", other)).Measurements());
        }
    }

    [Fact]
    public void Spectrum_PastedTwice_IsAskedAbout_AndANewOneIsNot()
    {
        static string Rows(Func<int, double> after) => string.Concat(Enumerable.Range(0, 400).Select(i => string.Create(CultureInfo.InvariantCulture, $"{4000 - (8 * i)},{Before(i):0.00000},{after(i):0.00000}\n")));
        static double Before(int i) => 0.05 + (0.4 * Math.Exp(-Math.Pow((i - 300) / 6.0, 2))) + (0.001 * Math.Sin(i * 12.9898));
        const string head = "Beads CH-5, absorbance, KBr\nwavenumber (cm-1),before uptake,after uptake\n";
        Assert.Contains(Reading.Of("CH-5.csv", head + Rows(Before)).Questions, q => q is { IsOpen: true, Id: "copied" });
        Assert.Single(Reading.Of("CH-5.csv", head + Rows(Before), Answers.None.With("copied", "leave-out")).Measurements());
        Assert.DoesNotContain(Reading.Of("CH-5.csv", head + Rows(i => Before(i) + (1e-4 * Math.Sin(i * 78.233)))).Questions, q => q.Id == "copied");
    }

    // Nearly all particles of an image, none of the others: beyond that the sides are as they are.
    [Theory]
    [InlineData(20, true)]
    [InlineData(18, true)]
    [InlineData(17, false)]
    [InlineData(2, false)]
    public void Sides_ExchangedInOneImage_AreAskedAbout(int exchanged, bool isAsked)
    {
        var rows = string.Concat(Sizes.Select((s, i) => i >= 40 && i < 40 + exchanged ? string.Create(CultureInfo.InvariantCulture, $"{i + 1}\t{i / 20}\t{s / 3:0.0}\t{s:0.0}\n") : string.Create(CultureInfo.InvariantCulture, $"{i + 1}\t{i / 20}\t{s:0.0}\t{s / 3:0.0}\n")));
        var text = "rod\timage\tlength_nm\twidth_nm\n" + rows;
        Assert.Equal(isAsked, Reading.Of("rods.tsv", text).Questions.Any(q => q is { IsOpen: true, Id: "sides" }));
        if (exchanged != 20)
            return;
        var lengths = ParticleStudy.Of(Claims.Analyses.Evidence.Of(Reading.Taken(Answers.None.With("sides", "swap"), ("rods.tsv", text)))).Lists.Single(l => l.Measurand == "length");
        Assert.Equal(Sizes.Average(s => Math.Round(s, 1)), lengths.Statistics.Summary.Mean, 1e-6);
    }

    [Fact]
    public void TwoListsOfPixels_UnderTheirLabels_AreTwoPowders()
    {
        var rows = string.Concat(Enumerable.Range(0, 30).Select(i => i < 25 ? string.Create(CultureInfo.InvariantCulture, $"{i + 1},{Sizes[i]:0.0},{i + 1},{Sizes[i + 30]:0.0}\n") : string.Create(CultureInfo.InvariantCulture, $"{i + 1},{Sizes[i]:0.0},,\n")));
        var understood = Reading.Of("MN-4.csv", "grains MN-4, longest side, measured on screen\nscale bar 200 nm = 160 px (same for every image)\n\nbefore uptake,,after uptake,\nno,px,no,px\n" + rows);
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal([("before uptake", 30), ("after uptake", 25)], understood.Measurements().Select(m => (m.Sample, m.Columns[0].Numbers!.Value.Length)));
    }

    // 42 mg/L with standards up to 5 was hardly read so, whatever line says that it was diluted for reading.
    [Theory]
    [InlineData("standards 0.5 / 1 / 2 / 5 mg/L", true)]
    [InlineData("standards 5 / 10 / 50 mg/L", false)]
    public void Reading_AboveTheHighestStandard_IsAskedAbout(string standards, bool isAsked)
    {
        var text = $"Lead on manganese oxide MO-6, acid digests\nflame, {standards}\ndigest volume 50 mL, diluted 1:20 for reading\n\ndigest,powder (g),dilution,Pb (mg/L)\n1,0.1029,20,42.3\n2,0.1034,20,41.8\n3,0.1057,20,42.7\nblank,,20,0.0\n";
        Assert.Equal(isAsked, Reading.Of("MO-6.csv", text).Questions.Any(q => q is { IsOpen: true, Id: "dilution" }));
    }
}
