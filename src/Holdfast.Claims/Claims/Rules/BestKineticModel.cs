using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Kinetics;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "{model} describes the uptake best": ahead of every rival in every series, at peace with the replicates, and with readings where the
/// curves differ. Points near equilibrium favour the second-order form whatever the kinetics, so early points are asked for.
/// </summary>
/// <remarks>
/// Gates: four times below 85 % of the fitted uptake at equilibrium (J.-P. Simonin, Chem. Eng. J. 300 (2016), from memory); three readings on the
/// rise for a rate constant; the plateau measured, not extrapolated, by every curve within 2 units of the best.
/// </remarks>
public sealed class BestKineticModel : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest times below the early share of the final uptake.</summary>
        public const int EarlyTimes = 4;

        /// <summary>Share of the final uptake below which a time tells curves apart; no unit.</summary>
        public const double EarlyShare = 0.85;

        /// <summary>Fewest times between 10 and 80 % of the final uptake for a rate constant.</summary>
        public const int RisingTimes = 3;

        /// <summary>Smallest share of a curve's plateau that the last uptake reaches when the plateau was measured; no unit.</summary>
        public const double Measured = 0.95;

        /// <summary>Units of AICc within which curves are not told apart.</summary>
        public const double Equivalent = 2;
    }

    /// <inheritdoc/>
    public string Id => "best-kinetic-model";

    /// <inheritdoc/>
    public string Wording => "{model} describes the uptake in {series} best.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["rival"];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence)
        => from fitted in evidence.Kinetics
           let best = Candidates.Simplest(fitted)
           where best is not null
           select Claim.Raised(Id, ("series", fitted.Series.Name), ("model", best.Model));

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => FittedOf(claim, evidence).SelectMany(f => Grounds.OfSorption(evidence, f.Series));

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var fitted = FittedOf(claim, evidence);
        var vessels = fitted.SelectMany(f => f.Series.Vessels).ToArray();
        var sentence = Phrase.Sentence(
            claim, Wording, ("model", claim.Words("model") ?? "The model"),
            ("series", fitted.Length == 0 ? claim.Words("series") ?? "any series" : Phrase.Listed(fitted.Select(f => f.Series.Name))));
        var decision = claim.Words("model") is not { } model
            ? Decision.NotNamed(claim, "model", "pseudo-second-order")
            : Decide(model, Rivals.Of(claim), [.. fitted.Select(f => (f.Series.Name, Candidates.Of(f), Setting.Of(f.Series, v => v.Uptake), Adequacy.Of(f, Candidates.Named(f, model))))]);
        return decision.On(claim, sentence, Scope.Of(vessels), vessels.Select(v => v.Code));
    }

    /// <summary>Judges the choice of a curve.</summary>
    /// <param name="model">Name of the curve said to be best.</param>
    /// <param name="rivals">Names of its rivals, or none for every other curve.</param>
    /// <param name="series">Name, fitted curves, uptakes in mg/g at each contact time in min, in rising order, and whether the series can speak at all.</param>
    public static Decision Decide(
        string model, ImmutableArray<string> rivals, IReadOnlyList<(string Name, ImmutableArray<Candidate> Candidates, ImmutableArray<Setting> Levels, ImmutableArray<Gate> Adequacy)> series)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(series);
        Contest[] contests = [.. series.Select(s => new Contest(s.Name, s.Candidates, [.. s.Adequacy, .. Gates(model, s.Name, s.Candidates, s.Levels)]))];
        var few = series.Where(s => Plateau(model, s.Candidates, s.Levels) is { } qe && Early(s.Levels, qe) < Limits.EarlyTimes).ToArray();
        var decision = ModelChoice.Decide(model, rivals, contests, "mg/g");
        return decision with
        {
            Questions =
            [
                .. decision.Questions,
                .. few.Select(s => new Question("Q24", $"How many of your {s.Levels.Length} times in {s.Name} distinguish the models at all? {Phrase.Number(Early(s.Levels, Plateau(model, s.Candidates, s.Levels)!.Value))} lie below {Phrase.Number(100 * Limits.EarlyShare)} % of the final uptake.")),
            ],
            Next = series.Count == 0 ? null : TellingTimes.For(series[0].Levels),
        };
    }

    private static IEnumerable<Gate> Gates(string model, string name, ImmutableArray<Candidate> candidates, ImmutableArray<Setting> levels)
    {
        if (Plateau(model, candidates, levels) is not { } qe || levels.IsEmpty)
            yield break;
        var early = Early(levels, qe);
        yield return new($"early times in {name}", early >= Limits.EarlyTimes, $"{Phrase.Count(early, "time")} in {name} lie below {Phrase.Number(100 * Limits.EarlyShare)} % of the final uptake; {Limits.EarlyTimes} are needed");
        var rising = RisingPoints.Count([.. levels.Select(l => l.Mean)], qe);
        yield return new($"times on the rise in {name}", rising >= Limits.RisingTimes, $"{Phrase.Count(rising, "time")} in {name} lie between 10 and 80 % of the final uptake; a rate constant needs {Limits.RisingTimes}");
        var best = candidates.Min(c => c.Aicc);
        Candidate[] equal = [.. candidates.Where(c => c.Aicc <= best + Limits.Equivalent)];
        var shares = equal.Where(c => c.Plateau is > 0).Select(c => levels[^1].Mean / c.Plateau!.Value).DefaultIfEmpty(0).Min();
        yield return new(
            $"plateau measured in {name}",
            shares >= Limits.Measured && equal.All(c => c.Plateau is not null),
            $"the last uptake in {name} reaches {Phrase.With(100 * shares, "%")} of the plateau of a curve within {Phrase.Number(Limits.Equivalent)} AICc units of the best; {Phrase.With(100 * Limits.Measured, "%")} are needed");
    }

    /// <summary>The uptake at equilibrium by the claimed curve, or the highest mean where it has none.</summary>
    private static double? Plateau(string model, ImmutableArray<Candidate> candidates, ImmutableArray<Setting> levels)
        => candidates.FirstOrDefault(c => c.IsCalled(model))?.Plateau is { } qe and > 0 ? qe
            : levels.IsEmpty || levels.Max(l => l.Mean) <= 0 ? null
            : levels.Max(l => l.Mean);

    private static int Early(ImmutableArray<Setting> levels, double qe) => levels.Count(l => l.X > 0 && l.Mean < Limits.EarlyShare * qe);

    private static ImmutableArray<FittedSeries> FittedOf(Claim claim, Evidence evidence)
        => [.. evidence.Kinetics.Where(f => claim.Words("series") is not { } name || string.Equals(f.Series.Name, name, StringComparison.OrdinalIgnoreCase))];
}
