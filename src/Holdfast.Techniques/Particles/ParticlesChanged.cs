using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Particles;

namespace Holdfast.Techniques.Particles;

/// <summary>"The particles are larger (or smaller) than those of the parent": the interval of the ratio of geometric means lies on one side of 1, the scale included.</summary>
/// <remarks>Welch on ln d, two-sided 95 %. Contradicted where it lies on the other side, or wholly inside what counts as the same.</remarks>
public sealed class ParticlesChanged : IClaimRule
{
    /// <summary>The limits of the rule.</summary>
    public static class Limits
    {
        /// <summary>Fewest particles of each powder (common practice).</summary>
        public const int Particles = SizeStatistics.Few;

        /// <summary>Fewest images of each powder: from so many on the images are the values, and particles that lie together do not count as many.</summary>
        public const int Images = SizeComparison.FewestImages;
    }

    /// <inheritdoc/>
    public string Id => "particles-changed";

    /// <inheritdoc/>
    public string Wording => "The particles of {powder} are {direction} than those of {parent}.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own => [.. SizeClaims.Parameters, new("direction", "larger or smaller", "larger", null)];

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
        var larger = claim.Words("direction")?.Trim().ToUpperInvariant() switch { "LARGER" or "BIGGER" or "GREW" => true, "SMALLER" or "SHRANK" => false, _ => (bool?)null };
        var margin = FixedMargin.Of(evidence, SizeClaims.Margin);
        var decision = missing ?? (larger is null ? Decision.NotNamed(claim, "direction", "larger")
            : Decide(compared!, Math.Min(powder!.Particles.Length, parent!.Particles.Length), Math.Min(powder.Images, parent.Images), larger.Value, margin.Low / 100, margin.High / 100));
        return (decision with { Warnings = [.. decision.Warnings, .. margin.Notes] }).On(
            claim, ClaimSentence.Of(claim, this), SizeClaims.Scope(powder, parent), (powder?.Measurements ?? []).Concat(parent?.Measurements ?? []).Select(m => m.Id));
    }

    /// <summary>Judges a comparison.</summary>
    /// <param name="compared">The comparison, powder over parent.</param>
    /// <param name="fewest">Particles counted of the powder with fewer.</param>
    /// <param name="images">Images of the powder with fewer; 0 where they are not recorded.</param>
    /// <param name="larger">True when larger is claimed.</param>
    /// <param name="low">Lower end of what counts as the same (0.90); no unit.</param>
    /// <param name="high">Upper end of what counts as the same (1.11); no unit.</param>
    public static Decision Decide(SizeComparison compared, int fewest, int images, bool larger, double low, double high)
    {
        ArgumentNullException.ThrowIfNull(compared);
        var interval = compared.Ratio.Interval();
        var (asClaimed, other) = larger ? (interval.Low > 1, interval.High < 1) : (interval.High < 1, interval.Low > 1);
        var same = IntervalRuling.Within(compared.Ratio, low, high) == Ruling.Holds;
        return new(
            asClaimed ? Ruling.Holds : other || same ? Ruling.Contradicted : Ruling.NotShownYet,
            $"{SizeClaims.Words(compared)}; {Phrase.Interval(interval, "")}"
                + (same ? $", and {Phrase.Span(low, high, "")} counts as the same." : "."),
            "Welch on ln d, two-sided")
        {
            Numbers = SizeClaims.Numbers(compared),
            Gates = SizeClaims.Gates(fewest, images, Limits.Particles, Limits.Images),
            Warnings = asClaimed && same ? ["The difference is seen and too small to matter."] : [],
            Questions = compared.Unit == SizeUnit.Particles ? [new("Q05", "Particles beside each other are alike: in how many places did you look?")] : [],
            Next = SizeClaims.Count(2 * Limits.Particles),
        };
    }
}
