using System.Globalization;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Particles;
using Holdfast.Statistics;
using Holdfast.Techniques.Particles;

namespace Holdfast.Techniques.Tests.Particles;

/// <summary>The rules on particle sizes on plain numbers for each of their rulings, on both sides of their limits, and on whole files.</summary>
public class SizeRuleTests
{
    [Theory]
    [InlineData(1.00, 0.02, Ruling.Holds)]
    [InlineData(0.75, 0.02, Ruling.Contradicted)]
    [InlineData(1.05, 0.10, Ruling.NotShownYet)]
    public void Unchanged_ByTheRatio_IsRuled(double ratio, double error, Ruling ruling) => Assert.Equal(ruling, ParticlesUnchanged.Decide(Of(ratio, error), 200, 5, 1.4, 0.90, 1.11).Gated);

    [Theory]
    [InlineData(1.3, 0.05, true, Ruling.Holds)]
    [InlineData(1.3, 0.05, false, Ruling.Contradicted)]
    [InlineData(0.75, 0.05, false, Ruling.Holds)]
    [InlineData(1.00, 0.02, true, Ruling.Contradicted)]
    [InlineData(1.1, 0.10, true, Ruling.NotShownYet)]
    public void Changed_ByTheRatio_IsRuled(double ratio, double error, bool larger, Ruling ruling) => Assert.Equal(ruling, ParticlesChanged.Decide(Of(ratio, error), 200, 5, larger, 0.90, 1.11).Gated);

    // Both sides of the 90 % interval inside the margin, and of the 95 % interval on one side of 1 (Student's t, 100 degrees of freedom).
    [Theory, InlineData(-1e-6, Ruling.Holds), InlineData(1e-6, Ruling.NotShownYet)]
    public void Unchanged_AtTheEdgeOfTheMargin_Turns(double beyond, Ruling ruling)
        => Assert.Equal(ruling, ParticlesUnchanged.Decide(Of(1.11 * Math.Exp(beyond - 0.02 * StudentDistribution.Quantile(0.95, 100)), 0.02), 200, 5, 1.4, 0.90, 1.11).Gated);

    [Theory, InlineData(1e-6, Ruling.Holds), InlineData(-1e-6, Ruling.NotShownYet)]
    public void Changed_AtTheEdgeOfOne_Turns(double beyond, Ruling ruling)
        => Assert.Equal(ruling, ParticlesChanged.Decide(Of(Math.Exp(beyond + 0.1 * StudentDistribution.Quantile(0.975, 100)), 0.1), 200, 5, larger: true, 0.90, 1.11).Gated);

    [Theory]
    [InlineData(ParticlesUnchanged.Limits.Particles, ParticlesUnchanged.Limits.Images, Ruling.Holds)]
    [InlineData(ParticlesUnchanged.Limits.Particles - 1, ParticlesUnchanged.Limits.Images, Ruling.NotShownYet)]
    [InlineData(ParticlesUnchanged.Limits.Particles, ParticlesUnchanged.Limits.Images - 1, Ruling.NotShownYet)]
    public void Unchanged_WithFewerParticlesOrImages_IsNotShown(int particles, int images, Ruling ruling)
        => Assert.Equal(ruling, ParticlesUnchanged.Decide(Of(1, 0.02), particles, images, 1.4, 0.90, 1.11).Gated);

    [Theory]
    [InlineData(ParticlesChanged.Limits.Particles, ParticlesChanged.Limits.Images, Ruling.Holds)]
    [InlineData(ParticlesChanged.Limits.Particles - 1, ParticlesChanged.Limits.Images, Ruling.NotShownYet)]
    [InlineData(ParticlesChanged.Limits.Particles, ParticlesChanged.Limits.Images - 1, Ruling.NotShownYet)]
    public void Changed_WithFewerParticlesOrImages_IsNotShown(int particles, int images, Ruling ruling)
        => Assert.Equal(ruling, ParticlesChanged.Decide(Of(1.5, 0.05), particles, images, larger: true, 0.90, 1.11).Gated);

    // Images that are not recorded leave both mute: particles that lie together are alike.
    [Fact]
    public void Changed_WithoutImages_IsMute() => Assert.Equal(Ruling.NotShownYet, ParticlesChanged.Decide(Of(0.6, 0.05), 200, 0, larger: true, 0.90, 1.11).Gated);

    // handbook of the trade (defence D03): GSD 1.36 and a margin of 1/0.9 need 146 of each at a power of 80 %, 184 at 90 %, with z(1 − β/2). One-sided z(0.9) is the former.
    [Theory, InlineData(1.36, 1 / 0.9, 146)]
    public void Unchanged_NextCount_IsThatOfTheWorkedExample(double gsd, double margin, int count) => Assert.Equal(count, ParticlesUnchanged.Needed(gsd, margin));

    // By simulation, particles clustered by image: of powders that are alike at most one in twenty is said to have grown; of powders at the margin at most one in twenty is said to be the same.
    [Theory, InlineData(1.0, false), InlineData(1.11, true)]
    public void Sizes_OfSimulatedPowders_AreSeldomRuledWrongly(double truth, bool unchanged)
    {
        var random = new SeededStream(17, "clusters");
        var wrongly = Enumerable.Range(0, 400).Count(_ =>
        {
            var compared = SizeComparison.Of(Powder(truth), Powder(1)).Value!;
            return unchanged ? ParticlesUnchanged.Decide(compared, 120, 6, 1.4, 0.90, 1.11).Gated == Ruling.Holds
                : ParticlesChanged.Decide(compared, 120, 6, larger: true, 0.90, 1.11).Gated == Ruling.Holds;
        });
        Assert.InRange(wrongly, 0, 28);

        List<(double, string?)> Powder(double factor)
        {
            var all = new List<(double, string?)>();
            for (var image = 0; image < 6; image++)
            {
                var level = factor * 50 * Math.Exp(0.05 * random.Normal());
                all.AddRange(Enumerable.Range(0, 20).Select(_ => (level * Math.Exp(0.3 * random.Normal()), (string?)image.ToString(CultureInfo.InvariantCulture))));
            }

            return all;
        }
    }

    [Fact]
    public void Claims_OnAWholeFile_AreJudged()
    {
        double[] parent = Made.Sizes(600, 62, 0.28, 1), same = Made.Sizes(600, 62, 0.28, 5), small = Made.Sizes(150, 42, 0.3, 2);
        var text = "group,image,length_nm\n" + Rows("parent", parent) + Rows("same", same) + Rows("small", small);
        var evidence = Evidence.Of(Reading.Taken(null, ("lengths.csv", text)));
        Assert.Equal(Ruling.Holds, Judged("particles-changed", "small", ("direction", "smaller")));
        Assert.Equal(Ruling.Contradicted, Judged("particles-changed", "small", ("direction", "larger")));
        Assert.Equal(Ruling.NotShownYet, Judged("particles-changed", "small", ("direction", "sideways")));
        Assert.Equal(Ruling.Contradicted, Judged("particles-unchanged", "small", ("scale", "0 %")));
        Assert.Equal(Ruling.Holds, Judged("particles-unchanged", "same", ("scale", "0 %")));
        Assert.Equal(Ruling.NotShownYet, Judged("particles-unchanged", "nobody", ("scale", "0 %")));

        Ruling Judged(string rule, string powder, params (string Name, string? Words)[] about) => Defence.Rules.Single(r => r.Id == rule)
            .Judge(Claim.Raised(rule, [("powder", powder), ("parent", "parent"), .. about]), evidence).Ruling;

        static string Rows(string name, double[] sizes) => string.Concat(sizes.Select((s, i) => string.Create(CultureInfo.InvariantCulture, $"{name},I{i % 8},{s:F1}\n")));
    }

    private static SizeComparison Of(double ratio, double error) => new(
        new("Welch on ln, ratio of geometric means", ratio, error, 100, 102, Scale.Logarithmic), new("Welch", 1, 1, 100, 102), new(1, 0.5, 0.5, 0), new(0.1, 0.5), SizeUnit.Images);
}
