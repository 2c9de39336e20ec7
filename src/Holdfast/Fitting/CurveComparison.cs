namespace Holdfast.Fitting;

/// <summary>
/// Curves fitted to the same readings with the same weights, ranked by AICc. The rank says which of the curves tried loses least; it certifies none,
/// and a well-fitting equation is not a mechanism.
/// </summary>
/// <param name="Ranked">Comparable fits, best first.</param>
/// <param name="NotComparable">Fits without an AICc, each with the reason.</param>
/// <param name="Findings">What must be said about the ranking.</param>
public sealed record CurveComparison(
    IReadOnlyList<RankedCurve> Ranked, IReadOnlyList<(FitResult Fit, string Reason)> NotComparable, IReadOnlyList<Finding> Findings)
{
    /// <summary>Curves closer than this in AICc are not told apart.</summary>
    public const double NotDistinguished = 2;

    /// <summary>The fits that the points do not tell apart: within 2 units of the best.</summary>
    public IReadOnlyList<RankedCurve> Survivors => [.. Ranked.Where(r => r.Delta < NotDistinguished)];

    /// <summary>Settled fits within <see cref="NotDistinguished"/> of the lowest AICc, that one first; empty when none has an AICc.</summary>
    /// <param name="fits">Fits of different curves to the same points with the same weights.</param>
    public static IReadOnlyList<FitResult> NotToldApart(IEnumerable<FitResult> fits)
    {
        ArgumentNullException.ThrowIfNull(fits);
        // A curve that runs through every point leaves nothing to weigh: the one with fewest parameters says it all.
        if (fits.Where(f => f is { IsFit: true, IsExact: true }).MinBy(f => f.P) is { } exact)
            return [exact];
        var settled = fits.Where(f => f.IsFit && f.Aicc is not null).OrderBy(f => f.Aicc).ToArray();
        return [.. settled.Where(f => f.Aicc - settled[0].Aicc < NotDistinguished)];
    }

    /// <summary>Ranks fits.</summary>
    /// <param name="fits">Fits of different curves to the same points.</param>
    /// <exception cref="ArgumentException">The fits are not of the same readings with the same weights.</exception>
    public static CurveComparison Of(IReadOnlyList<FitResult> fits)
    {
        ArgumentNullException.ThrowIfNull(fits);
        var whole = fits.Where(f => f.IsFit).ToArray();
        if (whole.Skip(1).Any(f => !SameData(f, whole[0])))
            throw new ArgumentException("Curves compare only on the same readings with the same weights.", nameof(fits));
        var comparable = whole.Where(f => f.Aicc is not null).OrderBy(f => f.Aicc).ToArray();
        var best = comparable.Length == 0 ? 0 : comparable[0].Aicc!.Value;
        var total = comparable.Sum(f => Math.Exp(-(f.Aicc!.Value - best) / 2));
        var ranked = comparable.Select(f => new RankedCurve(f, f.Aicc!.Value - best, Math.Exp(-(f.Aicc.Value - best) / 2) / total)).ToArray();
        var comparison = new CurveComparison(ranked, [.. fits.Where(f => f.Aicc is null || !f.IsFit).Select(f => (f, Reason(f)))], []);
        return comparison with { Findings = [.. comparison.Speak()] };
    }

    /// <summary>Where one more point would tell two curves apart best: the x at which they differ most, in residual standard deviations of the better.</summary>
    /// <param name="first">One fit.</param>
    /// <param name="second">The other.</param>
    /// <param name="from">Lowest x that can be measured, in the unit of the data.</param>
    /// <param name="to">Highest x that can be measured, in the unit of the data.</param>
    /// <returns>x and the difference there in standard deviations; null without a scale.</returns>
    public static (double X, double Deviations)? WhereTheyDiffer(FitResult first, FitResult second, double from, double to)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(from, to);
        const int steps = 400;
        if (first.ResidualSd is not { } s || !(s > 0))
            return null;
        return Enumerable.Range(0, steps + 1).Select(i => from + (to - from) * i / steps)
            .Select(x => (x, Math.Abs(first.ValueAt(x) - second.ValueAt(x)) / s)).MaxBy(d => d.Item2);
    }

    private IEnumerable<Finding> Speak()
    {
        if (Survivors.Count > 1)
        {
            var names = string.Join(", ", Survivors.Select(r => r.Fit.Card.Name));
            yield return Finding.Of("HF-412", Weight.Caution, $"The points do not tell {names} apart (AICc within 2). Name the set, or measure where they differ.");
        }

        foreach (var (fit, reason) in NotComparable.Where(f => f.Fit.IsFit))
            yield return Finding.Of("HF-429", Weight.Caution, $"{fit.Card.Name} cannot be compared: {reason}.");
    }

    private static string Reason(FitResult fit)
        => !fit.IsFit ? $"it is no fit ({fit.Stop})"
            : fit.Criteria is null ? "nothing is left over to judge by"
            : FormattableString.Invariant($"AICc needs more than {fit.Criteria.K + 1} points and there are {fit.N}");

    // The abscissa may be scaled differently (C/Cs, Q/H0): what is compared is how the same readings are met.
    private static bool SameData(FitResult a, FitResult b)
        => a.Points.Y.SequenceEqual(b.Points.Y) && a.Points.Ids.SequenceEqual(b.Points.Ids) && a.Weights.SequenceEqual(b.Weights);
}

/// <summary>A fit in a ranking.</summary>
/// <param name="Fit">The fit.</param>
/// <param name="Delta">AICc less that of the best.</param>
/// <param name="AkaikeWeight">exp(−Δ/2) as a share of all curves ranked.</param>
public sealed record RankedCurve(FitResult Fit, double Delta, double AkaikeWeight);
