using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Diffraction;

namespace Holdfast.Techniques.PowderDiffraction;

/// <summary>"The crystallites are so large": the stated size lies where the breadths of several lines put it, the width of the instrument taken off.</summary>
/// <remarks>The range covers both ways to take the instrument off, widened by two standard uncertainties of breadths and K (Scherrer; Williamson and Hall from five lines on). Without a
/// standard the breadths give a lower limit only.</remarks>
internal sealed class CrystalliteSize : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest lines that give a size.</summary>
        public const int Lines = 3;

        /// <summary>The whole range must lie within the stated size divided and multiplied by this; no unit.</summary>
        public const double Factor = 1.5;
    }

    /// <inheritdoc/>
    public string Id => "crystallite-size";

    /// <inheritdoc/>
    public string Wording => "The crystallites of {powder} are about {size} across.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own => [new("powder", "powder whose pattern is meant", "ZF-3", null), new("size", "size that is claimed", "20 nm", "nm")];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var pattern = DiffractionStudy.Of(evidence).Of(claim.Words("powder"));
        var sentence = Phrase.Sentence(claim, Wording, ("powder", pattern?.Sample ?? claim.Words("powder") ?? "the powder"), ("size", claim.Words("size") ?? "the stated size"));
        var decision = claim.Words("powder") is null ? Decision.NotNamed(claim, "powder", "ZF-3")
            : pattern is null ? Decision.Missing($"There is no pattern of {claim.Words("powder")}. Take one in, or correct the name.", Next)
            : claim.In("size", "nm") is not { } size || size <= 0 ? Decision.NotNamed(claim, "size", "20 nm")
            : pattern.Size is not { } found ? Decision.Missing($"No line of {pattern.Sample} stands clear enough to give a breadth. Count longer.", Next)
            : Decide(found.Range.Low, found.Range.High, found.Lines.Length, found.HasInstrument, found.IsSeparated, size);
        return decision.On(claim, sentence, pattern is null ? null : $"volume-weighted column length of coherent domains, K = {Phrase.Number(Scherrer.UsualK)}, {pattern.Radiation.Name}; not the size of particles", pattern is null ? [] : [pattern.Measurement.Id]);
    }

    /// <summary>Judges a stated size.</summary>
    /// <param name="low">Lower end of the range by the lines, nm.</param>
    /// <param name="high">Upper end, nm; infinite where there is only a lower limit.</param>
    /// <param name="lines">Number of lines.</param>
    /// <param name="hasInstrument">Whether the width of the instrument was measured.</param>
    /// <param name="separated">Whether strain was told apart.</param>
    /// <param name="stated">Size that is claimed, nm.</param>
    public static Decision Decide(double low, double high, int lines, bool hasInstrument, bool separated, double stated)
    {
        var inside = low >= stated / Limits.Factor && high <= stated * Limits.Factor;
        var outside = high < stated / Limits.Factor || low > stated * Limits.Factor;
        var limit = double.IsPositiveInfinity(high);
        return new Decision(
            inside ? Ruling.Holds : outside ? Ruling.Contradicted : Ruling.NotShownYet,
            (limit ? $"The lines say larger than {Phrase.With(low, "nm")} and no more" : $"The lines put the size between {Phrase.With(low, "nm")} and {Phrase.With(high, "nm")}")
                + $" ({Phrase.Count(lines, "line")}, K = {Phrase.Number(Scherrer.UsualK)}); the claim says {Phrase.With(stated, "nm")}.",
            separated ? "breadths of lines after Williamson and Hall, both ways to take the instrument off" : "breadths of lines after Scherrer, both ways to take the instrument off")
        {
            Numbers = [limit ? Deciding.Plain("crystallites larger than", low, "nm") : new Deciding("crystallite size", (low + high) / 2, low, high, "nm", "range of both ways to take the instrument off, widened by two standard uncertainties"), Deciding.Plain("stated", stated, "nm")],
            Gates =
            [
                new("instrument", hasInstrument, hasInstrument ? "the width of the instrument was measured" : "the width of the instrument was not measured"),
                new("lines", lines >= Limits.Lines, $"{Phrase.Count(lines, "line")} gave a breadth; {Phrase.Number(Limits.Lines)} are needed"),
            ],
            Warnings = [.. separated ? Array.Empty<string>() : ["Strain was not told apart from size: it makes crystallites look smaller."], "A coherent length is not the size of particles; micrographs answer another question."],
            Questions = hasInstrument ? [] : [new Question("Q06", "How broad are the lines of a perfect powder on your instrument?")],
            Next = Next,
        };
    }

    private static NextExperiment Next => new("Scan a standard without broadening (LaB6 or coarse silicon) with the same slits, from the first to the last line used, and five lines of the powder.", 1, ["standard"], "the breadth of the instrument must be known at each line (common practice)");
}
