using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Particles;
using Holdfast.Statistics;

namespace Holdfast.Techniques.Particles;

/// <summary>"The particles are as large as those of the parent": the ratio of geometric means lies within the margin.</summary>
/// <remarks>Two one-sided tests on ln d (D. J. Schuirmann, 1987); no difference seen is not equality. Particles of one batch say nothing of the next.</remarks>
public sealed class ParticlesUnchanged : IClaimRule
{
    /// <summary>The limits of the rule.</summary>
    public static class Limits
    {
        /// <summary>Fewest particles of each powder (common practice).</summary>
        public const int Particles = 50;

        /// <summary>Fewest images of each powder: from so many on the images are the values, and particles that lie together do not count as many.</summary>
        public const int Images = SizeComparison.FewestImages;
    }

    /// <inheritdoc/>
    public string Id => "particles-unchanged";

    /// <inheritdoc/>
    public string Wording => "The particles of {powder} are as large as those of {parent}.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own => SizeClaims.Parameters;

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var (powder, parent, compared, missing) = SizeClaims.Of(claim, evidence);
        var margin = FixedMargin.Of(evidence, SizeClaims.Margin);
        var decision = missing ?? Decide(
            compared!, Math.Min(powder!.Particles.Length, parent!.Particles.Length), Math.Min(powder.Images, parent.Images), Math.Max(powder.Statistics.Gsd, parent.Statistics.Gsd), margin.Low / 100, margin.High / 100);
        return (decision with { Warnings = [.. decision.Warnings, .. margin.Notes] }).On(
            claim, ClaimSentence.Of(claim, this), SizeClaims.Scope(powder, parent), (powder?.Measurements ?? []).Concat(parent?.Measurements ?? []).Select(m => m.Id));
    }

    /// <summary>Judges a comparison.</summary>
    /// <param name="compared">The comparison, powder over parent.</param>
    /// <param name="fewest">Particles counted of the powder with fewer.</param>
    /// <param name="images">Images of the powder with fewer; 0 where they are not recorded.</param>
    /// <param name="gsd">The larger geometric standard deviation, for the size of the next count; no unit.</param>
    /// <param name="low">Lower end of the margin of the ratio (0.90); no unit.</param>
    /// <param name="high">Upper end of the margin of the ratio (1.11); no unit.</param>
    public static Decision Decide(SizeComparison compared, int fewest, int images, double gsd, double low, double high)
    {
        ArgumentNullException.ThrowIfNull(compared);
        return new(
            IntervalRuling.Within(compared.Ratio, low, high),
            $"{SizeClaims.Words(compared)}; {Phrase.Span(low, high, "")} counts as the same.",
            "Welch on ln d, two one-sided tests against the margin")
        {
            Numbers = SizeClaims.Numbers(compared),
            Gates = SizeClaims.Gates(fewest, images, Limits.Particles, Limits.Images),
            Questions = compared.Ratio.PDiffersFrom(1) > 0.05 && !Equivalence.Of(compared.Ratio, low, high).IsShown
                ? [new("Q05", $"How large a change could you have missed with {Phrase.Count(fewest, "particle")}?")] : [],
            Next = SizeClaims.Count(Math.Max(Limits.Particles, Advised(compared, fewest, gsd, high)), images > 0 ? Math.Max(Limits.Images, (int)Math.Ceiling((double)images * Advised(compared, fewest, gsd, high) / fewest)) : Limits.Images),
        };
    }

    /// <summary>Particles of each powder that show equality with a power of 80 %: by the spread of sizes, and by what images and particles were seen to scatter, where that is more.</summary>
    /// <param name="compared">The comparison so far.</param>
    /// <param name="fewest">Particles counted of the powder with fewer.</param>
    /// <param name="gsd">The larger geometric standard deviation; no unit.</param>
    /// <param name="margin">Upper end of the margin of the ratio; no unit.</param>
    internal static int Advised(SizeComparison compared, int fewest, double gsd, double margin)
    {
        var freedom = compared.Ratio.DegreesOfFreedom;
        var allowed = Math.Log(margin) / (StudentDistribution.Quantile(0.95, freedom) + StudentDistribution.Quantile(0.9, freedom));
        return Math.Max(Needed(gsd, margin), (int)Math.Ceiling(fewest * Math.Pow(compared.Ratio.StandardError / allowed, 2)));
    }

    // n = 2((z₀.₉₅ + z₀.₉)·ln GSD/ln margin)²: 146 at GSD 1.36 and a margin of 1/0.9.
    internal static int Needed(double gsd, double margin)
        => (int)Math.Ceiling(2 * Math.Pow((NormalDistribution.Quantile(0.95) + NormalDistribution.Quantile(0.9)) * Math.Log(gsd) / Math.Log(margin), 2));
}
