using System.Collections.Immutable;

namespace Holdfast.Claims;

/// <summary>
/// Whether one curve is the best of those that were compared: ahead of each rival by 4 units of AICc in every series, and not at odds with
/// the replicates. A difference of 4 is where a rival begins to have considerably less support (Burnham and Anderson).
/// </summary>
/// <remarks>R² takes no part: on transformed axes it is not comparable, and on the same axis it never counts a parameter.</remarks>
internal static class ModelChoice
{
    private const double Ahead = 4;
    private const double Misfit = 0.05;

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
        return new Decision(IntervalRuling.All(parts.Select(p => p.Ruling)), string.Join(" ", parts.Select(p => p.Reason)), "difference of AICc, lack of fit against replicates")
        {
            Numbers = [.. parts.SelectMany(p => p.Numbers)],
            Gates = [.. parts.SelectMany(p => p.Gates)],
            Questions = [.. parts.SelectMany(p => p.Questions).DistinctBy(q => q.Code + q.Text, StringComparer.Ordinal)],
        };
    }

    private static Decision One(string model, ImmutableArray<string> rivals, Contest contest, string unit)
    {
        var claimed = contest.Candidates.FirstOrDefault(c => Same(c.Model, model));
        if (claimed?.Aicc is not { } own)
            return Decision.Missing($"{model} could not be compared in {contest.Series}: it was not fitted, or there are too few vessels for AICc.") with { Gates = contest.Gates };
        var compared = contest.Candidates
            .Where(c => !Same(c.Model, model) && c.Aicc is not null && (rivals.IsEmpty || rivals.Any(r => Same(c.Model, r))))
            .Select(c => (Rival: c, Difference: c.Aicc!.Value - own))
            .OrderBy(c => c.Difference)
            .ToArray();
        if (compared.Length == 0)
            return Decision.Missing($"Nothing was fitted to {contest.Series} that {model} could be compared with.") with { Gates = contest.Gates };

        var (rival, difference) = compared[0];
        var fits = claimed.LackOfFitP is not { } p || p >= Misfit;
        var ruling = difference <= -Ahead ? Ruling.Contradicted : difference >= Ahead && fits ? Ruling.Holds : Ruling.NotShownYet;
        var lead = difference >= 0 ? $"leads {rival.Model} by {Phrase.Number(difference)}" : $"trails {rival.Model} by {Phrase.Number(-difference)}";
        return new Decision(ruling, $"In {contest.Series} {model} {lead} units of AICc ({Phrase.Number(Ahead)} decide){Replicates(claimed)}, n = {Phrase.Count(claimed.N, "vessel")}.", "")
        {
            Numbers =
            [
                .. compared.Select(c => Deciding.Plain($"{contest.Series}: AICc({c.Rival.Model}) − AICc({model})", c.Difference)),
                .. claimed.LackOfFitP is { } lack ? [Deciding.Plain($"{contest.Series}: lack of fit of {model}, p", lack)] : Array.Empty<Deciding>(),
                .. claimed.ResidualSd is { } s ? [Deciding.Plain($"{contest.Series}: residual sd of {model}", s, unit)] : Array.Empty<Deciding>(),
            ],
            Gates =
            [
                .. contest.Gates,
                new($"points to spare in {contest.Series}", claimed.N - claimed.Parameters >= 3, $"{Phrase.Number(claimed.Parameters)} parameters of {model} meet {Phrase.Number(claimed.N)} points in {contest.Series}"),
            ],
            Questions = [.. Questions(model, claimed, compared[0], contest)],
        };
    }

    private static string Replicates(Candidate claimed) => claimed.LackOfFitP switch
    {
        null => "; without replicates at one setting its lack of fit is not known",
        < Misfit and var p => $", yet misses the replicates (lack of fit {Phrase.P(p)})",
        var p => $" and agrees with the replicates (lack of fit {Phrase.P(p!.Value)})",
    };

    private static IEnumerable<Question> Questions(string model, Candidate claimed, (Candidate Rival, double Difference) nearest, Contest contest)
    {
        if (claimed.LackOfFitP is { } p && p < Misfit)
            yield return new("Q23", $"In {contest.Series} {model} is still wrong at {Phrase.P(p)}: what does its constant mean?");
        if (Math.Abs(nearest.Difference) < Ahead)
            yield return new("Q29", $"With {model} and {nearest.Rival.Model} {Phrase.Number(Math.Abs(nearest.Difference))} units of AICc apart, what conclusion of yours depends on the choice?");
        var most = contest.Candidates.Where(c => c.N - c.Parameters < 3).MaxBy(c => c.Parameters);
        if (most is not null)
            yield return new("Q30", $"{Phrase.Number(most.Parameters)} parameters of {most.Model} and {Phrase.Number(most.N)} points: what would random numbers give?");
    }

    /// <summary>Whether two names mean one curve: letters and digits alone count, so "pseudo second order" is "Pseudo-second-order".</summary>
    /// <param name="a">A name.</param>
    /// <param name="b">Another.</param>
    public static bool Same(string a, string b) => Plain(a).Equals(Plain(b), StringComparison.OrdinalIgnoreCase);

    private static string Plain(string name) => string.Concat(name.Where(char.IsLetterOrDigit));
}
