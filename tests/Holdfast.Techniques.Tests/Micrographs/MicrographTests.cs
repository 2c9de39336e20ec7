using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Particles;
using Holdfast.Studies;
using Holdfast.Studies.History;
using Holdfast.Techniques.Micrographs;
using Holdfast.Techniques.Particles;
using Holdfast.Testing;

namespace Holdfast.Techniques.Tests.Micrographs;

/// <summary>
/// What is drawn on a micrograph, and what follows from it. The particles are those of the drawn pictures (reference/characterisation/micrographs: 2.5 nm a pixel, field 1024 × 688), and
/// where a picture itself is needed it is read from HOLDFAST_REFERENCE.
/// </summary>
public class MicrographTests
{
    private const double PerPixel = 2.5;

    [Fact]
    public void Picture_TakenIn_IsAMeasurementWithItsSizeAndItsResolution()
    {
        var understood = Reading.Of("parent-02.tif", new MadeTiff(64, 48) { PerCentimetre = 4_000_000 }.Write());
        var measured = Assert.Single(understood.Measurements());
        Assert.Equal(("micrograph", "parent"), (measured.Technique, measured.Sample));
        Assert.Equal((64.0, 48.0, 2.5), (measured.Setting("width")!.Value, measured.Setting("height")!.Value, Math.Round(measured.Setting("pixel by the file")!.Value!.Value, 9)));
        Assert.Contains("says nothing of the sample", Assert.Single(Reading.Of("IMG_0042.tif", new MadeTiff(64, 48) { PerCentimetre = 28 }.Write()).Measurements()).Setting("resolution in the file")!.Written, StringComparison.Ordinal);
        Assert.Equal("IMG_0042", Assert.Single(Reading.Of("IMG_0042.tif", new MadeTiff(64, 48).Write()).Measurements()).Sample);
        Assert.Contains(Reading.Of("cut.tif", new MadeTiff(64, 48).Write()[..900]).Findings, f => f.Weight == Weight.Stop && f.Sentence.Contains("cut.tif", StringComparison.Ordinal));
    }

    [Fact]
    public void WrongBar_AgainstTheFile_IsSaidAndWidensUntilItIsSettled()
    {
        var (name, bytes) = DrawnPictures.Of("s3-spheres-bar-wrong");
        var study = Reading.Taken(null, [(name, bytes)]);
        study = Marked(study, MarkKinds.Bar, "500 nm", 742, 697, 936, 697);
        study = Marked(study, MarkKinds.Bar, "500 nm", 742.2, 697, 936.1, 697);
        study = Marked(study, MarkKinds.Line, null, 100, 100, 136, 100);
        var picture = Of(study);
        Assert.True(picture.Scale!.IsContradicted);
        Assert.Equal(500 / 194.0, picture.Scale.PerPixel, 0.002);
        Assert.InRange(picture.Scale.RelativeU, 0.0309, 0.05);
        var said = MicrographStudy.Findings(picture).Single(f => f.Code == "HF-773");
        Assert.Equal(Weight.Caution, said.Weight);
        Assert.Contains("2.5 nm by the file", said.Sentence, StringComparison.Ordinal);
        Assert.Contains("3.1 % apart", said.Sentence, StringComparison.Ordinal);

        var byFile = Of(Marked(study, MarkKinds.Settled, "file: a grating of 2160 lines a mm"));
        Assert.Equal((2.5, true), (Math.Round(byFile.Scale!.PerPixel, 9), byFile.Scale.IsByFile));
        Assert.Equal(36 * 2.5, ParticleStudy.Of(Evidence.Of(Marked(study, MarkKinds.Settled, "file: a grating"))).Lists[0].Particles[0].Size, 6);
        var byBar = Of(Marked(study, MarkKinds.Settled, "bar: the file was resized"));
        Assert.Equal(ScaleBar.Uncalibrated, byBar.Scale!.RelativeU, 0.001);
        Assert.Equal(Weight.Note, MicrographStudy.Findings(byBar).Single(f => f.Code == "HF-773").Weight);
    }

    [Theory]
    [InlineData("500 nm", 500, "nm", 0.03), InlineData("0,5 µm", 0.5, "um", 0.03), InlineData("2 µm ± 1 %", 2, "um", 0.01), InlineData("500nm ± 0 %", 500, "nm", 0)]
    public void Bar_AsItIsTyped_IsRead(string text, double length, string unit, double u)
    {
        var read = PixelScale.Bar(text, out var trouble)!.Value;
        Assert.Null(trouble);
        Assert.Equal((length, unit, u), (read.Length, read.Unit, read.RelativeU));
    }

    [Theory, InlineData("500"), InlineData("500 mg"), InlineData("-5 nm"), InlineData("nm"), InlineData("500 nm ± 2 nm"), InlineData("500 nm ± 60 %"), InlineData("")]
    public void Bar_ThatSaysNoLength_IsRefusedInWords(string text)
    {
        Assert.Null(PixelScale.Bar(text, out var trouble));
        Assert.False(string.IsNullOrEmpty(trouble));
    }

    // Two observers, offset by 1.2 pixels: seen between them, and part of every average.
    [Fact]
    public void Repeats_AndObservers_FlowIntoEverySize()
    {
        var study = Marked(Pictured(), MarkKinds.Bar, "500 nm ± 0 %", 800, 727, 1000, 727);
        study = Marked(study, MarkKinds.Bar, "500 nm ± 0 %", 800, 727, 1000, 727);
        var ids = new List<string>();
        for (var i = 0; i < 12; i++)
        {
            study = Marked(study, MarkKinds.Line, null, 50, 40 + 50 * i, 110 + i, 40 + 50 * i);
            ids.Add(study.Marks[^1].Id);
        }

        Assert.Equal(Math.Sqrt(0.5), Of(study).OneReading, 12);
        for (var i = 0; i < 10; i++)
            study = Again(study, ids[i], "Ada", 50, 40 + 50 * i, 110 + i + (i % 2 == 0 ? 1 : -1), 40 + 50 * i);
        var alone = Of(study);
        Assert.Equal((10, 10), (alone.Repeated, alone.Readers.RepeatabilityDf));
        Assert.Equal(Math.Sqrt(0.5), alone.OneReading, 9);
        Assert.DoesNotContain(MicrographStudy.Findings(alone), f => f.Code == "HF-775");
        Assert.Equal(0, ParticleStudy.Of(Evidence.Of(study)).Lists[0].ObserverU);
        for (var i = 0; i < 12; i++)
            study = Again(study, ids[i], "Ben", 50, 40 + 50 * i, 111.2 + i, 40 + 50 * i);
        var both = Of(study);
        Assert.Equal(2, both.Readers.Count);
        Assert.Equal(1.2 / Math.Sqrt(2), both.Readers.Between!.Value, 1e-9);
        var list = Assert.Single(ParticleStudy.Of(Evidence.Of(study)).Lists);
        Assert.Equal(1.2 / 2 * PerPixel, list.ObserverU, 1e-6);
        var bare = list.Statistics.Summary.MeanEstimate().Value!;
        Assert.Equal(Math.Sqrt(bare.StandardError * bare.StandardError + list.ObserverU * list.ObserverU + Math.Pow(bare.Value * list.ScaleU, 2)), list.MeanU!.Value, 1e-9);
        Assert.True(list.Whole(list.D90!.Value, list.D90.SamplingU) > list.D90.SamplingU);
    }

    [Fact]
    public void Strikes_CellsAndEdges_DecideWhatCounts()
    {
        var study = Marked(Pictured(), MarkKinds.Bar, "500 nm", 800, 727, 1000, 727);
        study = Marked(study, MarkKinds.Field, null, 1024, 688, 0, 0);
        study = Marked(study, MarkKinds.Line, null, 100, 100, 160, 100);
        study = Marked(study, MarkKinds.Line, null, 300, 300, 380, 300);
        study = Marked(study, MarkKinds.Line, null, 500, 680, 520, 688);
        study = Marked(study, MarkKinds.Outline, null, 700, 100, 740, 100, 740, 140, 700, 140);
        Assert.Equal([null, null, "touches the edge of the field", null], Of(study).Particles.Select(p => p.LeftOut));
        Assert.Contains(MicrographStudy.Findings(Of(study)), f => f.Code == "HF-776" && f.Sentence.Contains("weighted", StringComparison.Ordinal));
        var lists = ParticleStudy.Of(Evidence.Of(study)).Lists;
        Assert.Equal(["length", "equal-area diameter", "greatest Feret diameter", "least Feret diameter", "aspect ratio", "circularity"], lists.Select(l => l.Measurand));
        Assert.Equal(2 * Math.Sqrt(1600 / Math.PI) * PerPixel, lists[1].Particles[0].Size, 1e-6);
        Assert.Equal(40 * PerPixel, lists[3].Particles[0].Size, 1e-6);
        Assert.Equal(Math.PI / 4, lists[5].Particles[0].Size, 1e-9);
        Assert.Equal("", lists[5].Unit);

        var cells = Marked(Marked(study, MarkKinds.Cells, "4 x 3"), MarkKinds.Counted, null, 10, 10);
        Assert.Equal([1], Of(cells).Counted);
        Assert.Equal(1, Of(cells).Particles.Count(p => p.LeftOut is null));
        var struck = Fold.After(study, new Struck(study.Marks[2].Id, "two rods that lie across each other"), 99, default, "Ada");
        Assert.Equal(3, Of(struck).Particles.Length);
        Assert.Empty(ParticleStudy.Of(Evidence.Of(Marked(Pictured(), MarkKinds.Line, null, 1, 2, 30, 40))).Lists);
        Assert.Contains(MicrographStudy.Findings(Of(Marked(Pictured(), MarkKinds.Line, null, 1, 2, 30, 40))), f => f.Code == "HF-774");
    }

    // Both pictures show one population (README of the drawn pictures): neither "equal" nor "different" may be said of a hundred rods in one picture each.
    [Fact]
    public void Pair_OfOnePopulation_IsNeitherEqualNorDifferent()
    {
        var study = Rods(Rods(Pictured("parent-01.tif", "doped-01.tif"), "M-0001", "s2-rods-doped-same", 1), "M-0002", "s1-rods-parent", 1);
        Assert.Equal(["doped", "parent"], study.Measurements.Select(m => m.Sample));
        foreach (var (rule, direction) in new[] { ("particles-unchanged", ""), ("particles-changed", "larger"), ("particles-changed", "smaller") })
        {
            var verdict = Judge(study, rule, direction);
            Assert.True(Ruling.NotShownYet == verdict.Ruling, verdict.Reason);
        }

        Assert.Equal(0.954, SizeComparison.Of(List(study, "doped").Particles, List(study, "parent").Particles).Value!.Ratio.Value, 0.003);
    }

    // The same rods a third longer: seen, the scale's uncertainty included, once they lie in four pictures.
    [Fact]
    public void Pair_OfATrueDifference_IsSeen()
    {
        string[] names = ["parent-01.tif", "parent-02.tif", "parent-03.tif", "parent-04.tif", "doped-01.tif", "doped-02.tif", "doped-03.tif", "doped-04.tif"];
        var study = Pictured(names);
        foreach (var (i, measurement) in study.Measurements.Index())
            study = Rods(study, measurement.Id, measurement.Sample == "parent" ? "s1-rods-parent" : "s2-rods-doped-same", (measurement.Sample == "parent" ? 1 : 1.35) * (1 + 0.01 * (i % 4)));
        var verdict = Judge(study, "particles-changed", "larger");
        Assert.True(Ruling.Holds == verdict.Ruling, verdict.Reason);
        Assert.Equal(Ruling.Contradicted, Judge(study, "particles-unchanged", "").Ruling);
    }

    private static Verdict Judge(Study study, string rule, string direction)
        => Defence.Rules.Single(r => r.Id == rule).Judge(Claim.Raised(rule, [("powder", "doped"), ("parent", "parent"), ("measurand", "length"), ("direction", direction)]), Evidence.Of(study));

    private static SizeList List(Study study, string powder) => ParticleStudy.Of(Evidence.Of(study)).For(powder, "length")!;

    // The rods that a person can measure (inside, at most 2 % covered), each as a line as long as it is, about its middle.
    private static Study Rods(Study study, string id, string picture, double factor)
    {
        study = Marked(study, id, MarkKinds.Bar, "500 nm", 800, 727, 1000, 727);
        study = Marked(study, id, MarkKinds.Bar, "500 nm", 800, 727, 1000, 727);
        foreach (var rod in File.ReadAllLines(Repository.Path("reference", "characterisation", "micrographs", picture + ".csv")).Skip(1).Select(l => l.Split(',')))
        {
            if (rod[9] != "0" || Number(rod[10]) > 0.02)
                continue;
            double middle = (Number(rod[6]) + Number(rod[8])) / 2 / PerPixel, half = Number(rod[1]) * factor / PerPixel / 2;
            study = Marked(study, id, MarkKinds.Line, null, 512 - half, Math.Clamp(middle, 5, 680), 512 + half, Math.Clamp(middle, 5, 680));
        }

        return study;
    }

    private static Study Pictured(params string[] names) => Reading.Taken(null, (names.Length > 0 ? names : ["parent-01.tif"]).Select((n, i) => (n, new MadeTiff(1024, 744) { RowsPerStrip = 744, Over = { [305] = (uint)i } }.Write())));

    private static Micrograph Of(Study study) => Micrograph.Of(study, study.Measurements[0])!;

    private static Study Marked(Study study, string kind, string? written, params double[] points) => Marked(study, "M-0001", kind, written, points);

    private static Study Marked(Study study, string id, string kind, string? written, params double[] points)
        => Fold.After(study, new PictureMarked(id, kind, [.. points], written, null), 100 + study.Marks.Length, default, "Ada");

    private static Study Again(Study study, string repeats, string who, params double[] points)
        => Fold.After(study, new PictureMarked("M-0001", MarkKinds.Line, [.. points], null, repeats), 100 + study.Marks.Length, default, who);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
