using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Particles;

namespace Holdfast.Techniques.Particles;

/// <summary>What the two claims about particle sizes share.</summary>
internal static class SizeClaims
{
    /// <summary>How far geometric means may lie apart and still count as the same.</summary>
    public static MarginKind Margin { get; } = new("particle-size", 90, 111, "%", "the particles of two powders count as equally large");

    /// <summary>Parameters of both.</summary>
    public static ImmutableArray<ClaimParameter> Parameters { get; } =
    [
        new("powder", "powder, as its measurements call it", "doped", null), new("parent", "powder it is set against", "parent", null),
        new("measurand", "what was measured", "length", null), new("scale", "uncertainty of the scale that the two do not share, relative", "3 %", "%"),
    ];

    /// <summary>The ratio of the two powders that a claim names, powder over parent; or why there is none.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static (SizeList? Powder, SizeList? Parent, SizeComparison? Compared, Decision? Missing) Of(Claim claim, Evidence evidence)
    {
        var study = ParticleStudy.Of(evidence);
        var (powder, parent) = (study.For(claim.Words("powder"), claim.Words("measurand")), study.For(claim.Words("parent"), claim.Words("measurand")));
        if (powder is null || parent is null)
            return (powder, parent, null, Decision.Missing($"There are no particle sizes of {(powder is null ? claim.Words("powder") : claim.Words("parent")) ?? "one of the powders"}.", Count(SizeStatistics.Few)));
        if (powder.Measurand != parent.Measurand || (powder.Unit.Length > 0) != (parent.Unit.Length > 0))
            return (powder, parent, null, Decision.Missing($"Of {powder.Powder} the {powder.Measurand} was measured, of {parent.Powder} the {parent.Measurand}: measure the same on both.", Count(SizeStatistics.Few)));
        var scale = claim.In("scale", "%") is { } stated ? stated / 100 : Math.Max(powder.ScaleU, parent.ScaleU);
        var factor = powder.Unit == parent.Unit || powder.Unit.Length == 0 ? 1 : Amounts.Unit.Parse(powder.Unit).Convert(1, Amounts.Unit.Parse(parent.Unit));
        var outcome = SizeComparison.Of([.. powder.Particles.Select(p => (p.Size * factor, p.Image))], parent.Particles, scale);
        return (powder, parent, outcome.Value, outcome.Value is null ? Decision.Missing(outcome.Findings[0].Sentence, Count(SizeStatistics.Few)) : null);
    }

    /// <summary>Gates on how many were counted, and where.</summary>
    /// <param name="fewest">Particles counted of the powder with fewer.</param>
    /// <param name="images">Images of the powder with fewer; 0 where they are not recorded.</param>
    /// <param name="particlesNeeded">Fewest particles.</param>
    /// <param name="imagesNeeded">Fewest images.</param>
    public static ImmutableArray<Gate> Gates(int fewest, int images, int particlesNeeded, int imagesNeeded) =>
    [
        new("particles", fewest >= particlesNeeded, $"the fewer counted are {Phrase.Count(fewest, "particle")}; {Phrase.Number(particlesNeeded)} of each are needed"),
        new("images", images >= imagesNeeded, images == 0 ? "the image of each particle is not recorded" : $"the fewest images of a powder are {Phrase.Number(images)}; {Phrase.Number(imagesNeeded)} are needed") { Silences = true },
    ];

    /// <summary>What the ratio is, in words.</summary>
    /// <param name="compared">The comparison.</param>
    public static string Words(SizeComparison compared)
        => $"Geometric means stand as {Phrase.Number(compared.Ratio.Value)} to 1, {Phrase.Interval(compared.Ratio.Interval(0.90), "")}, the scale included, counted by {(compared.Unit == SizeUnit.Images ? "image" : "particle")}";

    /// <summary>The deciding numbers.</summary>
    /// <param name="compared">The comparison.</param>
    public static ImmutableArray<Deciding> Numbers(SizeComparison compared) =>
    [
        Deciding.Of("ratio of geometric means", compared.Ratio, 0.95, ""),
        Deciding.Plain("chance that one of the powder is larger than one of the parent", compared.Ranks.FirstLarger, "", $"Mann–Whitney, {Phrase.P(compared.Ranks.P)}"),
        Deciding.Plain("largest distance of the distributions", compared.Shapes.D, "", $"Kolmogorov–Smirnov, {Phrase.P(compared.Shapes.P)}"),
    ];

    /// <summary>Counting more.</summary>
    /// <param name="particles">How many of each powder.</param>
    /// <param name="images">In how many images of each powder; images differ, and more particles of one do not tell by how much.</param>
    public static NextExperiment Count(int particles, int images = SizeComparison.FewestImages) => new(
        $"Count {Phrase.Number(particles)} particles of each powder in {Phrase.Number(images)} images or more at random places, at one magnification and with the labels hidden from whoever counts.", null, [], "log-normal sizes, power 80 % (common practice)");

    /// <summary>Where a claim about sizes holds.</summary>
    /// <param name="lists">The powders.</param>
    public static string Scope(params IEnumerable<SizeList?> lists)
        => string.Join("; ", lists.OfType<SizeList>().Select(l => $"{l.Powder}, {l.Measurand}, {Phrase.Count(l.Particles.Length, "particle")}, {(l.Images == 0 ? "images not recorded" : Phrase.Count(l.Images, "image"))}")) + "; one batch of each";
}
