using System.Collections.Immutable;

namespace Holdfast.Claims;

/// <summary>
/// Whether one curve is the best of those that were compared: ahead of each rival in every series by the distance that decides (<see cref="AiccDistance"/>), and not at odds
/// with the replicates.
/// </summary>
/// <remarks>
/// A curve with more parameters often contains the claimed one and then cannot trail it by so much, whatever the data: where no rivals are named it may lead by no more than
/// noise lets it, and it contradicts when it leads by the distance that decides. R² takes no part: on transformed axes it is not comparable, and on the same axis it never
/// counts a parameter.
/// </remarks>
internal static class ModelChoice
{
    /// <summary>The limits of the choice.</summary>
    public static class Limits
    {
        /// <summary>
        /// Units of AICc by which an unnamed rival with more parameters may lead: of several that bend to noise one does so in every fourth sound study.
        /// </summary>
        public const double WiderMayLead = 1;

        /// <summary>p of the lack-of-fit test below which a curve misses its replicates; no unit.</summary>
        public const double Misfit = Confidence.Chance;
    }

    /// <summary>Judges the choice over all series.</summary>
    /// <param name="model">Name of the curve said to be best.</param>
    /// <param name="rivals">Names of the rivals, or none for every other curve.</param>
    /// <param name="contests">What was fitted, series by series.</param>
    /// <param name="unit">Unit of the residuals, for the deciding numbers.</param>
    public static Decision Decide(string model, ImmutableArray<string> rivals, IReadOnlyList<Contest> contests, string unit)
    {
        if (contests.Count == 0)
            return Decision.Missing("No series was found to which curves could be fitted.");
        Decision[] parts = [.. contests.Select(c => One(model, rivals, c, unit))];
        var ruling = IntervalRuling.All(parts.Select(p => p.Gated));
        return new Decision(ruling, string.Join(" ", parts.Select(p => p.Reason)), "difference of AICc, lack of fit against replicates")
        {
            IsUntested = parts.All(p => p.IsUntested),
            Numbers = [.. parts.SelectMany(p => p.Numbers)],
            Gates = [.. parts.SelectMany(p => p.GatesBeside(ruling))],
            Questions = [.. parts.SelectMany(p => p.Questions).DistinctBy(q => q.Code + q.Text, StringComparer.Ordinal)],
        };
    }

    private static Decision One(string model, ImmutableArray<string> rivals, Contest contest, string unit)
    {
        var claimed = contest.Candidates.FirstOrDefault(c => c.IsCalled(model));
        if (claimed?.Aicc is not { } own)
            return Decision.Missing($"{model} could not be compared in {contest.Series}: it was not fitted, or there are too few vessels for AICc.") with { Gates = contest.Gates };
        model = claimed.Model;
        var ahead = AiccDistance.Of(claimed.N, claimed.Parameters);
        var compared = contest.Candidates
            .Where(c => c != claimed && c.Aicc is not null && Adequacy.Comparable(c.N, c.Parameters) && (rivals.IsEmpty || rivals.Any(c.IsCalled)))
            .Select(c => new Rival(c, c.Aicc!.Value - own, rivals.IsEmpty && c.Parameters > claimed.Parameters, ahead))
            .OrderBy(r => r.Spare)
            .ToArray();
        if (compared.Length == 0)
            return Decision.Missing($"Nothing was fitted to {contest.Series} that {model} could be compared with.") with { Gates = contest.Gates };

        var nearest = compared[0];
        var fits = claimed.LackOfFitP is not { } p || p >= Limits.Misfit;
        var ruling = compared.Any(r => r.Difference <= -ahead) ? Ruling.Contradicted
            : nearest.Spare >= 0 && fits ? Ruling.Holds
            : Ruling.NotShownYet;
        var shown = ruling == Ruling.Contradicted ? compared.MinBy(r => r.Difference)! : nearest;
        var wider = shown.IsWider ? ", which has more parameters," : "";
        var lead = shown.Difference >= 0 ? $"leads {shown.Curve.Model}{wider} by {Phrase.Number(shown.Difference)}" : $"trails {shown.Curve.Model}{wider} by {Phrase.Number(-shown.Difference)}";
        return new Decision(ruling, $"In {contest.Series} {model} {lead} units of AICc ({Phrase.Number(ahead)} decide){Replicates(claimed, shown.Difference >= 0)}, n = {Phrase.Count(claimed.N, "vessel")}.", "")
        {
            Numbers =
            [
                .. compared.Select(c => Deciding.Plain($"{contest.Series}: AICc({c.Curve.Model}) − AICc({model})", c.Difference)),
                .. claimed.LackOfFitP is { } lack ? [Deciding.Plain($"{contest.Series}: lack of fit of {model}, p", lack)] : Array.Empty<Deciding>(),
                .. claimed.ResidualSd is { } s ? [Deciding.Plain($"{contest.Series}: residual sd of {model}", s, unit)] : Array.Empty<Deciding>(),
            ],
            Gates =
            [
                .. contest.Gates,
                new($"points to spare in {contest.Series}", Adequacy.Comparable(claimed.N, claimed.Parameters), $"{Phrase.Number(claimed.Parameters)} parameters of {model} meet {Phrase.Number(claimed.N)} points in {contest.Series}; {Phrase.Number(claimed.Parameters + Adequacy.Limits.PointsBeyondParameters)} are needed") { Silences = true },
            ],
            Questions = [.. Questions(model, claimed, nearest, contest)],
        };
    }

    private static string Replicates(Candidate claimed, bool leads) => claimed.LackOfFitP switch
    {
        null => "; without replicates at one setting its lack of fit is not known",
        < Limits.Misfit and var p => $"{(leads ? ", yet" : " and")} misses the replicates (lack of fit {Phrase.P(p)})",
        var p => $"{(leads ? " and" : ", though it")} agrees with the replicates (lack of fit {Phrase.P(p!.Value)})",
    };

    private static IEnumerable<Question> Questions(string model, Candidate claimed, Rival nearest, Contest contest)
    {
        if (claimed.LackOfFitP is { } p && p < Limits.Misfit)
            yield return new("Q23", $"In {contest.Series} {model} is still wrong at {Phrase.P(p)}: what does its constant mean?");
        if (Math.Abs(nearest.Difference) < nearest.Ahead)
            yield return new("Q29", $"With {model} and {nearest.Curve.Model} {Phrase.Number(Math.Abs(nearest.Difference))} units of AICc apart, what conclusion of yours depends on the choice?");
        var most = contest.Candidates.Where(c => c.N - c.Parameters < 3).MaxBy(c => c.Parameters);
        if (most is not null)
            yield return new("Q30", $"{Phrase.Number(most.Parameters)} parameters of {most.Model} and {Phrase.Number(most.N)} points: what would random numbers give?");
    }

    /// <summary>A rival and how far behind it is.</summary>
    /// <param name="Curve">The rival.</param>
    /// <param name="Difference">Its AICc less that of the claimed curve.</param>
    /// <param name="IsWider">True for an unnamed rival with more parameters.</param>
    /// <param name="Ahead">Units of AICc that decide.</param>
    private sealed record Rival(Candidate Curve, double Difference, bool IsWider, double Ahead)
    {
        /// <summary>What is left of the difference after what it must be.</summary>
        public double Spare => Difference - (IsWider ? -Limits.WiderMayLead : Ahead);
    }
}
