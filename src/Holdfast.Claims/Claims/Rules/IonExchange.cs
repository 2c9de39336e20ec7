using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Competition;

namespace Holdfast.Claims.Rules;

/// <summary>"Uptake is exchange at ratio r": the slope of ion released on metal sorbed, by amount, lies within 10 % of r.</summary>
/// <remarks>
/// Line with errors in both after D. York and co-workers, two one-sided tests on its slope. Released amounts are less what the sorbent gives without the
/// metal: without that control dissolution is in the slope.
/// </remarks>
public sealed class IonExchange : IClaimRule
{
    /// <inheritdoc/>
    public string Id => "ion-exchange";

    /// <inheritdoc/>
    public string Wording => "Uptake is exchange for {ion} at {ratio} for one.";

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => ExchangeStudy.Of(evidence).Ions.Where(i => i.Loadings > 1).Select(i => Claim.Raised(Id, ("ion", i.Ion), ("ratio", "1")));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
    {
        if (IonOf(claim, evidence) is not { } ion)
            return [];
        Vessel[] vessels = [.. ion.Points.Select(p => p.Vessel)];
        return evidence.Series.Where(s => s.Vessels.Intersect(vessels).Any()).SelectMany(s => Grounds.OfSorption(evidence, s)).DistinctBy(c => c.Id, StringComparer.Ordinal)
            .Concat(Grounds.OfStability(evidence, vessels));
    }

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var ion = IonOf(claim, evidence);
        var ratio = claim.Number("ratio") ?? 1;
        var sentence = Phrase.Sentence(claim, Wording, ("ion", ion?.Ion ?? claim.Words("ion") ?? "an ion"), ("ratio", Phrase.Number(ratio)));
        var margin = FixedMargin.Of(evidence, MarginKind.ExchangeRatio);
        var decision = ion is null
                ? Decision.Missing("No released ion is recorded beside the uptake of the same vessels.", Loadings(Replication.WithoutPilot), new Question("Q66", "Which ion balances the charge?"))
            : !(ratio > 0) ? Decision.NotNamed(claim, "ratio", "1")
            : Decide(ion.Ratio, ion.Loadings, ion.Control.Length, ion.ControlAtEndPh, ratio, margin.Low / 100, margin.High / 100);
        var vessels = ion?.Points.Select(p => p.Vessel).ToArray() ?? [];
        return (decision with { Warnings = [.. decision.Warnings, .. margin.Notes] }).On(
            claim, sentence, Scope.Of(vessels), vessels.Select(v => v.Code).Concat(ion?.Control.Select(c => c.Code) ?? []));
    }

    /// <summary>Judges a slope.</summary>
    /// <param name="found">Slope of released on sorbed, or null.</param>
    /// <param name="loadings">How many different loadings.</param>
    /// <param name="controls">How many sorbent-only samples were subtracted.</param>
    /// <param name="atEndPh">True when those were at the end pH of the vessels.</param>
    /// <param name="ratio">Ratio claimed; no unit.</param>
    /// <param name="low">Lower end of the margin as a share of the ratio (−0.10); no unit.</param>
    /// <param name="high">Upper end of the margin as a share of the ratio (0.10); no unit.</param>
    public static Decision Decide(ExchangeRatio? found, int loadings, int controls, bool atEndPh, double ratio, double low, double high)
    {
        if (found is null)
            return Decision.Missing("Released and sorbed amounts at two loadings or more are needed for a ratio.", Loadings(Replication.WithoutPilot));
        var slope = found.Slope;
        var size = Replication.EquivalenceToTarget(
            Math.Max(Math.Min(ratio * (1 + high) - slope.Value, slope.Value - ratio * (1 + low)), 0.02 * ratio), slope.StandardError * Math.Sqrt(slope.N), slope.DegreesOfFreedom);
        return new Decision(
            IntervalRuling.Within(slope, ratio * (1 + low), ratio * (1 + high)),
            $"Released per sorbed is {Phrase.Number(slope.Value)}, {Phrase.Interval(slope.Interval(0.90), "")}, n = {Phrase.Count(slope.N, "vessel")} at {Phrase.Count(loadings, "loading")}; "
                + $"{Phrase.Span(ratio * (1 + low), ratio * (1 + high), "")} would be exchange at {Phrase.Number(ratio)}. Released at nothing sorbed: {Phrase.With(found.Intercept, "mmol/g")}.",
            "line with errors in both, two one-sided tests on its slope")
        {
            Numbers =
            [
                Deciding.Of("released per sorbed", slope, 0.90, ""),
                Deciding.Of("released per sorbed, 95 %", slope, Confidence.Level, ""),
                Deciding.Plain("released at nothing sorbed", found.Intercept, "mmol/g", $"standard error {Phrase.Number(found.InterceptError)}"),
            ],
            Gates =
            [
                new("loadings", loadings >= ExchangeRatio.EnoughLoadings, $"{Phrase.Count(loadings, "loading")}; {ExchangeRatio.EnoughLoadings} are needed"),
                new("sorbent-only control", controls > 0 && atEndPh, controls == 0 ? "no sorbent-only control at this pH was subtracted"
                    : atEndPh ? "sorbent-only control at the end pH" : "the sorbent-only control was at the start pH of the vessels, its end pH is not recorded"),
            ],
            Questions =
            [
                .. controls == 0 ? [new Question("Q65", "How much of the ion dissolves without the metal?")] : Array.Empty<Question>(),
                .. Math.Abs(slope.Value - 1) > 2 * slope.StandardError ? [new Question("Q66", $"{Phrase.Number(slope.Value)} for one: which ion balances the rest of the charge?")] : Array.Empty<Question>(),
            ],
            Next = Loadings(size),
        };
    }

    private static NextExperiment Loadings(Replication size) => new(
        $"Measure released ion, metal and pH at {ExchangeRatio.EnoughLoadings} loadings with 3 vessels each, beside 3 sorbent-only vessels at the same end pH.",
        3 * ExchangeRatio.EnoughLoadings + 3, [Phrase.Count(ExchangeRatio.EnoughLoadings, "loading"), "sorbent only"], size.Basis);

    private static ExchangedIon? IonOf(Claim claim, Evidence evidence)
    {
        var ions = ExchangeStudy.Of(evidence).Ions;
        return claim.Words("ion") is { } name ? ions.FirstOrDefault(i => string.Equals(i.Ion, name, StringComparison.OrdinalIgnoreCase)) : ions.FirstOrDefault();
    }
}
