using System.Collections.Immutable;
using Holdfast.Claims.NextExperiments;
using Holdfast.Statistics;
using Holdfast.Studies;

namespace Holdfast.Claims.Comparisons;

/// <summary>Two uptakes at one point, and whether either is better than the other by more than the margin.</summary>
/// <param name="First">The one named first.</param>
/// <param name="Second">The other.</param>
/// <param name="Margin">By how much more an uptake must be to count as better, as a share of the other; no unit.</param>
public sealed record ComparedPair(ComparedUptake First, ComparedUptake Second, double Margin)
{
    /// <summary>
    /// Level of a verdict: the chance that any verdict of the whole comparison is wrong stays below it where uncertainties are right (two-sided t, Holm over all statements).
    /// </summary>
    public const double Level = Confidence.Chance;

    /// <summary>First less second, mg/g; null when an uncertainty is not known.</summary>
    public Estimate? Difference { get; } = Estimated(First, Second, 0);

    /// <summary>What differs, or is not known, of the conditions: the pair is not like for like. Empty when they agree within the house's tolerances.</summary>
    public ImmutableArray<string> Unlike { get; } = [.. Differences(First, Second)];

    /// <summary>True when conditions agree and both uncertainties are known.</summary>
    public bool IsComparable => Unlike.IsEmpty && Difference is not null;

    /// <summary>"The first is better than the second by more than the margin."</summary>
    public Ruling FirstBetter { get; init; } = Ruling.NotShownYet;

    /// <summary>"The second is better than the first by more than the margin."</summary>
    public Ruling SecondBetter { get; init; } = Ruling.NotShownYet;

    /// <summary>Probabilities of the two statements after Holm's adjustment, first and second; null when the pair does not compare.</summary>
    public (double First, double Second)? P { get; init; }

    /// <summary>Why, in words.</summary>
    public string Reason
        => !Unlike.IsEmpty ? $"Not like for like: {Phrase.Listed(Unlike)}."
            : Difference is not { } d ? $"The uncertainty of {Phrase.Listed(new[] { First, Second }.Where(c => c.U is null).Select(c => c.Name))} is not known."
            : $"Difference {Phrase.With(d.Value, "mg/g")}, {Phrase.Interval(d.Interval(), "mg/g")}; margin {Phrase.With(100 * Margin, "%")} of the other.";

    /// <summary>The smallest experiment that settles which is better; null when both statements are decided.</summary>
    public NextExperiment? Next => FirstBetter != Ruling.NotShownYet && SecondBetter != Ruling.NotShownYet ? null : Settling();

    /// <summary>How far the first lies beyond the margin over the second, mg/g, on both sides' uncertainty; null when one is not known.</summary>
    internal static Estimate? Estimated(ComparedUptake first, ComparedUptake second, double margin)
    {
        if (first.U is null || second.U is null)
            return null;
        var beyond = first.Measured - (1 + margin) * second.Measured;
        return new("difference of two uptakes", beyond.Value, beyond.U, beyond.DegreesOfFreedom, first.At.Vessels + second.At.Vessels);
    }

    private static IEnumerable<string> Differences(ComparedUptake a, ComparedUptake b)
    {
        // The pH of contact where both know it, else that of the start where both know it.
        var (one, other) = a.At.EndPh is { } && b.At.EndPh is { } ? (a.At.EndPh, b.At.EndPh)
            : a.At.StartPh is { } && b.At.StartPh is { } ? (a.At.StartPh, b.At.StartPh)
            : (a.At.EndPh ?? a.At.StartPh, b.At.EndPh ?? b.At.StartPh);
        return new[]
        {
            Unequal("pH", "", one, other, Tolerances.SamePh),
            Unequal("temperature", "K", a.At.Temperature, b.At.Temperature, Tolerances.SameTemperature),
            Unequal("dose", "g/L", a.At.Dose, b.At.Dose, Tolerances.SameDose),
            a.Series.Water is not { } water || b.Series.Water is not { } theirs ? NotKnown("water", a.Series.Water is null, b.Series.Water is null)
                : string.Equals(water, theirs, StringComparison.OrdinalIgnoreCase) ? null : $"water {water} and {theirs}",
        }.OfType<string>();

        string? Unequal(string name, string unit, double? mine, double? theirs, Func<double, double, bool> same)
            => mine is not { } x || theirs is not { } y ? NotKnown(name, mine is null, theirs is null)
                : same(x, y) ? null : $"{name} {Phrase.Number(x)} and {Phrase.With(y, unit)}";

        string NotKnown(string name, bool mine, bool theirs)
            => $"{name} of {Phrase.Listed(new[] { mine ? a.Name : null, theirs ? b.Name : null }.OfType<string>())} not recorded";
    }

    private NextExperiment Settling()
    {
        var at = First.At;
        var start = at.Dose is { } dose ? First.Left + dose * First.Uptake : at.Start;
        ImmutableArray<string> settings =
        [
            .. start is { } c0 ? [$"C0 {Phrase.With(c0, "mg/L")}"] : Array.Empty<string>(),
            .. at.Dose is { } d ? [$"dose {Phrase.With(d, "g/L")}"] : Array.Empty<string>(),
            .. (at.EndPh ?? at.StartPh) is { } ph ? [$"pH {Phrase.Number(ph)}"] : Array.Empty<string>(),
            .. at.Temperature is { } kelvin ? [Phrase.With(kelvin, "K")] : Array.Empty<string>(),
            .. First.Series.Water is { } water ? [water] : Array.Empty<string>(),
        ];
        var size = Size();
        var sorbent = Second.Series.Source is null ? Second.Name : $"{Second.Name} (or a commercial reference sorbent)";
        return new(
            $"Run {First.Name} and {sorbent} side by side, same day and start solution: {size.Each("vessel")} each at {(settings.IsEmpty ? "the same recorded conditions" : Phrase.Listed(settings))}.",
            2 * size.N, settings, size.Basis);
    }

    // What has to be seen is the smaller of the two distances from a margin, with the scatter that single vessels showed.
    private Replication Size()
    {
        if (!IsComparable || Scatter(First) is not { } first || Scatter(Second) is not { } second)
            return Replication.WithoutPilot;
        var nearest = Math.Min(Math.Abs(First.Uptake - (1 + Margin) * Second.Uptake), Math.Abs(Second.Uptake - (1 + Margin) * First.Uptake));
        var sd = Math.Sqrt((first * first + second * second) / 2);
        return Replication.TwoMeans(nearest, sd, First.Series.VesselFreedom + Second.Series.VesselFreedom);
    }

    private static double? Scatter(ComparedUptake of) => of.Series.VesselSd * of.Uptake;
}
