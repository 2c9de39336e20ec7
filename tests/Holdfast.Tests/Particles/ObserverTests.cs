using System.Globalization;
using System.Text.Json;
using Holdfast.Particles;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Particles;

/// <summary>reference/characterisation/micrographs: invented observers and drawn particles, with what a plain Python program makes of them.</summary>
public class ObserverTests
{
    private const double PerPixel = 2.5;
    private static readonly PictureBox Field = new(0, 0, 1024 * PerPixel, 688 * PerPixel);

    [Theory, InlineData("s1-rods-parent"), InlineData("s3-spheres-bar-wrong")]
    public void Observers_AndScale_AgreeWithTheGivenNumbers(string picture)
    {
        var e = Json("measured-by-hand.expected.json").GetProperty(picture);
        var lines = Lines("measured-by-hand.csv").Where(l => l[0] == picture).ToArray();
        string[] people = [.. lines.Select(l => l[1]).Distinct()];
        double[][] Of(string what) => [.. people.Select(p => lines.Where(l => l[1] == p && l[2] == what).OrderBy(l => l[3]).ThenBy(l => l[4]).Select(l => Number(l[5])).ToArray())];
        string[] kinds = [.. lines.Select(l => l[2]).Distinct()];
        double[][] bars = Of("scale bar"), table = Of(kinds.Single(k => k != "scale bar" && Of(k)[0].Length == 24)), repeats = Of(kinds.Single(k => Of(k)[0].Length == 10));
        var readers = Observers.Of(repeats, table);
        Near(e, "repeatability_sd_px", readers.Repeatability!.Value);
        Assert.Equal(e.GetProperty("repeatability_df").GetInt32(), readers.RepeatabilityDf);
        Near(e, "between_observers_sd_px", readers.Between!.Value);
        Near(e, "one_reading_sd_px", readers.OneReading!.Value);
        var scale = ScaleBar.Of(500, e.GetProperty("u_bar_stated_relative").GetDouble(), [.. bars.Select(b => b.Average())]);
        Near(e, "nm_per_px", scale.PerPixel);
        Near(e, "u_scale_relative", scale.RelativeU);
        Near(e, "u_observer_nm", readers.OfMean * scale.PerPixel);
        double[] particles = [.. Enumerable.Range(0, 24).Select(i => table.Average(t => t[i]) * scale.PerPixel)];
        var mean = Summary.Of(particles).MeanEstimate().Value!;
        Near(e, "mean_nm", mean.Value);
        Near(e, "se_particles_nm", mean.StandardError);
        var observer = readers.OfMean * scale.PerPixel;
        Near(e, "u_mean_nm", ScaleBar.Combine(mean.Value, Math.Sqrt(mean.StandardError * mean.StandardError + observer * observer), scale.RelativeU));
    }

    // Half a pixel in 194 is 0.3 %: the bar that is drawn 3 % short is seen, one that is 0.04 % off is not. Both sides of the rule, from the README of the drawn pictures.
    [Fact]
    public void Bar_AgainstTheFile_ContradictsPastTwiceItsReading()
    {
        Assert.True(ScaleBar.Contradicts(500 / 194.0, 2.5, ScaleBar.ReadingU([194])));
        Assert.False(ScaleBar.Contradicts(500 / 833.0, 0.6, ScaleBar.ReadingU([833])));
        var u = ScaleBar.ReadingU([200, 200]);
        Agree.Relative(1e-12, 0.5 / 200, u, "two draws of half a pixel an end");
        Assert.False(ScaleBar.Contradicts(Math.Exp(1.999 * u), 1, u));
        Assert.True(ScaleBar.Contradicts(Math.Exp(2.001 * u), 1, u));
    }

    // Feret diameters and equal-area circles of the outlines, as the drawing program states them to two decimals from its own corners.
    [Theory, InlineData("s1-rods-parent"), InlineData("s2-rods-doped-same")]
    public void Outlines_OfDrawnRods_HaveTheStatedDiameters(string picture)
    {
        foreach (var rod in Lines(picture + ".csv"))
        {
            var outline = Outline.Of(Points(rod[11]));
            Assert.Equal(Number(rod[2]), outline.Longest, 0.02);
            Assert.Equal(Number(rod[3]), outline.Shortest, 0.02);
            Assert.Equal(Number(rod[4]), ParticleShape.EquivalentDiameter(outline.Area), 0.02);
            Assert.Equal(Number(rod[5]), outline.Box.Left, 0.011);
            Assert.Equal(Number(rod[8]), outline.Box.Bottom, 0.011);
            Assert.True(ParticleShape.Circularity(outline.Area, outline.Perimeter) < ParticleShape.AspectRatio(outline.Longest, outline.Shortest));
        }
    }

    [Fact]
    public void Shape_OfAPolygonNearADisk_IsThatOfADisk()
    {
        var disk = Outline.Of(Enumerable.Range(0, 720).Select(i => (10 * Math.Cos(i * Math.PI / 360), 10 * Math.Sin(i * Math.PI / 360))));
        Assert.Equal(20, ParticleShape.EquivalentDiameter(disk.Area), 1e-3);
        Assert.Equal(1, ParticleShape.Circularity(disk.Area, disk.Perimeter), 1e-4);
        Assert.Equal(1, ParticleShape.AspectRatio(disk.Longest, disk.Shortest), 1e-4);
        var square = Outline.Of([(0, 0), (2, 0), (2, 2), (0, 2)]);
        Assert.Equal(Math.PI / 4, ParticleShape.Circularity(square.Area, square.Perimeter), 12);
        Assert.Equal((2 * Math.Sqrt(2), 2.0), (square.Longest, square.Shortest));
        Assert.Equal((0.0, 5.0), (Outline.Of([(0, 0), (3, 4)]).Shortest, Outline.Of([(0, 0), (3, 4)]).Longest));
    }

    // Mean and SD of `inside_weighted`, and of `inside`, in truth.json of the drawn pictures.
    [Theory]
    [InlineData("s1-rods-parent", 106, 187.1192, 188.2563, 42.0368, 105.894)]
    [InlineData("s2-rods-doped-same", 104, 179.7978, 180.8862, 40.4125, 103.906)]
    public void EdgeWeights_OfRodsInside_GiveTheStatedMean(string picture, int n, double inside, double weighted, double sd, double effective)
    {
        var frame = new CountingFrame(Field);
        var rods = Lines(picture + ".csv").Select(r => (Size: Number(r[1]), Box: new PictureBox(Number(r[5]), Number(r[6]), Number(r[7]), Number(r[8])), Cut: r[9] == "1")).ToArray();
        var whole = rods.Where(r => !r.Cut).ToArray();
        Assert.Equal(n, whole.Length);
        Assert.Equal(inside, whole.Average(r => r.Size), 1e-4);
        var found = CountingFrame.Weighted([.. whole.Select(r => (r.Size, frame.Weight(r.Box)))]);
        Assert.Equal(weighted, found.Mean, 1e-4);
        Assert.Equal(sd, found.Sd, 1e-4);
        Assert.Equal(effective, found.EffectiveN, 1e-3);

        // All that the truth calls cut are cut; the rule leaves a pixel more at the edge.
        Assert.All(rods.Where(r => r.Cut), r => Assert.True(frame.IsCut(r.Box)));
        Assert.InRange(whole.Count(r => frame.IsCut(r.Box)), 0, 2);
    }

    [Fact]
    public void Cells_OfAField_CountEachParticleOnce()
    {
        var frame = new CountingFrame(new(0, 0, 400, 300), 4, 3);
        Assert.Equal(6, frame.CellOf(new(90, 90, 110, 110)));
        Assert.Equal(1, frame.CellOf(new(10, 10, 99, 99)));
        Assert.Null(frame.CellOf(new(390, 290, 401, 301)));
        Assert.Equal(12, frame.CellAt(399.9, 299.9));
        Assert.Null(frame.CellAt(-0.1, 5));
        var rods = Lines("s1-rods-parent.csv").Where(r => r[9] == "0").Select(r => new PictureBox(Number(r[5]), Number(r[6]), Number(r[7]), Number(r[8])));
        Assert.Equal(106, rods.Count(b => new CountingFrame(Field, 5, 4).CellOf(b) is >= 1 and <= 20));
        Assert.True(frame.IsCut(new(1, 50, 60, 60)));
        Assert.False(frame.IsCut(new(1.01, 50, 60, 60)));
    }

    // pair.expected.json: rods inside and at most 2 % covered, from one population.
    [Fact]
    public void Pair_OfOnePopulation_HasTheStatedRatioAndShowsNoDifference()
    {
        var e = Json("pair.expected.json").EnumerateObject().Single().Value.GetProperty("length_nm");
        (double, string?)[] Rods(string picture) => [.. Lines(picture + ".csv").Where(r => r[9] == "0" && Number(r[10]) <= 0.02).Select(r => (Number(r[1]), (string?)picture))];
        var compared = SizeComparison.Of(Rods("s2-rods-doped-same"), Rods("s1-rods-parent")).Value!;
        Agree.Relative(1e-6, e.GetProperty("ratio_of_geometric_means").GetDouble(), compared.Ratio.Value);
        Agree.Relative(1e-6, e.GetProperty("u_ln_ratio").GetDouble(), compared.Ratio.StandardError);
        Agree.Relative(1e-5, e.GetProperty("welch_df").GetDouble(), compared.Ratio.DegreesOfFreedom);
        Assert.InRange(1, compared.Ratio.Interval().Low, compared.Ratio.Interval().High);
        Assert.True(compared.Shapes.P > 0.05);
    }

    private static void Near(JsonElement e, string name, double found) => Agree.Relative(1e-8, e.GetProperty(name).GetDouble(), found, name);

    private static JsonElement Json(string name) => JsonDocument.Parse(File.ReadAllText(Repository.Path("reference", "characterisation", "micrographs", name))).RootElement;

    private static string[][] Lines(string name) => [.. File.ReadAllLines(Repository.Path("reference", "characterisation", "micrographs", name)).Skip(1).Select(l => l.Split(','))];

    private static IEnumerable<(double, double)> Points(string text) => text.Split(' ').Select(Number).Chunk(2).Select(p => (p[0], p[1]));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
