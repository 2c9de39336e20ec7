using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Statistics;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "The uptake is favourable": the isotherm bends downwards, shown by Freundlich's exponent 1/n below 1. A separation factor between
/// 0 and 1 is true for every positive K and shows nothing.
/// </summary>
/// <remarks>1/n to first order from the fitted n; one-sided 95 % bounds.</remarks>
public sealed class Favourable : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Sips exponents up to here are one kind of site to the eye; above, the isotherm bends upwards first.</summary>
        public const double LeastBend = 1.1;

        /// <summary>Confidence at which a bend upwards contradicts: one seen at 95 % forbids "holds" and no more.</summary>
        public const double Sure = 0.995;
    }

    /// <inheritdoc/>
    public string Id => "favourable";

    /// <inheritdoc/>
    public string Wording => "The uptake in {series} is favourable: the isotherm bends downwards.";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => evidence.Isotherms.Where(f => Candidates.Named(f, "Freundlich") is not null).Select(f => Claim.Raised(Id, ("series", f.Series.Name)));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => FittedIsotherm.Of(claim, evidence) is { } f ? Grounds.OfSorption(evidence, f.Series) : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var fitted = FittedIsotherm.Of(claim, evidence);
        var fit = fitted is null ? null : Candidates.Named(fitted, "Freundlich");
        var n = fit?.Parameters.FirstOrDefault(p => string.Equals(p.Symbol, "n", StringComparison.Ordinal));
        var decision = fit is null || n is not { Value: > 0, StandardError: { } se and > 0 } || fit.Nu < 1
            ? Decision.Missing("No Freundlich curve settled on an isotherm series, so its bend is not known. Run six concentrations, two vessels each.")
            : Decide(new("Freundlich exponent 1/n", 1 / n.Value, se / (n.Value * n.Value), fit.Nu, fit.N), SipsExponent.Of(fitted!), Adequacy.Of(fitted!, fit));
        var vessels = fitted?.Series.Vessels.ToArray() ?? [];
        return decision.On(
            claim, Phrase.Sentence(claim, Wording, ("series", fitted?.Series.Name ?? claim.Words("series") ?? "any series")), Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    /// <summary>Judges the bend.</summary>
    /// <param name="exponent">Freundlich's 1/n; below 1 the isotherm bends downwards; no unit.</param>
    /// <param name="sips">Exponent of the Sips curve where it settled: above 1 the isotherm bends upwards first; no unit.</param>
    /// <param name="adequacy">Whether the series can speak at all; none for plain numbers.</param>
    public static Decision Decide(Estimate exponent, Estimate? sips = null, ImmutableArray<Gate> adequacy = default)
    {
        ArgumentNullException.ThrowIfNull(exponent);
        var sigmoid = sips is not null && sips.LowerBound() > Limits.LeastBend;
        return new Decision(
            sigmoid && sips!.LowerBound(Limits.Sure) > Limits.LeastBend ? Ruling.Contradicted : IntervalRuling.Below(exponent, 1),
            $"Freundlich's 1/n is {Phrase.Number(exponent.Value)}, one-sided 95 % bounds {Phrase.Number(exponent.LowerBound())} and {Phrase.Number(exponent.UpperBound())}, n = {Phrase.Count(exponent.N, "vessel")}; an isotherm that bends downwards has less than 1."
                + (sigmoid ? $" At low concentrations it bends upwards: the Sips exponent is {Phrase.Number(sips!.Value)}, at least {Phrase.Number(sips.LowerBound())}." : ""),
            "one-sided t bound of 1/n against 1, 5 %; Sips exponent against 1")
        {
            Numbers = [Deciding.Of("Freundlich 1/n", exponent, 0.90, ""), .. sips is null ? [] : new[] { Deciding.Of("Sips exponent", sips, 0.90, "") }],
            Gates =
            [
                .. adequacy.IsDefault ? [] : adequacy,
                new("no bend upwards", !sigmoid, "the isotherm bends upwards first (S-shaped)"),
            ],
            Warnings = ["A separation factor between 0 and 1 is true by construction for every positive K: drop that sentence."],
            Questions = [new("Q33", "For which positive K would the separation factor not be favourable?")],
            Next = new("Add concentrations at both ends of the range, 3 vessels each, where the bend shows.", 6, [], "three vessels per level (common practice)"),
        };
    }
}
