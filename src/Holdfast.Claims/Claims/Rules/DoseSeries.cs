using System.Collections.Immutable;
using Holdfast.Claims.Analyses;
using Holdfast.Studies;
using Holdfast.Studies.Properties;

namespace Holdfast.Claims.Rules;

/// <summary>The series in which the dose was varied, as the two claims about doses see it.</summary>
internal static class DoseSeries
{
    /// <summary>The dose series a claim names, or the only one, or null.</summary>
    /// <param name="claim">The claim.</param>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static Series? Of(Claim claim, Evidence evidence)
        => claim.Words("series") is { } name
            ? evidence.SeriesNamed(name) is { } named && named.Varied == BatchProperties.Dose ? named : null
            : All(evidence).FirstOrDefault();

    /// <summary>Every series in which the dose was varied.</summary>
    /// <param name="evidence">The study's quantities and findings.</param>
    public static IEnumerable<Series> All(Evidence evidence) => evidence.Series.Where(s => s.Varied == BatchProperties.Dose);

    /// <summary>Index of the level at a dose, or −1: settings within 3 % are one.</summary>
    /// <param name="levels">Levels in rising order.</param>
    /// <param name="dose">The dose, g/L.</param>
    public static int IndexOf(IReadOnlyList<Setting> levels, double dose)
    {
        var nearest = Enumerable.Range(0, levels.Count).OrderBy(i => Math.Abs(levels[i].X - dose)).DefaultIfEmpty(-1).First();
        return nearest >= 0 && Tolerances.SameDose(levels[nearest].X, dose) ? nearest : -1;
    }

    /// <summary>Means in words: "49.69 % at 1 g/L".</summary>
    /// <param name="level">A level of removals in %.</param>
    public static string Mean(Setting level) => $"{Phrase.With(level.Mean, "%")} at {Phrase.With(level.X, "g/L")}";

    /// <summary>The means of all levels as deciding numbers.</summary>
    /// <param name="levels">Levels of removals in %.</param>
    public static ImmutableArray<Deciding> Means(IEnumerable<Setting> levels)
        => [.. levels.Select(l => Deciding.Plain($"removal at {Phrase.With(l.X, "g/L")}", l.Mean, "%", Phrase.Count(l.Values.Length, "vessel")))];
}
