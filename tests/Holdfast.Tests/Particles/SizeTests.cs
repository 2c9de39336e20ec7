using System.Text.Json;
using Holdfast.Particles;
using Holdfast.Statistics;
using Holdfast.Testing;

namespace Holdfast.Tests.Particles;

/// <summary>reference/characterisation/particles: two invented log-normal samples and their statistics by scipy 1.10.1.</summary>
public class SizeTests
{
    private static readonly JsonElement Expected = JsonDocument.Parse(
        File.ReadAllText(Repository.Path("reference", "characterisation", "particles", "expected.json"))).RootElement;

    [Theory, InlineData("parent"), InlineData("doped")]
    public void Statistics_OfAReferenceSample_AgreeWithScipy(string name)
    {
        var e = Expected.GetProperty(name);
        var s = SizeStatistics.Of(Sizes(name));
        Assert.Equal(e.GetProperty("n").GetInt32(), s.Summary.N);
        Near(e, "mean", s.Summary.Mean);
        Near(e, "sd", s.Summary.Sd!.Value);
        var mean = s.Summary.MeanEstimate().Value!;
        Near(e, "se", mean.StandardError);
        Both(e.GetProperty("ci95_mean"), mean.Interval());
        Near(e, "median", s.Summary.Median);
        Both(e.GetProperty("median_ci"), s.MedianInterval()!.Value);
        Near(e, "median_ci_coverage", s.MedianInterval()!.Value.Confidence);
        foreach (var (share, quantile) in new[] { 0.1, 0.25, 0.5, 0.75, 0.9 }.Zip(e.GetProperty("quantiles_10_25_50_75_90").EnumerateArray()))
            Agree.Digits(6, quantile.GetDouble(), s.Quantile(share));
        Near(e, "geometric_mean", s.GeometricMean);
        Near(e, "ln_sd", s.LogSd);
        Near(e, "gsd", s.Gsd);
        Both(e.GetProperty("lognormal_ci95_geometric_mean"), s.LogMean!.Interval());
        var moments = e.GetProperty("moments");
        Near(moments, "d32_sauter", s.Sauter);
        Near(moments, "d43", s.VolumeMean);
        Near(moments, "d30", s.MeanVolumeDiameter);
        Near(e, "volume_weighted_median_interpolated", s.VolumeQuantile(0.5));
        Near(e.GetProperty("shapiro_wilk"), "W", s.Normality!.W);
        Near(e.GetProperty("shapiro_wilk_of_ln"), "W", s.LogNormality!.W);
        Agree.Relative(1e-3, e.GetProperty("shapiro_wilk").GetProperty("p").GetDouble(), s.Normality.P);
        Agree.Relative(1e-3, e.GetProperty("shapiro_wilk_of_ln").GetProperty("p").GetDouble(), s.LogNormality.P);
        Near(e.GetProperty("freedman_diaconis"), "width", SizeHistogram.Width(s));
        var histogram = SizeHistogram.Of(s);
        Assert.Equal(e.GetProperty("freedman_diaconis").GetProperty("bins").GetInt32(), histogram.Counts.Count);
        Assert.Equal(s.Summary.N, histogram.Counts.Sum());
    }

    [Fact]
    public void Comparison_OfTheReferenceSamples_AgreesWithScipy()
    {
        var e = Expected.GetProperty("comparison_parent_vs_doped");
        var c = SizeComparison.Of(Unnamed("parent"), Unnamed("doped")).Value!;
        Near(e, "difference_of_means", c.Means.Value);
        Near(e.GetProperty("welch"), "t", c.Means.T(0));
        Near(e.GetProperty("welch"), "df", c.Means.DegreesOfFreedom);
        Near(e.GetProperty("welch"), "p", c.Means.PDiffersFrom(0));
        Both(e.GetProperty("welch").GetProperty("ci95"), c.Means.Interval());
        Near(e.GetProperty("mann_whitney"), "U_first", c.Ranks.U);
        Near(e.GetProperty("mann_whitney"), "p_asymptotic_tie_and_continuity_corrected", c.Ranks.P);
        Near(e.GetProperty("mann_whitney"), "prob_first_larger", c.Ranks.FirstLarger);
        Near(e.GetProperty("mann_whitney"), "hodges_lehmann_shift", c.Ranks.Shift);
        Near(e.GetProperty("kolmogorov_smirnov"), "D", c.Shapes.D);
        Near(e, "ratio_of_geometric_means", c.Ratio.Value);
        Assert.Equal(SizeUnit.Particles, c.Unit);

        // scipy's asymptotic p takes the two samples as one of n = 100 against a known curve; ours counts the paths. They agree in the first figure.
        Agree.Relative(0.3, e.GetProperty("kolmogorov_smirnov").GetProperty("p_asymptotic").GetDouble(), c.Shapes.P);
    }

    // By hand: of the 6 orders of 2 and 2 values, 2 keep the groups apart (D = 1): p = 1/3. Of 20 orders of 3 and 3, 2: p = 0.1.
    [Fact]
    public void KolmogorovSmirnov_OfFewValues_IsExact()
    {
        Agree.Digits(12, 1.0 / 3, KolmogorovSmirnov.Of([1, 2], [3, 4]).P);
        Agree.Digits(12, 0.1, KolmogorovSmirnov.Of([1, 2, 3], [4, 5, 6]).P);
        Agree.Digits(12, 1, KolmogorovSmirnov.Of([1, 3], [2, 4]).P);
    }

    [Fact]
    public void MannWhitney_OfFewValues_IsAsByHand()
    {
        var found = MannWhitney.Of([1, 4, 6], [2, 3]).Value!;
        Assert.Equal(4, found.U);
        Agree.Digits(12, 4.0 / 6, found.FirstLarger);
        Agree.Digits(12, 1.5, found.Shift);
        Assert.False(MannWhitney.Of([1, 1], [1]).HasValue);
    }

    [Fact]
    public void CountNeeded_TheReferenceCases_Agree()
    {
        foreach (var row in Expected.GetProperty("count_needed").GetProperty("cases").EnumerateArray())
        {
            double gsd = row.GetProperty("gsd").GetDouble(), delta = row.GetProperty("delta").GetDouble(), n = row.GetProperty("n").GetDouble();
            var average = new CountNeeded(row.GetProperty("alpha").GetInt32(), row.GetProperty("beta").GetInt32());
            Agree.Relative(1e-4, n, average.For(gsd, delta, row.GetProperty("probability").GetDouble()));
            Agree.Relative(0.04, delta, average.Reached(gsd, (int)Math.Ceiling(n)));
        }
    }

    [Fact]
    public void ScaleBar_TheReferenceBar_IsAddedAfterAveraging()
    {
        var e = Expected.GetProperty("scale_bar");
        var bar = ScaleBar.Of(e.GetProperty("bar_nm").GetDouble(), e.GetProperty("u_bar_relative").GetDouble(), [.. e.GetProperty("pixels").EnumerateArray().Select(p => p.GetDouble())]);
        Near(e, "nm_per_pixel", bar.PerPixel);
        Agree.Digits(5, e.GetProperty("u_relative").GetDouble(), bar.RelativeU);
        var mean = SizeStatistics.Of(Sizes("parent")).Summary.MeanEstimate().Value!;
        Agree.Relative(1e-4, e.GetProperty("parent_mean_u_combined").GetDouble(), ScaleBar.Combine(mean.Value, mean.StandardError, bar.RelativeU));
    }

    [Fact]
    public void Shape_TheReferenceOutlines_Agree()
    {
        var e = Expected.GetProperty("shape");
        foreach (var row in e.GetProperty("circularity").EnumerateArray())
            Agree.Digits(6, row.GetProperty("value").GetDouble(), ParticleShape.Circularity(row.GetProperty("area").GetDouble(), row.GetProperty("perimeter").GetDouble()));
        foreach (var row in e.GetProperty("equivalent_diameter").EnumerateArray())
            Agree.Digits(6, row.GetProperty("value").GetDouble(), ParticleShape.EquivalentDiameter(row.GetProperty("area").GetDouble()));
        Assert.Equal(1.5, ParticleShape.AspectRatio(30, 20));
    }

    [Fact]
    public void LogNormal_TheReferenceConversion_Agrees()
    {
        var e = Expected.GetProperty("hatch_choate")[0];
        var curve = new LogNormal(e.GetProperty("gm").GetDouble(), e.GetProperty("gsd").GetDouble());
        Near(e, "mean", curve.Mean);
        Near(e, "d32", curve.Sauter);
        Near(e, "d43", curve.VolumeMean);
        Near(e, "volume_median", curve.VolumeMedian);
        Assert.Equal(1, Enumerable.Range(1, 2000).Sum(i => 0.1 * curve.Density(0.1 * i)), 1e-6);
    }

    [Fact]
    public void Bootstrap_OfD50AndD90_IsRepeatableAndCoversTheSample()
    {
        var particles = Unnamed("parent");
        var d50 = SizeBootstrap.Quantile(particles, 0.5, 1589);
        Assert.Equal(d50, SizeBootstrap.Quantile(particles, 0.5, 1589));
        Assert.NotEqual(d50, SizeBootstrap.Quantile(particles, 0.5, 1590));
        Assert.True(d50.Contains(42.05));

        // The distribution-free interval of the same median (scipy) is about as wide.
        Assert.InRange(d50.Half, 1.0, 2.5);
        Assert.True(SizeBootstrap.Quantile(particles, 0.9, 1589).Contains(58.61));
    }

    // Particles of one image are made alike: counted one by one they seem to differ between powders, by images they do not.
    [Fact]
    public void Comparison_WithFourImagesEach_TakesTheImagesAsValues()
    {
        var random = new SeededStream(21, "images");
        var (first, second) = (Made(), Made());
        var byImage = SizeComparison.Of(first, second).Value!;
        var byParticle = SizeComparison.Of([.. first.Select(p => (p.Item1, (string?)null))], [.. second.Select(p => (p.Item1, (string?)null))]).Value!;
        Assert.Equal(SizeUnit.Images, byImage.Unit);
        Assert.Equal(SizeUnit.Particles, byParticle.Unit);
        Assert.True(byImage.Ratio.StandardError > 2 * byParticle.Ratio.StandardError);

        List<(double, string?)> Made()
        {
            var all = new List<(double, string?)>();
            foreach (var image in new[] { "A", "B", "C", "D", "E" })
            {
                var level = 50 * Math.Exp(0.25 * random.Normal());
                all.AddRange(Enumerable.Range(0, 40).Select(_ => (level * Math.Exp(0.1 * random.Normal()), (string?)image)));
            }

            return all;
        }
    }

    [Fact]
    public void TenfoldSlip_OfALostPoint_IsNamed()
    {
        double[] sizes = [.. Sizes("parent")];
        Assert.Empty(TenfoldSlip.Among(sizes));
        Assert.Empty(TenfoldSlip.Among(Sizes("doped")));
        sizes[56] *= 10;
        var slip = Assert.Single(TenfoldSlip.Among(sizes));
        Assert.Equal(56, slip.Index);
        Assert.Equal(sizes[56] / 10, slip.Suggested, 1e-9);
    }

    // A broad distribution (GSD 2.5) reaches tenfold by itself; nothing is asked there.
    [Fact]
    public void TenfoldSlip_OfABroadDistribution_IsNone()
    {
        var random = new SeededStream(4, "broad");
        Assert.Empty(TenfoldSlip.Among([.. Enumerable.Range(0, 300).Select(_ => 50 * Math.Exp(Math.Log(2.5) * random.Normal()))]));
    }

    [Theory]
    [InlineData(480, 62, 0.1)]
    [InlineData(0.048, 62, 1000.0)]
    [InlineData(48, 62, null)]
    [InlineData(62 * 4.9, 62, null)]
    [InlineData(62 * 5.1, 62, 0.1)]
    public void TenfoldSlip_OfAGroup_IsAPowerOfTen(double group, double other, double? factor) => Assert.Equal(factor, TenfoldSlip.OfGroup(group, other));

    // Law: a normal sample is not rejected more often than it should be.
    [Fact]
    public void ShapiroWilk_OfNormalSamples_RejectsAboutOneInTwenty()
    {
        var random = new SeededStream(9, "normal");
        foreach (var n in new[] { 4, 5, 8, 20, 60 })
        {
            var rejected = Enumerable.Range(0, 1000).Count(_ => ShapiroWilk.Of([.. Enumerable.Range(0, n).Select(_ => random.Normal())]).Value!.P < 0.05);
            Assert.InRange(rejected, 25, 80);
        }
    }

    private static double[] Sizes(string name) => [.. ReferenceTable.Read("characterisation", "particles", name + ".csv").Select(r => r.Number("diameter_nm"))];

    private static List<(double, string?)> Unnamed(string name) => [.. Sizes(name).Select(s => (s, (string?)null))];

    private static void Near(JsonElement e, string name, double found) => Agree.Digits(6, e.GetProperty(name).GetDouble(), found, name);

    private static void Both(JsonElement e, Interval interval)
    {
        Agree.Digits(6, e[0].GetDouble(), interval.Low);
        Agree.Digits(6, e[1].GetDouble(), interval.High);
    }
}
