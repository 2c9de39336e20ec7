namespace Holdfast.Fitting.Solving;

/// <summary>Why data cannot be fitted with a curve, found before trying. A refusal never comes with a number.</summary>
internal static class Refusal
{
    private const double Flat = 1e-12;

    /// <summary>The reasons, or null when the data can be tried.</summary>
    public static IReadOnlyList<Finding>? Of(ModelCard card, Points points, FitOptions options)
    {
        if (options is { Scan: false, Starts.Count: 0 })
            throw new ArgumentException("Without a scan at least one start must be given.", nameof(options));
        if (TooFew(card, points) is { } tooFew)
            return tooFew;
        var p = card.Parameters.Count;
        var distinct = points.X.Distinct().Count();
        if (distinct < p)
        {
            return [Finding.Of("HF-413", Weight.Stop, FormattableString.Invariant(
                $"{card.Name} has {p} parameters and the points stand at {distinct} different x. Measure at more levels."), [.. points.Ids])];
        }

        var largest = points.Y.Max(Math.Abs);
        if (largest == 0)
            return [Finding.Of("HF-413", Weight.Stop, "Every reading is 0. There is nothing to fit.", [.. points.Ids])];
        if (p > 1 && points.Y.Max() - points.Y.Min() <= Flat * largest)
        {
            return [Finding.Of("HF-413", Weight.Stop,
                $"Every reading is the same. {card.Name} cannot be told from a constant; measure where the curve rises.", [.. points.Ids])];
        }

        return null;
    }

    /// <summary>The refusal for fewer points than parameters, or null.</summary>
    public static IReadOnlyList<Finding>? TooFew(ModelCard card, Points points)
        => points.Count >= card.Parameters.Count
            ? null
            : [Finding.Of("HF-410", Weight.Stop, points.Count == 0 ? $"No point is there to fit {card.Name} to." : FormattableString.Invariant(
                $"{points.Count} {(points.Count == 1 ? "point" : "points")} cannot determine the {card.Parameters.Count} parameters of {card.Name}. Measure more points."), [.. points.Ids])];
}
