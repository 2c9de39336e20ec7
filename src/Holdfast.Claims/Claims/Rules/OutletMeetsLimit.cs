using System.Collections.Immutable;
using Holdfast.Amounts;
using Holdfast.Claims.Analyses;
using Holdfast.Claims.NextExperiments;
using Holdfast.Statistics;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>
/// "The outlet stays below the limit": of a bed until a time, or of one stirred stage with a dose. A bed is judged by the time at which its outlet reached
/// the limit, a stage by what the isotherm and the mass balance leave.
/// </summary>
/// <remarks>One-sided 95 % bounds. A stage stays a prediction until the water itself was treated: another water than the isotherm's cannot hold.</remarks>
public sealed class OutletMeetsLimit : IClaimRule
{
    /// <summary>The limits of the rule: its sentences print from here, and samples on both sides of each are tested.</summary>
    public static class Limits
    {
        /// <summary>Fewest beds run alike.</summary>
        public const int Beds = 2;

        /// <summary>Difference of flow up to which two beds are run alike, as a share; no unit.</summary>
        public const double SameRun = 0.05;
    }

    /// <inheritdoc/>
    public string Id => "outlet-meets-limit";

    /// <inheritdoc/>
    public string Wording => "The outlet of {what} stays below {limit}.";

    /// <inheritdoc/>
    public ImmutableArray<string> AlsoReads => ["time", "run", "dose", "c0", "isotherm", "series", "water"];

    /// <inheritdoc/>
    public ImmutableArray<ClaimParameter> Own => [new("limit", "limit, or the name of a listed one", "0.020 mg/L", null)];

    /// <inheritdoc/>
    public IEnumerable<Claim> Invited(Evidence evidence) => [];

    /// <inheritdoc/>
    public IEnumerable<Claim> StandsOn(Claim claim, Evidence evidence)
        => claim.In("dose", "g/L") is not null && StagePlans.Isotherm(evidence, claim.Words("isotherm")) is { } chosen
            ? Grounds.OfSorption(evidence, chosen.Series.Series).Concat(Grounds.OfEquilibrium(evidence, chosen.Series.Series))
                .Concat(Grounds.OfStability(evidence, chosen.Series.Series.Vessels))
            : [];

    /// <inheritdoc/>
    public Verdict Judge(Claim claim, Evidence evidence)
    {
        ArgumentNullException.ThrowIfNull(claim);
        ArgumentNullException.ThrowIfNull(evidence);
        var what = claim.In("time", "min") is { } t ? $"{claim.Words("run") ?? "the bed"} until {Phrase.With(t, "min")}"
            : claim.In("dose", "g/L") is { } d ? $"one stage with {Phrase.With(d, "g/L")}" : "the treatment";
        var sentence = Phrase.Sentence(claim, Wording, ("what", what), ("limit", claim.Words("limit") ?? "the limit"));
        var (named, _, unclear) = MeetsLimit.LimitOf(claim, evidence.Study.Analyte ?? "");
        if (named is not { } limit)
            return (unclear ?? Decision.NotNamed(claim, "limit", "0.020 mg/L")).On(claim, sentence, null, []);
        foreach (var (name, unit, example) in new[] { ("time", "min", "240 min"), ("dose", "g/L", "2 g/L") })
        {
            if (claim.Words(name) is not null && claim.In(name, unit) is not > 0)
                return Decision.NotNamed(claim, name, example).On(claim, sentence, null, []);
        }

        return claim.In("time", "min") is { } until ? Bed(claim, evidence, sentence, limit, until)
            : claim.In("dose", "g/L") is { } dose ? Stage(claim, evidence, sentence, limit, dose)
            : Decision.Missing("The claim names neither a time of a bed (“time”) nor a dose of a stage (“dose”).").On(claim, sentence, null, []);
    }

    /// <summary>Judges a bed by the time at which its outlet reached the limit.</summary>
    /// <param name="reached">That time in min for each bed packed anew, with its uncertainty.</param>
    /// <param name="until">Time claimed, min.</param>
    public static Decision DecideBed(Setting reached, double until)
    {
        ArgumentNullException.ThrowIfNull(reached);
        if (LargerUncertainty.Mean(reached) is not { } time)
            return Decision.Missing("The outlet concentrations came without an uncertainty and from one bed: the time at which they reach the limit has no interval.", Packed(Replication.WithoutPilot));
        var n = reached.Values.Length;
        return new Decision(
            IntervalRuling.Above(time, until),
            $"The outlet reaches the limit after {Phrase.With(time.Value, "min")}, one-sided 95 % bounds {Phrase.Number(time.LowerBound())} and {Phrase.With(time.UpperBound(), "min")}, n = {Phrase.Count(n, "bed")}; {Phrase.With(until, "min")} is claimed.",
            "one-sided t bound of the service time, straight interpolation")
        {
            Numbers = [Deciding.Of("time at which the outlet reaches the limit", time, 0.90, "min"), Deciding.Plain("time claimed", until, "min")],
            Gates = [new("beds", n >= Limits.Beds, $"{Phrase.Count(n, "bed")} of this depth, flow and inlet; {Limits.Beds} packed anew are needed")],
            Next = Packed(Replication.AgainstLimit(time.Value - until, time.StandardError * Math.Sqrt(n), time.DegreesOfFreedom)),
        };
    }

    /// <summary>Judges a stage by what the isotherm leaves.</summary>
    /// <param name="left">Concentration left, mg/L, with the uncertainty of the isotherm and of the inlet.</param>
    /// <param name="limit">The limit, mg/L.</param>
    /// <param name="lowest">Lowest concentration that the isotherm was measured at, mg/L.</param>
    /// <param name="sameWater">True when the isotherm was measured in the water that is to be treated.</param>
    public static Decision DecideStage(Measured left, double limit, double lowest, bool sameWater)
    {
        if (!(left.U > 0))
            return Decision.Missing("The isotherm has no uncertainty, so that nothing can be said of what it leaves.");
        var found = new Estimate("isotherm and mass balance", left.Value, left.U, Math.Max(1, left.DegreesOfFreedom), 1);
        return new Decision(
            IntervalRuling.Below(found, limit),
            $"The isotherm leaves {Phrase.With(left.Value, "mg/L")}, one-sided 95 % bounds {Phrase.Number(found.LowerBound())} and {Phrase.With(found.UpperBound(), "mg/L")}; the limit is {Phrase.With(limit, "mg/L")}.",
            "one-sided bound of the predicted concentration, covariance of the isotherm propagated")
        {
            Numbers = [Deciding.Of("concentration left by one stage", found, 0.90, "mg/L"), Deciding.Plain("limit", limit, "mg/L")],
            Gates =
            [
                new("within the data", left.Value >= lowest, $"{Phrase.With(left.Value, "mg/L")} is left; the isotherm was measured from {Phrase.With(lowest, "mg/L")}"),
                new("same water", sameWater, sameWater ? "the isotherm was measured in this water" : "the isotherm was measured in another water, and nothing of this water's rivals and ligands is in it"),
            ],
            Next = new("Treat three portions of the water itself with this dose, with sorbent-free controls.", 3, [Phrase.With(limit, "mg/L")], "three separate vessels, the least that show a scatter (common practice)"),
        };
    }

    private static Verdict Bed(Claim claim, Evidence evidence, string sentence, double limit, double until)
    {
        var runs = ColumnStudy.Of(evidence).Runs;
        var named = claim.Words("run") is { } name ? runs.FirstOrDefault(r => string.Equals(r.Name, name, StringComparison.OrdinalIgnoreCase)) : runs.FirstOrDefault();
        if (named is null)
            return Decision.Missing("No run through a bed is recorded.", Packed(Replication.WithoutPilot)).On(claim, sentence, null, []);
        var alike = runs.Where(r => r.Depth == named.Depth && r.Inlet.Equals(named.Inlet) && Math.Abs((r.Flow ?? 0) - (named.Flow ?? 0)) <= Limits.SameRun * (named.Flow ?? 0)).ToArray();
        var reached = alike.Select(r => (Run: r, Time: r.TimeTo(limit))).Where(r => r.Time is not null).ToArray();
        var decision = limit >= named.Inlet ? Decision.Missing($"The limit lies above the inlet of {Phrase.With(named.Inlet, "mg/L")}: nothing needs to be removed.")
            : reached.Length == 0 ? Decision.Missing($"The outlet of {named.Name} never reached {Phrase.With(limit, "mg/L")} within {Phrase.With(named.Points[^1].Time, "min")}: run it longer to know the time.", Packed(Replication.WithoutPilot))
            : DecideBed(new(0, [.. reached.Select(r => r.Time!.Value.Value)]) { Propagated = [.. reached.Select(r => r.Time!.Value)] }, until);
        var scope = $"bed {(named.Depth is { } z ? Phrase.With(z, "cm") : "of unknown depth")}, flow {(named.Flow is { } q ? Phrase.With(q, "mL/min") : "not recorded")}, inlet {Phrase.With(named.Inlet, "mg/L")}; {Phrase.Count(reached.Length, "bed")}";
        return decision.On(claim, sentence, scope, alike.SelectMany(r => r.Points.Select(p => p.Sample.Code)));
    }

    private static Verdict Stage(Claim claim, Evidence evidence, string sentence, double limit, double dose)
    {
        if (StagePlans.Isotherm(evidence, claim.Words("isotherm")) is not { } chosen)
            return Decision.Missing("No isotherm with uncertainties was fitted: what a dose leaves cannot be predicted.").On(claim, sentence, null, []);
        var vessels = evidence.SeriesNamed(claim.Words("series"))?.Vessels.ToArray() ?? [];
        var inlet = claim.In("c0", "mg/L") ?? vessels.Select(v => v.Start?.Value).FirstOrDefault(c => c is > 0);
        if (inlet is not { } c0 || c0 <= 0)
            return Decision.NotNamed(claim, "c0", "6.8 mg/L").On(claim, sentence, null, []);
        var isotherm = chosen.Series.Series.Vessels.ToArray();
        var water = claim.Words("water") ?? vessels.Select(v => v.Sample.Words(SampleProperties.Matrix)).FirstOrDefault();
        var same = water is not null && isotherm.All(v => string.Equals(v.Sample.Words(SampleProperties.Matrix), water, StringComparison.OrdinalIgnoreCase));
        Measured[] p = [.. chosen.Fit.MeasuredParameters("isotherm:" + chosen.Series.Series.Name, chosen.Fit.Card.Name)];
        var left = chosen.Fit.Model!.ConcentrationLeft(c0, dose, p);
        return DecideStage(left, limit, StagePlans.Measured(chosen.Fit).Lowest, same).On(claim, sentence, Scope.Of(isotherm), isotherm.Select(v => v.Code));
    }

    private static NextExperiment Packed(Replication size) => new(
        $"Pack {Phrase.Count(Math.Max(size.N, Limits.Beds), "bed")} anew at this depth and flow and follow the outlet until it is past the limit.",
        null, [Phrase.Count(Math.Max(size.N, Limits.Beds), "bed")], size.Basis);
}
