using Holdfast.Reports.Trails;
using Holdfast.Testing;

namespace Holdfast.Reports.Tests.Trails;

/// <summary>Numbers of the invented sensor, back to what was read.</summary>
public class SensorTrailTests
{
    // samples/demo/fluor.csv: FL20-1 reads 752.941954…, the ten blanks have the mean 1005.6433 and the sd 11.652322 (reference/design/demo-seed-1589-values.csv).
    [Fact]
    public void Efficiency_OfAVessel_LeadsToItsReadingAndToTheBlanks()
    {
        var trail = NumberTrail.Of(DemoStudy.Dossier.Evidence, "E:FL20-1")!;
        Agree.Digits(6, 100 * (1 - 752.9419545 / 1005.6433006), trail.Value.Value);
        Agree.Digits(5, 100 * 752.9419545 / (1005.6433006 * 1005.6433006) * 11.6523225 / Math.Sqrt(10), trail.Value.U);
        Assert.Equal(["F", "F0"], trail.Inputs.Select(i => i.Symbol));
        Assert.Equal("fluor-spectra.csv, column FL20-1", Assert.Single(trail.Readings).Origin.ToString());
        Assert.Contains("mean of 10 blanks", trail.Text(), StringComparison.Ordinal);
    }

    // The spectra were drawn so that five points around 616 nm less the liquid alone give the vessel's signal of the scenario (same table).
    [Fact]
    public void Signal_ReadFromASpectrum_LeadsToItsColumnAndToTheLiquid()
    {
        var trail = NumberTrail.Of(DemoStudy.Dossier.Evidence, "F:FL20-1")!;
        Agree.Digits(9, 752.9419545, trail.Value.Value);
        Assert.Equal(["fluor-spectra.csv, column FL20-1", "fluor-spectra.csv, column solvent"], trail.Readings.Select(r => r.Origin.ToString()));
        Agree.Digits(9, trail.Value.Value, trail.Inputs[0].Value.Value - trail.Inputs[1].Value.Value);
        Assert.Contains("mean of the five points from 614 nm to 618 nm", trail.Text().Replace('\u00A0', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void Trail_OfWhatASensorHasNot_IsNone()
    {
        Assert.NotNull(NumberTrail.Of(DemoStudy.Dossier.Evidence, "F:FL20-1"));
        Assert.Null(NumberTrail.Of(DemoStudy.Dossier.Evidence, "q:FL20-1"));
        Assert.Null(NumberTrail.Of(DemoStudy.Dossier.Evidence, "F:ISO-20-1"));
    }
}
