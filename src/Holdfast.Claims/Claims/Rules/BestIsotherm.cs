using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;

namespace Holdfast.Claims.Rules;

/// <summary>"{model} is the best isotherm": ahead of every rival by 4 units of AICc, with enough levels to carry the choice.</summary>
/// <remarks>Curves are compared on the same uptakes with the same weights; the error variance counts as a parameter.</remarks>
public sealed class BestIsotherm : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest levels.</summary>
        public const int Levels = 6;
    }

    /// <inheritdoc/>
    public string Id => "best-isotherm";

    /// <inheritdoc/>
    public string Wording => "{model} is the best isotherm for {series}.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["rival"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => from fitted in evidence.Isotherms
           let best = Candidates.Simplest(fitted)
           where best is not null
           select Claim.Raised(Id, ("series", fitted.Series.Name), ("model", best.Model));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => FittedIsotherm.Of(claim, evidence) is { } f ? Grounds.OfSorption(evidence, f.Series).Concat(Grounds.OfEquilibrium(evidence, f.Series)) : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var fitted = FittedIsotherm.Of(claim, evidence);
        var sentence = Phrase.Sentence(claim, Wording, ("model", claim.Words("model") ?? "The model"), ("series", fitted?.Series.Name ?? claim.Words("series") ?? "any series"));
        var decision = fitted is null ? Decision.Missing("No series with several start concentrations was fitted. Run six concentrations, two vessels each.")
            : claim.Words("model") is not { } model ? Decision.NotNamed(claim, "model", "Langmuir")
            : Decide(model, Rivals.Of(claim), fitted.Series.Name, Candidates.Of(fitted), fitted.Series.Levels.Length, Adequacy.Of(fitted, Candidates.Named(fitted, model))) with { Next = TellingConcentrations.For(fitted) };
        var vessels = fitted?.Series.Vessels.ToArray() ?? [];
        return decision.On(claim, sentence, Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    /// <summary>Judges the choice of an isotherm.</summary>
    /// <param name="model">Name of the isotherm said to be best.</param>
    /// <param name="rivals">Names of its rivals, or none for every other one.</param>
    /// <param name="series">Name of the series.</param>
    /// <param name="candidates">What was fitted to it.</param>
    /// <param name="levels">How many start concentrations it has.</param>
    /// <param name="adequacy">Whether the series can speak at all; none for plain numbers.</param>
    public static Decision Decide(string model, ImmutableArray<string> rivals, string series, ImmutableArray<Candidate> candidates, int levels, ImmutableArray<Gate> adequacy = default)
    {
        ArgumentNullException.ThrowIfNull(model);
        var gate = new Gate("concentrations", levels >= Limits.Levels, $"{series} has {Phrase.Count(levels, "concentration")}; {Limits.Levels} are needed");
        return ModelChoice.Decide(model, rivals, [new(series, candidates, [.. adequacy.IsDefault ? [] : adequacy, gate])], "mg/g");
    }
}
