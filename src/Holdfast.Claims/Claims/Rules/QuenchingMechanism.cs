using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Fluorescence;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "Quenching is {mechanism}": the lifetime tells. When it falls as the signal does, quenching is dynamic; when it stays, static. Intensities and the size of
/// the bimolecular constant do not decide.
/// </summary>
/// <remarks>
/// Ratio of the Stern–Volmer constants of lifetimes and intensities over the same levels, 95 % interval to first order, degrees of freedom after Satterthwaite;
/// 1 for dynamic, 0 for static (J. R. Lakowicz, Principles of Fluorescence Spectroscopy, chapter 8, from memory).
/// </remarks>
public sealed class QuenchingMechanism : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest levels.</summary>
        public const int Levels = 3;
    }

    /// <inheritdoc/>
    public string Id => "quenching-mechanism";

    /// <inheritdoc/>
    public string Wording => "Quenching in {series} is {mechanism}.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own => [new("mechanism", "kind of quenching", "static", null), new("against", "series of lifetimes", "LIFETIME", null)];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence) => SensorGround.Of(claim, evidence);

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var sensing = Sensing.Of(evidence);
        var series = sensing.SeriesNamed(claim.Words("series"));
        var lifetimes = sensing.LifetimesNamed(claim.Words("against"));
        var mechanism = claim.Words("mechanism")?.Trim();
        var isStatic = string.Equals(mechanism, "static", StringComparison.OrdinalIgnoreCase);
        var decision = series is null ? Decision.Missing("No quenching series was found. Read signals and lifetimes at the same levels.")
            : !isStatic && !string.Equals(mechanism, "dynamic", StringComparison.OrdinalIgnoreCase) ? Decision.NotNamed(claim, "mechanism", "static or dynamic")
            : lifetimes is null || lifetimes.Constant is not { } ofLifetimes || series.ConstantTo(lifetimes.Highest) is not { } ofSignals
                ? Decision.Missing(
                    "Signals alone cannot tell static from dynamic quenching: no lifetimes were read at two levels or more.", Plan(series.Levels is [.., var top] ? top : 0),
                    new Question("Q51", "What does the lifetime do?"))
            : Decide(
                isStatic, Lifetimes.Of(ofSignals, ofLifetimes), lifetimes.Samples.Select(s => s.Quencher).Distinct().Count(), LargestFactor(series, lifetimes),
                lifetimes.WithoutQuencher is { } without and > 0 ? DiffusionLimit.Bimolecular<Amounts.Number>(1e6 * ofSignals.Value, without / 1000).Value : null);
        return decision.On(
            claim, Phrase.Sentence(claim, Wording, ("series", series?.Name ?? claim.Words("series") ?? "the series"), ("mechanism", mechanism ?? "static or dynamic")),
            SensorScope.Of(series, lifetimes?.Highest), SensorScope.Codes(series).Concat(lifetimes?.Samples.Select(s => s.Code) ?? []));
    }

    /// <summary>Judges a mechanism.</summary>
    /// <param name="isStatic">True for static, false for dynamic.</param>
    /// <param name="lifetimes">Constants compared.</param>
    /// <param name="levels">Levels at which lifetimes were read.</param>
    /// <param name="factor">Largest inner-filter factor at those levels, applied or not; null when no absorbance was read; no unit.</param>
    /// <param name="bimolecular">kq by the signals, L/(mol·s), or null.</param>
    public static Decision Decide(bool isStatic, Lifetimes lifetimes, int levels, double? factor, double? bimolecular)
    {
        ArgumentNullException.ThrowIfNull(lifetimes);
        double claimed = isStatic ? 0 : 1, other = 1 - claimed;
        var interval = lifetimes.Ratio.Interval(Confidence.Level);
        var ruling = !interval.Contains(claimed) ? Ruling.Contradicted : !interval.Contains(other) ? Ruling.Holds : Ruling.NotShownYet;
        var kq = bimolecular is { } k
            ? DiffusionLimit.CollisionsAlone(k) == Ruling.Contradicted
                ? $"kq = {Phrase.With(k, "L/(mol·s)")} exceeds what diffusion allows: collisions alone cannot do this."
                : $"kq = {Phrase.With(k, "L/(mol·s)")} lies below 2 × 10¹⁰ and decides nothing: with this lifetime it would whatever quenches."
            : null;
        return new Decision(
            ruling,
            $"The constant of the lifetimes is {Phrase.Number(lifetimes.Ratio.Value)} of the constant of the signals ({Phrase.Interval(interval, "")}); 1 is dynamic, 0 is static. "
                + $"z of their difference is {Phrase.Number(lifetimes.Z)}; {Phrase.Count(levels, "level")}.",
            "ratio of Stern–Volmer constants of lifetimes and signals, 95 % interval")
        {
            Numbers =
            [
                Deciding.Of("lifetime constant over signal constant", lifetimes.Ratio, Confidence.Level, ""),
                Deciding.Plain("z of the difference", lifetimes.Z),
                .. bimolecular is { } rate ? [Deciding.Plain("kq", rate, "L/(mol·s)")] : Array.Empty<Deciding>(),
                .. factor is { } f ? [Deciding.Plain("inner-filter factor", f)] : Array.Empty<Deciding>(),
            ],
            Gates =
            [
                new("levels", levels >= Limits.Levels, $"lifetimes at {Phrase.Count(levels, "level")}; {Limits.Levels} are needed"),
                new("inner filter", factor is not null, "no absorbance at excitation and emission was read, so that light lost to absorption is not ruled out"),
            ],
            Warnings = kq is null ? [] : [kq],
            Questions = factor is null or > InnerFilter.Matters
                ? [new("Q52", factor is null ? "No absorbance was read: how much of the loss is light that never arrived?" : $"The inner-filter factor reaches {Phrase.Number(factor.Value)}: how much of the loss is light that never arrived?")]
                : [],
            Next = Plan(null),
        };
    }

    private static NextExperiment Plan(double? top) => new(
        top is > 0 and { } highest
            ? $"Read lifetimes at 0, {Phrase.Number(highest / 4)} and {Phrase.With(highest / 2, SensorAmount.Unit)}, 3 vessels each, and absorbances of the same mixtures."
            : "Read lifetimes at two more levels, 3 vessels each, and absorbances of the same mixtures; or repeat at a second temperature.",
        9, top is > 0 and { } t ? ["0 µmol/L", Phrase.With(t / 4, SensorAmount.Unit), Phrase.With(t / 2, SensorAmount.Unit)] : [],
        "three levels of three vessels (common practice)");

    private static double? LargestFactor(SensorSeries series, LifetimeSeries lifetimes)
        => series.Samples.Where(s => s.Quencher <= lifetimes.Highest).Select(s => s.Factor).Concat(lifetimes.Samples.Select(s => s.Factor)).Max();
}
