using System.Globalization;
using Holdfast.Claims;
using Holdfast.Reports.Documents;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Reports.Trails;
using Holdfast.Studies;
using Holdfast.Techniques.Elements;
using Holdfast.Techniques.Infrared;
using Holdfast.Techniques.Particles;

namespace Holdfast.Techniques.Tests;

/// <summary>What the report, the figures and the trails say of spectra, compositions and particles of invented powders.</summary>
public class PowderReportTests
{
    private static readonly Study Powders = Reading.Taken(
        null,
        ("HAp.csv", Made.Text("resolution,4 cm-1\nwavenumber (cm-1),%T\n", ",", a => 100 * Math.Pow(10, -a))),
        ("ZC.csv", "Spectrum,O (wt%),Co (wt%),Zn (wt%)\nSpectrum 1,20.30,3.04,76.60\nSpectrum 2,20.10,3.10,76.70\nSpectrum 3,20.40,2.98,76.50\n"),
        ("parent.csv", "no,length (nm)\n" + string.Concat(Made.Sizes(120, 62, 0.28, 1).Select((s, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1},{s:F1}\n")))));

    [Fact]
    public void Report_OfPowders_HasASectionEach()
    {
        var sections = ResultSections.OnPage(Dossier.Of(Powders), new PageLinks(_ => null, _ => null, _ => ""));
        Assert.Equal(["infrared", "composition", "particles"], sections.Select(s => s.Id).Where(id => id is "infrared" or "composition" or "particles"));
        Assert.DoesNotContain(sections, s => string.Concat(s.Content.Select(c => c.ToString())).Contains("HF-451", StringComparison.Ordinal));
    }

    [Fact]
    public void Figure_OfASpectrum_HasFallingWavenumbersAndItsBands()
    {
        var figure = Assert.Single(StudyFigure.All(Dossier.Of(Powders)), f => f.Id == "infrared-hap");
        var panel = Assert.Single(figure.Panels);
        Assert.True(panel.X.Reversed);
        Assert.Contains(panel.Layers.OfType<Annotation>(), a => a.Text.Plain == "1041");
        Assert.Equal(1801, Assert.Single(panel.Layers.OfType<Trace>()).Points.Count);
    }

    [Fact]
    public void Figure_OfParticles_HasBarsForAllAndACurve()
    {
        var panel = Assert.Single(StudyFigure.All(Dossier.Of(Powders)), f => f.Id == "particles-parent-length").Panels[0];
        Assert.Equal(120, Assert.Single(panel.Layers.OfType<Bars>()).Items.Sum(b => b.Height));
        Assert.Single(panel.Layers.OfType<ModelCurve>());
    }

    // A trail says the value, its uncertainty and where it stands: by hand 3.04/58.933 over 3.04/58.933 + 76.60/65.38 = 0.0422 in the first place.
    [Fact]
    public void Trails_OfThePowders_LeadToTheirFiles()
    {
        var evidence = Holdfast.Claims.Analyses.Evidence.Of(Powders);
        var share = NumberTrail.Of(evidence, "share:ZC@Co-Zn")!;
        Assert.Equal(0.04217, share.Inputs[0].Value.Value, 2e-5);
        Assert.Equal(3, share.Inputs.Length);
        Assert.True(share.Value.U > 0);
        Assert.Contains("ZC.csv", share.Text(), StringComparison.Ordinal);
        Assert.Equal(1041, NumberTrail.Of(evidence, "band:HAp@1041")!.Value.Value, 1.0);
        Assert.Equal(Made.Sizes(120, 62, 0.28, 1).Average(), NumberTrail.Of(evidence, "mean:parent@length")!.Value.Value, 1e-9);
        Assert.Contains("not calibrated", NumberTrail.Of(evidence, "mean:parent@length")!.Text(), StringComparison.Ordinal);
        Assert.NotNull(NumberTrail.Of(evidence, "d50:parent@length"));
    }

    [Fact]
    public void Struck_Measurements_CountForNothing()
    {
        var struck = Powders with { Strikes = [.. Powders.Measurements.Select(m => new Strike(m.Id, "tried out", 9, default, "Ada"))] };
        var evidence = Holdfast.Claims.Analyses.Evidence.Of(struck);
        Assert.Empty(InfraredStudy.Of(evidence).Spectra);
        Assert.Empty(ElementStudy.Of(evidence).Powders);
        Assert.Empty(ParticleStudy.Of(evidence).Lists);
    }

    [Fact]
    public void Figure_OfAComposite_ShowsWhatIsLeftOver()
    {
        var files = new (string, IEnumerable<(double X, double A)>)[]
        {
            ("A", Made.Spectrum(1)), ("B", Made.Spectrum(2).Select(p => (p.X, 0.1 + 0.4 * Math.Exp(-Math.Pow((p.X - 2900) / 60, 2))))), ("AB", Made.Spectrum(3, extra: 0.06)),
        };
        var study = Reading.Taken(null, files.Select(f => (f.Item1 + ".csv", "wavenumber (cm-1),Absorbance\n" + string.Concat(f.Item2.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.X:F1},{p.A:F5}\n"))))));
        study = study with { Claims = [new StatedClaim("mix", "more-than-mixture", System.Collections.Immutable.ImmutableSortedDictionary.CreateRange(StringComparer.Ordinal, [new("composite", "AB"), new("first", "A"), new KeyValuePair<string, string>("second", "B")]), null, 1, default)] };
        var figure = Assert.Single(StudyFigure.All(Dossier.Of(study)), f => f.Id == "mixing-ab");
        var trace = figure.Panels[0].Layers.OfType<Trace>().Single();
        Assert.Equal(1716, trace.Points.MaxBy(p => p.Y).X, 12.0);
    }
}
