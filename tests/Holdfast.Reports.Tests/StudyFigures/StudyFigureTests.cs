using Holdfast.Amounts;
using Holdfast.Claims;
using Holdfast.Reports.Figures;
using Holdfast.Reports.StudyFigures;
using Holdfast.Studies;
using Holdfast.Testing;

namespace Holdfast.Reports.Tests.StudyFigures;

/// <summary>The figures of the invented demo study.</summary>
public class StudyFigureTests
{
    [Fact]
    public void Kinds_AreTheOnesThatAReaderExpects()
        => Assert.Equal(
            ["CalibrationFigure", "KineticsFigure", "IsothermFigure", "DoseFigure", "PhFigure", "SpeciesFigure", "DriftFigure", "VantHoffFigure", "ArrheniusFigure", "CyclesFigure",
                "SelectivityFigure", "ExchangeFigure", "BreakthroughFigure", "SpectraFigure", "QuenchingFigure", "LifetimeFigure", "InterferenceFigure", "RecoveryFigure"], StudyFigure.Kinds.Select(k => k.GetType().Name));

    [Fact]
    public void Write_OfTheDemo_HandsOverEachFigureInEachKindAndWidthOnce()
    {
        var files = new Dictionary<string, byte[]>(StringComparer.OrdinalIgnoreCase);
        var fallen = FigureFiles.Write(DemoStudy.Dossier, [FigureFileKind.Svg, FigureFileKind.Png, FigureFileKind.Pdf], [85, 174], files.Add);
        Assert.Empty(fallen);
        Assert.Equal(StudyFigure.All(DemoStudy.Dossier).Length * 6, files.Count);
        Assert.Contains("kinetics-kin-05-85mm.svg", files.Keys);

        // PNG: ISO/IEC 15948, 5.2. PDF: ISO 32000-1, 7.5.2.
        Assert.All(files.Where(f => f.Key.EndsWith(".png", StringComparison.Ordinal)), f => Assert.Equal([0x89, 0x50, 0x4E, 0x47], f.Value[..4]));
        Assert.All(files.Where(f => f.Key.EndsWith(".pdf", StringComparison.Ordinal)), f => Assert.Equal("%PDF"u8.ToArray(), f.Value[..4]));
    }

    // Strike, do not delete: what was struck stays legible at its place and takes no part in what is fitted.
    [Fact]
    public void Kinetics_WithAStruckVessel_KeepItsMarkHollowWhereItWas()
    {
        const string code = "K20-030-1";
        var study = DemoStudy.Dossier.Evidence.Study;
        var after = Dossier.Of(study with { Strikes = study.Strikes.Add(new Strike(code, "the stopper leaked", study.Version + 1, DateTimeOffset.UnixEpoch, "test")) });
        var (was, now) = (Marks(DemoStudy.Dossier), Marks(after));
        var (before, struck) = (Assert.Single(was, m => m.Id == code), Assert.Single(now, m => m.Id == code));
        Assert.Equal(before with { State = MarkState.Struck }, struck);
        Assert.Equal(was.Length, now.Length);
        Assert.DoesNotContain(code, after.Evidence.Kinetics.SelectMany(k => k.Fits).SelectMany(f => f.Points.Ids));
        Assert.DoesNotContain(after.Verdicts, v => v.Data.Contains(code));

        static Mark[] Marks(Dossier dossier) => [.. StudyFigure.All(dossier).Single(f => f.Id == "kinetics-kin-20").Panels.SelectMany(p => p.AllMarks)];
    }

    // The curve that the data favour is drawn whole in the colour of the data, its rivals dashed; a band only where every parameter has an interval.
    [Theory]
    [InlineData("isotherm-temp-298", true)]
    [InlineData("isotherm-iso-298", false)]
    public void FittedCurves_TheBestIsWhole_AndItsBandIsDrawnOrSaidToBeMissing(string id, bool hasBand)
    {
        var figure = StudyFigure.All(DemoStudy.Dossier).Single(f => f.Id == id);
        var layers = figure.Panels[0].Layers;
        var curves = layers.OfType<ModelCurve>().ToArray();
        Assert.Equal(Enumerable.Range(0, curves.Length), curves.Select(c => c.Slot));
        var bands = layers.OfType<Band>().ToArray();
        Assert.Equal(hasBand ? [true, false] : [], bands.Select(b => b.Pale));
        Assert.Contains(figure.Notes, n => n.ToString().Contains(hasBand ? "95 % band" : "No band is drawn", StringComparison.Ordinal));
        foreach (var (x, low, high) in bands.SelectMany(b => b.Points))
            Assert.InRange(curves[0].Formula!(x), low, high);
        // One more vessel scatters about the curve, so that its band lies about that of the curve itself.
        foreach (var (wide, narrow) in hasBand ? bands[0].Points.Zip(bands[1].Points) : [])
        {
            Assert.True(wide.Low <= narrow.Low && wide.High >= narrow.High);
            Assert.Equal(wide.X, narrow.X);
        }
    }

    // Constants are read off fits and have no sample of their own: the figure names every vessel behind them, the claims' and no other.
    [Theory]
    [InlineData("van-t-hoff-temp-298", new[] { "TEMP-298", "TEMP-308", "TEMP-318" })]
    [InlineData("arrhenius-kin-05-288", new[] { "KIN-05-288", "KIN-05", "KIN-05-308", "KIN-05-318" })]
    public void Constants_AgainstTemperature_NameTheVesselsBehindThem(string id, string[] series)
    {
        var figure = StudyFigure.All(DemoStudy.Dossier).Single(f => f.Id == id);
        Assert.All(figure.Panels.SelectMany(p => p.AllMarks), m => Assert.Null(m.Id));
        Assert.Equal(series.SelectMany(s => DemoStudy.Dossier.Evidence.SeriesNamed(s)!.Vessels).Select(v => v.Code).Order(StringComparer.Ordinal), figure.RestsOn.Order(StringComparer.Ordinal));
    }

    // ln k and 1000/T of one temperature. By plain least squares k1 is 0.1334 1/min at 298.15 K (worked out by hand); the error model of the series weighs
    // the same vessels and may move it by a few per cent, not more.
    [Fact]
    public void Arrhenius_OfTheDemo_DrawsTheLogarithmOfEachConstant()
    {
        var figure = StudyFigure.All(DemoStudy.Dossier).Single(f => f.Id == "arrhenius-kin-05-288");
        var mark = figure.Panels[0].AllMarks.Single(m => Math.Abs(m.X - 1000 / 298.15) < 1e-6);
        Assert.Equal(Math.Log(0.1334), mark.Y, 0.05);
        var fit = DemoStudy.Dossier.Evidence.Kinetics.First(k => k.Series.Name == "KIN-05").Fits.First(f => f.Card.Name == "Pseudo-first-order");
        Assert.Equal(Math.Log(fit["k1"].Value), mark.Y, 9);
        Assert.Contains("2", figure.Notes[^1].Plain, StringComparison.Ordinal);
        Assert.Contains("kJ/mol", figure.Notes[1].Plain, StringComparison.Ordinal);
    }

    [Fact]
    public void All_OfAnEmptyStudy_IsNoFigure() => Assert.Empty(StudyFigure.All(Dossier.Of(new Study { Title = "empty" })));

    [Fact]
    public void DosePrediction_AtAnyDose_LiesOnTheIsothermAndOnTheMassBalance()
    {
        var evidence = DemoStudy.Dossier.Evidence;
        var prediction = DosePrediction.Of(evidence, evidence.SeriesNamed("DOSE")!)!;
        var fit = evidence.Isotherms.Single(i => i.Series.Name == prediction.From).Fits.Single(f => f.Card.Name == prediction.Curve);
        Measured before = 0;
        foreach (var dose in new[] { 0.5, 1, 2, 4 })
        {
            var (removal, uptake) = prediction.At(dose);
            var left = 20 * (1 - removal.Value / 100);
            Agree.Digits(9, (20 - left) / dose, uptake.Value);
            Agree.Digits(9, fit.ValueAt(left), uptake.Value);
            Assert.True(removal.U > 0 && uptake.U > 0);
            Assert.True(removal.Value > before.Value);
            before = removal;
        }
    }

    [Fact]
    public void DosePrediction_WithoutAnIsothermOfTheSameWater_IsNone()
    {
        var evidence = DemoStudy.Dossier.Evidence;
        Assert.Null(DosePrediction.Of(evidence with { Isotherms = [.. evidence.Isotherms.Where(i => i.Series.Name is "TEMP-308" or "TEMP-318")] }, evidence.SeriesNamed("DOSE")!));
    }
}
