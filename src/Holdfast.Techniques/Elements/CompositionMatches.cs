using System.Collections.Immutable;
using Holdfast.Claims;
using Holdfast.Claims.Analyses;
using Holdfast.Composition;
using Holdfast.Statistics;

namespace Holdfast.Techniques.Elements;

/// <summary>"The composition agrees with the formula": a ratio of elements lies within a margin of the formula's, the bias of the method included.</summary>
/// <remarks>
/// U = √((t·s)²/n + bias²). The margin is half the way to the next plausible formula, and never more than 10 % of the ratio. Contradicted where the interval lies outside it. Standardless X-ray analysis is taken to be known
/// to 25 % (from memory; errors from −90 to +150 % were found by D. E. Newbury, 1995), a digest to 4 % (common practice for a calibrated instrument, two standard uncertainties).
/// </remarks>
public sealed class CompositionMatches : IClaimRule
{
    /// <summary>The limits of the rule.</summary>
    public static class Limits
    {
        /// <summary>Fewest fields or spots by X-rays.</summary>
        public const int Places = AnalysedPowder.FewestPlaces;

        /// <summary>Fewest dissolved portions.</summary>
        public const int Digests = 3;

        /// <summary>Widest margin, and that where no other formula is named, as a share of the ratio; no unit.</summary>
        public const double Margin = 0.10;

        /// <summary>Expanded relative bias of standardless X-ray analysis; no unit.</summary>
        public const double XrayBias = XrayCautions.StandardlessExpanded;

        /// <summary>Expanded relative bias of a digest read against standards; no unit.</summary>
        public const double DigestBias = 0.04;
    }

    /// <inheritdoc/>
    public string Id => "composition-matches";

    /// <inheritdoc/>
    public string Wording => "{ratio} of {powder} agrees with {formula}.";

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own =>
    [
        new("ratio", "ratio of atoms", "Co/(Co+Zn)", null), new("powder", "powder, as its measurements call it", "ZC", null), new("formula", "formula", "Zn0.96Co0.04O", null),
        new("rival", "next plausible formula", "Zn0.92Co0.08O", null), new("bias", "bias of the method, relative", "4 %", "%"),
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
        var powder = ElementStudy.Of(evidence).For(claim.Words("powder"));
        var ratio = ElementRatio.Read(claim.Words("ratio")).Value;
        var expected = FormulaNamed(claim.Words("formula")) is { } formula ? ratio?.In(formula) : null;
        var rival = FormulaNamed(claim.Words("rival")) is { } other ? ratio?.In(other) : null;
        var decision = powder is null ? Decision.Missing($"There is no composition of {claim.Words("powder") ?? "the powder"}.", Dissolve("the powder"))
            : ratio is null ? Decision.NotNamed(claim, "ratio", "Co/(Co+Zn)")
            : expected is null ? Decision.NotNamed(claim, "formula", "Zn0.96Co0.04O")
            : claim.Words("rival") is not null && rival is null ? Decision.NotNamed(claim, "rival", "Zn0.92Co0.08O")
            : Decide(ratio.ToString(), [.. powder.Ratios(ratio).Select(r => r.Value.Value)], expected.Value, rival, powder.IsDissolved, !powder.IsNormalised, claim.In("bias", "%") / 100);
        return decision.On(claim, ClaimSentence.Of(claim, this), powder is null ? null : $"powder {powder.Name}, {Phrase.Count(powder.Places.Length, powder.IsDissolved ? "digest" : "place")}", powder?.Measurements.Select(m => m.Id) ?? []);
    }

    /// <summary>Judges a ratio.</summary>
    /// <param name="name">The ratio in symbols.</param>
    /// <param name="values">The ratio in each place or digest; no unit.</param>
    /// <param name="expected">The formula's; no unit.</param>
    /// <param name="rival">The next plausible formula's, or null; no unit.</param>
    /// <param name="dissolved">True for digests, false for X-rays.</param>
    /// <param name="totalKnown">True when totals before normalising are there, or do not matter.</param>
    /// <param name="bias">Expanded relative bias of the method where it is stated, or null; no unit.</param>
    public static Decision Decide(string name, IReadOnlyList<double> values, double expected, double? rival, bool dissolved, bool totalKnown, double? bias)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count < 2 || Summary.Of(values).MeanEstimate().Value is not { } mean)
        {
            return Decision.Missing(
                values.Count == 0 ? $"{name} cannot be formed: one of its elements was not measured." : $"{name} is {Phrase.Number(values[0])} in {Phrase.Count(values.Count, "place")}: how places scatter is not known.",
                Dissolve("the powder"));
        }

        var share = bias ?? (dissolved ? Limits.DigestBias : Limits.XrayBias);
        double scatter = mean.Interval().Half, systematic = share * Math.Abs(mean.Value), u = Math.Sqrt(scatter * scatter + systematic * systematic);
        double widest = Limits.Margin * Math.Abs(expected), half = rival is { } other ? Math.Abs(other - expected) / 2 : widest, margin = Math.Min(half, widest);
        var off = Math.Abs(mean.Value - expected);
        var ruling = off + u < margin ? Ruling.Holds : off - u > margin ? Ruling.Contradicted : Ruling.NotShownYet;
        var fewest = dissolved ? Limits.Digests : Limits.Places;
        return new(
            ruling,
            $"{name} is {Phrase.Number(mean.Value)} ± {Phrase.Number(u)} (95 %: scatter {Phrase.Number(scatter)}, bias of the method {Phrase.Number(systematic)}), n = {values.Count}; the formula has {Phrase.Number(expected)}, and {Phrase.Number(margin)} is the margin"
                + (half < widest ? ", half the way to the next formula." : $", {Phrase.With(100 * Limits.Margin, "%")} of it{(rival is null ? ": no other formula was named" : "")}."),
            "t-interval over places with the bias of the method, against the margin")
        {
            Numbers =
            [
                Deciding.Of(name, mean, 0.95, ""),
                new($"{name}, bias of the method included", mean.Value, mean.Value - u, mean.Value + u, "", $"95 %, n = {values.Count}") { Level = 0.95 },
                Deciding.Plain($"{name} of the formula", expected),
            ],
            Gates =
            [
                new("places", values.Count >= fewest, $"{Phrase.Count(values.Count, dissolved ? "digest" : "place")}; {Phrase.Number(fewest)} are needed"),
                new("total", dissolved || totalKnown, dissolved ? "dissolved and read against standards" : totalKnown ? "totals before normalising are known" : "every total was made 100 %: what was not looked for is hidden"),
            ],
            Questions =
            [
                .. u > margin ? [new Question("Q13", "Which other formulas fit your table equally well?")] : Array.Empty<Question>(),
                .. dissolved ? [] : new[] { new Question("Q14", "Are these spots on several grains, and would a digest of the whole powder agree?") },
            ],
            Next = Dissolve("the powder"),
        };
    }

    // "Zn0.96Co0.04O", or "Zn1-xCoxO, x = 0.04".
    internal static Formula? FormulaNamed(string? words)
    {
        if (Formula.Read(words).Value is { } plain)
            return plain;
        string[] parts = (words ?? "").Split(',', ';');
        if (VariableFormula.Read(parts[0]).Value is not { } open)
            return null;
        var values = new Dictionary<char, double>();
        foreach (var part in parts.Skip(1).Select(p => p.Split('=')).Where(p => p.Length == 2 && p[0].Trim().Length == 1))
        {
            if (Amounts.CellText.Read(part[1], Amounts.DecimalMark.Point) is Amounts.CellText.Number number)
                values[part[0].Trim()[0]] = number.Value;
        }

        return open.Variables.All(values.ContainsKey) ? open.At(values).Value : null;
    }

    private static NextExperiment Dissolve(string powder) => new(
        $"Dissolve {Phrase.Number(Limits.Digests)} portions of 20 mg from different parts of {powder} under licensed practice, with a blank, and read each element against matched standards.",
        Limits.Digests, [], "three digests at 2 % settle a difference of 5 % (common practice)");
}
