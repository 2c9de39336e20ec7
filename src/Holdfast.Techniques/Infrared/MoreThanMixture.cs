using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Infrared;

namespace Holdfast.Techniques.Infrared;

/// <summary>
/// "The composite is more than a mixture of its parents": bands are left over where their spectra are added up, in every preparation, and the physical mixture does not show them.
/// </summary>
/// <remarks>A composite that fits its parents shows no interaction; that does not show that there is none, so nothing left over never contradicts.</remarks>
public sealed class MoreThanMixture : IClaimRule
{
    /// <summary>Id of the rule.</summary>
    internal const string RuleId = "more-than-mixture";

    /// <summary>The limits of the rule.</summary>
    public static class Limits
    {
        /// <summary>Fewest spectra of the composite, each of a preparation of its own.</summary>
        public const int Preparations = 2;
    }

    /// <inheritdoc/>
    public string Id => RuleId;

    /// <inheritdoc/>
    public string Wording => "{composite} is more than a mixture of {first} and {second}.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own =>
    [
        new("composite", "the composite", "HAp-C", null), new("first", "one parent", "HAp", null), new("second", "the other parent", "C", null),
        new("mixture", "physical mixture of the parents", "HAp + C", null),
    ];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var study = InfraredStudy.Of(evidence);
        var (composites, first, second, mixtures) = (study.For(claim.Words("composite")), study.For(claim.Words("first")), study.For(claim.Words("second")), study.For(claim.Words("mixture")));
        ImmutableArray<MeasuredSpectrum> all = [.. composites, .. first, .. second, .. mixtures];
        var decision = composites.IsEmpty ? InfraredParameters.NoSpectrum(claim.Words("composite"))
            : first.IsEmpty ? InfraredParameters.NoSpectrum(claim.Words("first"))
            : second.IsEmpty ? InfraredParameters.NoSpectrum(claim.Words("second"))
            : Fit(composites, mixtures, [first[0].Spectrum!, second[0].Spectrum!]);
        return decision.On(claim, ClaimSentence.Of(claim, this), InfraredParameters.Scope(all), all.Select(s => s.Measurement.Id));
    }

    private static Decision Fit(ImmutableArray<MeasuredSpectrum> composites, ImmutableArray<MeasuredSpectrum> mixtures, IReadOnlyList<InfraredSpectrum> parents)
    {
        var fits = composites.Select(c => SpectralMixing.Of(c.Spectrum!, parents)).ToList();
        var others = mixtures.Select(m => SpectralMixing.Of(m.Spectrum!, parents)).ToList();
        return fits.Concat(others).FirstOrDefault(f => !f.HasValue) is { } refused
            ? Decision.Missing(refused.Findings[0].Sentence)
            : Decide([.. fits.Select(f => f.Value!)], [.. others.Select(f => f.Value!)]);
    }

    /// <summary>Judges what is left over.</summary>
    /// <param name="composites">Each preparation of the composite against the parents.</param>
    /// <param name="mixtures">Each physical mixture against the parents; none where none was measured.</param>
    public static Decision Decide(IReadOnlyList<SpectralMixing> composites, IReadOnlyList<SpectralMixing> mixtures)
    {
        ArgumentNullException.ThrowIfNull(composites);
        ArgumentNullException.ThrowIfNull(mixtures);
        var everywhere = composites[0].LeftOver.Where(b => composites.Skip(1).All(c => c.LeftOver.Any(o => Same(o, b)))).ToList();
        var own = everywhere.Where(b => !mixtures.Any(m => m.LeftOver.Any(o => Same(o, b)))).ToList();
        var air = own.Where(b => AirBands.All.Any(a => a.Touches(b.Wavenumber, b.Wavenumber))).ToList();
        own = [.. own.Except(air)];
        var ruling = own.Count > 0 ? Ruling.Holds
            : everywhere.Count > 0 && mixtures.Count > 0 && air.Count == 0 ? Ruling.Contradicted
            : Ruling.NotShownYet;
        var fit = composites[0];
        return new(
            ruling,
            $"Shares of the parents {Phrase.Number(fit.Shares[0])} and {Phrase.Number(fit.Shares[1])} describe it to {Phrase.Number(fit.ResidualSd)}. "
            + (everywhere.Count == 0 ? "Nothing is left over in every preparation: no interaction is seen, which does not show that there is none."
                : own.Count > 0 ? $"Left over in each: {Phrase.Listed(own.Select(b => Phrase.With(Math.Round(b.Wavenumber), "cm⁻¹")).Take(4))}, at least {Phrase.Number(own.Min(b => Math.Abs(b.InNoise)))} standard deviations of the noise."
                : air.Count > 0 ? "What is left over lies where water, carbon dioxide or grease absorb."
                : "The physical mixture shows what is left over too."),
            "non-negative least squares of the parents with a sloping baseline; left-over bands against the noise")
        {
            Numbers =
            [
                new("share of the first parent", fit.Shares[0], null, null, "", "least squares, widened for the correlation of neighbouring points") { U = fit.ShareErrors[0] },
                new("share of the second parent", fit.Shares[1], null, null, "", "least squares, widened for the correlation of neighbouring points") { U = fit.ShareErrors[1] },
                .. own.Select(b => Deciding.Plain("left over, in standard deviations of the noise", b.InNoise, "", $"at {Phrase.With(Math.Round(b.Wavenumber), "cm⁻¹")}")),
            ],
            Gates =
            [
                new("preparations", composites.Count >= Limits.Preparations, $"{Phrase.Count(composites.Count, "spectrum", "spectra")} of the composite; {Limits.Preparations} are needed"),
                new("physical mixture", mixtures.Count > 0, mixtures.Count > 0 ? "a physical mixture was measured" : "no physical mixture was measured"),
            ],
            Warnings = ["Shares are not mass fractions: thickness and grain size enter."],
            Questions = mixtures.Count > 0 ? [] : [new("Q04", "Would the parents ground together dry give the same spectrum?")],
            Next = new("Grind the parents together dry at the same ratio and measure that mixture and a second preparation of the composite, alike.", 2, [], "two preparations and a mixture (common practice)"),
        };
    }

    // Within the width over which a residual of one band spreads.
    private static bool Same(LeftOverBand a, LeftOverBand b) => Math.Abs(a.Wavenumber - b.Wavenumber) <= BandShift.SameBandWithin && Math.Sign(a.Absorbance) == Math.Sign(b.Absorbance);
}
