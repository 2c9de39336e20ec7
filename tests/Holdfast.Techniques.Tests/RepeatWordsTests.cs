using System.Globalization;
using Holdfast.Techniques.Infrared;
using Holdfast.Techniques.PowderDiffraction;

namespace Holdfast.Techniques.Tests;

/// <summary>Columns that number what was done again with one invented powder, and columns that name powders.</summary>
public class RepeatWordsTests
{
    [Theory]
    [InlineData("Wellenzahl;Extinktion;Extinktion;Extinktion\n(cm-1);Tablette 1;Tablette 2;Tablette 3", true)]
    [InlineData("cm-1;scan A;scan B;scan C", true)]
    [InlineData("cm-1;pastille 1;pastille 2;pastille 3", true)]
    [InlineData("cm-1;1. Messung;2. Messung;3. Messung", true)]
    [InlineData("cm-1;GT-4;GT-5;GT-6", false)]
    public void Spectra_OfOnePowder_AreSo(string heading, bool isOne)
    {
        var powders = Reading.Of("GT-4.csv", $"GT-4, absorbance\n\n{heading}\n" + Rows(false)).Measurements();
        Assert.Equal(3, powders.Length);
        Assert.Equal(isOne ? ["GT-4"] : ["GT-4", "GT-5", "GT-6"], powders.Select(m => m.Sample).Distinct());
        Assert.All(powders, m => Assert.Equal("absorbance", m.Setting(InfraredFiles.Scale)!.Written));
    }

    // The mean beside its scans is no fourth spectrum, whatever it is called; another curve is.
    [Theory, InlineData(true, 3), InlineData(false, 4)]
    public void Mean_BesideItsScans_IsNoSpectrum(bool isMean, int spectra)
        => Assert.Equal(spectra, Reading.Of("GT-4.csv", "GT-4, absorbance\n\ncm-1;GT-4;GT-5;GT-6;GT-7\n" + Rows(true, isMean ? 0 : 0.02)).Measurements().Length);

    [Theory]
    [InlineData(";scan 1;scan 2\nhoek 2-theta;tellen;tellen", true)]
    [InlineData("2theta;1. Lauf;2. Lauf", true)]
    [InlineData("2theta;CE-5;CE-6", false)]
    public void Runs_OfOnePowder_AreAddedUp(string heading, bool isOne)
    {
        var points = PowderDiffraction.Made.Cubic(5.4112, Holdfast.Diffraction.Radiation.Of("Cu")!);
        var rows = string.Concat(points.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.TwoTheta:0.00};{p.Counts:0};{p.Counts:0}\n")));
        var understood = Reading.Of("CE-5.csv", $"CE-5, Cu K-alpha, twice measured, sample stayed in the holder\n{heading}\n{rows}");
        Assert.False(understood.NeedsDecision, understood.Said());
        Assert.Equal(isOne ? ["CE-5"] : ["CE-5", "CE-6"], understood.Measurements().Select(m => m.Sample));
        Assert.Equal((isOne ? 2 : 1) * points[0].Counts, understood.Measurements()[0].Column(ScanNames.Counts)!.Numbers!.Value[0]);
    }

    private static string Rows(bool hasMean, double off = 0)
        => string.Concat(Enumerable.Range(0, 400).Select(i =>
        {
            double[] all = [.. Enumerable.Range(1, 3).Select(k => Math.Round(0.05 + (0.4 * Math.Exp(-Math.Pow((i - 300) / 6.0, 2))) + (0.001 * Math.Sin(i * 12.9898 * k)), 4))];
            return string.Join(';', all.Prepend(4000 - (8 * i)).Concat(hasMean ? [Math.Round(all.Average() + off, 4)] : Array.Empty<double>()).Select(v => v.ToString(CultureInfo.InvariantCulture))) + "\n";
        }));
}
