using System.Globalization;
using Holdfast.Diffraction;
using Holdfast.Techniques.PowderDiffraction;

namespace Holdfast.Techniques.Tests.PowderDiffraction;

/// <summary>Scans of invented powders beside each other, runs of one powder, and what the lines above them say of angle and tube.</summary>
public class ScanSideBySideTests
{
    private static readonly Radiation Copper = Radiation.Of("Cu")!;

    [Theory]
    [InlineData("pure;;;doped;\nangle;counts;;angle;counts\ndeg 2th;;;deg 2th;\n", true)]
    [InlineData("pure;;doped;\n2theta;counts;2theta;counts\n", false)]
    [InlineData("pure;;;doped;\n2 Theta (Grad);Impulse;;2 Theta (Grad);Impulse\n", true)]
    public void Scans_WithAnglesOfTheirOwn_AreApart(string head, bool hasGap)
    {
        var (first, second) = (Made.Cubic(4.21, Copper, from: 30, to: 80), Made.Cubic(4.26, Copper, from: 32, to: 78, step: 0.025, seed: 2));
        var rows = string.Concat(Enumerable.Range(0, Math.Max(first.Length, second.Length)).Select(i => $"{Pair(first, i)}{(hasGap ? ";;" : ";")}{Pair(second, i)}\n"));
        var understood = Intake.Text("two.csv", "scans; Cu tube (1.5406 and 1.5444 A)\n".Replace(";", ",", StringComparison.Ordinal) + head + rows);
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal([("pure", first.Length), ("doped", second.Length)], understood.Measurements().Select(m => (m.Sample, m.Column(ScanNames.Counts)!.Numbers!.Value.Length)));
    }

    [Theory]
    [InlineData("1. Lauf;2. Lauf;3. Lauf", "", 1, false)]
    [InlineData("run 1;run 2;run 3", "", 1, false)]
    [InlineData("counts scan 1;counts scan 2;counts scan 3", "", 1, false)]
    [InlineData("passage 1;passage 2;passage 3", "passage 2 = après lavage\n", 0, true)]
    [InlineData("AB-1;AB-2;AB-3", "", 3, false)]
    public void Columns_ThatNumberRuns_AreAddedUp(string heads, string line, int patterns, bool asked)
    {
        var runs = Enumerable.Range(1, 3).Select(s => Made.Cubic(4.21, Copper, from: 30, to: 60, seed: (ulong)s)).ToArray();
        var rows = string.Concat(runs[0].Select((p, i) => string.Create(CultureInfo.InvariantCulture, $"{p.TwoTheta:0.00};{string.Join(';', runs.Select(r => r[i].Counts))}\n")));
        var understood = Intake.Text("KF-2.csv", $"powder KF-2\ntube Cu, K alpha 1 and 2\n{line}2theta;{heads}\n{rows}");
        Assert.Equal(asked, understood.NeedsDecision);
        Assert.Equal(patterns, understood.Measurements().Length);
        if (patterns == 1)
            Assert.Equal(runs.Sum(r => r[7].Counts), understood.Measurements()[0].Column(ScanNames.Counts)!.Numbers!.Value[7]);
    }

    [Theory]
    [InlineData("attenzione: la prima colonna e' theta, NON due theta", true)]
    [InlineData("x axis is theta (not 2theta)", true)]
    [InlineData("Winkel ist Theta, nicht 2 Theta", true)]
    [InlineData("angle θ, pas 2θ", true)]
    [InlineData("2theta, not corrected", false)]
    [InlineData("theta/2theta scan", false)]
    [InlineData("no smoothing, 2 theta 10 to 80", false)]
    public void Line_ThatDeniesTwoTheta_SaysSo(string line, bool denies)
    {
        Assert.Equal(denies, ScanWords.DeniesTwoTheta(line));
        Assert.Equal(!denies, ScanWords.SaysTwoTheta(line));
    }

    [Theory]
    [InlineData("Kupfer, K alpha (beide) 0,15406 nm", "Cu", 1.5406, false)]
    [InlineData("copper K-alpha 1.5406 A, 0.02 deg", "Cu", 1.5406, false)]
    [InlineData("tubo al molibdeno, K alfa 1 = 0,070932 nm, K alfa 2 = 0,071361 nm", "Mo", 0.70932, true)]
    [InlineData("Kα du cuivre, 1,5418 Å", "Cu", 1.5418, false)]
    [InlineData("cobalt K alpha 1 1.78897 A", "Co", 1.78897, true)]
    public void Radiation_InWords_IsSaid(string line, string anode, double wavelength, bool namesFirst)
    {
        var said = RadiationSaid.In([(1, line)]);
        Assert.Equal(anode, Assert.Single(said.Anodes));
        Assert.Equal(wavelength, said.Wavelengths[0], 1e-9);
        Assert.Equal(namesFirst, said.NamesFirst || said.OnlyFirst == false && said.Wavelengths.Length > 1);
    }

    // What the powder is made of is no tube.
    [Theory]
    [InlineData("iron oxide FE-9, Cu K alpha", "Cu")]
    [InlineData("copper hydroxide, Co K alpha 1.789 A", "Co")]
    public void Powder_OfAMetal_IsNoTube(string line, string anode) => Assert.Equal(anode, Assert.Single(RadiationSaid.In([(1, line)]).Anodes));

    private static string Pair((double TwoTheta, double Counts)[] scan, int i) => i < scan.Length ? string.Create(CultureInfo.InvariantCulture, $"{scan[i].TwoTheta:0.000};{scan[i].Counts}") : ";";
}
